"""How long whole cold processes take, as ratios to a floor within one run. Run it in an environment with the run-time packages alone:

    python3 -m venv /tmp/bare && /tmp/bare/bin/pip install -q . && /tmp/bare/bin/python tests/bench/cold.py

The floor is a process that only imports click, lark, networkx and pint with our unit file. Budgets: `check` of the
touring example 2.5 floors with every rule there is (1.6 is the aim), `build` of its four first documents 2.2, of the whole
folder 4; above the floor, 1,000 units cost at most 20 times 100.
`first check` is one that must parse a changed file with the tables kept; it has no budget of its own.
"""

from __future__ import annotations

import os
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

ROUNDS = 15
ROOT = Path(__file__).parent.parent.parent
TOURING = ROOT / "examples" / "long-haul" / "board.rig"
FOUR = "wiring-sheet,power-table,cable-list,mounting-strips"
FLOOR = "import click, lark, networkx, pint; from rigc.model.units.quantities import registry; registry()"


def main() -> int:
    """Measures and prints; exit code 1 where a budget is exceeded."""
    with tempfile.TemporaryDirectory() as folder:
        return _report(Path(folder))


def _report(folder: Path) -> int:
    rig = [sys.executable, "-m", "rigc"]
    changed = folder / "changed"
    edits = iter(range(10**6))

    def edit() -> None:
        text = TOURING.read_text("utf-8").replace('"../bench/', f'"{"bench/"}')
        (changed / "board.rig").write_text(f"{text}# {next(edits)}\n", "utf-8")

    (changed / "bench").mkdir(parents=True)
    (changed / "bench" / "stock.rig").write_text(
        (TOURING.parent.parent / "bench" / "stock.rig").read_text("utf-8"), "utf-8"
    )
    small, large = folder / "small.rig", folder / "large.rig"
    small.write_text(many_units(100), "utf-8")
    large.write_text(many_units(1000), "utf-8")
    cold: dict[str, tuple[list[str], Callable[[], None]]] = {
        "floor": ([sys.executable, "-c", FLOOR], lambda: None),
        "check": ([*rig, "-q", "check", str(TOURING)], lambda: None),
        "first check": ([*rig, "-q", "check", str(changed / "board.rig")], edit),
        "build four": ([*rig, "-q", "build", str(TOURING), "--sheet", FOUR, "-o", str(folder / "four")], lambda: None),
        "build all": ([*rig, "-q", "build", str(TOURING), "-o", str(folder / "documents")], lambda: None),
        "help": ([*rig, "--help"], lambda: None),
        "click": ([sys.executable, "-c", "import click"], lambda: None),
    }
    times = {name: _median(command, before, ROUNDS) for name, (command, before) in cold.items()}
    times["100 units"] = _median([*rig, "-q", "check", str(small)], lambda: None, 5)
    times["1000 units"] = _median([*rig, "-q", "check", str(large)], lambda: None, 3)
    for name, seconds in times.items():
        print(f"{name:12} {seconds * 1000:8.0f} ms  {seconds / times['floor']:6.2f} floors")
    growth = (times["1000 units"] - times["floor"]) / (times["100 units"] - times["floor"])
    print(
        f"above the floor, 1000 units cost {growth:.1f} times 100 units; help costs {times['help'] / times['click']:.2f} times click"
    )
    budgets = {"check": 2.5, "build four": 2.2, "build all": 4.0}
    over = [name for name, floors in budgets.items() if times[name] > floors * times["floor"]]
    good = not over and growth <= 20
    print("within the budgets" if good else f"over a budget: {', '.join(over) or 'growth'}")
    return 0 if good else 1


def _median(command: list[str], before: Callable[[], None], rounds: int) -> float:
    taken = []
    for _ in range(rounds + 1):
        before()
        start = time.perf_counter()
        subprocess.run(
            command,
            check=False,
            cwd=tempfile.gettempdir(),
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
            env=dict(os.environ),
        )
        taken.append(time.perf_counter() - start)
    return statistics.median(taken[1:])


def many_units(count: int) -> str:
    """An invented rig of `count` units in rows on a wall of a deck, each with an outlet of its own."""
    head = [
        "language 1", 'use "stock/plugs.rig"', 'use "stock/cables.rig"', 'use "stock/strips.rig"', 'use "stock/premade.rig"',
        'rig wall "Wall" {', "  revision A 2026-03-02", "  marker 40 characters", "}",
        "instrument guitar {", "  capacitance 120 pF", "  inductance 4.2 H", "  lead 6 m of stage-coax", "}",
        "amp combo {", "  input in ts 1 Mohm", "  earthed", "}",
        "unit pattern {", "  body 70 x 120 x 55 mm", "  mass 400 g", "  bypass buffered",
        "  input in ts 1 Mohm right 80 mm up 25 mm", "  output out ts 1 kohm left 80 mm up 25 mm",
        "  inlet dc barrel 5.5 x 2.1 mm rear 35 mm up 33 mm", "  needs 9 V dc", "  polarity centre-negative", "  draws 8 mA", "}",
    ]  # fmt: skip
    units = [f"unit u{at} like pattern {{\n  draws {5 + at % 20} mA\n}}" for at in range(count)]
    supplies = [
        f"supply s{at} {{\n  body 190 x 60 x 45 mm\n  mass 1 kg\n  linear\n  mains 230 V 50 Hz\n  ceiling 20 W\n"
        "  connector barrel 5.5 x 2.1 mm\n  polarity centre-negative\n  outlet o1..o10 9 V dc 100 mA isolated front 10..180 mm\n}"
        for at in range((count + 9) // 10)
    ]
    rows = (count + 39) // 40
    drops = ", ".join(str(150 + 160 * row) for row in range(rows))
    deck = (
        f"deck wall-deck {{\n  size 4700 x {rows * 160 + 200} mm\n  thickness 12 mm\n  clearance 70 mm\n  mass 9 kg\n"
        f"  drop {drops} mm\n}}"
    )
    places = [f"  u{at} at {20 + 115 * (at % 40)}, {15 + 160 * (at // 40)} mm" for at in range(count)]
    # each supply hangs below the ten units that it feeds
    places += [
        f"  s{at} under at {420 + 1150 * (at % 4)}, {30 + 160 * (at // 4)} mm" for at in range((count + 9) // 10)
    ]
    feeds = [f"  u{at} from s{at // 10}.o{at % 10 + 1}" for at in range(count)]
    chain = "chain guitar -> " + " ->\n  ".join(f"u{at}" for at in range(count)) + " -> combo"
    return "\n".join(
        [
            *head,
            *units,
            *supplies,
            chain,
            "power {",
            *feeds,
            "}",
            deck,
            "place {",
            *places,
            "}",
            "mounting {",
            "  all with mushroom",
            "}",
            "",
        ]
    )


if __name__ == "__main__":
    sys.exit(main())
