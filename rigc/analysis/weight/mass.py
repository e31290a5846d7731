"""Mass: units, supplies, decks, leads, strips and panels -> what the board weighs, and where it balances: `plumb.mass`, `.x`, `.y`,
`.z`; `rig.mass`, `rig.with-case`; `board.balance`, `.mass`, `.x`, `.y`, `.z`, `.inside`; `rig.balance`, that of the first deck."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.deck.feet import told_feet
from rigc.analysis.deck.placement import Outline, Placement
from rigc.analysis.deck.used_units import used_units
from rigc.analysis.mounting.mounting_strip import MountingStrip
from rigc.analysis.mounting.strip_order import StripOrder
from rigc.analysis.weight.lead_mass import LeadMass
from rigc.model.deck import Deck
from rigc.model.fact import Quantity
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.traced.figure import AnyFigure, Basis, Figure, Lacking, Several, figure, known_figure
from rigc.traced.given import stands, stated, unstated
from rigc.traced.means import found, least, total, total_known
from rigc.traced.reason import ARITHMETIC, AS_STATED, STATED
from rigc.traced.shown import exactly, places
from rigc.traced.term import Term, Traced, known, number
from rigc.traced.units import KILOGRAMS

_ALL = "units, supplies, panels and decks in use, leads that stay on the board, strips as laid; stage leads, and what stands off the board, are not counted"
_KNOWN = f"{_ALL}; what is not known is left out and named"
_MIDDLE = "a body balances in its middle; of a thing that stands askew, that of the rectangle around it"
_HEIGHT = f"{_MIDDLE}; counted from the deck's top"
_TAKEN = "common practice, no source: tilt the board to verify"
_MOMENTS = "the masses' moments about the deck's front-left corner / their sum: bare deck, units, supplies"
_FEET = "how far the centre of gravity lies inside the nearest edge of the feet; below 0 it lies outside"
_TOGETHER = "bare deck, units and supplies together"
_PHYSICS = "physics: centre of gravity"
_PLACE = places("mm", 1)
_BALANCE = exactly("mm", 1)


class MassItem(Record):
    """What a thing, or all leads of a signal, or all strip of a kind weigh, in kg. `x_mm` and `y_mm` are its middle on its deck, None
    for what is spread over the board; `z` is its middle above the deck's top in mm (feet and strips not counted), lacking where a
    height is not stated."""

    name: str
    mass: AnyFigure
    x_mm: Figure | None = None
    y_mm: Figure | None = None
    deck: str | None = None
    z: AnyFigure | None = None

    @property
    def kg(self) -> Term | None:
        """What it weighs; None where a fact is missing."""
        return known(self.mass)

    @property
    def missing(self) -> str:
        """The fact for want of which its mass is not known; empty where it is."""
        return self.mass.want[0] if isinstance(self.mass, Lacking) else ""


class Balance(Record):
    """The centre of gravity of one bare deck with its units and supplies, from the deck's front-left corner and top, in mm, and their
    `mass` in kg; lacking for want of the facts that `missing` names, `z` also for want of a height. `points` are x and y as one:
    those of the deck, and of the first deck those of the rig. `inside` is how far it lies inside the nearest edge of the deck's
    feet, below 0 outside; None where nobody states where they are."""

    deck: str
    mass: AnyFigure
    x: AnyFigure
    y: AnyFigure
    z: AnyFigure
    points: tuple[Several, ...]
    inside: AnyFigure | None

    @property
    def kg(self) -> Term | None:
        """What is balanced."""
        return known(self.mass)

    @property
    def x_mm(self) -> Term | None:
        """From the deck's left edge."""
        return known(self.x)

    @property
    def y_mm(self) -> Term | None:
        """From the deck's front edge."""
        return known(self.y)

    @property
    def missing(self) -> tuple[str, ...]:
        """The facts for want of which it is not known."""
        return self.mass.want if isinstance(self.mass, Lacking) else ()


class Mass(Record):
    """All items of the board, and its cases. `board` is the sum in kg without, `whole` with the cases; both are lacking as long as one of
    their items is not known. `board_known` and `whole_known` sum what is."""

    items: tuple[MassItem, ...]
    cases: tuple[MassItem, ...]
    balances: tuple[Balance, ...]
    board: AnyFigure
    whole: AnyFigure
    board_known: Figure
    whole_known: Figure

    @property
    def total_kg(self) -> Term | None:
        """The board without a case."""
        return known(self.board)

    @property
    def with_case_kg(self) -> Term | None:
        """The board with the cases declared."""
        return known(self.whole)

    @property
    def known_kg(self) -> Figure:
        """What is certain: all that is known, cases counted in."""
        return self.whole_known

    @property
    def missing(self) -> tuple[str, ...]:
        """The facts for want of which the sum with the case is not known."""
        return tuple(item.missing for item in (*self.items, *self.cases) if item.kg is None)


def mass(
    rig: Rig,
    leads: LeadMass,
    strips: MountingStrip,
    order: StripOrder,
    placement: Placement,
) -> Mass:
    """Units, supplies, panels and decks in use, leads that stay on the board (stage leads don't), strips as laid; not what stands off it."""
    things = tuple(_things(rig, placement))
    decks = tuple(_decks(rig))
    rest = (*_panels(rig), *lead_items(leads), *strip_items(rig, strips, order))
    cases = tuple(MassItem(case.name, _stated_mass(case.name, case.mass_kg)) for case in rig.cases.values())
    balances = tuple(_balance(rig, deck, things, placement) for deck in decks)
    return weighed((*things, *decks, *rest), cases, balances, ("rig.mass", "rig.with-case"))


def weighed(
    items: tuple[MassItem, ...], cases: tuple[MassItem, ...], balances: tuple[Balance, ...], names: tuple[str, str]
) -> Mass:
    """The sums of some items, without and with their cases, by these names."""
    board, board_known = _sums(names[0], items)
    whole, whole_known = _sums(names[1], (*items, *cases)) if cases else (board, board_known)
    return Mass(items, cases, balances, board, whole, board_known, whole_known)


def _sums(name: str, items: tuple[MassItem, ...]) -> tuple[AnyFigure, Figure]:
    """The sum, and that of what is known; both are one where all is."""
    masses = [item.mass for item in items]
    every = figure(name, total(masses), KILOGRAMS, rule=_ALL, source=ARITHMETIC)
    if isinstance(every, Figure):
        return every, every
    return every, known_figure(f"{name}-known", total_known(masses), KILOGRAMS, rule=_KNOWN, source=ARITHMETIC)


def _stated_mass(name: str, kg: Quantity | None) -> AnyFigure:
    value = stated(f"the mass of '{name}'", kg)
    return figure(f"{name}.mass", value, KILOGRAMS, rule=AS_STATED, source=STATED, label=name)


def _things(rig: Rig, placement: Placement) -> Iterator[MassItem]:
    used = {unit.name for unit in used_units(rig)} | _supplies(rig)
    for thing in (*rig.units.values(), *rig.supplies.values(), *rig.mains_strips.values()):
        if thing.name in rig.off_board:
            continue
        if thing.name not in rig.places and (thing.kind not in ("unit", "supply") or thing.name not in used):
            continue
        own = _stated_mass(thing.name, thing.mass_kg)
        body = placement.outline(thing.name)
        yield MassItem(thing.name, own) if body is None else _body(rig, own, body)


def _body(rig: Rig, own: AnyFigure, body: Outline) -> MassItem:
    thing, place = rig.things[body.thing], rig.places[body.thing]
    width, depth, height = (
        stated(f"{thing.name} {side}", getattr(thing, f"{side}_mm")) for side in ("width", "depth", "height")
    )
    across, along = (depth, width) if place.turned in (90, 270) else (width, depth)
    if place.skew_deg:
        across, along = (found(each, lambda: "", width, depth) for each in (body.width_mm, body.depth_mm))
    deck = rig.decks.get(body.deck or "")
    up: Traced = number(body.raised_mm) + height / 2
    if body.under:
        thick = unstated("the deck") if deck is None else stated(f"{deck.name} thickness", deck.thickness_mm)
        up = 0 - thick - height / 2
    at = stands(place)
    return MassItem(
        thing.name,
        own,
        _middle(f"{thing.name}.x", number(body.x_mm) + across / 2, at),
        _middle(f"{thing.name}.y", number(body.y_mm) + along / 2, at),
        body.deck,
        figure(f"{thing.name}.z", up, _PLACE, at, rule=_HEIGHT, source=_TAKEN),
    )


def _middle(name: str, value: Term, *beside: Basis) -> Figure:
    return known_figure(name, value, _PLACE, *beside, rule=_MIDDLE, source=_TAKEN)


def _supplies(rig: Rig) -> set[str]:
    return {port.thing for feed in rig.power.feeds for port in feed.outlets} | set(rig.power.others)


def _decks(rig: Rig) -> Iterator[MassItem]:
    first = "" if rig.deck is None else rig.deck.name
    used = {place.deck or first for place in rig.places.values()}
    for deck in rig.decks.values():
        if deck.name in used:
            yield _bare(deck)


def _bare(deck: Deck) -> MassItem:
    name, own = deck.name, _stated_mass(deck.name, deck.mass_kg)
    if deck.width_mm is None or deck.depth_mm is None:
        return MassItem(name, own)
    low = 0 - stated(f"{name} thickness", deck.thickness_mm) / 2
    return MassItem(
        name,
        own,
        _middle(f"{name}.x", stated(f"{name} width", deck.width_mm) / 2),
        _middle(f"{name}.y", stated(f"{name} depth", deck.depth_mm) / 2),
        name,
        figure(f"{name}.z", low, _PLACE, rule=_HEIGHT, source=_TAKEN),
    )


def _panels(rig: Rig) -> Iterator[MassItem]:
    return (MassItem(panel.name, _stated_mass(panel.name, panel.mass_kg)) for panel in rig.panels.values())


def lead_items(leads: LeadMass) -> Iterator[MassItem]:
    """An item for the leads of each signal."""
    return (MassItem(f"{signal} leads", each) for signal, each in leads.masses.items())


def strip_items(rig: Rig, strips: MountingStrip, order: StripOrder, within: str = "") -> Iterator[MassItem]:
    """An item for each kind of strip and tape, and for each thing whose strips are not known; of a part of the rig by its name."""
    rule = "all that is laid × mass per metre"
    for unit in strips.unknown:
        name, lacking = f"strips of {unit.thing}", unstated(f"the strips of '{unit.thing}'")
        key = f"{within}{unit.thing}.strips-mass"
        beside = unit.lacking[0]
        yield MassItem(name, figure(key, lacking, KILOGRAMS, beside, rule=rule, source=ARITHMETIC, label=name))
    for kind in order.kinds:
        stock = rig.stock.strips.get(kind.strip or "")
        per_metre = None if stock is None else stock.mass_g_per_m
        grams: Traced = (
            unstated(f"the mass per metre of the {kind.name}")
            if per_metre is None
            else stated(f"{kind.name} weighs", per_metre)
        )
        own = figure(
            f"{within}{kind.key}.mass",
            kind.laid_mm / 1000 * grams / 1000,
            KILOGRAMS,
            rule=rule,
            source=ARITHMETIC,
            label=kind.name,
        )
        yield MassItem(kind.name, own)


def _balance(rig: Rig, deck: MassItem, things: tuple[MassItem, ...], placement: Placement) -> Balance:
    name = f"{deck.name}.balance"
    parts = (*(item for item in things if item.deck == deck.name), deck)
    unknown = [unstated(f"the size of deck '{deck.name}'")] if deck.x_mm is None else []
    unknown += [unstated(placement.missing[item.name]) for item in things if item.x_mm is None]
    masses = [item.mass for item in parts]
    own = figure(f"{name}.mass", total((*masses, *unknown)), KILOGRAMS, rule=_TOGETHER, source=_PHYSICS)

    def middle(axis: str, at: list[AnyFigure | None]) -> AnyFigure:
        moments = total(kg * each for kg, each in zip(masses, at, strict=True) if each is not None)
        return figure(f"{name}.{axis}", moments / own, _BALANCE, rule=_MOMENTS, source=_PHYSICS)

    x, y = middle("x", [item.x_mm for item in parts]), middle("y", [item.y_mm for item in parts])
    names = (name, "rig.balance") if rig.deck is not None and rig.deck.name == deck.name else (name,)
    points = tuple(
        Several(each, (x, y), written="{}, {}", formulas="x = {}; y = {}", rule=_MOMENTS, source=_PHYSICS)
        for each in names
    )
    feet = told_feet(rig.decks[deck.name])
    inside = None
    if feet is not None:
        within = least(*feet.inside(x, y).values())
        inside = figure(f"{name}.inside", within, _BALANCE, rule=_FEET, source=_PHYSICS)
    return Balance(deck.name, own, x, y, middle("z", [item.z for item in parts]), points, inside)


COMPUTE = mass
