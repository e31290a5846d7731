"""The rigs on which speed is measured; all are invented."""

from __future__ import annotations

import re
from itertools import chain
from pathlib import Path
from random import Random

ROOT = Path(__file__).parent.parent.parent


def crowded(seed: int) -> str:
    """An invented rig of 60 units, 80 outlets and 8 supplies, placed, with nothing stated of who stands where."""
    chance = Random(seed)
    lines = ["language 1", 'rig crowd "Crowd (invented)" {', "  revision A 2026-03-02", "  class touring", "}"]
    for supply in range(8):
        lines += [
            f"supply s{supply} {{", "  body 250 x 80 x 45 mm", "  switch-mode", "  mains 100..240 V 50..60 Hz",
            f"  ceiling {chance.choice((12, 18, 25))} W", "  connector barrel 5.5 x 2.1 mm", "  polarity centre-negative",
        ]  # fmt: skip
        for outlet in range(10):
            rating = chance.choice(("100", "100", "250", "500"))
            more = " or 12 V dc 200 mA or 18 V dc 120 mA" if chance.random() < 0.25 else ""
            common = "common pair" if outlet > 7 else "isolated"
            lines.append(f"  outlet o{outlet} 9 V dc {rating} mA{more} {common} front {10 + 24 * outlet} mm up 20 mm")
        lines.append("}")
    for unit in range(60):
        volts = chance.choice((9,) * 9 + (12, 18))
        lines += [
            f"unit u{unit} {{", "  body 70 x 120 x 55 mm", "  input in ts 1 Mohm right 80 mm", "  output out ts 1 kohm left 80 mm",
            "  inlet dc barrel 5.5 x 2.1 mm rear 35 mm up 30 mm", f"  needs {volts} V dc", "  polarity centre-negative",
            f"  draws {chance.choice((5, 8, 15, 30, 60, 75, 90) if volts == 9 else (20, 60, 90))} mA",
            f"  ground {'positive' if chance.random() < 0.04 else 'negative'}", f"  {chance.choice(('analogue', 'digital', 'analogue'))}", "}",
        ]  # fmt: skip
    lines += ["chain " + " ->\n  ".join(f"u{unit}" for unit in range(60)), "power {"]
    lines += [
        "  others from " + ", ".join(f"s{supply}" for supply in range(8)),
        f"  spare {chance.choice((1, 4, 8))}",
        "}",
    ]
    lines += ["deck wall {", "  size 1200 x 1400 mm", "  clearance 70 mm", "}", "place {"]
    lines += [f"  u{unit} at {20 + 110 * (unit % 10)}, {15 + 150 * (unit // 10)} mm" for unit in range(60)]
    lines += [f"  s{supply} under at {30 + 290 * (supply % 4)}, {100 + 400 * (supply // 4)} mm" for supply in range(8)]
    return "\n".join([*lines, "}", ""])


def board(count: int, drops: bool) -> str:
    """An invented board: units in rows of six, each with an outlet below, a chain that goes from row to row."""
    rows = -(-count // 6)
    lines = ", ".join(str(145 + 160 * row) for row in range(rows)) + " mm"
    deck = ["size", f"{6 * 120 + 60} x {rows * 160 + 40} mm"]
    head = [
        "language 1", *(f'use "stock/{name}.rig"' for name in ("plugs", "cables", "strips", "premade")),
        'rig board "Board (invented)" {', "  revision A 2026-03-02", "}",
        "instrument guitar {", "  inductance 4 H", "  capacitance 120 pF", "}", "amp combo {", "  input in ts 1 Mohm", "}",
        "unit pattern {", "  body 70 x 120 x 55 mm", "  bypass true", "  switch at 35, 25 mm latching",
        "  input in ts 1 Mohm right 80 mm up 25 mm", "  output out ts 1 kohm left 80 mm up 25 mm",
        "  inlet dc barrel 5.5 x 2.1 mm rear 35 mm up 33 mm", "  needs 9 V dc", "  draws 8 mA", "}",
        "deck plate {", f"  {' '.join(deck)}", "  thickness 12 mm", "  clearance 80 mm",
        *([f"  drop {lines}"] if drops else []), "}",
    ]  # fmt: skip
    units = [f"unit u{at} like pattern {{\n}}" for at in range(count)]
    supplies = [
        f"supply s{at} {{\n  body 190 x 60 x 45 mm\n  connector barrel 5.5 x 2.1 mm\n"
        "  outlet o1..o6 9 V dc 100 mA isolated front 20..170 mm up 22 mm\n}"
        for at in range(rows)
    ]
    order = list(chain.from_iterable(zip(*(range(row * 6, row * 6 + 6) for row in range(rows)), strict=True)))
    way = "chain guitar -> " + " -> ".join(f"u{at}" for at in order) + " -> combo"
    places = [f"  u{at} at {30 + 120 * (at % 6)}, {10 + 160 * (at // 6)} mm" for at in range(count)]
    places += [f"  s{row} under at {100 + 60 * (row % 4)}, {30 + 160 * row} mm" for row in range(rows)]
    feeds = [f"  u{at} from s{at // 6}.o{at % 6 + 1}" for at in range(count)]
    blocks = ["power {", *feeds, "}", "place {", *places, "}"]
    return "\n".join([*head, *units, *supplies, way, *blocks, ""])


def shop(folder: Path, count: int) -> None:
    """The rigs, each in a folder of its own; each is the one of the README's walk under a name of its own, and all use one file of units."""
    text = "\n".join(re.findall(r"```rig\n(.*?)```", (ROOT / "README.md").read_text("utf-8"), re.DOTALL))
    unit = re.search(r'^unit tern ".*?^}\n', text, re.DOTALL | re.MULTILINE)
    assert unit
    (folder / "rig-root").touch()
    (folder / "units.rig").write_text(f"language 1\n\n{unit[0]}", "utf-8")
    own = text.replace(unit[0], "").replace('use "stock/plugs.rig"', 'use "../units.rig"\nuse "stock/plugs.rig"')
    for number in range(count):
        (folder / f"r{number:04}").mkdir()
        (folder / f"r{number:04}" / "board.rig").write_text(own.replace("rig two-step", f"rig r{number:04}"), "utf-8")
