"""Names with the places where each might stand -> where all of them stand: none on another, on a line or on an outline.

Point-feature labelling with candidate places (Christensen, Marks, Shieber: An empirical study of algorithms for point-feature
label placement, 1995, from memory): of each name the cheapest places that are free of what is drawn; of these one for each name
by tabu search. The same names always get the same places.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from functools import partial
from itertools import pairwise
from math import cos, hypot, inf, pi, sin
from typing import Any

from rigc.analysis.kept import NOTHING_KEPT, Kept
from rigc.record import Record
from rigc.reports.drawings.means.choosing import Choice, Choosing, Stand, dot_of
from rigc.reports.drawings.means.label_box import Room, letters_box
from rigc.reports.drawings.means.segments import (
    Segment,
    crossed,
    is_crossed,
    meets,
    outside,
    squares_crossed,
    squares_of,
)
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
_APIECE = 7.0  # of the free places in a square of that side one is tried for a leader with a knee, in mm
_ROUNDS = 4  # so often all is placed anew for the sake of those that found no place
_STARTS = 6  # from so many points a leader with a knee is tried
_BENDS = (3.0, 5.5, 9.0, 14.0)  # from the start of a leader to its knee, in mm
_HALF = 12.0  # from the middle of a name to the side at which its leader ends, at most, in mm
_BESIDE = 9.0  # letters so near a knee are looked at before all others, in mm
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
        self._taken: dict[int, list[Room]] = {}  # letters, and grounds on which nothing is written
        self._letters: dict[int, list[Room]] = {}
        self._lines: dict[int, list[Segment]] = {}
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
                    self._keep_choice(each)
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
            self._circle(shape)
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

    def _circle(self, circle: Circle) -> None:
        """Nothing is written in it; for a leader it is a line around it: one that ran across a foot switch would point to it."""
        x, y, out = circle.x, circle.y, circle.radius
        self._block(Room(x, y, x, y).wider(out))
        self._line(((x, y - out), (x + out, y), (x, y + out), (x - out, y), (x, y - out)))

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
            wishes = [(number, Wish(partial(iter, choices))) for number, (_, choices) in enumerate(ways)]
            wishes += [(number, Wish(partial(_in_small_letters, wish))) for number, wish in wishes]
            found.append(None)
            for number, wish in wishes:
                stand = min(self._free(wish, _KEPT), key=_cost, default=None) if self._clear(ways[number][0]) else None
                if stand is not None:
                    self._stay((stand,))
                    self._draw(ways[number][0])
                    self._settle()
                    found[-1] = (number, stand.choice)
                    break
        self._entered = len(self._put) + sum(each is not None for each in found)  # who asked puts them here
        return tuple(found)

    def _placed(self, wanted: tuple[Wish, ...]) -> tuple[Choice | None, ...]:
        """Who found no place is placed first in the next round (Joslin and Clements: Squeaky wheel optimization, 1999, from memory);
        from the third round on its leader may have a knee."""
        self._enter()
        first: tuple[int, ...] = ()
        found = self._round(wanted, first, bent=False)
        for turn in range(_ROUNDS):
            if None not in found:
                break
            lost = [at for at, stand in enumerate(found) if stand is None]
            first = tuple(dict.fromkeys((*lost, *first)))
            self._leave(found)
            again = self._round(wanted, first, bent=turn > 0)
            if again.count(None) > len(lost):
                self._leave(again)
                self._stay(found)
            else:
                found = again
        self._entered = len(self._put) + 1  # who asked puts them here
        return tuple(None if stand is None else stand.choice for stand in found)

    def _round(self, wanted: tuple[Wish, ...], first: tuple[int, ...], bent: bool) -> list[Stand | None]:
        """A place for each wish, first for these, one after the other, then for all others together; what is placed stays."""
        found: list[Stand | None] = [None] * len(wanted)
        self._follow(first, wanted, found, bent)
        others = [at for at in range(len(wanted)) if at not in first]
        stands = [list(self._free(wanted[at], _KEPT)) for at in others]
        chosen = Choosing(stands).chosen()
        if None in chosen:
            more = zip(others, stands, chosen, strict=True)
            stands = [known if stand else list(self._free(wanted[at], _MORE)) for at, known, stand in more]
            chosen = Choosing(stands).chosen()
        self._stay(chosen)
        for at, stand in zip(others, chosen, strict=True):
            found[at] = stand
        self._follow((at for at in others if found[at] is None), wanted, found, bent)
        return found

    def _follow(self, some: Iterable[int], wanted: tuple[Wish, ...], found: list[Stand | None], bent: bool) -> None:
        for at in some:
            found[at] = self._led(wanted[at], bent)
            self._stay((found[at],))

    def _stay(self, stands: Iterable[Stand | None]) -> None:
        for stand in filter(None, stands):
            self._keep_choice(stand.choice)

    def _keep_choice(self, choice: Choice) -> None:
        """Its letters and its leader with the dot, which nothing covers."""
        self._keep(choice.box)
        if choice.start is not None:
            self._block(_dot(choice.start))
        for start, end in pairwise(_points(choice)):
            for cell in squares_crossed((*start, *end)):
                self._lines.setdefault(cell, []).append((*start, *end))

    def _leave(self, stands: Iterable[Stand | None]) -> None:
        """Takes away what `_stay` entered."""
        for stand in filter(None, stands):
            room = stand.box.wider(_CLEAR)
            for cell in squares_of(room.wider(APART)):
                self._letters[cell].remove(room)
                self._taken[cell].remove(room)
            if stand.choice.start is not None:
                dot = _dot(stand.choice.start)
                for cell in squares_of(dot):
                    self._taken[cell].remove(dot)
            for start, end in pairwise(_points(stand.choice)):
                for cell in squares_crossed((*start, *end)):
                    self._lines[cell].remove((*start, *end))

    def _led(self, wish: Wish, bent: bool) -> Stand | None:
        """A place for a name beside all that stand already: its best, else one anywhere at the end of a straight leader, in small
        letters where there is none for its own; else at the end of a leader with a knee."""
        small = Wish(partial(_in_small_letters, wish))
        wishes = (wish,) if wish.sign is not None else (wish, small)
        for each in wishes:
            own = min(self._free(each, _KEPT), key=_cost, default=None)
            found = own or self._anywhere(each, self._straight)
            if found is not None:
                return found
        if not bent:
            return None
        return next((found for each in wishes if (found := self._anywhere(each, self._bent)) is not None), None)

    def _anywhere(self, wish: Wish, way: Callable[[list[Choice], list[Point]], Stand | None]) -> Stand | None:
        """The best place on a lattice over all of the ground at the end of a leader that goes this way."""
        led = {choice.start: choice for choice in wish.choices() if choice.start is not None}
        return way(self._lattice(next(iter(led.values()))), list(led)) if led else None

    def _straight(self, spots: list[Choice], starts: list[Point]) -> Stand | None:
        """From the first or the last of the points from which it may start."""
        best: Stand | None = None
        for start in dict.fromkeys((starts[0], starts[-1])):
            best = self._nearest(spots, start, inf if best is None else best.cost) or best
        return best

    def _bent(self, spots: list[Choice], starts: list[Point]) -> Stand | None:
        """With a knee, from one of the points from which it may start, or from some of many."""
        best: Stand | None = None
        starts = starts[:: -(-len(starts) // _STARTS)]
        few = list({(spot.x // _APIECE, spot.y // _APIECE, spot.rotation): spot for spot in spots}.values())
        for start, knee in ((each, knee) for each in starts for knee in _knees(each)):
            way = hypot(knee[0] - start[0], knee[1] - start[1])
            below = inf if best is None else best.cost - way
            found = self._nearest(few, knee, below, start) if below > 0 and self._is_open(start, knee) else None
            if found is not None:
                best = found._replace(choice=found.choice._replace(start=start, knee=knee), cost=found.cost + way)
        return best

    def _lattice(self, led: Choice) -> list[Choice]:
        """The places all over the ground on which the letters of a name would stand free, level and turned."""
        left, top, right, bottom = self._room
        middle = led._replace(cost=0, start=None, anchor="middle", level="middle")
        spots = (
            middle._replace(x=left + wide * across, y=top + high * down, rotation=rotation)
            for rotation, wide, high in ((0.0, 2 * _LATTICE, _LATTICE), (-90.0, _LATTICE, 2 * _LATTICE))
            for across in range(int((right - left) / wide) + 1)
            for down in range(int((bottom - top) / high) + 1)
        )
        return [spot for spot in spots if self._stand(spot) is not None]

    def _nearest(self, spots: list[Choice], start: Point, below: float, before: Point | None = None) -> Stand | None:
        """The cheapest of the free places to which a leader goes straight from there, if it costs less than `below`; it comes there
        from the point `before`."""
        best = None
        x, y = start
        squares = squares_of(Room(x, y, x, y).wider(_BESIDE))
        beside = {room for square in squares for room in self._letters.get(square, ())}  # most ways end in these
        for far, at in sorted((hypot(spot.x - x, spot.y - y), at) for at, spot in enumerate(spots)):
            if far > below + _HALF:
                break
            toward = (x, y, spots[at].x, spots[at].y)
            if far > _BESIDE + _HALF and any(meets(toward, room) for room in beside):
                continue
            stand = self._stand(spots[at]._replace(start=start))
            over = stand is not None and before is not None and meets((*before, *start), stand.apart)
            if stand is not None and not over and stand.cost < below:
                best, below = stand, stand.cost
        return best

    def _is_open(self, start: Point, end: Point) -> bool:
        """Whether a leader may run there: off all letters and along no line."""
        way = (*start, *end)
        squares = squares_crossed(way)
        if any(meets(way, room) for square in squares for room in self._letters.get(square, ())):
            return False
        dot = dot_of(way)
        if any(dot.meets(room) for square in squares_of(dot) for room in self._letters.get(square, ())):
            return False
        return crossed(way, (line for square in squares for line in self._lines.get(square, ()))) >= 0

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
        lines: set[Segment] = set()
        along = squares_crossed(leader)
        for square in along:
            for other in self._letters.get(square, ()):
                if meets(leader, other):
                    return None
            lines.update(self._lines.get(square, ()))
        crossings = crossed(leader, lines)
        if crossings < 0:
            return None
        x, y = choice.start
        foreign = any(
            apart.meets(room) and not (room.left <= x <= room.right and room.top <= y <= room.bottom)
            for _, room in self._covers
        )
        length = hypot(leader[2] - leader[0], leader[3] - leader[1])
        cost = choice.cost + length + _CROSSING * crossings + _FOREIGN * foreign
        return Stand(choice, box, apart, leader, cost, frozenset((*squares, *along, *beside)))

    def _is_free(self, apart: Room, squares: list[int]) -> bool:
        """Whether neither letters nor closed grounds nor lines are in a room, which touches these squares."""
        taken, lines = self._taken, self._lines
        left, top, right, bottom = apart
        for square in squares:
            for x1, y1, x2, y2 in taken.get(square, ()):
                if left < x2 and x1 < right and top < y2 and y1 < bottom:
                    return False
        return not any(square in lines and is_crossed(apart, lines[square]) for square in squares)


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
    points = _points(choice)
    if not points:
        return ()
    straight = len(points) == 2
    drawn = Line(*points[0], *points[1], width_mm=HAIR) if straight else Polyline(points, width_mm=HAIR)
    within = (
        () if choice.sign_mm is None else (Line(*points[-1], choice.x, choice.y, width_mm=HAIR),)
    )  # the sign covers it
    return (drawn, Circle(*points[0], 0.35, fill="solid", width_mm=HAIR), *within)


def _points(choice: Choice) -> tuple[Point, ...]:
    """Through which its leader goes."""
    if choice.start is None:
        return ()
    x, y, *end = _leader(choice.knee or choice.start, choice.box)
    return (*(() if choice.knee is None else (choice.start,)), (x, y), (end[0], end[1]))


def _cost(stand: Stand) -> float:
    return stand.cost


def _dot(start: Point) -> Room:
    return dot_of((*start, *start))


def _in_small_letters(wish: Wish) -> Iterator[Choice]:
    return (choice._replace(size_mm=SMALL_LETTERS) for choice in wish.choices())


def _knees(start: Point) -> Iterator[Point]:
    """Where a leader might bend, the nearest first."""
    for radius in _BENDS:
        for turn in range(10):
            yield start[0] + radius * cos(turn * pi / 5), start[1] + radius * sin(turn * pi / 5)


def _leader(start: Point, box: Room) -> Segment:
    """From a point to the side of letters that looks to it, a little off them."""
    x, y = start
    if box.left < x < box.right:
        end = (x, box.top - APART * 0.7 if y < box.top else box.bottom + APART * 0.7)
    else:
        down = y if box.top < y < box.bottom else (box.top + box.bottom) / 2
        end = (box.left - APART * 0.7 if x <= box.left else box.right + APART * 0.7, down)
    return (x, y, *end)
