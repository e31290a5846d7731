"""Ground: what one thing at a place, or two at theirs, are like on a board; whatever was asked is kept, because a search asks it often."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from functools import cached_property

from rigc.analysis.laying.hold import lacking
from rigc.analysis.laying.search.board import Area, Board, Item, Shape, Spot
from rigc.analysis.laying.search.conflicts import Solid, far_from, in_the_way, off_the_deck, raised, window
from rigc.analysis.laying.search.lengths import Standing, Stop, some_runs
from rigc.analysis.leads.lengths.deck_boxes import Box
from rigc.analysis.leads.lengths.lead_ends import tenths
from rigc.facts.laying import EDGE_MM

At = tuple[int, int, int]  # x, y, number of the shape
REACHED = tenths(EDGE_MM.value)
_KEPT = 400_000  # answers of each kind; then all are forgotten
_NO_LINE = 10_000  # to a drop line where none is free: as much as a lead without a way costs (see `lengths`)


class Ground:
    """A board, and what is known of its things at places."""

    def __init__(self, board: Board) -> None:
        self.board = board
        self.solids = [[Solid(board, shape, item.height) for shape in item.shapes] for item in board.items]
        self._first: list[int] = []  # the number of an item's first shape among all shapes
        self._shapes = 0
        for item in board.items:
            self._first.append(self._shapes)
            self._shapes += len(item.shapes)
        self._gaps: dict[tuple[int, int], int] = {}
        for parting in board.partings:
            self._gaps[parting.one, parting.other] = self._gaps[parting.other, parting.one] = parting.gap
        self.beside = [
            [
                other
                for other, its in enumerate(board.items)
                if other != number and (its.under == item.under or (number, other) in self._gaps)
            ]
            for number, item in enumerate(board.items)
        ]
        self.feet = [[_feet(item, shape) for shape in item.shapes] for item in board.items]
        self.shod = self._shod()
        self._windows: dict[int, tuple[int, int, int, int, dict[tuple[int, int, int], int]]] = {}
        self._standing: dict[tuple[int, At], Standing] = {}
        self._alone: dict[tuple[int, At], int] = {}
        self._asked = 0
        self.pressed = [[_extremes(shape.pressed) for shape in item.shapes] for item in board.items]
        self._least_loose = [self._least_lacking(item) for item in range(len(board.items))]

    @cached_property
    def breaks_as_stated(self) -> int:
        """How many rules the leads between fixed things break where nothing else stands."""
        fixed = {
            number: self.stand(number, (*item.fixed, 0))
            for number, item in enumerate(self.board.items)
            if item.fixed is not None
        }
        links = [
            link
            for link in self.board.links
            if all(end.item < 0 or end.item in fixed for end in (link.start, link.end))
        ]
        return sum(run[1] for run in some_runs(self.board, links, fixed)) if fixed else 0

    def box(self, item: int, at: At) -> Area:
        """The outline of an item at a place."""
        solid = self.solids[item][at[2]]
        return at[0], at[1], at[0] + solid.width, at[1] + solid.depth

    def between(self, one: int, here: At, other: int, there: At) -> int:
        """By how much two items are in each other's way at these places."""
        key = (self._first[one] + here[2]) * self._shapes + self._first[other] + there[2]
        if key not in self._windows:
            self._windows[key] = (*self._window(one, here[2], other, there[2]), {})
        left, front, right, rear, known = self._windows[key]
        dx, dy = there[0] - here[0], there[1] - here[1]
        if dx <= left or dx >= right or dy <= front or dy >= rear:
            return 0
        lift = self.lift(other, there) - self.lift(one, here) if self.board.tiers else 0
        fault = known.get((dx, dy, lift))
        if fault is None:
            self._asked += 1
            if self._asked > _KEPT:
                self._asked = 0
                for *_, each in self._windows.values():
                    each.clear()
            fault = known[dx, dy, lift] = self._fault(one, here, other, there, lift)
        return fault

    def alone(self, item: int, at: At) -> int:
        """By how much an item at a place is off the deck or in what is kept free."""
        known = self._alone.get((item, at))
        if known is None:
            if len(self._alone) > _KEPT:
                self._alone.clear()
            known = self._alone[item, at] = self._off(item, at)
        return known

    def pinched(self, one: int, here: At, other: int, there: At) -> int:
        """How much feet on either of two things lack to the treadle that the other one is: of a foot on a switch its middle is there, of
        one on a treadle in the middle of that."""
        total, shoe = 0, self.board.shoe
        for treadle, its, thing, at in ((one, here, other, there), (other, there, one, here)):
            if not self.board.items[treadle].treadle:
                continue
            left, front, right, rear = self.box(treadle, its)
            for across, low, high in self.feet[thing][at[2]]:
                x = at[0] + across
                if left - shoe < x < right + shoe and at[1] + low <= rear and front <= at[1] + high:
                    total += min(x - left + shoe, right + shoe - x, shoe)
        return total

    def is_free(self, item: int, at: At, standing: Sequence[At], beside: Iterable[int]) -> bool:
        """Whether an item at a place is in nobody's way, of those `beside` it that are `standing`, nor off its ground."""
        return not self.alone(item, at) and not any(self.between(item, at, each, standing[each]) for each in beside)

    def lift(self, item: int, at: At) -> int:
        """How high the tier is on which an item at a place stands."""
        return 0 if self.board.items[item].under else raised(self.board, self.solids[item][at[2]], at[1])

    def stand(self, item: int, at: At) -> Standing:
        """An item at a place as links and the balance see it."""
        known = self._standing.get((item, at))
        if known is None:
            if len(self._standing) > _KEPT:
                self._standing.clear()
            known = self._standing[item, at] = self._stand(item, at)
        return known

    def _shod(self) -> list[list[int]]:
        """For each item the others that a foot on it may come too near to, or one on which may come too near to it."""
        board = self.board
        count = range(len(board.items)) if board.shoe_share else ()
        stands = [item for item in count if not board.items[item].under and any(self.feet[item])]
        return [
            [
                other
                for other in (stands if item in stands else ())
                if other != item and (board.items[item].treadle or board.items[other].treadle)
            ]
            for item in range(len(board.items))
        ]

    def _window(self, one: int, shape: int, other: int, its: int) -> Area:
        """How far to the sides, to the front and to the rear another item may be and still be in the way of one."""
        first, second, gap = self.solids[one][shape], self.solids[other][its], self._gaps.get((one, other), 0)
        apart = -second.width - gap, -second.depth - gap, first.width + gap, first.depth + gap
        if self.board.items[one].under != self.board.items[other].under:
            return apart
        near = window(self.board, first, second)
        return min(near[0], apart[0]), min(near[1], apart[1]), max(near[2], apart[2]), max(near[3], apart[3])

    def _fault(self, one: int, here: At, other: int, there: At, lift: int) -> int:
        gap = self._gaps.get((one, other))
        parted = 0 if gap is None else far_from(self.box(one, here), self.box(other, there), gap)
        if self.board.items[one].under != self.board.items[other].under:
            return parted
        solids = self.solids[one][here[2]], self.solids[other][there[2]]
        return parted + in_the_way(self.board, solids[0], here[:2], solids[1], there[:2], lift)

    def _off(self, item: int, at: At) -> int:
        it, solid = self.board.items[item], self.solids[item][at[2]]
        wrong = off_the_deck(self.board, solid, at[:2], it.under)
        if it.rearmost:
            lift, rear = self.lift(item, at), at[1] + solid.depth
            wrong += sum(max(0, rear - most) for raised_by, most in it.rearmost if raised_by == lift)
        if it.foremost is not None:
            wrong += max(0, at[1] - it.foremost)
        return wrong + self._loose(item, at)

    def _stand(self, item: int, at: At) -> Standing:
        board, it = self.board, self.board.items[item]
        left, front, right, rear = self.box(item, at)
        grams = it.grams or 0
        lift = self.lift(item, at)
        return Standing(
            Box(it.name, left, front, right, rear, it.under, beneath=it.beneath),
            not it.under,
            tuple(self._stops(item, at, lift)),
            at,
            (it.use * front if it.use >= 0 else -it.use * (board.depth - rear))
            + sum(share * far for far, share in far_from_hand(board, item, at)),
            (grams * (left + right), grams * (front + rear)),
            self._beyond(item, at),
        )

    def _stops(self, item: int, at: At, lift: int) -> list[Stop]:
        under, (left, front, right, rear) = self.board.items[item].under, self.box(item, at)
        stops: list[Stop] = []
        for each in self.board.items[item].shapes[at[2]].sockets:
            x, y = at[0] + each.x + each.dx * each.exit, at[1] + each.y + each.dy * each.exit
            lines = (line for line in self.board.lines if not (left < x < right and front < line < rear))
            down = 0 if under else min((abs(y - line) for line in lines), default=_NO_LINE)
            stops.append((x, y, 0 if under else each.above + lift, each.dy, down))
        return stops

    def _beyond(self, item: int, at: At) -> tuple[int, int, int, int] | None:
        """How far what is pressed lies outside the feet on each side, None where it lies inside."""
        board, pressed = self.board, self.pressed[item][at[2]]
        if pressed is None or board.items[item].under:
            return None
        left, front, right, rear = pressed
        over = (
            board.feet - at[0] - left,
            board.feet - at[1] - front,
            at[0] + right - board.width + board.feet,
            at[1] + rear - board.depth + board.feet,
        )
        return over if max(over) > 0 else None

    def _loose(self, item: int, at: At) -> int:
        """How much of its strips lies beside the tape that could lie on it."""
        it = self.board.items[item]
        if not it.grip or self.lift(item, at):
            return 0
        return max(0, lacking(self._tapes(item), it.grip, it.shapes[at[2]].strips, at[1]) - self._least_loose[item])

    def _tapes(self, item: int) -> tuple[tuple[int, int], ...]:
        board = self.board
        return board.tapes_below if board.items[item].under else board.tapes

    def _least_lacking(self, item: int) -> int:
        it, board = self.board.items[item], self.board
        if not it.grip:
            return 0
        return min(
            lacking(self._tapes(item), it.grip, shape.strips, y)
            for shape in it.shapes
            for y in range(0, max(1, board.depth - shape.depth + 1), max(10, board.step))
        )


def far_from_hand(board: Board, item: int, at: At) -> Iterator[tuple[int, int]]:
    """How much further each spot of an item to which a hand must come is from the nearest edge, the front one aside, than a hand reaches,
    with what a length costs; of what no foot works, from the rear edge."""
    it = board.items[item]
    for across, along, share in it.shapes[at[2]].at_hand:
        x, rear = at[0] + across, board.depth - at[1] - along
        yield max(0, (rear if it.use < 0 else min(x, board.width - x, rear)) - REACHED), share


def _feet(item: Item, shape: Shape) -> tuple[tuple[int, int, int], ...]:
    """Where the middle of a foot is on a thing, across, and from where to where along: on a treadle in its middle, else on its switches."""
    if item.treadle:
        return ((shape.width // 2, 0, shape.depth),)
    return tuple((x, y, y) for x, y in shape.switches)


def _extremes(spots: tuple[Spot, ...]) -> Area | None:
    """The rectangle around some spots."""
    if not spots:
        return None
    return min(x for x, _ in spots), min(y for _, y in spots), max(x for x, _ in spots), max(y for _, y in spots)
