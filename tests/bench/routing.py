"""What routing adds to a cold `check`, in floors. Run it in an environment with the run-time packages alone, as `cold.py`.

A board of so many units in rows, supplies below it, is checked with drop lines in its deck and without: without them no
lead that goes below has a way, and nothing is routed, crossed or neighboured. Budgets: 0.5 floors more for 18 units, 4
for 60. The floor is that of `cold.py`: a process that only imports.
"""

from __future__ import annotations

import statistics
import subprocess
import sys
import tempfile
import time
from itertools import chain
from pathlib import Path

ROUNDS = 9
BUDGETS = {18: 0.5, 60: 4.0}
FLOOR = "import click, lark, networkx, pint; from rigc.model.units.quantities import registry; registry()"
IN_A_ROW = 6


def main() -> int:
    """Measures and prints; exit code 1 where a budget is exceeded."""
    with tempfile.TemporaryDirectory() as folder:
        return _report(Path(folder))


def _report(folder: Path) -> int:
    commands = {"floor": [sys.executable, "-c", FLOOR]}
    for count in BUDGETS:
        for drops in (True, False):
            name = f"{count} units, {'with' if drops else 'without'} drop lines"
            file = folder / f"{count}-{drops}.rig"
            file.write_text(board(count, drops), "utf-8")
            commands[name] = [sys.executable, "-m", "rigc", "-q", "check", str(file)]
    taken: dict[str, list[float]] = {name: [] for name in commands}
    for _ in range(ROUNDS + 1):  # in turn, so that a busy machine slows all of them
        for name, command in commands.items():
            start = time.perf_counter()
            subprocess.run(command, check=False, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
            taken[name].append(time.perf_counter() - start)
    times = {name: statistics.median(each[1:]) for name, each in taken.items()}
    for name, seconds in times.items():
        print(f"{name:30} {seconds * 1000:8.0f} ms  {seconds / times['floor']:6.2f} floors")
    good = True
    for count, budget in BUDGETS.items():
        more = times[f"{count} units, with drop lines"] - times[f"{count} units, without drop lines"]
        floors = more / times["floor"]
        good = good and floors <= budget
        print(f"routing {count} units adds {floors:.2f} floors, at most {budget:g}")
    print("within the budgets" if good else "over a budget")
    return 0 if good else 1


def board(count: int, drops: bool) -> str:
    """An invented board: units in rows of six, each with an outlet below, a chain that goes from row to row."""
    rows = -(-count // IN_A_ROW)
    lines = ", ".join(str(145 + 160 * row) for row in range(rows)) + " mm"
    deck = ["size", f"{IN_A_ROW * 120 + 60} x {rows * 160 + 40} mm"]
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


if __name__ == "__main__":
    sys.exit(main())
