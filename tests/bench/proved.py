"""How near the search for places comes to what the solver proves, and the packing of rectangles to published optima.

    python tests/bench/proved.py [--write] [SMALL [LARGE]]

Lays so many dealt boards of 3 to 7 things and of 12 to 18 things on a grid of 1 mm, without quarter turns, and has the solver
(`pip install 'rigc[solver]'`) prove what no layout costs less than. Prints a table; with `--write` it is written beside this file as
`proved.md`, without the times. The search's layout is what `check` and `build` choose; with the solver it is the better of both, as `show places
--prove` tells it. A gap is by how much the layout before it costs more than is proved, in percent: what is proved may be too little, so the
true gap is no larger. Where a board is full, chance has dealt it so that few layouts exist, if any.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Iterator
from pathlib import Path

ROOT = Path(__file__).parent.parent.parent
sys.path[:0] = [str(ROOT), str(ROOT / "tests"), str(ROOT / "tests" / "analysis")]

from laying.small_boards import dealt  # noqa: E402
from laying.test_packing import C1_1  # noqa: E402

from rigc.analysis.laying.chosen_places import searched  # noqa: E402
from rigc.analysis.laying.search.annealing import SOME  # noqa: E402
from rigc.analysis.laying.search.found import as_it_is  # noqa: E402
from rigc.analysis.laying.search.known import KNOWN  # noqa: E402
from rigc.analysis.laying.search.layout import Layout  # noqa: E402
from rigc.analysis.laying.search.packing import least_depth  # noqa: E402
from rigc.analysis.laying.search.solver.model import proof  # noqa: E402

WORK, FULL_WORK = (
    20.0,
    5.0,
)  # of the solver for each board, at most: of few things, of more; a second or two is one each
PACKING = 20_000  # rectangles laid down before a packing is given up
STRIPS = (
    (
        "nine squares in a rectangle of 33 x 32 (Moroń 1925)",
        33,
        tuple((a, a) for a in (18, 15, 14, 10, 9, 8, 7, 4, 1)),
        32,
    ),
    (
        "twenty-one squares in a square of 112 (Duijvestijn 1978)",
        112,
        tuple((a, a) for a in (50, 42, 37, 35, 33, 29, 27, 25, 24, 19, 18, 17, 16, 15, 11, 9, 8, 7, 6, 4, 2)),
        112,
    ),
    ("sixteen rectangles in a strip of 20, C1-1 (Hopper and Turton 2001)", 20, C1_1, 20),
)
"""Instances and their optima restated from memory: a strip's width, its pieces, and the least depth."""


def main() -> int:
    """Prints both tables."""
    counts = [int(word) for word in sys.argv[1:] if word != "--write"]
    small, large = (*counts, *(40, 20)[len(counts) :])
    lines = [
        "# The search beside what is proved",
        "",
        f"Printed by `proved.py` on {time.strftime('%Y-%m-%d')}; it tells what the columns are.",
        "",
    ]
    lines += ["| board | things | search | gap | with the solver | gap | proved |", "| --- |" + " --- |" * 6]
    for line in boards(small, large):
        lines.append(line)
        print(line, flush=True)
    lines += ["", "| packing | least depth | found | gap |", "| --- | --- | --- | --- |"]
    for name, width, pieces, least in STRIPS:
        packed = least_depth(pieces, width, PACKING)
        assert packed is not None and packed.laid is not None
        found = max(y + pieces[number][1] for number, _, y, _ in packed.laid)
        lines.append(f"| {name} | {least} | {found} | {100 * (found - least) / least:.0f} % |")
        print(lines[-1], flush=True)
    if "--write" in sys.argv:
        Path(__file__).with_suffix(".md").write_text("\n".join(lines) + "\n", "utf-8")
    return 0


def boards(small: int, large: int) -> Iterator[str]:
    """A line for each board."""
    sizes = [(seed, 3 + seed % 5) for seed in range(small)] + [(seed, 12 + seed % 7) for seed in range(large)]
    for seed, units in sizes:
        work = WORK if units <= SOME else FULL_WORK
        board = dealt(seed, units, turning=False).replace(step=10)
        start = time.process_time()
        found = KNOWN.rest(board, searched(board, None))
        laid = time.process_time() - start
        made = proof(board, work, None if found.hard else found.at)
        seconds = time.process_time() - start - laid
        own = None if made.at is None else as_it_is(Layout(board, list(made.at)))
        best = min(filter(None, (found, own)), key=lambda each: each.rank)
        costs = []
        for each in (found, best):
            gap = 100 * (each.cost - made.bound) / max(1, made.bound)
            costs += ["none", "-"] if each.hard else [f"{each.cost / 1000:.0f} mm", f"{gap:.0f} %"]
        told = "no layout exists" if made.impossible else f"{made.bound / 1000:.0f} mm"
        yield f"| dealt {seed} | {units} | {' | '.join(costs)} | {told} |"
        print(f"  {laid:.1f} s, {seconds:.1f} s", end=" ", flush=True)


if __name__ == "__main__":
    sys.exit(main())
