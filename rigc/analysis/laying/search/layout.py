"""Layout: where everything stands for now, what is wrong with it, and what it costs; a change is judged before it is made."""

from __future__ import annotations

from collections.abc import Iterator
from math import ceil

from rigc.analysis.laying.hold import lacking
from rigc.analysis.laying.search.board import Area, Board, Link, Spot
from rigc.analysis.laying.search.conflicts import Solid, far_from, in_the_way, off_the_deck, raised
from rigc.analysis.laying.search.lengths import AMONG, OVER, ROW, Run, Standing, link_runs, run_of
from rigc.analysis.laying.wished import missed
from rigc.analysis.leads.lengths.deck_boxes import Box, DeckBoxes
from rigc.facts.foot import STAMP_N
from rigc.facts.laying import BACKWARDS_SHARE, UNBALANCED_SHARE
from rigc.facts.weight import GRAVITY_M_PER_S2

At = tuple[int, int, int]  # x, y, number of the shape
Change = tuple[int, int, int, int]  # item, x, y, number of the shape
_ROOM_FIRST = 4  # a wish that is missed by so much weighs like one length of what is in the way
_PER_BREAK = 10  # tenths of a millimetre that a lead in breach of a rule counts as, beside what is in the way
_BACKWARDS, _UNBALANCED = round(BACKWARDS_SHARE.value), round(UNBALANCED_SHARE.value)


class Layout:
    """All items at places. `hard` is the sum of all that is in the way or out of balance, in tenths of a millimetre, `missed` what wishes
    miss, weighed; `broken` counts rules that leads break, as tenths of a millimetre, too."""

    def __init__(self, board: Board, at: list[At]) -> None:
        self.board = board
        self.solids = [[Solid(board, shape, item.height) for shape in item.shapes] for item in board.items]
        self._exits = [[_exits(solid) for solid in solids] for solids in self.solids]
        self._standing: dict[tuple[int, int, int, int], Standing] = {}
        self._clear: dict[tuple[int, int, int, int, int, int], bool] = {}
        self.at = list(at)
        count = len(board.items)
        self._parted = {}
        for parting in board.partings:
            self._parted[parting.one, parting.other] = self._parted[parting.other, parting.one] = parting.gap
        self._beside = [
            [
                other
                for other, its in enumerate(board.items)
                if other != number and (its.under == item.under or (number, other) in self._parted)
            ]
            for number, item in enumerate(board.items)
        ]
        self._pressed = [[_extremes(shape.pressed) for shape in item.shapes] for item in board.items]
        self._least_loose = [self._least_lacking(item) for item in range(count)]
        self._ends = [{link.start.item, link.end.item} for link in board.links]
        self._single = [self.alone(item, at[item]) for item in range(count)]
        self._pairs = [[0] * count for _ in range(count)]
        for one in range(count):
            for other in self._beside[one]:
                if other > one:
                    self._pairs[one][other] = self._pairs[other][one] = self.between(one, at[one], other, at[other])
        self.missed, self._off_balance = self._missed(self.at), self._unbalanced(self.at)
        self.hard = sum(self._single) + sum(map(sum, self._pairs)) // 2 + self._off_balance
        self._runs = self._run(self.at, None)
        self._tried: tuple[list[At], list[Run]] = (self.at, self._runs)
        self._least: tuple[list[At], list[Run]] = ([], [])
        self._spans = self._all_spans()
        self.cost, self.broken = self._cost(self.at, self._runs)

    @property
    def faults(self) -> int:
        """All that is wrong, what wishes miss included."""
        return self.hard + self.broken + self.missed

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

    def faults_with(self, changes: list[Change]) -> tuple[int, int, list[At]]:
        """What would be in the way after the changes, what wishes would miss, and where everything would stand."""
        at = list(self.at)
        for item, x, y, shape in changes:
            at[item] = (x, y, shape)
        moved = {change[0] for change in changes}
        total = self.hard - self._off_balance
        for item in moved:
            total += self.alone(item, at[item]) - self._single[item]
            pairs = self._pairs[item]
            for other in self._beside[item]:
                if other not in moved or other > item:
                    total += self.between(item, at[item], other, at[other]) - pairs[other]
        return total + self._unbalanced(at), self._missed(at), at

    def cost_with(self, at: list[At], changes: list[Change] | None = None) -> tuple[int, int]:
        """The cost with everything at these places, and what leads break there; `changes` tells what stands elsewhere now (None: all)."""
        runs = self._run(at, changes)
        self._tried = at, runs
        return self._cost(at, runs)

    def least_cost_with(self, at: list[At], changes: list[Change] | None = None) -> int:
        """What it costs at least with everything at these places; quicker to find, and it often says enough."""
        runs = self._run(at, changes, least=True)
        self._least = at, runs
        return self._cost(at, runs)[0]

    def take(self, changes: list[Change], at: list[At], hard: int, missed: int) -> None:
        """Makes the changes, as they were judged."""
        if self._tried[0] is not at:
            self.cost_with(at, changes)
        self._runs = self._tried[1]
        self.at, self.hard, self.missed = at, hard, missed
        self.cost, self.broken = self._cost(at, self._runs)
        self._off_balance = self._unbalanced(at)
        self._spans = self._all_spans()
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
        it, solid = self.board.items[item], self.solids[item][at[2]]
        wrong = off_the_deck(self.board, solid, at[:2], it.under)
        if it.rearmost:
            lift, rear = self._lift(item, at), at[1] + solid.depth
            wrong += sum(max(0, rear - most) for raised_by, most in it.rearmost if raised_by == lift)
        return wrong + self._loose(item, at)

    def between(self, one: int, here: At, other: int, there: At) -> int:
        """By how much two items are in each other's way at these places."""
        gap = self._parted.get((one, other))
        parted = 0 if gap is None else far_from(self._box(one, here), self._box(other, there), gap)
        if self.board.items[one].under != self.board.items[other].under:
            return parted
        lift = self._lift(other, there) - self._lift(one, here) if self.board.tiers else 0
        return parted + in_the_way(
            self.board, self.solids[one][here[2]], here[:2], self.solids[other][there[2]], there[:2], lift
        )

    def clear(self, one: int, here: At, other: int, there: At) -> bool:
        """Whether two items are not in each other's way at these places."""
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
            known = Standing(box, not it.under, self._exits[item][at[2]], at[0], at[1], lift, self._worth(item, box))
            self._standing[key] = known
        return known

    def _worth(self, item: int, box: Box) -> int:
        """What a place costs by itself: the way of the foot over bare deck, or what lies behind what no foot works."""
        use = self.board.items[item].use
        return use * box.front if use >= 0 else -use * (self.board.depth - box.rear)

    def _loose(self, item: int, at: At) -> int:
        """How much of its strips lies beside the tape that could lie on it."""
        if not self.board.items[item].grip or not self.board.tapes or self._lift(item, at):
            return 0
        rear = at[1] + self.solids[item][at[2]].depth
        lack = lacking(self.board.tapes, self.board.items[item].grip, at[1], rear)
        return max(0, lack - self._least_loose[item])

    def _least_lacking(self, item: int) -> int:
        it, board = self.board.items[item], self.board
        if not it.grip or not board.tapes:
            return 0
        return min(
            lacking(board.tapes, it.grip, y, y + shape.depth)
            for shape in it.shapes
            for y in range(0, max(1, board.depth - shape.depth + 1), max(10, board.step))
        )

    def _run(self, at: list[At], changes: list[Change] | None, least: bool = False) -> list[Run]:
        """How every link runs; what the changes can't touch runs as now."""
        board = self.board
        standing = [self.stand(item, each) for item, each in enumerate(at)]
        around = DeckBoxes((each.box for each in standing), board.lines)
        if changes is None:
            return [run_of(board, link, standing, around, least) for link in board.links]
        runs = self._runs
        known = self._least[1] if not least and self._least[0] is at else None
        if known is not None:
            return [
                run_of(board, link, standing, around, False) if run[2] == AMONG and run is not runs[number] else run
                for number, (link, run) in enumerate(zip(board.links, known, strict=True))
            ]
        runs = list(runs)
        for number in self._touched(changes, standing):
            runs[number] = run_of(board, board.links[number], standing, around, least)
        return runs

    def _touched(self, changes: list[Change], standing: list[Standing]) -> Iterator[int]:
        """The links that may run otherwise after the changes: their ends move, or something moves where it may be in their way."""
        moved = {change[0] for change in changes}
        zones: tuple[list[tuple[int, int]], list[tuple[int, int]]] = ([], [])
        for item in moved:
            old, new = self._box(item, self.at[item]), standing[item].box
            zones[self.board.items[item].under].extend(((old[0], old[2]), (new.left, new.right)))
        top, hanging = zones
        for number, (points, (left, right)) in enumerate(self._spans):
            if (
                self._ends[number] & moved
                or any(start < point < end for start, end in top for point in points)
                or (not points and any(start < right and end > left for start, end in top))
                or (
                    hanging
                    and self._runs[number][2] != OVER
                    and (self._runs[number][2] == AMONG or any(start < right and end > left for start, end in hanging))
                )
            ):
                yield number

    def _all_spans(self) -> list[tuple[tuple[int, ...], tuple[int, int]]]:
        """Of each link the x at which its ends go down, and from where to where something may be in its way; of one that may run over
        the deck only the latter, its things included."""
        spans: list[tuple[tuple[int, ...], tuple[int, int]]] = []
        for link in self.board.links:
            xs: list[int] = []
            sides: list[int] = []
            fronts: list[int] = []
            for end in (link.start, link.end):
                if end.item < 0:
                    xs.append(end.x)
                    continue
                standing = self.stand(end.item, self.at[end.item])
                xs.append(standing.x + standing.sockets[end.socket][0])
                if standing.on_top:
                    sides += [standing.box.left, standing.box.right]
                    fronts.append(standing.box.front)
            if len(fronts) == 2 and abs(fronts[0] - fronts[1]) <= ROW:
                spans.append(((), (min(*xs, *sides), max(*xs, *sides))))
            else:
                spans.append((tuple(xs), (min(xs), max(xs))))
        return spans

    def _cost(self, at: list[At], runs: list[Run]) -> tuple[int, int]:
        """Hundredths of tenths of a millimetre of cable, and what else counts in the same coin; and what leads break."""
        board, total, broken = self.board, 0, 0
        for link, (length, breaks, _) in zip(board.links, runs, strict=True):
            total += length * link.share + breaks * board.passing
            broken += breaks
            if link.onward and link.start.item >= 0 and link.end.item >= 0:
                total += backwards(link, at[link.start.item][0], at[link.end.item][0])
        total += sum(self.stand(item, each).cost for item, each in enumerate(at))
        return total + (0 if board.weighed else _UNBALANCED * self._outside(self._middle(at))), _PER_BREAK * broken

    def _unbalanced(self, at: list[At]) -> int:
        """How far the centre of gravity lies outside the feet, or what is pressed beyond them further out than its mass bears."""
        board = self.board
        if not board.weighed:
            return 0
        middle = self._middle(at)
        outside = self._outside(middle)
        if outside or middle is None or not board.feet:
            return outside
        x, y, grams = middle
        feet = board.feet
        inside = (x - feet, y - feet, board.width - feet - x, board.depth - feet - y)
        share = grams / 1000 * GRAVITY_M_PER_S2.value / STAMP_N.value
        total = 0
        for item, each in enumerate(at):
            pressed = self._pressed[item][each[2]]
            if pressed is not None and not board.items[item].under:
                left, front, right, rear = pressed
                over = (
                    feet - each[0] - left,
                    feet - each[1] - front,
                    each[0] + right - board.width + feet,
                    each[1] + rear - board.depth + feet,
                )
                for far, room in zip(over, inside, strict=True):
                    total += max(0, ceil(far - share * room)) if far > 0 else 0
        return total

    def _outside(self, middle: tuple[int, int, int] | None) -> int:
        if middle is None:
            return 0
        (x, y, _), board = middle, self.board
        feet = board.feet
        return max(0, feet - x, x - board.width + feet) + max(0, feet - y, y - board.depth + feet)

    def _middle(self, at: list[At]) -> tuple[int, int, int] | None:
        """The centre of gravity, and all that is weighed there."""
        board = self.board
        grams, x2, y2 = board.grams, board.grams * board.width, board.grams * board.depth
        for number, item in enumerate(board.items):
            if item.grams:
                left, front, right, rear = self._box(number, at[number])
                grams += item.grams
                x2 += item.grams * (left + right)
                y2 += item.grams * (front + rear)
        return (x2 // (2 * grams), y2 // (2 * grams), grams) if grams else None


def backwards(link: Link, start_x: int, end_x: int) -> int:
    """What it costs that a lead on which sound goes onward runs from left to right."""
    return _BACKWARDS * max(0, end_x - start_x) * link.share // 100


def _exits(solid: Solid) -> tuple[tuple[int, int, int, int], ...]:
    return tuple(
        (each.x + each.dx * each.exit, each.y + each.dy * each.exit, each.above, each.dy)
        for each in solid.shape.sockets
    )


def _extremes(spots: tuple[Spot, ...]) -> Area | None:
    """The rectangle around some spots."""
    if not spots:
        return None
    return min(x for x, _ in spots), min(y for _, y in spots), max(x for x, _ in spots), max(y for _, y in spots)
