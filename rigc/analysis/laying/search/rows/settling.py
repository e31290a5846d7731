"""A layout -> one that costs less: fronts go into line with each other, whole lines of fronts and parts of them are shifted, single things too, as
long as that helps.

Dice seldom hit on that: a line may be worth making though none of its things is worth moving there, and what a whole line saves by a few
millimetres is saved only if all of it moves.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import islice

from rigc.analysis.laying.search.board import Board
from rigc.analysis.laying.search.found import Found, as_it_is
from rigc.analysis.laying.search.ground import At
from rigc.analysis.laying.search.layout import Change, Layout

_INTO_LINE = 800  # fronts that are no further apart may come into one line
_STRIDES = (30, 10, 3, 1)  # steps of the grid
_WAYS = ((0, -1), (0, 1), (-1, 0), (1, 0))
_TO_REST = 300  # shifts for each free thing, after which a layout is at rest enough; some 50 to 160 are usual


def at_rest(board: Board, at: Sequence[At]) -> Found:
    """A layout that settled for good, of one in which nothing is in the way; never one that costs more."""
    free = tuple(number for number, item in enumerate(board.items) if item.fixed is None)
    layout = Layout(board, list(at))
    last = as_it_is(layout)
    for last in islice(settled(layout, free), _TO_REST * len(free)):  # noqa: B007  # the last of them
        pass
    return last


def settled(layout: Layout, free: tuple[int, ...]) -> Iterator[Found]:
    """Betters a layout in which nothing is in the way until no such change of the free things helps; after each one that was judged, the layout as
    it is by then. The same layout settles always the same way."""
    here, helped = as_it_is(layout), True
    while helped:
        helped = False
        for changes in _changes(layout, free):
            if _is_taken(layout, changes):
                here, helped = as_it_is(layout), True
            yield here


def _is_taken(layout: Layout, changes: list[Change]) -> bool:
    """Makes the changes if the layout costs less for them, with nothing in the way and no wish missed more."""
    hard, missed, at = layout.faults_with(changes, 0)
    if hard or missed > layout.missed or layout.cost_at_sight(at, changes) >= layout.cost:
        return False
    cost, broken = layout.cost_with(at, changes, layout.cost)
    if broken or cost >= layout.cost:
        return False
    layout.take(changes, at, hard, missed)
    return True


def _changes(layout: Layout, free: tuple[int, ...]) -> Iterator[list[Change]]:
    """One after the other, each of the layout as it is when it is asked for."""
    top = [number for number, item in enumerate(layout.board.items) if not item.under]
    free_top = [item for item in top if item in free]
    for front in _fronts(layout, free_top):
        for other in sorted(_fronts(layout, top), key=lambda each: (abs(each - front), each)):
            if 0 < abs(other - front) <= _INTO_LINE:
                line = _line(layout, free_top, front)
                yield _moved(layout, line, 0, other - front)
                if len(line) > 1:
                    yield from (_moved(layout, [item], 0, other - front) for item in line)
    shifts = [(dx * far, dy * far) for far in (each * layout.board.step for each in _STRIDES) for dx, dy in _WAYS]
    for front in _fronts(layout, free_top):
        for dx, dy in shifts:
            line = _line(layout, free_top, front)
            if len(line) > 1:
                yield _moved(layout, line, dx, dy)
                for place in range(1, len(line)) if dx else ():
                    yield _moved(layout, line[place:] if dx > 0 else line[:place], dx, 0)
    for item in free:
        yield from (_moved(layout, [item], dx, dy) for dx, dy in shifts)


def _fronts(layout: Layout, items: list[int]) -> list[int]:
    return sorted({layout.at[item][1] for item in items})


def _line(layout: Layout, items: list[int], front: int) -> list[int]:
    """What stands in a line, from left to right."""
    return sorted((item for item in items if layout.at[item][1] == front), key=lambda item: (layout.at[item][0], item))


def _moved(layout: Layout, items: list[int], dx: int, dy: int) -> list[Change]:
    return [(item, x + dx, y + dy, shape) for item in items for x, y, shape in (layout.at[item],)]
