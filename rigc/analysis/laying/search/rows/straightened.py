"""A layout -> a cheaper one in which whole lines of front edges were moved, to the front or rear or aside: lines that nearly meet become one.

A search moves one or two things at a time, and each that leaves its line makes a line more, so lines as a whole stay where they came about.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.laying.search.board import Board
from rigc.analysis.laying.search.found import Found
from rigc.analysis.laying.search.layout import Change, Layout

_FAR = (
    100  # a line is moved by so much at most, and those that are no further apart become one, in tenths of a millimetre
)


def straightened(board: Board, found: Found) -> Found:
    """Never one that costs more; as it is where something is in the way."""
    if found.hard:
        return found
    layout, best = Layout(board, list(found.at)), found
    while (better := _best(layout, best)) is not None:
        best = better
        layout = Layout(board, list(best.at), layout.ground)
    return best


def _best(layout: Layout, best: Found) -> Found | None:
    """The best layout that a move of one line makes; None where none is better."""
    made: Found | None = None
    for changes in _moves(layout):
        least = best if made is None else made
        hard, missed, stands = layout.faults_with(changes, 0)
        if hard or missed > least.missed:
            continue
        if missed == least.missed and layout.cost_at_sight(stands, changes) >= least.cost:
            continue
        cost, broken = layout.cost_with(stands, changes)
        tried = Found(tuple(stands), hard + broken, missed, cost, best.steps, best.stopped)
        if tried.rank < least.rank:
            made = tried
    return made


def _moves(layout: Layout) -> Iterator[list[Change]]:
    """Each line, and each with those that nearly meet it as one, to every place near it; and each aside."""
    board, at = layout.board, layout.at
    free = [item for item, each in enumerate(board.items) if each.fixed is None and not each.under]
    steps = range(-(_FAR // board.step) * board.step, _FAR + 1, board.step)
    tried = set[tuple[Change, ...]]()
    for front in sorted({at[item][1] for item in free}):
        for far in (0, _FAR):
            line = [item for item in free if abs(at[item][1] - front) <= far]
            to_front = ([(item, at[item][0], front + way, at[item][2]) for item in line] for way in steps)
            aside = ([(item, at[item][0] + way, *at[item][1:]) for item in line] for way in steps)
            for changes in (*to_front, *aside):
                moved = tuple(change for change in changes if change[1:] != at[change[0]])
                if moved and moved not in tried:
                    tried.add(moved)
                    yield list(moved)
