"""Names with the places where each might stand -> where all of them stand: none on another, on a line or on an outline.

Point-feature labelling with candidate places (Christensen, Marks, Shieber: An empirical study of algorithms for point-feature
label placement, 1995, from memory): of each name the cheapest places that are free of what is drawn; of these one for each name
by tabu search. The same names always get the same places.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from functools import partial
from itertools import pairwise
from math import hypot
from typing import Any

from rigc.analysis.kept import NOTHING_KEPT, Kept
from rigc.record import Record
from rigc.reports.drawings.means.choosing import Choice, Choosing, Stand, dot_of
from rigc.reports.drawings.means.label_box import Room, letters_box
from rigc.reports.drawings.means.segments import ALONG, Segment, how_met, meets, outside, squares_crossed, squares_of
from rigc.reports.drawings.shapes import (
    HAIR,
    SMALL_LETTERS,
    Box,
    Circle,
    Label,
    Line,
    Point,
    Polygon,
    Polyline,
    Shape,
    Symbol,
)

APART = 0.3
"""Between letters and anything else, in mm."""

_CLEAR = 0.15  # what a leader keeps off letters, in mm
_KEPT, _MORE = 30, 120  # so many free places of a name are compared; of a name that finds none so many
_ALIKE = 1.1  # of two places nearer than that one will do, in mm
_LATTICE = 2.5  # from place to place where all of the ground is searched, in mm
_FOREIGN = 25.0  # what it costs to stand at the end of a leader on a body that is not its own
_CROSSING = 3.0  # what a leader's crossing of a line costs, in mm of leader

_CLOSED = ("hatch", "cross-hatch", "solid")


class Wish(Record):
    """A name that needs a place; `choices` gives those it has, the best first: it is asked no further than there is need. It is a
    function with what it is called with (`partial`), so that what hangs on it can be kept.
    `title` says in full what it stands for, to who points at it or has it read aloud; `sign` draws what stands there instead of
    letters."""

    choices: Callable[[], Iterable[Choice]]
    title: str = ""
    sign: Callable[[float, float], tuple[Shape, ...]] | None = None


Ways = tuple[tuple[Line, tuple[Choice, ...]], ...]
Struck = tuple[Line, Choice] | None


class Ground:
    """What is drawn, and within which room names may stand. Where the names stood when they were placed on the same ground is `kept`."""

    def __init__(self, room: Room, kept: Kept = NOTHING_KEPT) -> None:
        self._room = room
        self._kept = kept
        self._put: list[tuple[Shape | Choice, ...]] = []  # all that was put here, in order
        self._entered = 0  # so much of it is looked up by squares
        self._taken: dict[tuple[int, int], list[Room]] = {}  # letters, and grounds on which nothing is written
        self._letters: dict[tuple[int, int], list[Room]] = {}
        self._lines: dict[tuple[int, int], list[Segment]] = {}
        self._fresh: list[tuple[int, Segment]] = []
        self._covers: list[tuple[int, Room]] = []
        self._order = 0

    def drawn(self, shapes: Iterable[Shape]) -> None:
        """Shapes in the order in which they are drawn: a box that is filled covers the lines below it. Nothing is written on a
        line, a ring or a hatched ground; a leader may cross a line."""
        self._put.append(tuple(shapes))

    def _enter(self) -> None:
        """What was put here since, as far as it is in the way of names."""
        for some in self._put[self._entered :]:
            for each in some:
                if isinstance(each, Choice):
                    self._settle()
                    self._stay(each.box, None if each.start is None else _leader(each.start, each.box))
                else:
                    self._draw(each)
        self._entered = max(self._entered, len(self._put))
        self._settle()

    def _draw(self, shape: Shape) -> None:
        self._order += 1
        if isinstance(shape, Label):
            self._keep(letters_box(shape))
        elif isinstance(shape, Line):
            self._line(((shape.x1, shape.y1), (shape.x2, shape.y2)))
        elif isinstance(shape, Polyline):
            self._line(shape.points)
        elif isinstance(shape, Circle):
            self._block(Room(shape.x, shape.y, shape.x, shape.y).wider(shape.radius))
        elif isinstance(shape, Box):
            self._box(shape)
        elif isinstance(shape, Polygon):
            across, down = zip(*shape.points, strict=True)
            if shape.fill in _CLOSED:
                self._block(Room(min(across), min(down), max(across), max(down)))
            self._line((*shape.points, shape.points[0]))

    def _keep(self, box: Room) -> None:
        room = box.wider(_CLEAR)
        for cell in squares_of(room.wider(APART)):
            self._letters.setdefault(cell, []).append(room)
            self._taken.setdefault(cell, []).append(room)

    def _box(self, box: Box) -> None:
        room = Room(box.x, box.y, box.x + box.width, box.y + box.height)
        if box.fill in _CLOSED:
            self._block(room)
        elif box.fill:
            self._covers.append((self._order, room))
        corners = ((room.left, room.top), (room.right, room.top), (room.right, room.bottom), (room.left, room.bottom))
        self._line((*corners, corners[0]))

    def _block(self, room: Room) -> None:
        for cell in squares_of(room):
            self._taken.setdefault(cell, []).append(room)

    def _line(self, points: tuple[Point, ...]) -> None:
        for (x1, y1), (x2, y2) in pairwise(points):
            self._fresh.append((self._order, (x1, y1, x2, y2)))

    def _settle(self) -> None:
        """Enters what is to be seen of the lines drawn since."""
        for order, segment in self._fresh:
            for piece in outside(segment, [room for later, room in self._covers if later > order]):
                for cell in squares_crossed(piece):
                    self._lines.setdefault(cell, []).append(piece)
        self._fresh = []

    def _clear(self, line: Line) -> bool:
        """Whether a line keeps off all letters."""
        segment = (line.x1, line.y1, line.x2, line.y2)
        return not any(
            meets(segment, room) for cell in squares_crossed(segment) for room in self._letters.get(cell, ())
        )

    def place(self, wishes: Iterable[Wish]) -> tuple[Choice | None, ...]:
        """A choice for each wish, None where there is no room for it at all; what is placed stays."""
        wanted = tuple(wishes)
        found = self._kept.answer("names", (self._room, self._put, wanted), lambda: self._placed(wanted), _choices)
        self._put.append(tuple(choice for choice in found if choice is not None))
        return found

    def struck(self, ways: Iterable[Ways]) -> tuple[Struck, ...]:
        """Of each the first stroke that keeps off all letters and whose name finds a place, one after the other; what is found stays."""
        wanted = tuple(ways)

        what = (self._room, self._put, wanted)
        places = self._kept.answer("strokes", what, lambda: self._find_strokes(wanted), _numbered)
        found = tuple(
            None if place is None else (each[place[0]][0], place[1]) for each, place in zip(wanted, places, strict=True)
        )
        self._put += [(choice, stroke) for stroke, choice in filter(None, found)]
        return found

    def _find_strokes(self, wanted: tuple[Ways, ...]) -> tuple[tuple[int, Choice] | None, ...]:
        self._enter()
        found: list[tuple[int, Choice] | None] = []
        for ways in wanted:
            found.append(None)
            for number, (stroke, choices) in enumerate(ways):
                choice = self._placed((Wish(partial(iter, choices)),))[0] if self._clear(stroke) else None
                if choice is not None:
                    self._draw(stroke)
                    found[-1] = (number, choice)
                    break
        self._entered = len(self._put) + sum(each is not None for each in found)  # who asked puts them here
        return tuple(found)

    def _placed(self, wanted: tuple[Wish, ...]) -> tuple[Choice | None, ...]:
        self._enter()
        stands = [list(self._free(wish, _KEPT)) for wish in wanted]
        found = Choosing(stands).chosen()
        lost = {at for at, stand in enumerate(found) if stand is None}
        if lost:
            stands = [list(self._free(wanted[at], _MORE)) if at in lost else known for at, known in enumerate(stands)]
            found = Choosing(stands).chosen()
        for known in filter(None, found):
            self._stay(known.box, known.leader)
        for at, wish in enumerate(wanted):
            if found[at] is None:
                found[at] = stand = self._anywhere(wish) or self._smaller(wish)
                if stand is not None:
                    self._stay(stand.box, stand.leader)
        self._entered = len(self._put) + 1  # who asked puts them here
        return tuple(None if stand is None else stand.choice for stand in found)

    def _stay(self, box: Room, leader: Segment | None) -> None:
        self._keep(box)
        if leader is not None:
            x1, y1, x2, y2 = leader
            self._line(((x1, y1), (x2, y2)))
            self._settle()

    def _smaller(self, wish: Wish) -> Stand | None:
        """The best place for a name in small letters: one of its own, else one anywhere."""
        if wish.sign is not None:
            return None
        small = Wish(lambda: (choice._replace(size_mm=SMALL_LETTERS) for choice in wish.choices()))
        own = min(self._free(small, _KEPT), key=lambda stand: stand.cost, default=None)
        return own or self._anywhere(small)

    def _anywhere(self, wish: Wish) -> Stand | None:
        """The best place on a lattice over all of the ground for a name with a leader, from the first or the last of the points from
        which it may start."""
        led = {choice.start: choice for choice in wish.choices() if choice.start is not None}
        starts = dict.fromkeys((*list(led)[:1], *list(led)[-1:]))
        stands = (self._nearest(led[start], start) for start in starts if start is not None)
        return min((stand for stand in stands if stand is not None), key=lambda stand: stand.cost, default=None)

    def _nearest(self, led: Choice, start: Point) -> Stand | None:
        (x, y), (left, top, right, bottom), best = start, self._room, None
        spots = [
            (hypot(left + wide * across - x, top + high * down - y), left + wide * across, top + high * down, rotation)
            for rotation, wide, high in ((0.0, 2 * _LATTICE, _LATTICE), (-90.0, _LATTICE, 2 * _LATTICE))
            for across in range(int((right - left) / wide) + 1)
            for down in range(int((bottom - top) / high) + 1)
        ]
        middle = led._replace(cost=0, anchor="middle", level="middle")
        for far, across, down, rotation in sorted(spots):
            if best is not None and far > best.cost:
                break
            stand = self._stand(middle._replace(x=across, y=down, rotation=rotation))
            if stand is not None and (best is None or stand.cost < best.cost):
                best = stand
        return best

    def _free(self, wish: Wish, most: int) -> Iterator[Stand]:
        spots: set[tuple[int, int, float, float]] = set()
        for choice in wish.choices():
            spot = (int(choice.x // _ALIKE), int(choice.y // _ALIKE), choice.rotation, choice.size_mm)
            stand = None if spot in spots else self._stand(choice)
            if stand is not None:
                spots.add(spot)
                yield stand
                most -= 1
                if most == 0:
                    return

    def _stand(self, choice: Choice) -> Stand | None:
        box = choice.box
        apart = box.wider(APART)
        if not apart.within(self._room):
            return None
        squares = squares_of(apart)
        if not self._is_free(apart, squares):
            return None
        if choice.start is None:
            return Stand(choice, box, apart, None, choice.cost, frozenset(squares))
        leader = _leader(choice.start, box)
        dot = dot_of(leader)
        beside = squares_of(dot)
        if any(dot.meets(other) for square in beside for other in self._letters.get(square, ())):
            return None
        crossed = 0
        lines: set[Segment] = set()
        along = squares_crossed(leader)
        for square in along:
            for other in self._letters.get(square, ()):
                if meets(leader, other):
                    return None
            lines.update(self._lines.get(square, ()))
        for segment in lines:
            met = how_met(leader, segment)
            if met == ALONG:
                return None
            crossed += met
        x, y = choice.start
        foreign = any(
            apart.meets(room) and not (room.left <= x <= room.right and room.top <= y <= room.bottom)
            for _, room in self._covers
        )
        length = hypot(leader[2] - leader[0], leader[3] - leader[1])
        cost = choice.cost + length + _CROSSING * crossed + _FOREIGN * foreign
        return Stand(choice, box, apart, leader, cost, frozenset((*squares, *along, *beside)))

    def _is_free(self, apart: Room, squares: list[tuple[int, int]]) -> bool:
        """Whether neither letters nor closed grounds nor lines are in a room, which touches these squares."""
        for square in squares:
            for other in self._taken.get(square, ()):
                if apart.meets(other):
                    return False
        for square in squares:
            for segment in self._lines.get(square, ()):
                if meets(segment, apart):
                    return False
        return True


def _choices(told: list[Any]) -> tuple[Choice | None, ...]:
    return tuple(None if each is None else _choice(each) for each in told)


def _numbered(told: list[Any]) -> tuple[tuple[int, Choice] | None, ...]:
    return tuple(None if each is None else (each[0], _choice(each[1])) for each in told)


def _choice(told: list[Any]) -> Choice:
    return Choice._make(tuple(field) if isinstance(field, list) else field for field in told)


def labelled(ground: Ground, named: Sequence[tuple[str, Wish]]) -> tuple[list[Shape], list[str]]:
    """The labels with their leaders, and the names for which there is no room."""
    chosen = ground.place(wish for _, wish in named)
    shapes: list[Shape] = []
    for (_, wish), choice in zip(named, chosen, strict=True):
        if choice is not None:
            drawn = (*_leader_shapes(choice), *(wish.sign(choice.x, choice.y) if wish.sign else (choice.label,)))
            shapes += (Symbol(wish.title, drawn),) if wish.title else drawn
    return shapes, [name for (name, _), choice in zip(named, chosen, strict=True) if choice is None]


def _leader_shapes(choice: Choice) -> tuple[Shape, ...]:
    """Its leader with a dot where it starts; nothing where it has none."""
    if choice.start is None:
        return ()
    x1, y1, x2, y2 = _leader(choice.start, choice.box)
    within = () if choice.sign_mm is None else (Line(x2, y2, choice.x, choice.y, width_mm=HAIR),)  # the sign covers it
    return (Line(x1, y1, x2, y2, width_mm=HAIR), Circle(x1, y1, 0.35, fill="solid", width_mm=HAIR), *within)


def _leader(start: Point, box: Room) -> Segment:
    """From a point to the side of letters that looks to it, a little off them."""
    x, y = start
    if box.left < x < box.right:
        end = (x, box.top - APART * 0.7 if y < box.top else box.bottom + APART * 0.7)
    else:
        down = y if box.top < y < box.bottom else (box.top + box.bottom) / 2
        end = (box.left - APART * 0.7 if x <= box.left else box.right + APART * 0.7, down)
    return (x, y, *end)
