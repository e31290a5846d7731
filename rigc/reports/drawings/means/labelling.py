"""Names with the places where each might stand -> where all of them stand: none on another, on a line or on an outline.

Point-feature labelling with candidate places (Christensen, Marks, Shieber: An empirical study of algorithms for point-feature
label placement, 1995, from memory): of each name the cheapest places that are free of what is drawn; of these one for each name
by tabu search. The same names always get the same places.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from itertools import pairwise
from math import hypot

from rigc.record import Record
from rigc.reports.drawings.means.label_box import Room, letters_box
from rigc.reports.drawings.shapes import HAIR, Box, Circle, Label, Line, Point, Polygon, Polyline, Shape, Symbol

APART = 0.3
"""Between letters and anything else, in mm."""

_CELL = 5.0  # the ground is looked up by squares of that side, in mm
_BESIDE = 0.05  # so far beside a square a line counts as in it, in mm
_KEPT, _MORE = 40, 120  # so many free places of a name are compared; of a name that finds none so many
_ALIKE = 1.1  # of two places nearer than that one will do, in mm
_TURNS, _IDLE = 20, 300  # so many moves a name are tried, and so many without a gain
_TABU = 9  # for so many moves a place that was left is not taken again
_ON_ANOTHER = 90.0  # what it costs to stand on another name, in mm
_CLEAR, _DOT = 0.15, 0.5  # what a leader keeps off letters, and half of the room that the dot at its start takes, in mm
_LATTICE = 2.5  # from place to place where all of the ground is searched, in mm
_FOREIGN = 25.0  # what it costs to stand at the end of a leader on a body that is not its own
_CROSSING = 3.0  # what a leader's crossing of a line costs, in mm of leader

_CLOSED = ("hatch", "cross-hatch", "solid")

_Segment = tuple[float, float, float, float]
_Room = tuple[float, float, float, float]


class Choice(Record):
    """A place for a name: the label, what it costs in mm, and where a leader starts that ends at its letters; None for none."""

    label: Label
    cost: float
    start: Point | None = None


class Wish(Record):
    """A name that needs a place; `choices` gives those it has, the best first: it is asked no further than there is need.
    `title` says in full what it stands for, to who points at it or has it read aloud."""

    choices: Callable[[], Iterable[Choice]]
    title: str = ""


class _Stand(Record):
    """A choice with the room of its letters and its leader."""

    choice: Choice
    box: Room
    apart: Room
    leader: _Segment | None
    cost: float


class Ground:
    """What is drawn, and within which room names may stand."""

    def __init__(self, room: Room) -> None:
        self._room = room
        self._blocks: dict[tuple[int, int], list[Room]] = {}
        self._letters: dict[tuple[int, int], list[Room]] = {}
        self._lines: dict[tuple[int, int], list[_Segment]] = {}
        self._fresh: list[tuple[int, _Segment]] = []
        self._covers: list[tuple[int, Room]] = []
        self._order = 0

    def drawn(self, shapes: Iterable[Shape]) -> None:
        """Shapes in the order in which they are drawn: a box that is filled covers the lines below it. Nothing is written on a
        line, a ring or a hatched ground; a leader may cross a line."""
        for shape in shapes:
            self._order += 1
            if isinstance(shape, Label):
                self.keep(shape)
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

    def keep(self, *labels: Label) -> None:
        """These letters stand already: neither names nor leaders go over them."""
        for label in labels:
            room = letters_box(label).wider(_CLEAR)
            for cell in _cells(room.wider(APART)):
                self._letters.setdefault(cell, []).append(room)

    def _box(self, box: Box) -> None:
        room = Room(box.x, box.y, box.x + box.width, box.y + box.height)
        if box.fill in _CLOSED:
            self._block(room)
        elif box.fill:
            self._covers.append((self._order, room))
        corners = ((room.left, room.top), (room.right, room.top), (room.right, room.bottom), (room.left, room.bottom))
        self._line((*corners, corners[0]))

    def _block(self, room: Room) -> None:
        for cell in _cells(room):
            self._blocks.setdefault(cell, []).append(room)

    def _line(self, points: tuple[Point, ...]) -> None:
        for (x1, y1), (x2, y2) in pairwise(points):
            self._fresh.append((self._order, (x1, y1, x2, y2)))

    def _settle(self) -> None:
        """Enters what is to be seen of the lines drawn since."""
        for order, segment in self._fresh:
            for piece in _seen(segment, [room for later, room in self._covers if later > order]):
                for cell in _crossed(piece):
                    self._lines.setdefault(cell, []).append(piece)
        self._fresh = []

    def clear(self, line: Line) -> bool:
        """Whether a line keeps off all letters."""
        segment = (line.x1, line.y1, line.x2, line.y2)
        return not any(_meets(segment, room) for cell in _crossed(segment) for room in self._letters.get(cell, ()))

    def place(self, wishes: Iterable[Wish]) -> tuple[Choice | None, ...]:
        """A choice for each wish, None where there is no room for it at all; what is placed is kept."""
        self._settle()
        wanted = tuple(wishes)
        stands = [list(self._free(wish, _KEPT)) for wish in wanted]
        found = _Choosing(stands).chosen()
        if any(stand is None for stand in found):
            stands = [
                list(self._free(wish, _MORE)) if stand is None else known
                for wish, stand, known in zip(wanted, found, stands, strict=True)
            ]
            found = _Choosing(stands).chosen()
        for stand in found:
            self._stay(stand)
        for at, wish in enumerate(wanted):
            if found[at] is None:
                found[at] = self._anywhere(wish)
                self._stay(found[at])
        return tuple(None if stand is None else stand.choice for stand in found)

    def _stay(self, stand: _Stand | None) -> None:
        if stand is not None:
            self.keep(stand.choice.label)
            if stand.leader is not None:
                x1, y1, x2, y2 = stand.leader
                self._line(((x1, y1), (x2, y2)))
                self._settle()

    def _anywhere(self, wish: Wish) -> _Stand | None:
        """The best of all places of the ground, on a fine lattice, for a name with a leader."""
        led = {choice.start: choice for choice in wish.choices() if choice.start is not None}
        stands = (self._nearest(choice, start) for start, choice in led.items() if start is not None)
        return min((stand for stand in stands if stand is not None), key=lambda stand: stand.cost, default=None)

    def _nearest(self, led: Choice, start: Point) -> _Stand | None:
        x, y = start
        room, best = self._room, None
        spots = [
            (room.left + _LATTICE * across, room.top + _LATTICE * down)
            for across in range(int((room.right - room.left) / _LATTICE) + 1)
            for down in range(int((room.bottom - room.top) / _LATTICE) + 1)
        ]
        for across, down in sorted(spots, key=lambda spot: (hypot(spot[0] - x, spot[1] - y), spot)):
            if best is not None and hypot(across - x, down - y) > best.cost:
                break
            for rotation in (0, -90):
                label = led.label.replace(x=across, y=down, anchor="middle", level="middle", rotation=rotation)
                stand = self._stand(Choice(label, 0, start))
                if stand is not None and (best is None or stand.cost < best.cost):
                    best = stand
        return best

    def _free(self, wish: Wish, most: int) -> Iterator[_Stand]:
        spots: set[tuple[int, int, float, float]] = set()
        for choice in wish.choices():
            label = choice.label
            spot = (int(label.x // _ALIKE), int(label.y // _ALIKE), label.rotation, label.size_mm)
            stand = None if spot in spots else self._stand(choice)
            if stand is not None:
                spots.add(spot)
                yield stand
                most -= 1
                if most == 0:
                    return

    def _stand(self, choice: Choice) -> _Stand | None:
        box = letters_box(choice.label)
        apart = box.wider(APART)
        if not apart.within(self._room):
            return None
        for cell in _cells(apart):
            if any(apart.meets(other) for other in self._letters.get(cell, ())):
                return None
            if any(apart.meets(other) for other in self._blocks.get(cell, ())):
                return None
            if any(_meets(segment, apart) for segment in self._lines.get(cell, ())):
                return None
        if choice.start is None:
            return _Stand(choice, box, apart, None, choice.cost)
        x, y = choice.start
        foreign = any(
            apart.meets(room) and not (room.left <= x <= room.right and room.top <= y <= room.bottom)
            for _, room in self._covers
        )
        leader = _leader(choice.start, box)
        crossed = 0
        lines: set[_Segment] = set()
        for cell in _crossed(leader):
            if any(_meets(leader, other) for other in self._letters.get(cell, ())):
                return None
            lines.update(self._lines.get(cell, ()))
        for segment in lines:
            met = _met(leader, segment)
            if met == _ALONG:
                return None
            crossed += met
        length = hypot(leader[2] - leader[0], leader[3] - leader[1])
        return _Stand(choice, box, apart, leader, choice.cost + length + _CROSSING * crossed + _FOREIGN * foreign)


class _Choosing:
    """Names and their free places -> one for each, by tabu search: all start at their cheapest places; while some stand on
    others, the move that helps most is made; a place that was left is not taken again for a while."""

    def __init__(self, stands: list[list[_Stand]]) -> None:
        self._all = [stand for each in stands for stand in each]
        self._owner = [at for at, each in enumerate(stands) for _ in each]
        self._cost = [stand.cost for stand in self._all]
        self._own: list[list[int]] = [[] for _ in stands]
        for number, at in enumerate(self._owner):
            self._own[at].append(number)
        self._squares = [_squares(stand) for stand in self._all]
        self._there: dict[tuple[int, int], list[int]] = {}
        for number, cells in enumerate(self._squares):
            for cell in cells:
                self._there.setdefault(cell, []).append(number)
        self._known: dict[int, tuple[int, ...]] = {}
        self._met = [0] * len(self._all)  # of each place, how many stand in its way now
        self._taken = [min(own, key=lambda number: (self._cost[number], number)) if own else -1 for own in self._own]
        for number in self._taken:
            self._count(number, 1)

    def chosen(self) -> list[_Stand | None]:
        """The place of each name; None where it has none, or cannot have one beside the others."""
        best, kept = self._worth(), list(self._taken)
        left_at: dict[int, int] = {}
        idle = 0
        for turn in range(_TURNS * len(self._own)):
            move = self._move(turn, left_at)
            if move is None:
                break
            at = self._owner[move]
            left_at[self._taken[at]] = turn + _TABU + turn % 5
            self._take(at, move)
            worth, idle = self._worth(), idle + 1
            if worth < best:
                best, kept, idle = worth, list(self._taken), 0
            if idle > _IDLE:
                break
        for at, number in enumerate(kept):
            self._take(at, number)
        self._drop()
        return [None if number < 0 else self._all[number] for number in self._taken]

    def _worth(self) -> float:
        return sum(self._cost[number] + _ON_ANOTHER / 2 * self._met[number] for number in self._taken if number >= 0)

    def _move(self, turn: int, left_at: dict[int, int]) -> int | None:
        """The place that betters the whole most, of those whose names are in each other's way; else of all."""
        troubled = [at for at, number in enumerate(self._taken) if number >= 0 and self._met[number]]
        best, gain = None, float("-inf")
        for at in troubled or range(len(self._own)):
            now = self._taken[at]
            if now < 0:
                continue
            here = self._cost[now] + _ON_ANOTHER * self._met[now]
            for number in self._own[at]:
                won = here - self._cost[number] - _ON_ANOTHER * self._met[number]
                if won > gain and number != now and left_at.get(number, -1) < turn:
                    best, gain = number, won
        return best

    def _take(self, at: int, number: int) -> None:
        if number != self._taken[at]:
            self._count(self._taken[at], -1)
            self._taken[at] = number
            self._count(number, 1)

    def _count(self, number: int, by: int) -> None:
        for other in self._against(number):
            self._met[other] += by

    def _against(self, number: int) -> tuple[int, ...]:
        """The places of other names that cannot be taken together with this one."""
        if number < 0:
            return ()
        known = self._known.get(number)
        if known is None:
            here, own = self._all[number], self._owner[number]
            near = {other for cell in self._squares[number] for other in self._there[cell]}
            known = tuple(
                sorted(other for other in near if self._owner[other] != own and _clash(here, self._all[other]))
            )
            self._known[number] = known
        return known

    def _drop(self) -> None:
        """Where two still stand on each other, the one that is in the way of more gives up its place."""
        while True:
            troubled = [at for at, number in enumerate(self._taken) if number >= 0 and self._met[number]]
            if not troubled:
                return
            self._take(max(troubled, key=lambda at: (self._met[self._taken[at]], at)), -1)


def _squares(stand: _Stand) -> tuple[tuple[int, int], ...]:
    cells = set(_cells(stand.apart))
    if stand.leader is not None:
        cells.update(_crossed(stand.leader))
        x, y = stand.leader[:2]
        cells.update(_cells(Room(x, y, x, y).wider(_DOT)))
    return tuple(sorted(cells))


def labelled(ground: Ground, named: Sequence[tuple[str, Wish]]) -> tuple[list[Shape], list[str]]:
    """The labels with their leaders, and the names for which there is no room."""
    chosen = ground.place(wish for _, wish in named)
    shapes: list[Shape] = []
    for (_, wish), choice in zip(named, chosen, strict=True):
        if choice is not None:
            drawn = leader_shapes(choice)
            shapes += (Symbol(wish.title, drawn),) if wish.title else drawn
    return shapes, [name for (name, _), choice in zip(named, chosen, strict=True) if choice is None]


def leader_shapes(choice: Choice) -> tuple[Shape, ...]:
    """The label, and its leader with a dot where it starts."""
    if choice.start is None:
        return (choice.label,)
    x1, y1, x2, y2 = _leader(choice.start, letters_box(choice.label))
    return (
        Line(x1, y1, x2, y2, width_mm=HAIR),
        Circle(x1, y1, 0.35, fill="solid", width_mm=HAIR),
        choice.label,
    )


def _leader(start: Point, box: Room) -> _Segment:
    """From a point to the side of letters that looks to it, a little off them."""
    x, y = start
    if box.left < x < box.right:
        end = (x, box.top - APART * 0.7 if y < box.top else box.bottom + APART * 0.7)
    else:
        down = y if box.top < y < box.bottom else (box.top + box.bottom) / 2
        end = (box.left - APART * 0.7 if x <= box.left else box.right + APART * 0.7, down)
    return (x, y, *end)


def _clash(one: _Stand, other: _Stand) -> bool:
    if one.apart.meets(other.box) or _runs_over(one, other) or _runs_over(other, one):
        return True
    return one.leader is not None and other.leader is not None and _met(one.leader, other.leader) != 0


def _runs_over(one: _Stand, other: _Stand) -> bool:
    """Whether the leader of one, or the dot at its start, is over the letters of the other."""
    if one.leader is None:
        return False
    x, y = one.leader[:2]
    return _meets(one.leader, other.apart) or Room(x, y, x, y).wider(_DOT).meets(other.box)


def _cells(room: Room) -> Iterator[tuple[int, int]]:
    for column in range(int(room.left // _CELL), int(room.right // _CELL) + 1):
        for row in range(int(room.top // _CELL), int(room.bottom // _CELL) + 1):
            yield column, row


def _crossed(segment: _Segment) -> Iterator[tuple[int, int]]:
    """The squares through which a line may go, and those beside it."""
    x1, y1, x2, y2 = segment
    if abs(x1 - x2) < 0.01 or abs(y1 - y2) < 0.01:
        yield from _cells(Room(min(x1, x2), min(y1, y2), max(x1, x2), max(y1, y2)).wider(0.01))
        return
    for cell in _cells(Room(min(x1, x2), min(y1, y2), max(x1, x2), max(y1, y2))):
        left, top = cell[0] * _CELL - _BESIDE, cell[1] * _CELL - _BESIDE
        if _meets(segment, (left, top, left + _CELL + 2 * _BESIDE, top + _CELL + 2 * _BESIDE)):
            yield cell


def _seen(segment: _Segment, covers: list[Room]) -> list[_Segment]:
    """What is left of a line outside rooms."""
    spans = [(0.0, 1.0)]
    for hidden in (span for room in covers if (span := _within(segment, room)) is not None):
        spans = [
            part
            for low, high in spans
            for part in ((low, min(high, hidden[0])), (max(low, hidden[1]), high))
            if part[1] - part[0] > 1e-6
        ]
    x1, y1, x2, y2 = segment
    wide, high_ = x2 - x1, y2 - y1
    return [(x1 + wide * low, y1 + high_ * low, x1 + wide * high, y1 + high_ * high) for low, high in spans]


def _meets(segment: _Segment, room: _Room) -> bool:
    return _within(segment, room) is not None


def _within(segment: _Segment, room: _Room) -> tuple[float, float] | None:
    """From which part of a line to which it is in a room (Liang and Barsky); None where it does not go into it."""
    x1, y1, x2, y2 = segment
    left, top, right, bottom = room
    if (x1 if x1 > x2 else x2) < left or (x1 if x1 < x2 else x2) > right:
        return None
    if (y1 if y1 > y2 else y2) < top or (y1 if y1 < y2 else y2) > bottom:
        return None
    low, high = 0.0, 1.0
    for start, way, least, most in ((x1, x2 - x1, left, right), (y1, y2 - y1, top, bottom)):
        if abs(way) < 1e-9:
            if not least < start < most:
                return None
            continue
        one, other = (least - start) / way, (most - start) / way
        low, high = max(low, min(one, other)), min(high, max(one, other))
        if low >= high:
            return None
    return low, high


_ALONG = 2


def _met(one: _Segment, other: _Segment) -> int:
    """0 where two lines have no point in common, 1 where they cross, 2 where one runs along the other."""
    ax, ay, bx, by = one
    cx, cy, dx, dy = other
    rx, ry, sx, sy = bx - ax, by - ay, dx - cx, dy - cy
    turn = rx * sy - ry * sx
    long, wide = hypot(rx, ry), hypot(sx, sy)
    if long < 1e-9 or wide < 1e-9:
        return 0
    if abs(turn) < 0.08 * long * wide:  # nearly parallel
        return _ALONG if _near(one, other) else 0
    t = ((cx - ax) * sy - (cy - ay) * sx) / turn
    u = ((cx - ax) * ry - (cy - ay) * rx) / turn
    return int(-1e-6 < t < 1 + 1e-6 and -1e-6 < u < 1 + 1e-6)


def _near(one: _Segment, other: _Segment) -> bool:
    """Whether nearly parallel lines come within half a millimetre of each other."""
    return any(_distance(*point, other) < 0.5 for point in (one[:2], one[2:])) or any(
        _distance(*point, one) < 0.5 for point in (other[:2], other[2:])
    )


def _distance(x: float, y: float, segment: _Segment) -> float:
    x1, y1, x2, y2 = segment
    square = (x2 - x1) ** 2 + (y2 - y1) ** 2
    part = max(0.0, min(1.0, ((x - x1) * (x2 - x1) + (y - y1) * (y2 - y1)) / square)) if square else 0.0
    return hypot(x - x1 - part * (x2 - x1), y - y1 - part * (y2 - y1))
