"""How near the usual search for places comes, on boards with much to lay, to one that takes five times as many steps.

    python tests/bench/longer.py [--write]

Prints a table; with `--write` it is written beside this file as `longer.md`. The seconds are of processor time. The longer search begins as the usual one
does and is no proof: what is best may cost less than both.
"""

from __future__ import annotations

import sys
import time
from pathlib import Path

ROOT = Path(__file__).parent.parent.parent
sys.path[:0] = [str(ROOT), str(ROOT / "tests"), str(ROOT / "tests" / "analysis")]

from cases import results  # noqa: E402
from laying.small_boards import dealt  # noqa: E402

from rigc.analysis.laying.choices.task import task_of  # noqa: E402
from rigc.analysis.laying.chosen_places import usual_effort  # noqa: E402
from rigc.analysis.laying.search.annealing import search  # noqa: E402
from rigc.analysis.laying.search.board import Board, Tier  # noqa: E402

LONGER = 5
HEADS = ("board", "open", "usual", "s", "longer", "s", "more")


def main() -> int:
    """Prints the table."""
    table = [f"| {' | '.join(HEADS)} |", f"|{' --- |' * len(HEADS)}"]
    print(*table, sep="\n")
    for name, board in (("long-haul", _example("long-haul")), ("dealt, on two tiers", _on_tiers(30))):
        row = [name, str(sum(item.fixed is None for item in board.items))]
        costs = []
        for times in (1, LONGER):
            start = time.process_time()
            found = search(board, times * usual_effort(board))
            costs.append(None if found.hard else found.cost)
            row += ["none" if found.hard else f"{found.cost / 1000:.0f} mm", f"{time.process_time() - start:.1f}"]
        usual, longer = costs
        row.append("-" if usual is None or longer is None else f"{100 * (usual - longer) / longer:.0f} %")
        table.append(f"| {' | '.join(row)} |")
        print(table[-1], flush=True)
    if "--write" in sys.argv:
        head = "# The usual search beside a longer one\n\nPrinted by `longer.py`, which tells what the columns are.\n\n"
        Path(__file__).with_suffix(".md").write_text(head + "\n".join(table) + "\n", "utf-8")
    return 0


def _example(name: str) -> Board:
    """An example with all places taken out."""
    task = task_of(results(ROOT / "examples" / name / "board.rig").rig.replace(places={}))
    assert task is not None
    return task.board


def _on_tiers(units: int) -> Board:
    """So many things on a deck that they cover by about a third, with two tiers to the rear."""
    board = dealt(0, units, turning=False)
    depth = 3 * board.depth // 2 // 300 * 300
    tiers = Tier(depth // 3, 2 * depth // 3, 250), Tier(2 * depth // 3, depth, 500)
    made: Board = board.replace(step=10, depth=depth, lines=(depth // 3, 2 * depth // 3), tiers=tiers)
    return made


if __name__ == "__main__":
    sys.exit(main())
