"""PlaceFinder: a thing that is in the way -> the nearest place at which it truly fits, as a mend.

A place is tried first as the search for places judges it (bodies, plugs with their bends, feet, edges, what is kept free), and
then by the deck's own rules: none of them may find an error or a warning that they do not find now.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.cables.lead_ends import tenths
from rigc.analysis.computations.leads import Leads
from rigc.analysis.computations.placement import Placement
from rigc.analysis.placing.board import Item, Shape
from rigc.analysis.placing.board_of_rig import board_of
from rigc.analysis.placing.layout import Layout
from rigc.analysis.placing.place_statement import place_statement
from rigc.analysis.results import Results
from rigc.diagnostics.diagnostic import Diagnostic, Level
from rigc.diagnostics.figures import short
from rigc.diagnostics.mend import AddTo, Mend, Replace
from rigc.discover import member
from rigc.model.deck import Deck, Place
from rigc.model.rig import Rig

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
    "lead_beside_power",
)
_TRIALS = (
    10  # so many places of a thing are tried by the rules themselves, each further from those that failed that way
)
_APART = 5  # mm from one such trial to the next
_STEP = 10  # mm of the grid on which places are sought that lie neither straight across nor straight along

Spot = tuple[int, int]


class PlaceFinder:
    """Looks for places in one rig. A `quiet` one looks for none: it stands in while places are tried."""

    def __init__(self, results: Results, quiet: bool = False) -> None:
        self._rig, self._results, self._quiet = results.rig, results, quiet
        self._layouts: dict[str, Layout] = {}
        self._now: frozenset[str] | None = None

    def moving(self, finding: Diagnostic, *things: str) -> Diagnostic:
        """The finding with the nearest place of the first of these things that has one; without one its help says so, unless that
        tells another way."""
        if self._quiet:
            return finding
        for thing in things:
            place = self._nearest(finding, thing)
            if place is not None:
                moved: Diagnostic = finding.replace(mends=(*finding.mends, _mend(self._rig.places[thing], place)))
                return moved
        if finding.help:
            return finding
        names = " or ".join(f"'{thing}'" for thing in dict.fromkeys(things))
        none = f"no place on the deck is free for {names}: take a larger deck (see `rigc show fit`), or leave something out"
        told: Diagnostic = finding.replace(help=none)
        return told

    def _nearest(self, finding: Diagnostic, thing: str) -> Place | None:
        place = self._rig.places.get(thing)
        deck = None if place is None else self._rig.decks.get(place.deck or "", self._rig.deck)
        if place is None or deck is None or deck.width_mm is None or deck.depth_mm is None:
            return None
        failed: list[Spot] = []
        here = tenths(place.x_mm), tenths(place.y_mm)
        for x, y in self._free(place, deck):
            way = _way(here, (x, y))
            since = [spot for spot in failed if _way(here, spot) == way]
            if any(max(abs(x - a), abs(y - b)) < 10 * _APART * len(since) for a, b in since):
                continue
            there: Place = place.replace(x_mm=x / 10, y_mm=y / 10)
            if self._fits(finding, there):
                return self._nearer(finding, place, there, failed)
            failed.append((x, y))
            if len(failed) == _TRIALS:
                return None
        return None

    def _nearer(self, finding: Diagnostic, old: Place, found: Place, failed: list[Spot]) -> Place:
        """The nearest whole millimetre on the way back to what failed in the same direction, by halves."""
        x, y = tenths(found.x_mm), tenths(found.y_mm)
        here, there = (tenths(old.x_mm), tenths(old.y_mm)), (x, y)
        axis = 0 if there[1] == here[1] else 1
        if there[1 - axis] != here[1 - axis]:
            return found
        sign = 1 if there[axis] > here[axis] else -1
        far = [sign * (spot[axis] - here[axis]) // 10 for spot in failed if spot[1 - axis] == here[1 - axis]]
        low, high = max((each for each in far if each > 0), default=0), sign * (there[axis] - here[axis]) // 10
        while low and high - low > 1:
            middle = (low + high) // 2
            spot = here[axis] + 10 * sign * middle
            nearer: Place = found.replace(**{("x_mm", "y_mm")[axis]: spot / 10})
            if self._fits(finding, nearer):
                high, found = middle, nearer
            else:
                low = middle
        return found

    def _free(self, place: Place, deck: Deck) -> Iterator[Spot]:
        """Places in tenths of a millimetre where nothing is in the way, the nearest first: straight across or along, else both."""
        layout = self._layout(deck)
        item = next(number for number, each in enumerate(layout.board.items) if each.name == place.thing)
        solid, board = layout.solid(item), layout.board
        x, y = tenths(place.x_mm), tenths(place.y_mm)
        for dx, dy in _moves(board.width // 10, board.depth // 10):
            spot = (x + 10 * dx, y + 10 * dy)
            inside = 0 <= spot[0] <= board.width - solid.width and 0 <= spot[1] <= board.depth - solid.depth
            if not inside or _tier(deck, spot[1], solid.depth, place.under) != place.tier:
                continue
            if not layout.fault_at(item, (*spot, 0)):
                yield spot

    def _layout(self, deck: Deck) -> Layout:
        if deck.name not in self._layouts:
            board = board_of(self._rig, deck, self._results.get(Leads), ()).replace(apart=0, wishes=())
            board = board.replace(items=tuple(self._around(item) for item in board.items))
            self._layouts[deck.name] = Layout(board, [(*(item.fixed or (0, 0)), 0) for item in board.items])
        return self._layouts[deck.name]

    def _around(self, item: Item) -> Item:
        """Of a thing that stands askew the rectangle around it; its plugs are left to the rules."""
        outline = self._results.get(Placement).outline(item.name)
        if outline is None or not outline.askew:
            return item
        sockets = tuple(socket.replace(needs=0) for socket in item.shapes[0].sockets)
        around = Shape(0, tenths(outline.width_mm), tenths(outline.depth_mm), sockets)
        boxed: Item = item.replace(shapes=(around,))
        return boxed

    def _fits(self, finding: Diagnostic, place: Place) -> bool:
        rig: Rig = self._rig.replace(places={**self._rig.places, place.thing: place})
        if self._now is None:
            self._now = _errors_and_warnings(self._rig)
        found = _errors_and_warnings(rig)
        return finding.fingerprint not in found and found <= self._now


def place_finder(results: Results) -> PlaceFinder:
    """Costs nothing before it is asked for a place."""
    return PlaceFinder(results)


def quiet_finder(rig: Rig) -> PlaceFinder:
    """Stands in where only what is found counts, and nobody reads what to do about it."""
    return PlaceFinder(Results(rig), quiet=True)


def _errors_and_warnings(rig: Rig) -> frozenset[str]:
    """The errors and warnings of the deck's rules."""
    results = Results(rig, given=(quiet_finder(rig),))
    checks = [member(f"rigc.analysis.checks.{name}", "CHECK") for name in _RULES]
    return frozenset(
        found.fingerprint
        for check in checks
        for found in results.call(check)
        if found.level in (Level.ERROR, Level.WARNING)
    )


def _way(here: Spot, there: Spot) -> Spot:
    """To the left or right, to the front or rear: the signs of a move."""
    across, along = there[0] - here[0], there[1] - here[1]
    return (across > 0) - (across < 0), (along > 0) - (along < 0)


def _moves(width: int, depth: int) -> Iterator[Spot]:
    for far in range(1, max(width, depth)):
        yield from ((-far, 0), (far, 0), (0, -far), (0, far))
    near = [(dx, dy) for dx in range(-_STEP, _STEP + 1) for dy in range(-_STEP, _STEP + 1) if dx and dy]
    yield from sorted(near, key=lambda move: abs(move[0]) + abs(move[1]))
    steps = range(-max(width, depth) // _STEP * _STEP, max(width, depth) + 1, _STEP)
    both = [(dx, dy) for dx in steps if abs(dx) < width and dx for dy in steps if abs(dy) < depth and dy]
    yield from sorted(both, key=lambda move: abs(move[0]) + abs(move[1]))


def _tier(deck: Deck, front: int, depth: int, under: bool) -> str | None:
    """The tier that a thing there stands on."""
    if under:
        return None
    inside = (t.name for t in deck.tiers if tenths(t.front_mm) <= front and front + depth <= tenths(t.rear_mm))
    return next(inside, None)


def _mend(old: Place, new: Place) -> Mend:
    if old.numbers is not None:
        return Mend(_words(old, new), (Replace(old.numbers, f"{new.x_mm:g}, {new.y_mm:g} mm"),))
    return Mend(_words(old, new), (AddTo("place", "", place_statement(new)),))


def _words(old: Place, new: Place) -> str:
    across, along = new.x_mm - old.x_mm, new.y_mm - old.y_mm
    ways = []
    if across:
        ways.append(f"{short(abs(across))} mm to the {'right' if across > 0 else 'left'}")
    if along:
        ways.append(f"{short(abs(along))} mm to the {'rear' if along > 0 else 'front'}")
    return f"move '{new.thing}' {' and '.join(ways)}"


COMPUTE = place_finder
