"""How near the usual search for places comes, on boards with much to lay, to the best of ten that take five times as many steps.

    python tests/bench/longer.py [--write]

Prints a table; with `--write` it is written beside this file as `longer.md`. The seconds are of processor time. Each of the ten sees the things and
the leads of the board in another order, so that it begins otherwise and its dice fall otherwise. They are no proof: what is best may cost less
than all.
"""

from __future__ import annotations

import sys
import time
from pathlib import Path

ROOT = Path(__file__).parent.parent.parent
sys.path[:0] = [str(ROOT), str(ROOT / "tests"), str(ROOT / "tests" / "analysis")]

from cases import results  # noqa: E402
from laying.reordered import reordered  # noqa: E402
from laying.small_boards import dealt  # noqa: E402

from rigc.analysis.laying.choices.task import task_of  # noqa: E402
from rigc.analysis.laying.chosen_places import usual_effort  # noqa: E402
from rigc.analysis.laying.search.annealing import search  # noqa: E402
from rigc.analysis.laying.search.board import Board, Tier  # noqa: E402
from rigc.analysis.laying.search.found import Found  # noqa: E402

LONGER, RUNS = 5, 10
HEADS = ("board", "open", "usual", "s", "best of ten", "worst of ten", "s each", "more than the best")


def main() -> int:
    """Prints the table."""
    table = [f"| {' | '.join(HEADS)} |", f"|{' --- |' * len(HEADS)}"]
    print(*table, sep="\n")
    for name, board in (("long-haul", _example("long-haul")), ("dealt, on two tiers", _on_tiers(30))):
        row = [name, str(sum(item.fixed is None for item in board.items))]
        start = time.process_time()
        usual = search(board, usual_effort(board))
        row += [_cost(usual), f"{time.process_time() - start:.1f}"]
        start = time.process_time()
        runs = [search(reordered(board, seed)[0], LONGER * usual_effort(board)) for seed in range(RUNS)]
        runs.sort(key=lambda found: found.rank)
        best = runs[0]
        row += [_cost(best), _cost(runs[-1]), f"{(time.process_time() - start) / RUNS:.1f}"]
        row.append("-" if usual.hard or best.hard else f"{100 * (usual.cost - best.cost) / best.cost:.0f} %")
        table.append(f"| {' | '.join(row)} |")
        print(table[-1], flush=True)
    if "--write" in sys.argv:
        head = (
            "# The usual search beside ten longer ones\n\nPrinted by `longer.py`, which tells what the columns are.\n\n"
        )
        Path(__file__).with_suffix(".md").write_text(head + "\n".join(table) + "\n", "utf-8")
    return 0


def _cost(found: Found) -> str:
    return "none" if found.hard else f"{found.cost / 1000:.0f} mm"


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
