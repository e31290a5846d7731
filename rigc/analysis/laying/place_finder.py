"""PlaceFinder: a thing that is in the way -> the nearest place at which it truly fits, as a mend; or why there is none.

A place is tried first as the search for places judges it (bodies, plugs with their bends, feet, edges, what is kept free), and
then by the deck's own rules: none of them may find an error or a warning that they do not find now.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from functools import cache
from heapq import merge
from math import isqrt
from typing import TYPE_CHECKING

from rigc.analysis.deck.placement import Placement
from rigc.analysis.every_check import check
from rigc.analysis.leads.leads import Leads
from rigc.analysis.leads.lengths.lead_ends import tenths
from rigc.analysis.results import Results
from rigc.diagnostics.diagnostic import Diagnostic, Level
from rigc.diagnostics.figures import short
from rigc.diagnostics.mend import AddTo, Mend, Replace
from rigc.model.deck import Deck, Place
from rigc.model.rig import Rig

if TYPE_CHECKING:
    from rigc.analysis.laying.search.board import Item
    from rigc.analysis.laying.search.layout import Layout

_RULES = (
    "bodies_overlap",
    "plugs_collide",
    "plug_over_edge",
    "switches_too_near",
    "too_tall",
    "covered_drop_line",
    "unfit_lead_length",
    "weak_strip",
    "tips_over",
    "too_warm",
    "coil_near_transformer",
)
_DEAR = ("lead_beside_power",)  # takes as long as all others together, several times over
_TRIALS = 10  # places of a thing are tried by the rules themselves, each further from those that failed that way
_TRIALS_IN_ALL = 60  # such trials are made for all findings of a run,
_THINGS_TRIED = 3_600  # each of all things on the deck: of a large rig fewer
_LOOKS_IN_ALL = 1_000_000  # things and parts kept free that are looked at for all findings of a run
_APART = 5  # mm from one such trial to the next
_STEP = 10  # mm at least of the grid on which places are sought that lie neither straight across nor straight along
_MOST_MOVES = 20_000  # on that grid; of a larger deck the grid is coarser
_FINE, _MOST_SHOWN = 5, 3_000  # mm at least of the grid of all free places, and how many are looked at
_SLANTED = 30  # mm by which a move both across and along counts as longer

Spot = tuple[int, int]


class _Hunt:
    """The search for a place of one thing: what failed so far, and the nearest free place with what spoke against it."""

    def __init__(self, place: Place, deck: Deck, layout: Layout, may_look: Callable[[int], bool]) -> None:
        """`may_look` says whether so many looks may be taken yet: at each place one, and one at each part of the deck that is kept free."""
        self.place, self.deck, self.layout, self._may_look = place, deck, layout, may_look
        self._each = 1 + len(layout.board.kept_free) + len(layout.board.reserved)
        self.failed: list[Spot] = []
        self.item = next(number for number, each in enumerate(layout.board.items) if each.name == place.thing)
        board, solid = layout.board, layout.solid(self.item)
        self.here = tenths(place.x_mm), tenths(place.y_mm)
        self._off = not (-solid.width < self.here[0] < board.width and -solid.depth < self.here[1] < board.depth)
        if self._off:  # sought from where it would come onto the deck: its own place may be beyond all moves
            most = board.width - solid.width, board.depth - solid.depth
            self.here = max(0, min(self.here[0], most[0])), max(0, min(self.here[1], most[1]))
        self._beside = list(layout.beside(self.item))

    def free(self) -> Iterator[tuple[int, _Hunt, Spot]]:
        """Places in tenths of a millimetre where nothing is in the way, the nearest first, each behind how far it is in mm."""
        board, solid = self.layout.board, self.layout.solid(self.item)
        for far, dx, dy in ([(0, 0, 0)] if self._off else []) + _moves(board.width // 10, board.depth // 10):
            spot = (self.here[0] + 10 * dx, self.here[1] + 10 * dy)
            inside = 0 <= spot[0] <= board.width - solid.width and 0 <= spot[1] <= board.depth - solid.depth
            if not inside:
                continue
            if not self._may_look(self._each):
                return
            if self.is_free(spot):
                yield far, self, spot

    def is_over(self, spot: Spot) -> bool:
        """Whether enough was tried, or a place too near to this one failed that way already."""
        way = _way(self.here, spot)
        since = [failed for failed in self.failed if _way(self.here, failed) == way]
        near = any(max(abs(spot[0] - x), abs(spot[1] - y)) < 10 * _APART * len(since) for x, y in since)
        return near or len(self.failed) == _TRIALS

    def at(self, spot: Spot) -> Place:
        """The thing at a place: so many whole millimetres from its own, which may be in inches."""
        x_mm, y_mm = spot[0] / 10, spot[1] / 10
        if not self._off:
            x_mm, y_mm = (
                own if to == here else round(own + (to - here) / 10, 4)
                for own, to, here in zip((self.place.x_mm, self.place.y_mm), spot, self.here, strict=True)
            )
        there: Place = self.place.replace(x_mm=x_mm, y_mm=y_mm)
        return there

    def is_free(self, spot: Spot) -> bool:
        """Whether nothing is in the way at a place on the deck; another tier than its own is no place for it."""
        at, depth = (*spot, 0), self.layout.solid(self.item).depth
        if _tier(self.deck, spot[1], depth, self.place.under) != self.place.tier or self.layout.alone(self.item, at):
            return False
        for order, other in enumerate(self._beside):
            if not self.layout.clear(self.item, at, other, self.layout.at[other]):
                self._beside.insert(0, self._beside.pop(order))  # it is in the way of the next places, too
                return False
        return True


class PlaceFinder:
    """Looks for places in one rig, as long as trials are `left`, and looks at what is in the way."""

    _quiet = False

    def __init__(self, results: Results) -> None:
        self._rig, self._results = results.rig, results
        self._layouts: dict[str, Layout] = {}
        self._now: frozenset[str] | None = None
        self.most = self.left = min(_TRIALS_IN_ALL, _THINGS_TRIED // max(1, len(results.rig.places)))
        self.looks = _LOOKS_IN_ALL

    def moving(self, finding: Diagnostic, *things: str) -> Diagnostic:
        """The finding with the nearest place of any of these things that does; without one its help says why there is none, unless that
        tells another way."""
        if self._quiet:
            return finding
        found = self._nearest(finding, things)
        told: Diagnostic
        if isinstance(found, Place):
            told = finding.replace(mends=(_mend(self._rig.places[found.thing], found), *finding.mends))
            return told
        if finding.help or finding.mends:
            return finding
        told = finding.replace(help=found or _none_free(things))
        return told

    def free(self, thing: str) -> tuple[tuple[tuple[float, float], ...], int]:
        """The front-left corners, in mm, at which a thing would be in nobody's way, each on a grid, and how many mm that is apart; none
        for what has no place yet."""
        hunt = self._hunt(thing)
        if hunt is None:
            return (), 0
        board, solid = hunt.layout.board, hunt.layout.solid(hunt.item)
        across, along = board.width - solid.width, board.depth - solid.depth
        step = max(_FINE, isqrt(max(0, across * along) // (100 * _MOST_SHOWN)) + 1)
        spots = ((x, y) for y in range(0, along + 1, 10 * step) for x in range(0, across + 1, 10 * step))
        return tuple((x / 10, y / 10) for x, y in spots if hunt.is_free((x, y))), step

    def _hunt(self, thing: str) -> _Hunt | None:
        place = self._rig.places.get(thing)
        deck = None if place is None else self._rig.decks.get(place.deck or "", self._rig.deck)
        if place is None or deck is None or deck.width_mm is None or deck.depth_mm is None:
            return None
        return _Hunt(place, deck, self._layout(deck), self._may_look)

    def _may_look(self, looks: int) -> bool:
        if self.looks <= 0:
            return False
        self.looks -= looks
        return True

    def _nearest(self, finding: Diagnostic, things: Iterable[str]) -> Place | str:
        """The nearest place that the deck's own rules let pass; else what speaks against the nearest that is free, if any is."""
        if not self.left:
            return _used_up(self.most)
        hunts = [hunt for thing in dict.fromkeys(things) if (hunt := self._hunt(thing)) is not None]
        nearest = ""
        for _, hunt, spot in merge(*(hunt.free() for hunt in hunts), key=lambda each: each[0]):
            if hunt.is_over(spot):
                if all(len(each.failed) == _TRIALS for each in hunts):
                    break
                continue
            if not self.left:
                return nearest or _used_up(self.most)
            against = self._against(finding, hunt.at(spot))
            if not against:
                return self._nearer(finding, hunt, spot)
            nearest = nearest or _does_not_do(hunt.place, hunt.at(spot), against)
            hunt.failed.append(spot)
        return nearest or (_LOOKED if self.looks <= 0 else "")

    def _nearer(self, finding: Diagnostic, hunt: _Hunt, found: Spot) -> Place:
        """The nearest whole millimetre on the way back to what failed in the same direction, by halves, if all rules let that pass."""
        here, first = hunt.here, found
        axis = 0 if found[1] == here[1] else 1
        if found[1 - axis] != here[1 - axis]:
            return hunt.at(found)
        sign = 1 if found[axis] > here[axis] else -1
        far = [sign * (spot[axis] - here[axis]) // 10 for spot in hunt.failed if spot[1 - axis] == here[1 - axis]]
        low, high = max((each for each in far if each > 0), default=0), sign * (found[axis] - here[axis]) // 10
        while low and high - low > 1 and self.left:
            middle = (low + high) // 2
            spot = (here[0] + 10 * sign * middle, here[1]) if axis == 0 else (here[0], here[1] + 10 * sign * middle)
            if not self._against(finding, hunt.at(spot), _RULES):
                high, found = middle, spot
            else:
                low = middle
        return hunt.at(first if found != first and self._against(finding, hunt.at(found), _DEAR) else found)

    def _layout(self, deck: Deck) -> Layout:
        from rigc.analysis.laying.board_of_rig import board_of  # where nothing is in the way no place is sought
        from rigc.analysis.laying.search.layout import Layout

        if deck.name not in self._layouts:
            board = board_of(self._rig, deck, self._results.get(Leads), ())
            board = board.replace(apart=0, wishes=(), links=(), partings=(), knob=0, weighed=False)
            board = board.replace(items=tuple(self._around(item) for item in board.items))
            self._layouts[deck.name] = Layout(board, [(*(item.fixed or (0, 0)), 0) for item in board.items])
        return self._layouts[deck.name]

    def _around(self, item: Item) -> Item:
        """Of a thing that stands askew the rectangle around it; its plugs are left to the rules, and so is all air before vents."""
        from rigc.analysis.laying.search.board import Shape

        item = item.replace(shapes=tuple(shape.replace(vents=()) for shape in item.shapes), rearmost=())
        outline = self._results.get(Placement).outline(item.name)
        if outline is None or not outline.askew:
            return item
        sockets = tuple(socket.replace(needs=0) for socket in item.shapes[0].sockets)
        around = Shape(0, tenths(outline.width_mm), tenths(outline.depth_mm), sockets)
        boxed: Item = item.replace(shapes=(around,))
        return boxed

    def _against(self, finding: Diagnostic, place: Place, rules: tuple[str, ...] = (*_RULES, *_DEAR)) -> str:
        """What the deck's rules say against a place: an error or a warning that they do not find now, or that the finding stays."""
        self.left -= 1
        if self._now is None:
            every = _found(self._rig, (*_RULES, *_DEAR), self._results.between)
            self._now = frozenset(found.fingerprint for found in every if _is_error_or_warning(found))
        rig: Rig = self._rig.replace(places={**self._rig.places, place.thing: place})
        stays = False
        for found in _found(rig, rules, self._results.between):
            if _is_error_or_warning(found) and found.fingerprint not in self._now:
                return found.message
            stays = stays or found.fingerprint == finding.fingerprint
        return "that does not change" if stays else ""


def place_finder(results: Results) -> PlaceFinder:
    """Costs nothing before it is asked for a place."""
    return PlaceFinder(results)


def _found(rig: Rig, rules: tuple[str, ...], between: Callable[[], None] | None) -> Iterator[Diagnostic]:
    """What these rules find, one rule after the other, so that whoever has seen enough stops."""
    results = Results(rig, given=(quiet_finder(),), between=between)
    for name in rules:
        yield from results.call(check(name))


def _is_error_or_warning(finding: Diagnostic) -> bool:
    return finding.level in (Level.ERROR, Level.WARNING)


def _way(here: Spot, there: Spot) -> Spot:
    """To the left or right, to the front or rear: the signs of a move."""
    across, along = there[0] - here[0], there[1] - here[1]
    return (across > 0) - (across < 0), (along > 0) - (along < 0)


@cache
def _moves(width: int, depth: int) -> list[tuple[int, int, int]]:
    """The moves to try on a deck of so many millimetres, the nearest first: how far it counts, how far across and along."""
    step = max(_STEP, isqrt(4 * width * depth // _MOST_MOVES) + 1)
    straight = [(way * far, 0) for far in range(1, width) for way in (-1, 1)]
    straight += [(0, way * far) for far in range(1, depth) for way in (-1, 1)]
    near = [(dx, dy) for dx in range(-_STEP, _STEP + 1) for dy in range(-_STEP, _STEP + 1)]
    across, along = range(-(width // step) * step, width, step), range(-(depth // step) * step, depth, step)
    slanted = {(dx, dy) for dx, dy in (*near, *((dx, dy) for dx in across for dy in along)) if dx and dy}
    found = [(abs(dx) + abs(dy), dx, dy) for dx, dy in straight]
    found += [(abs(dx) + abs(dy) + _SLANTED, dx, dy) for dx, dy in slanted]
    return sorted(found, key=lambda move: (move[0], abs(move[2]), move[1], move[2]))


def _tier(deck: Deck, front: int, depth: int, under: bool) -> str | None:
    """The tier that a thing there stands on."""
    if under:
        return None
    inside = (t.name for t in deck.tiers if tenths(t.front_mm) <= front and front + depth <= tenths(t.rear_mm))
    return next(inside, None)


def _mend(old: Place, new: Place) -> Mend:
    if old.numbers is not None:
        return Mend(_words(old, new), (Replace(old.numbers, f"{new.x_mm:g}, {new.y_mm:g} mm"),))
    from rigc.analysis.laying.place_statement import place_statement

    return Mend(_words(old, new), (AddTo("place", "", place_statement(new)),))


def _words(old: Place, new: Place) -> str:
    return f"move '{new.thing}' {_far(old, new)}"


def _far(old: Place, new: Place) -> str:
    across, along = new.x_mm - old.x_mm, new.y_mm - old.y_mm
    ways = []
    if across:
        ways.append(f"{short(abs(across))} mm to the {'right' if across > 0 else 'left'}")
    if along:
        ways.append(f"{short(abs(along))} mm to the {'rear' if along > 0 else 'front'}")
    return " and ".join(ways)


_LARGER = "take a larger deck (see `rigc show fit`), or leave something out"


def _none_free(things: Iterable[str]) -> str:
    names = " or ".join(f"'{thing}'" for thing in dict.fromkeys(things))
    return f"no place on the deck was found where {names} has room, plugs and switches included: {_LARGER}"


def _does_not_do(old: Place, new: Place, against: str) -> str:
    return (
        f"no move of one thing alone was found that does: '{new.thing}' has room {_far(old, new)}, but then {against}; move "
        f"more than one thing, {_LARGER}"
    )


def _used_up(most: int) -> str:
    if not most:
        return "move it by hand: for so many things no place is tried"
    tried = f"the {most} places that one run tries are" if most > 1 else "the one place that one run tries is"
    return f"{_AGAIN}: {tried} used up"


_AGAIN = "mend what else is told of the deck, then check again"
_LOOKED = f"{_AGAIN}: the {_LOOKS_IN_ALL:,} looks at what is in the way that one run takes are used up"


@cache
def quiet_finder() -> PlaceFinder:
    """Looks for none: it stands in where only what is found counts, and nobody reads what to do about it."""
    made = object.__new__(PlaceFinder)
    made._quiet = True
    return made


COMPUTE = place_finder
