"""What is drawn -> where letters and leaders may still go: looked up by squares of paper. All in mm."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import pairwise
from math import hypot

from rigc.record import Record
from rigc.reports.drawings.means.choosing import Choice, Stand, dot_of
from rigc.reports.drawings.means.label_box import Room, letters_box
from rigc.reports.drawings.means.raster import Raster
from rigc.reports.drawings.means.segments import (
    Segment,
    crossed,
    is_crossed,
    meets,
    meets_one,
    outside,
    squares_crossed,
    squares_of,
)
from rigc.reports.drawings.shapes import Box, Circle, Label, Line, Point, Polygon, Polyline, Shape

APART = 0.3
"""Between letters and anything else, in mm."""

_CLEAR = 0.15  # what a leader keeps off letters, in mm
_ALIKE = 1.1  # of two places nearer than that one will do, in mm
_FOREIGN = 25.0  # what it costs to stand at the end of a leader on a body that is not its own
_CROSSING = 3.0  # what a leader's crossing of a line costs, in mm of leader

_CLOSED = ("hatch", "cross-hatch", "solid")


class _Start(Record):
    """What is the same for all leaders from one point: the squares that its dot touches, and the bodies on which it does not lie."""

    squares: list[int]
    foreign: list[Room]


class Paper:
    """What stands on paper of that room."""

    def __init__(self, room: Room) -> None:
        self.room = room
        self._taken: dict[int, list[Room]] = {}  # letters, and grounds on which nothing is written
        self._letters: dict[int, list[Room]] = {}
        self._lines: dict[int, list[Segment]] = {}
        self._fresh: list[tuple[int, Segment]] = []
        self._covers: list[tuple[int, Room]] = []
        self._order = 0
        self._starts: dict[
            Point, _Start | None
        ] = {}  # as found since letters or bodies were last changed; None: letters on the dot
        self._raster = Raster(room)
        self.searched = 0
        """Places that were looked at for leaders from far away."""

    def draw(self, shape: Shape) -> None:
        """It is over all that was drawn before; its lines are in the way from `settle` on."""
        self._order += 1
        if isinstance(shape, Label):
            self._write(letters_box(shape))
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

    def settle(self) -> None:
        """Enters what is to be seen of the lines drawn since."""
        for order, segment in self._fresh:
            for piece in outside(segment, [room for later, room in self._covers if later > order]):
                self._raster.cross(*piece)
                for cell in squares_crossed(piece):
                    self._lines.setdefault(cell, []).append(piece)
        self._fresh = []

    def put(self, choice: Choice) -> None:
        """Its letters and its leader with the dot, which nothing covers."""
        self._write(choice.box)
        if choice.start is not None:
            for cell in squares_of(dot := _dot(choice.start)):
                self._taken.setdefault(cell, []).append(dot)
        for start, end in pairwise(way_of(choice)):
            for cell in squares_crossed((*start, *end)):
                self._lines.setdefault(cell, []).append((*start, *end))

    def take_away(self, choice: Choice) -> None:
        """What `put` entered."""
        self._starts.clear()
        room = choice.box.wider(_CLEAR)
        for cell in squares_of(room.wider(APART)):
            self._letters[cell].remove(room)
            self._taken[cell].remove(room)
        if choice.start is not None:
            dot = _dot(choice.start)
            for cell in squares_of(dot):
                self._taken[cell].remove(dot)
        for start, end in pairwise(way_of(choice)):
            for cell in squares_crossed((*start, *end)):
                self._lines[cell].remove((*start, *end))

    def is_clear(self, segment: Segment) -> bool:
        """Whether a line keeps off all letters."""
        return not any(meets(segment, room) for room in self.letters_in(squares_crossed(segment)))

    def is_open(self, start: Point, end: Point) -> bool:
        """Whether a leader may run there: off all letters and along no line."""
        way = (*start, *end)
        squares = squares_crossed(way)
        return (
            not any(meets(way, room) for room in self.letters_in(squares))
            and not self._is_written(dot_of(way))
            and crossed(way, (line for square in squares for line in self._lines.get(square, ()))) >= 0
        )

    def letters_in(self, squares: Iterable[int]) -> set[Room]:
        """What is written there, each line of text by its room."""
        return {room for square in squares for room in self._letters.get(square, ())}

    def free(self, choices: Iterable[Choice], most: int) -> Iterator[Stand]:
        """The first of these places that are free, no two alike."""
        spots: set[tuple[int, int, float, float]] = set()
        for choice in choices:
            spot = (int(choice.x // _ALIKE), int(choice.y // _ALIKE), choice.rotation, choice.size_mm)
            stand = None if spot in spots else self.stand(choice)
            if stand is not None:
                spots.add(spot)
                yield stand
                most -= 1
                if most == 0:
                    return

    def stand(self, choice: Choice) -> Stand | None:
        """The place with what it costs and takes, if it is free; None if not."""
        start = None
        if choice.start is not None:
            start = self._start(choice.start)
            if start is None:
                return None
        box = choice.box
        left, top, right, bottom = box.left - APART, box.top - APART, box.right + APART, box.bottom + APART
        room = self.room
        if left < room[0] or right > room[2] or top < room[1] or bottom > room[3]:
            return None
        if self._raster.is_full(left, top, right, bottom):
            return None
        apart = Room(left, top, right, bottom)
        squares = squares_of(apart)
        if not self._is_free(apart, squares):
            return None
        if choice.start is None or start is None:
            return Stand(choice, box, apart, None, choice.cost, frozenset(squares))
        leader = leader_to(box, choice.start)
        along = squares_crossed(leader)
        lines: list[Segment] = []
        for square in along:
            for other in self._letters.get(square, ()):
                if meets(leader, other):
                    return None
            lines += self._lines.get(square, ())
        crossings = crossed(leader, lines)
        if crossings < 0:
            return None
        length = hypot(leader[2] - leader[0], leader[3] - leader[1])
        cost = choice.cost + length + _CROSSING * crossings + _FOREIGN * meets_one(apart, start.foreign)
        return Stand(choice, box, apart, leader, cost, frozenset((*squares, *along, *start.squares)))

    def _start(self, at: Point) -> _Start | None:
        """Of leaders from there; None where letters are on their dot."""
        if at not in self._starts:
            dot, (x, y) = _dot(at), at
            foreign = [
                room for _, room in self._covers if not (room.left <= x <= room.right and room.top <= y <= room.bottom)
            ]
            self._starts[at] = None if self._is_written(dot) else _Start(squares_of(dot), foreign)
        return self._starts[at]

    def _is_written(self, room: Room) -> bool:
        return any(map(room.meets, self.letters_in(squares_of(room))))

    def _is_free(self, apart: Room, squares: list[int]) -> bool:
        """Whether neither letters nor closed grounds nor lines are in a room, which touches these squares."""
        left, top, right, bottom = apart
        taken, lines = self._taken, self._lines
        for square in squares:
            for room in taken.get(square, ()):
                x1, y1, x2, y2 = room
                if left < x2 and x1 < right and top < y2 and y1 < bottom:
                    return False
        for square in squares:
            there = lines.get(square)
            if there and is_crossed(apart, there):
                return False
        return True

    def _write(self, box: Room) -> None:
        self._starts.clear()
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
            self._starts.clear()
        corners = ((room.left, room.top), (room.right, room.top), (room.right, room.bottom), (room.left, room.bottom))
        self._line((*corners, corners[0]))

    def _circle(self, circle: Circle) -> None:
        """Nothing is written in it; for a leader it is a line around it: one that ran across a foot switch would point to it."""
        x, y, out = circle.x, circle.y, circle.radius
        self._block(Room(x, y, x, y).wider(out))
        self._line(((x, y - out), (x + out, y), (x, y + out), (x - out, y), (x, y - out)))

    def _block(self, room: Room) -> None:
        self._raster.close(room)
        for cell in squares_of(room):
            self._taken.setdefault(cell, []).append(room)

    def _line(self, points: tuple[Point, ...]) -> None:
        for (x1, y1), (x2, y2) in pairwise(points):
            self._fresh.append((self._order, (x1, y1, x2, y2)))


def way_of(choice: Choice) -> tuple[Point, ...]:
    """Through which points its leader goes."""
    if choice.start is None:
        return ()
    x, y, *end = leader_to(choice.box, choice.knee or choice.start)
    return (*(() if choice.knee is None else (choice.start,)), (x, y), (end[0], end[1]))


def leader_to(box: Room, start: Point) -> Segment:
    """From a point to the side of letters that looks to it, a little off them."""
    x, y = start
    if box.left < x < box.right:
        end = (x, box.top - APART * 0.7 if y < box.top else box.bottom + APART * 0.7)
    else:
        down = y if box.top < y < box.bottom else (box.top + box.bottom) / 2
        end = (box.left - APART * 0.7 if x <= box.left else box.right + APART * 0.7, down)
    return (x, y, *end)


def _dot(start: Point) -> Room:
    return dot_of((*start, *start))
