"""Names and their free places -> one place for each, none on another, by tabu search."""

from __future__ import annotations

from itertools import accumulate, combinations, pairwise
from typing import NamedTuple

from rigc.reports.drawings.means.label_box import Room, letters_box
from rigc.reports.drawings.means.segments import Segment, crossed, meets
from rigc.reports.drawings.shapes import LETTERS, Label, Point

_TURNS, _IDLE = 20, 100  # so many moves a name are tried, and so many without a gain
_TABU = 9  # for so many moves a place that was left is not taken again
_ON_ANOTHER = 90.0  # what it costs to stand on another name, in mm
_DOT = 0.5  # half of the room that the dot at the start of a leader takes, in mm


class Choice(NamedTuple):
    """A place for a name: what it costs in mm, where a leader starts that ends at its letters (None for none), and how it is
    written there. A tuple, because tens of thousands are looked at; of those taken the label is made."""

    x: float
    y: float
    text: str
    cost: float
    start: Point | None = None
    anchor: str = "start"
    level: str = "middle"
    rotation: float = 0.0
    size_mm: float = LETTERS
    strong: bool = False
    colour: str = "black"
    sign_mm: tuple[float, float] | None = None
    """How wide and high it is where a sign about (x, y) stands there instead of letters."""
    knee: Point | None = None
    """Where its leader bends; None where it runs straight."""

    @property
    def box(self) -> Room:
        """What it takes on paper."""
        if self.sign_mm is None:
            return letters_box(self)
        aside, along = self.sign_mm[0] / 2, self.sign_mm[1] / 2
        return Room(self.x - aside, self.y - along, self.x + aside, self.y + along)

    @property
    def label(self) -> Label:
        """Its letters, as they are drawn."""
        return Label(
            self.x, self.y, self.text, self.size_mm, self.anchor, self.level, self.rotation, self.colour, self.strong
        )


class Stand(NamedTuple):
    """A choice with the room of its letters, its leader, and the squares of paper that both touch."""

    choice: Choice
    box: Room
    apart: Room
    leader: Segment | None
    cost: float
    squares: frozenset[int]


class Choosing:
    """Names and their free places -> one for each, by tabu search: all start at their cheapest places; while some stand on
    others, the move that helps most is made; a place that was left is not taken again for a while."""

    def __init__(self, stands: list[list[Stand]]) -> None:
        self._all = [stand for each in stands for stand in each]
        self._owner = [at for at, each in enumerate(stands) for _ in each]
        self._cost = [stand.cost for stand in self._all]
        ends = list(accumulate(map(len, stands), initial=0))
        self._own = [range(*each) for each in pairwise(ends)]
        self._there: dict[int, list[int]] = {}
        for number, stand in enumerate(self._all):
            for square in stand.squares:
                self._there.setdefault(square, []).append(number)
        self._known: dict[int, tuple[int, ...]] = {}
        self._met = [0] * len(self._all)  # of each place, how many stand in its way now
        self._worse = list(self._cost)  # of each place, what it costs now
        self._lowest = [0.0] * len(stands)  # of each name, what the cheapest of its places costs now
        self._changed = set(range(len(stands)))  # names of which that may be another since it was looked up
        self._taken = [min(own, key=lambda number: (self._cost[number], number)) if own else -1 for own in self._own]
        for number in self._taken:
            self._count(number, 1)

    def chosen(self) -> list[Stand | None]:
        """The place of each name; None where it has none, or cannot have one beside the others."""
        best, kept = self._worth(), list(self._taken)
        least = sum(min(self._cost[number] for number in own) for own in self._own if own)
        left_at: dict[int, int] = {}
        idle = 0
        for turn in range(_TURNS * len(self._own)):
            if best <= least:  # each stands at its cheapest place, and none on another
                break
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
        cost, met = self._cost, self._met
        return sum([cost[number] + _ON_ANOTHER / 2 * met[number] for number in self._taken if number >= 0])

    def _move(self, turn: int, left_at: dict[int, int]) -> int | None:
        """The place that betters the whole most, of those whose names are in each other's way; else of all."""
        worse, lowest = self._worse, self._lowest
        for at in self._changed:
            lowest[at] = min(worse[self._own[at].start : self._own[at].stop], default=0.0)
        self._changed.clear()
        troubled = [at for at, number in enumerate(self._taken) if number >= 0 and self._met[number]]
        best, gain = None, float("-inf")
        for at in troubled or range(len(self._own)):
            now = self._taken[at]
            if now < 0:
                continue
            here = worse[now]
            if here - lowest[at] <= gain:
                continue
            for number in self._own[at]:
                won = here - worse[number]
                if won > gain and number != now and left_at.get(number, -1) < turn:
                    best, gain = number, won
        return best

    def _take(self, at: int, number: int) -> None:
        if number != self._taken[at]:
            self._count(self._taken[at], -1)
            self._taken[at] = number
            self._count(number, 1)

    def _count(self, number: int, by: int) -> None:
        met, worse, cost, owner = self._met, self._worse, self._cost, self._owner
        for other in self._against(number):
            met[other] += by
            worse[other] = cost[other] + _ON_ANOTHER * met[other]
            self._changed.add(owner[other])

    def _against(self, number: int) -> tuple[int, ...]:
        """The places of other names that cannot be taken together with this one."""
        if number < 0:
            return ()
        known = self._known.get(number)
        if known is None:
            here, own, stands, owner = self._all[number], self._owner[number], self._all, self._owner
            near = set().union(*(self._there[square] for square in here.squares))
            known = tuple(sorted(other for other in near if owner[other] != own and clash(here, stands[other])))
            self._known[number] = known
        return known

    def _drop(self) -> None:
        """Where two still stand on each other, the one that is in the way of more gives up its place."""
        while True:
            troubled = [at for at, number in enumerate(self._taken) if number >= 0 and self._met[number]]
            if not troubled:
                return
            self._take(max(troubled, key=lambda at: (self._met[self._taken[at]], at)), -1)


def in_trouble(stands: list[Stand | None]) -> list[int]:
    """Which of these places cannot be taken together with another of them."""
    here = [(at, stand) for at, stand in enumerate(stands) if stand is not None]
    found: set[int] = set()
    for (at, one), (other, two) in combinations(here, 2):
        if not one.squares.isdisjoint(two.squares) and clash(one, two):
            found |= {at, other}
    return sorted(found)


def dot_of(leader: Segment) -> Room:
    """What the dot at the start of a leader takes."""
    x, y = leader[:2]
    return Room(x - _DOT, y - _DOT, x + _DOT, y + _DOT)


def clash(one: Stand, other: Stand) -> bool:
    """Whether two places cannot be taken together."""
    left, top, right, bottom = one.apart
    here = other.box
    if left < here[2] and here[0] < right and top < here[3] and here[1] < bottom:
        return True
    if one.leader is None and other.leader is None:
        return False
    if _runs_over(one, other) or _runs_over(other, one):
        return True
    return one.leader is not None and other.leader is not None and crossed(one.leader, (other.leader,)) != 0


def _runs_over(one: Stand, other: Stand) -> bool:
    """Whether the leader of one, or the dot at its start, is over the letters of the other."""
    if one.leader is None:
        return False
    x, y, *_ = one.leader
    left, top, right, bottom = other.box
    on_dot = x - _DOT < right and left < x + _DOT and y - _DOT < bottom and top < y + _DOT
    return on_dot or meets(one.leader, other.apart)
