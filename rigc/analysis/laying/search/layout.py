"""Layout: where everything stands for now, what is wrong with it, and what it costs; a change is judged before it is made."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from math import ceil, inf

from rigc.analysis.laying.neat import neatness
from rigc.analysis.laying.search.board import Area, Board
from rigc.analysis.laying.search.conflicts import Solid
from rigc.analysis.laying.search.crossed import NOWHERE, crossed
from rigc.analysis.laying.search.ground import At, Ground
from rigc.analysis.laying.search.lengths import AMONG, OVER, ROW, Run, Standing, backwards, link_bound, run_of
from rigc.analysis.laying.wishes.wished import missed
from rigc.analysis.leads.lengths.deck_boxes import DeckBoxes
from rigc.facts.foot import STAMP_N
from rigc.facts.weight import GRAVITY_M_PER_S2

Change = tuple[int, int, int, int]  # item, x, y, number of the shape
Met = tuple[int, int, int]  # two links, and how much more often they cross
_POWER = ("dc", "ac", "mains")
_ROOM_FIRST = 4  # a wish that is missed by so much weighs like one length of what is in the way
_PER_BREAK = 10  # tenths of a millimetre that a lead in breach of a rule counts as, beside what is in the way


class Layout:
    """All items at places. `hard` is the sum of all that is in the way or out of balance, in tenths of a millimetre, `missed` what wishes
    miss, weighed; `broken` counts rules that leads break, as tenths of a millimetre, too. What is wrong about fixed things alone counts for neither:
    no place of another mends it. What is known of the `ground` is shared by all layouts of a board."""

    def __init__(self, board: Board, at: list[At], ground: Ground | None = None) -> None:
        self.board, self.at = board, list(at)
        self.ground = ground or Ground(board)
        self.solids, self.between, self.alone = self.ground.solids, self.ground.between, self.ground.alone
        count = len(board.items)
        self._links_of = [
            [number for number, link in enumerate(board.links) if item in (link.start.item, link.end.item)]
            for item in range(count)
        ]
        fixed = [item.fixed is not None for item in board.items]
        self._single = [0 if fixed[item] else self.alone(item, at[item]) for item in range(count)]
        self._pairs = [[0] * count for _ in range(count)]
        for one in range(count):
            for other in self.beside(one):
                if other > one and not (fixed[one] and fixed[other]):
                    self._pairs[one][other] = self._pairs[other][one] = self.between(one, at[one], other, at[other])
        self._stood = [self.ground.stand(item, each) for item, each in enumerate(at)]
        self._grams = board.grams + sum(item.grams or 0 for item in board.items)
        self._balance()
        self.missed = self._missed(self.at)
        self.hard = sum(self._single) + sum(map(sum, self._pairs)) // 2 + self._off_balance
        self._runs = self._run(self._stood, range(len(board.links)), [])
        self._costs = [self._link_cost(number, run, self._stood) for number, run in enumerate(self._runs)]
        self._spans = [self._span(number) for number in range(len(board.links))]
        self._across = _across(board)
        self._crossed = [
            sum(self._crosses(number, other, self._runs) for other in self._across[number])
            for number in range(len(board.links))
        ]
        self._tried: tuple[list[At], list[Run], list[int], list[Met]] = (self.at, self._runs, self._costs, [])
        self.cost, self.broken = self._sum()

    @property
    def faults(self) -> int:
        """All that is wrong, what wishes miss included."""
        return self.hard + self.broken + self.missed

    @property
    def bears(self) -> tuple[float, float, float, float] | None:
        """How far beyond the feet at the left, the front, the right and the rear it may be pressed as all stands; None where that does not count."""
        middle = self._middle(self.at, ())
        return None if middle is None or not (self.board.weighed and self.board.feet) else self._bears(middle)

    @property
    def outside(self) -> int:
        """How far the centre of gravity lies outside the feet."""
        return self._outside(self._middle(self.at, ()))

    def solid(self, item: int) -> Solid:
        """An item in the shape that it has now."""
        return self.solids[item][self.at[item][2]]

    def beside(self, item: int) -> list[int]:
        """All others that may be in the way of an item."""
        return self.ground.beside[item]

    def box(self, item: int) -> Area:
        """The outline of an item now."""
        return self.ground.box(item, self.at[item])

    def fault_of(self, item: int) -> int:
        """What is wrong about one item, alone and with all others."""
        return self._single[item] + sum(self._pairs[item])

    def fault_between(self, one: int, other: int) -> int:
        """By how much two items on one side of the deck are in each other's way now."""
        return self._pairs[one][other]

    def fault_at(self, item: int, at: At) -> int:
        """What would be wrong about an item at a place."""
        return self.alone(item, at) + sum(self.between(item, at, other, self.at[other]) for other in self.beside(item))

    def clear(self, one: int, here: At, other: int, there: At) -> bool:
        """Whether two items are not in each other's way at these places."""
        return not self.between(one, here, other, there)

    def faults_with(self, changes: list[Change], most: float = inf) -> tuple[int, int, list[At]]:
        """What would be in the way after the changes, what wishes would miss, and where everything would stand. Where more than `most` is in
        the way it stops counting."""
        at = list(self.at)
        for item, x, y, shape in changes:
            at[item] = (x, y, shape)
        moved = list(dict.fromkeys(change[0] for change in changes))
        total = self.hard - self._off_balance
        for number, item in enumerate(moved):
            total -= self._single[item] + sum(self._pairs[item])
            total += sum(self._pairs[item][other] for other in moved[:number])
        between = self.between
        for number, item in enumerate(moved):
            here, before = at[item], moved[:number]
            total += self.alone(item, here)
            for other in self.ground.beside[item]:
                if other not in before:
                    total += between(item, here, other, at[other])
                    if total > most:
                        return total, 0, at
        return total + self._unbalanced(at, moved), self._missed(at), at

    def cost_at_sight(self, at: list[At], changes: list[Change]) -> int:
        """What it costs after changes, as if no lead had anything in its way for which it has nothing in its way now: quick, and nearly always too
        little."""
        stood, board = self._stood_with(at, changes), self.board
        total = self.cost + neatness(board, at) - self._neat
        for number in self._own_links(changes):
            total += link_bound(board, board.links[number], stood) - self._costs[number]
            total -= board.crossing * self._crossed[number]
        for item, *_ in changes:
            total += stood[item].cost - self._stood[item].cost
        return total + board.shoe_share * self._pinched_more(at, changes)

    def cost_with(self, at: list[At], changes: list[Change], most: float = inf) -> tuple[int, int]:
        """The cost with everything at these places, and what leads break there; `changes` tells what stands elsewhere now. Where it must cost
        more than `most` it stops measuring leads, and the layout can't be taken."""
        stood, board = self._stood_with(at, changes), self.board
        total = self.cost + neatness(board, at) - self._neat + board.shoe_share * self._pinched_more(at, changes)
        for item in dict.fromkeys(change[0] for change in changes):
            total += stood[item].cost - self._stood[item].cost
        if not board.weighed:
            moved = [change[0] for change in changes]
            total += board.unbalanced * (
                self._outside(self._middle(at, moved)) - self._outside(self._middle(self.at, ()))
            )
        numbers = list(self._touched(changes, stood))
        runs, costs, around = list(self._runs), list(self._costs), DeckBoxes((each.box for each in stood), board.lines)
        least = {}
        if most < inf:
            least = {number: link_bound(board, board.links[number], stood) for number in numbers}
            total += sum(least[number] - costs[number] - board.crossing * self._crossed[number] for number in numbers)
        for number in numbers:
            if total > most:
                return total, 0
            runs[number] = run_of(board, board.links[number], stood, around)
            costs[number] = self._link_cost(number, runs[number], stood)
            total += costs[number] - least.get(number, self._costs[number])
        if least:
            total += board.crossing * sum(self._crossed[number] for number in numbers)
        met = self._met_otherwise(numbers, runs) if board.crossing else []
        self._tried = at, runs, costs, met
        total += board.crossing * sum(more for *_, more in met)
        return total, self._broken_by(runs)

    def take(self, changes: list[Change], at: list[At], hard: int, missed: int) -> None:
        """Makes the changes, as they were judged."""
        if self._tried[0] is not at:
            self.cost_with(at, changes)
        moved = list(dict.fromkeys(change[0] for change in changes))
        _, self._runs, self._costs, met = self._tried
        for one, other, more in met:
            self._crossed[one] += more
            self._crossed[other] += more
        self._stood = self._stood_with(at, changes)
        self.at, self.hard, self.missed = at, hard, missed
        self._balance()
        self.cost, self.broken = self._sum()
        for number in self._own_links(changes):
            self._spans[number] = self._span(number)
        for item in moved:
            self._single[item] = self.alone(item, at[item])
            for other in self.beside(item):
                self._pairs[item][other] = self._pairs[other][item] = self.between(item, at[item], other, at[other])

    def runs(self) -> list[Run]:
        """How every link runs now."""
        return self._runs

    def costs(self) -> list[int]:
        """What every link costs now."""
        return self._costs

    @property
    def crossings(self) -> int:
        """At how many points leads with sound and those of power cross now; 0 where that costs nothing."""
        return sum(self._crossed) // 2 if self.board.crossing else 0

    @property
    def pinched(self) -> int:
        """How much feet lack in all to treadles beside them."""
        return sum(
            self._pinches(one, other, self.at)
            for one, others in enumerate(self.ground.shod)
            for other in others
            if other > one
        )

    def _pinched_more(self, at: list[At], changes: list[Change]) -> int:
        """How much more feet lack to treadles after the changes."""
        more, done = 0, set()
        for item, *_ in changes:
            for other in self.ground.shod[item] if item not in done else ():
                if other not in done:
                    more += self._pinches(item, other, at) - self._pinches(item, other, self.at)
            done.add(item)
        return more

    def _pinches(self, one: int, other: int, at: list[At]) -> int:
        return self.ground.pinched(one, at[one], other, at[other])

    def _met_otherwise(self, numbers: list[int], runs: list[Run]) -> list[Met]:
        """The pairs that cross more or less often where these links run otherwise, each once."""
        found: list[Met] = []
        done: set[int] = set()
        for number in numbers:
            path, old = runs[number][3], self._runs[number][3]
            if path == old:
                continue
            for other in self._across[number]:
                if other not in done:
                    more = crossed(path, runs[other][3]) - crossed(old, self._runs[other][3])
                    if more:
                        found.append((number, other, more))
            done.add(number)
        return found

    def _crosses(self, number: int, other: int, runs: list[Run]) -> int:
        return crossed(runs[number][3], runs[other][3])

    def _missed(self, at: list[At]) -> int:
        if not self.board.wishes:
            return 0
        return sum(-(-missed(self.board, wish, at) // _ROOM_FIRST) for wish in self.board.wishes)

    def _stood_with(self, at: list[At], changes: list[Change]) -> list[Standing]:
        stood = list(self._stood)
        for item, *_ in changes:
            stood[item] = self.ground.stand(item, at[item])
        return stood

    def _run(self, stood: list[Standing], numbers: Iterable[int], runs: list[Run]) -> list[Run]:
        """How every link runs; those with other numbers run as they do."""
        board, found = self.board, runs or [(0, 0, 0, NOWHERE)] * len(self.board.links)
        around = DeckBoxes((each.box for each in stood), board.lines)
        found = list(found)
        for number in numbers:
            found[number] = run_of(board, board.links[number], stood, around)
        return found

    def _own_links(self, changes: list[Change]) -> Iterable[int]:
        """The links of what moves."""
        if len(changes) == 1:
            return self._links_of[changes[0][0]]
        return dict.fromkeys(number for change in changes for number in self._links_of[change[0]])

    def _touched(self, changes: list[Change], stood: list[Standing]) -> Iterator[int]:
        """The links that may run otherwise after the changes: their ends move, or something moves where it may be in their way."""
        own = set(self._own_links(changes))
        zones: tuple[list[tuple[int, int]], list[tuple[int, int]]] = ([], [])
        for item in {change[0] for change in changes}:
            old, new = self.box(item), stood[item].box
            zones[self.board.items[item].under].extend(((old[0], old[2]), (new.left, new.right)))
        top, hanging = zones
        for number, (points, (left, right)) in enumerate(self._spans):
            if (
                number in own
                or any(start < point < end for start, end in top for point in points)
                or (not points and any(start < right and end > left for start, end in top))
                or (
                    hanging
                    and self._runs[number][2] != OVER
                    and (self._runs[number][2] == AMONG or any(start < right and end > left for start, end in hanging))
                )
            ):
                yield number

    def _span(self, number: int) -> tuple[tuple[int, ...], tuple[int, int]]:
        """Of a link the x at which its ends go down, and from where to where something may be in its way; of one that may run over
        the deck only the latter, its things included."""
        xs: list[int] = []
        sides: list[int] = []
        fronts: list[int] = []
        link = self.board.links[number]
        for end in (link.start, link.end):
            if end.item < 0:
                xs.append(end.x)
                continue
            standing = self._stood[end.item]
            xs.append(standing.stops[end.socket][0])
            if standing.on_top:
                sides += [standing.box.left, standing.box.right]
                fronts.append(standing.box.front)
        if len(fronts) == 2 and abs(fronts[0] - fronts[1]) <= ROW:
            return (), (min(*xs, *sides), max(*xs, *sides))
        return tuple(xs), (min(xs), max(xs))

    def _link_cost(self, number: int, run: Run, stood: list[Standing]) -> int:
        link = self.board.links[number]
        return run[0] * link.share + run[1] * self.board.passing + backwards(link, stood)

    def _sum(self) -> tuple[int, int]:
        """Hundredths of tenths of a millimetre of cable, and what else counts in the same coin; and what leads break."""
        self._neat = neatness(self.board, self.at)
        total = sum(self._costs) + sum(each.cost for each in self._stood) + self._neat
        total += self.board.crossing * self.crossings + self.board.chosen + self.board.shoe_share * self.pinched
        if not self.board.weighed:
            total += self.board.unbalanced * self.outside
        return total, self._broken_by(self._runs)

    def _broken_by(self, runs: list[Run]) -> int:
        return _PER_BREAK * (sum(run[1] for run in runs) - self.ground.breaks_as_stated)

    def _balance(self) -> None:
        """What all weighs to the sides and to the rear, what is pressed beyond the feet, and what that is out of balance."""
        board = self.board
        self._moment = (
            board.grams * board.width + sum(each.moment[0] for each in self._stood),
            board.grams * board.depth + sum(each.moment[1] for each in self._stood),
        )
        self._beyond = {item for item, each in enumerate(self._stood) if each.beyond is not None}
        self._off_balance = self._unbalanced(self.at, ())

    def _unbalanced(self, at: list[At], moved: Iterable[int]) -> int:
        """How far the centre of gravity lies outside the feet, or what is pressed beyond them further out than its mass bears."""
        board = self.board
        if not board.weighed:
            return 0
        middle = self._middle(at, moved)
        outside = self._outside(middle)
        if outside or middle is None or not board.feet:
            return outside
        bears = self._bears(middle)
        total = 0
        for item in (*self._beyond.difference(moved), *moved):
            over = self.ground.stand(item, at[item]).beyond
            for far, most in zip(over or (), bears, strict=False):
                total += max(0, ceil(far - most)) if far > 0 else 0
        return total

    def _bears(self, middle: tuple[int, int]) -> tuple[float, float, float, float]:
        """How far beyond the feet on each side it may be pressed with the centre of gravity there."""
        board, feet, (x, y) = self.board, self.board.feet, middle
        share = self._grams / 1000 * GRAVITY_M_PER_S2.value / STAMP_N.value
        inside = (x - feet, y - feet, board.width - feet - x, board.depth - feet - y)
        return share * inside[0], share * inside[1], share * inside[2], share * inside[3]

    def _outside(self, middle: tuple[int, int] | None) -> int:
        if middle is None:
            return 0
        (x, y), board = middle, self.board
        feet = board.feet
        return max(0, feet - x, x - board.width + feet) + max(0, feet - y, y - board.depth + feet)

    def _middle(self, at: list[At], moved: Iterable[int]) -> tuple[int, int] | None:
        """The centre of gravity after these things have moved."""
        x2, y2 = self._moment
        for item in moved:
            old, new = self._stood[item].moment, self.ground.stand(item, at[item]).moment
            x2, y2 = x2 + new[0] - old[0], y2 + new[1] - old[1]
        return (x2 // (2 * self._grams), y2 // (2 * self._grams)) if self._grams else None


def _across(board: Board) -> list[tuple[int, ...]]:
    """For each link those that it had better not cross: of one with sound those of power, and the other way round."""
    audio, power = (
        tuple(number for number, link in enumerate(board.links) if link.signal in signals)
        for signals in (("audio",), _POWER)
    )
    return [power if link.signal == "audio" else audio if link.signal in _POWER else () for link in board.links]
