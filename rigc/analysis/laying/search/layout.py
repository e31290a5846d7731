"""Layout: where everything stands for now, what is wrong with it, and what it costs; a change is judged before it is made."""

from __future__ import annotations

from rigc.analysis.laying.hold import lacking
from rigc.analysis.laying.search.board import Area, Board, Link
from rigc.analysis.laying.search.conflicts import Solid, in_the_way, off_the_deck, raised
from rigc.analysis.laying.search.lengths import Run, Standing, link_runs
from rigc.analysis.laying.wished import missed
from rigc.analysis.leads.lengths.deck_boxes import Box

At = tuple[int, int, int]  # x, y, number of the shape
Change = tuple[int, int, int, int]  # item, x, y, number of the shape
_LOOSE = 10_000  # hundredths of a length that each length of strip beside the tape costs
_ROOM_FIRST = 4  # a wish that is missed by so much weighs like one length of what is in the way
_BACKWARDS = 20  # a lead that runs from left to right costs this many percent more of that distance


class Layout:
    """All items at places. `faults` is the sum of all that is in the way or missed, in tenths of a millimetre."""

    def __init__(self, board: Board, at: list[At]) -> None:
        self.board = board
        self.solids = [[Solid(board, shape, item.height) for shape in item.shapes] for item in board.items]
        self._exits = [[_exits(solid) for solid in solids] for solids in self.solids]
        self._standing: dict[tuple[int, int, int, int], Standing] = {}
        self._clear: dict[tuple[int, int, int, int, int, int], bool] = {}
        self.at = list(at)
        self._beside = [
            [other for other, its in enumerate(board.items) if other != number and its.under == item.under]
            for number, item in enumerate(board.items)
        ]
        count = len(board.items)
        self._single = [self.alone(item, at[item]) for item in range(count)]
        self._pairs = [[0] * count for _ in range(count)]
        for one in range(count):
            for other in self._beside[one]:
                if other > one:
                    self._pairs[one][other] = self._pairs[other][one] = self.between(one, at[one], other, at[other])
        self._wished = self._missed(self.at)
        self.faults = sum(self._single) + sum(map(sum, self._pairs)) // 2 + self._wished
        self.cost = self._cost(self.at)

    def solid(self, item: int) -> Solid:
        """An item in the shape that it has now."""
        return self.solids[item][self.at[item][2]]

    def beside(self, item: int) -> list[int]:
        """All others on the same side of the deck."""
        return self._beside[item]

    def box(self, item: int) -> Area:
        """The outline of an item now."""
        return self._box(item, self.at[item])

    def fault_of(self, item: int) -> int:
        """What is wrong about one item, alone and with all others."""
        return self._single[item] + sum(self._pairs[item])

    def fault_between(self, one: int, other: int) -> int:
        """By how much two items on one side of the deck are in each other's way now."""
        return self._pairs[one][other]

    def fault_at(self, item: int, at: At, others: tuple[int, ...] | None = None) -> int:
        """What would be wrong about an item at a place, seen with these others (None: all)."""
        beside = self._beside[item] if others is None else others
        return self.alone(item, at) + sum(self.between(item, at, other, self.at[other]) for other in beside)

    def faults_with(self, changes: list[Change]) -> tuple[int, list[At]]:
        """All that would be wrong after the changes, and where everything would stand."""
        at = list(self.at)
        for item, x, y, shape in changes:
            at[item] = (x, y, shape)
        moved = {change[0] for change in changes}
        total = self.faults - self._wished
        for item in moved:
            total += self.alone(item, at[item]) - self._single[item]
            pairs = self._pairs[item]
            for other in self._beside[item]:
                if other not in moved or other > item:
                    total += self.between(item, at[item], other, at[other]) - pairs[other]
        return total + self._missed(at), at

    def cost_with(self, at: list[At]) -> int:
        """The cost with everything at these places."""
        return self._cost(at)

    def least_cost_with(self, at: list[At]) -> int:
        """What it costs at least with everything at these places; quicker to find, and it often says enough."""
        return self._cost(at, least=True)

    def take(self, changes: list[Change], at: list[At], faults: int, cost: int) -> None:
        """Makes the changes, as they were judged."""
        self.at, self.faults, self.cost = at, faults, cost
        self._wished = self._missed(at)
        for item in dict.fromkeys(change[0] for change in changes):
            self._single[item] = self.alone(item, at[item])
            for other in self._beside[item]:
                self._pairs[item][other] = self._pairs[other][item] = self.between(item, at[item], other, at[other])

    def runs(self) -> list[Run]:
        """How every link runs now."""
        return link_runs(self.board, [self.stand(item, at) for item, at in enumerate(self.at)])

    def _box(self, item: int, at: At) -> Area:
        solid = self.solids[item][at[2]]
        return at[0], at[1], at[0] + solid.width, at[1] + solid.depth

    def alone(self, item: int, at: At) -> int:
        """By how much an item at a place is off the deck or in what is kept free."""
        return off_the_deck(self.board, self.solids[item][at[2]], at[:2], self.board.items[item].under)

    def between(self, one: int, here: At, other: int, there: At) -> int:
        """By how much two items on one side of the deck are in each other's way at these places."""
        lift = self._lift(other, there) - self._lift(one, here) if self.board.tiers else 0
        return in_the_way(
            self.board, self.solids[one][here[2]], here[:2], self.solids[other][there[2]], there[:2], lift
        )

    def clear(self, one: int, here: At, other: int, there: At) -> bool:
        """Whether two items on one side of the deck are not in each other's way at these places."""
        if self.board.tiers:
            return not self.between(one, here, other, there)
        key = (one, here[2], other, there[2], there[0] - here[0], there[1] - here[1])
        known = self._clear.get(key)
        if known is None:
            if len(self._clear) > 200_000:
                self._clear.clear()
            known = self._clear[key] = not self.between(one, here, other, there)
        return known

    def _lift(self, item: int, at: At) -> int:
        return 0 if self.board.items[item].under else raised(self.board, self.solids[item][at[2]], at[1])

    def _missed(self, at: list[At]) -> int:
        if not self.board.wishes:
            return 0
        boxes = [self._box(item, each) for item, each in enumerate(at)]
        return sum(-(-missed(self.board, wish, boxes) // _ROOM_FIRST) for wish in self.board.wishes)

    def stand(self, item: int, at: At) -> Standing:
        """An item at a place as links see it; kept, because most things stand still from one step to the next."""
        key = (item, *at)
        known = self._standing.get(key)
        if known is None:
            if len(self._standing) > 50_000:
                self._standing.clear()
            it = self.board.items[item]
            box = Box(it.name, *self._box(item, at), it.under, beneath=it.beneath)
            lift = self._lift(item, at) if self.board.tiers else 0
            known = Standing(
                box, not it.under, self._exits[item][at[2]], at[0], at[1], lift, self._worth(item, box, lift)
            )
            self._standing[key] = known
        return known

    def _worth(self, item: int, box: Box, lift: int) -> int:
        """What a place costs by itself: the way of the foot to what is often stamped on, and strips beside the tape."""
        it, tapes = self.board.items[item], () if lift else self.board.tapes
        return it.use * box.front + (_LOOSE * lacking(tapes, it.grip, box.front, box.rear) if tapes and it.grip else 0)

    def _cost(self, at: list[At], least: bool = False) -> int:
        """Hundredths of tenths of a millimetre of cable, and what else counts in the same coin."""
        board = self.board
        standing = [self.stand(item, each) for item, each in enumerate(at)]
        total = 0
        for link, (length, passed) in zip(board.links, link_runs(board, standing, least), strict=True):
            total += length * link.share + passed * board.passing
            if link.onward and link.start.item >= 0 and link.end.item >= 0:
                total += backwards(link, at[link.start.item][0], at[link.end.item][0])
        return total + sum(each.cost for each in standing) + self._tilt(at)

    def _tilt(self, at: list[At]) -> int:
        """What the centre of gravity lies outside the feet, weighed so that it does not stay there."""
        board = self.board
        grams, x2, y2 = board.grams, board.grams * board.width, board.grams * board.depth
        for number, item in enumerate(board.items):
            if item.grams:
                left, front, right, rear = self._box(number, at[number])
                grams += item.grams
                x2 += item.grams * (left + right)
                y2 += item.grams * (front + rear)
        if not grams:
            return 0
        x, y, feet = x2 // (2 * grams), y2 // (2 * grams), board.feet
        return 1000 * (max(0, feet - x, x - board.width + feet) + max(0, feet - y, y - board.depth + feet))


def backwards(link: Link, start_x: int, end_x: int) -> int:
    """What it costs that a lead on which sound goes onward runs from left to right."""
    return _BACKWARDS * max(0, end_x - start_x) * link.share // 1000


def _exits(solid: Solid) -> tuple[tuple[int, int, int], ...]:
    return tuple(
        (each.x + each.dx * each.exit, each.y + each.dy * each.exit, each.above) for each in solid.shape.sockets
    )
