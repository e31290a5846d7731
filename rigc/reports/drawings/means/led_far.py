"""A name without a place near what it names -> one anywhere on the paper, at the end of a leader, straight or with a knee."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from math import cos, hypot, inf, pi, sin

from rigc.reports.drawings.means.choosing import Choice, Stand
from rigc.reports.drawings.means.label_box import Room
from rigc.reports.drawings.means.paper import Paper
from rigc.reports.drawings.means.segments import meets, squares_of
from rigc.reports.drawings.means.wish import KEPT, Wish, cost_of, in_small_letters
from rigc.reports.drawings.shapes import Point

_LATTICE = 2.5  # from place to place where all of the ground is searched, in mm
_APIECE = 7.0  # of the free places in a square of that side one is tried for a leader with a knee, in mm
_STARTS = 6  # from so many points a leader with a knee is tried
_BENDS = (3.0, 5.5, 9.0, 14.0)  # from the start of a leader to its knee, in mm
_HALF = 12.0  # from the middle of a name to the side at which its leader ends, at most, in mm
_SORTED = 10  # places that are put in order take as long as one that is looked at
_BESIDE = 9.0  # letters so near a knee are looked at before all others, in mm
MOST = 50_000
"""So many places at most are looked at in one drawing, in a second or two; a full board of twenty things takes some 20,000. On paper that is fuller,
or very large, a name goes without."""

_Spot = tuple[float, float, float]  # x, y, rotation


def led(paper: Paper, wish: Wish, bent: bool) -> Stand | None:
    """A place for a name beside all that stand already: its best, else one anywhere at the end of a straight leader, in small
    letters where there is none for its own; else at the end of a leader with a knee."""
    small = in_small_letters(wish)
    wishes = (wish,) if wish.sign is not None else (wish, small)
    for each in wishes:
        own = min(paper.free(each.choices(), KEPT), key=cost_of, default=None)
        found = own or _anywhere(paper, each, _straight)
        if found is not None:
            return found
    if not bent:
        return None
    return next((found for each in wishes if (found := _anywhere(paper, each, _bent)) is not None), None)


def _anywhere(paper: Paper, wish: Wish, way: Callable[[Paper, Choice, list[Point]], Stand | None]) -> Stand | None:
    """The best place on a lattice over all of the paper at the end of a leader that goes this way."""
    wished = {choice.start: choice for choice in wish.choices() if choice.start is not None}
    if not wished or paper.searched >= MOST:
        return None
    name = next(iter(wished.values()))._replace(cost=0, start=None, anchor="middle", level="middle")
    return way(paper, name, list(wished))


def _straight(paper: Paper, name: Choice, starts: list[Point]) -> Stand | None:
    """From the first or the last of the points from which it may start."""
    best: Stand | None = None
    spots = _lattice(paper)
    for start in dict.fromkeys((starts[0], starts[-1])):
        best = _nearest(paper, name, spots, start, inf if best is None else best.cost) or best
    return best


def _bent(paper: Paper, name: Choice, starts: list[Point]) -> Stand | None:
    """With a knee, from one of the points from which it may start, or from some of many."""
    best: Stand | None = None
    starts = starts[:: -(-len(starts) // _STARTS)]
    spots = _lattice(paper)
    paper.searched += len(spots)
    free = (spot for spot in spots if paper.stand(_at(name, spot)) is not None)
    few = list({(x // _APIECE, y // _APIECE, rotation): (x, y, rotation) for x, y, rotation in free}.values())
    for start, knee in ((each, knee) for each in starts for knee in _knees(each)):
        way = hypot(knee[0] - start[0], knee[1] - start[1])
        below = inf if best is None else best.cost - way
        found = _nearest(paper, name, few, knee, below, start) if below > 0 and paper.is_open(start, knee) else None
        if found is not None:
            best = found._replace(choice=found.choice._replace(start=start, knee=knee), cost=found.cost + way)
    return best


def _lattice(paper: Paper) -> list[_Spot]:
    """The middles of the places all over the paper, level and turned."""
    left, top, right, bottom = paper.room
    return [
        (left + wide * across, top + high * down, rotation)
        for rotation, wide, high in ((0.0, 2 * _LATTICE, _LATTICE), (-90.0, _LATTICE, 2 * _LATTICE))
        for across in range(int((right - left) / wide) + 1)
        for down in range(int((bottom - top) / high) + 1)
    ]


def _at(name: Choice, spot: _Spot, start: Point | None = None) -> Choice:
    x, y, rotation = spot
    return name._replace(x=x, y=y, rotation=rotation, start=start)


def _nearest(
    paper: Paper, name: Choice, spots: list[_Spot], start: Point, below: float, before: Point | None = None
) -> Stand | None:
    """The cheapest of the places that are free and to which a leader goes straight from there, if it costs less than `below`; it
    comes there from the point `before`."""
    best = None
    x, y = start
    beside = paper.letters_in(squares_of(Room(x, y, x, y).wider(_BESIDE)))  # most ways end in these
    if paper.searched >= MOST:
        return None
    paper.searched += len(spots) // _SORTED
    for far, at in sorted((hypot(spot[0] - x, spot[1] - y), at) for at, spot in enumerate(spots)):
        paper.searched += 1
        if far > below + _HALF or paper.searched > MOST:
            break
        toward = (x, y, *spots[at][:2])
        if far > _BESIDE + _HALF and any(meets(toward, room) for room in beside):
            continue
        stand = paper.stand(_at(name, spots[at], start))
        over = stand is not None and before is not None and meets((*before, *start), stand.apart)
        if stand is not None and not over and stand.cost < below:
            best, below = stand, stand.cost
    return best


def _knees(start: Point) -> Iterator[Point]:
    """Where a leader might bend, the nearest first."""
    for radius in _BENDS:
        for turn in range(10):
            yield start[0] + radius * cos(turn * pi / 5), start[1] + radius * sin(turn * pi / 5)
