"""Mass: units, supplies, decks, leads, strips and panels -> what the board weighs, and where it balances."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.lead_mass import LeadMass
from rigc.analysis.computations.mounting_strip import MountingStrip
from rigc.analysis.computations.placement import Outline, Placement
from rigc.analysis.computations.strip_order import StripOrder
from rigc.analysis.power.used_units import used_units
from rigc.model.deck import Deck
from rigc.model.fact import Quantity
from rigc.model.rig import Rig
from rigc.record import Record


class MassItem(Record):
    """What a thing, or all leads of a signal, or all strip of a kind weigh; `kg` is None where a fact is missing, which
    `missing` then tells. `x_mm` and `y_mm` are its middle on its deck, None for what is spread over the board; `z_mm` is
    its middle above the deck's top (feet and strips not counted), None also where a height is not stated."""

    name: str
    kg: float | None
    missing: str = ""
    x_mm: float | None = None
    y_mm: float | None = None
    deck: str | None = None
    z_mm: float | None = None


class Balance(Record):
    """The centre of gravity of one bare deck with its units and supplies, from the deck's front-left corner.

    Figures are None where `missing` names a fact; the height above the deck's top, `z_mm`, where `no_height` names things.
    """

    deck: str
    kg: float | None
    x_mm: float | None
    y_mm: float | None
    missing: tuple[str, ...]
    z_mm: float | None = None
    no_height: tuple[str, ...] = ()


class Mass(Record):
    """All items of the board, and its cases; a sum is None as long as one of its items is not known."""

    items: tuple[MassItem, ...]
    cases: tuple[MassItem, ...]
    balances: tuple[Balance, ...]

    @property
    def total_kg(self) -> float | None:
        """The board without a case."""
        return _sum(self.items)

    @property
    def with_case_kg(self) -> float | None:
        """The board with the cases declared."""
        return _sum((*self.items, *self.cases))

    @property
    def known_kg(self) -> float:
        """What is certain: all that is known, cases counted in."""
        return sum(item.kg or 0.0 for item in (*self.items, *self.cases))

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
    """Units, supplies, panels and decks in use, leads that stay on the board (stage leads don't), strips as laid."""
    things = tuple(_things(rig, placement))
    decks = tuple(_decks(rig))
    rest = (*_panels(rig), *lead_items(leads), *strip_items(rig, strips, order))
    cases = tuple(_item(case.name, case.mass_kg) for case in rig.cases.values())
    return Mass((*things, *decks, *rest), cases, tuple(_balance(deck, things) for deck in decks))


def _sum(items: tuple[MassItem, ...]) -> float | None:
    masses = [item.kg for item in items]
    return None if None in masses else sum(kg for kg in masses if kg is not None)


def _item(name: str, kg: Quantity | None) -> MassItem:
    return MassItem(name, None, f"the mass of '{name}'") if kg is None else MassItem(name, kg.value)


def _things(rig: Rig, placement: Placement) -> Iterator[MassItem]:
    used = {unit.name for unit in used_units(rig)} | _supplies(rig)
    for thing in (*rig.units.values(), *rig.supplies.values(), *rig.mains_strips.values()):
        if thing.name not in rig.places and (thing.kind not in ("unit", "supply") or thing.name not in used):
            continue
        item = _item(thing.name, thing.mass_kg)
        body = placement.outline(thing.name)
        if body is not None:
            x_mm, y_mm = body.x_mm + body.width_mm / 2, body.y_mm + body.depth_mm / 2
            item = MassItem(item.name, item.kg, item.missing, x_mm, y_mm, body.deck, _height(rig, body))
        yield item


def _height(rig: Rig, body: Outline) -> float | None:
    """The middle of a body above its deck's top; what hangs below starts at the deck's underside."""
    if body.height_mm is None:
        return None
    if not body.under:
        return body.raised_mm + body.height_mm / 2
    deck = rig.decks.get(body.deck or "")
    return None if deck is None or deck.thickness_mm is None else -deck.thickness_mm.value - body.height_mm / 2


def _supplies(rig: Rig) -> set[str]:
    return {port.thing for feed in rig.power.feeds for port in feed.outlets} | set(rig.power.others)


def _decks(rig: Rig) -> Iterator[MassItem]:
    first = "" if rig.deck is None else rig.deck.name
    used = {place.deck or first for place in rig.places.values()}
    for deck in rig.decks.values():
        if deck.name in used:
            yield _bare(deck)


def _bare(deck: Deck) -> MassItem:
    item = _item(deck.name, deck.mass_kg)
    if deck.width_mm is None or deck.depth_mm is None:
        return item
    z_mm = None if deck.thickness_mm is None else -deck.thickness_mm.value / 2
    return MassItem(item.name, item.kg, item.missing, deck.width_mm.value / 2, deck.depth_mm.value / 2, deck.name, z_mm)


def _panels(rig: Rig) -> Iterator[MassItem]:
    return (_item(panel.name, panel.mass_kg) for panel in rig.panels.values())


def lead_items(masses: LeadMass) -> Iterator[MassItem]:
    """An item for the leads of each signal."""
    for signal, grams in masses.grams.items():
        missing = masses.missing.get(signal, "")
        yield MassItem(f"{signal} leads", None if missing else grams / 1000, missing)


def strip_items(rig: Rig, strips: MountingStrip, order: StripOrder) -> Iterator[MassItem]:
    """An item for each kind of strip and tape, and for each thing whose strips are not known."""
    for unit in strips.unknown:
        yield MassItem(f"strips of {unit.thing}", None, f"the strips of '{unit.thing}'")
    for kind in order.kinds:
        stock = rig.stock.strips.get(kind.strip or "")
        per_metre = None if stock is None else stock.mass_g_per_m
        if per_metre is None:
            yield MassItem(kind.name, None, f"the mass per metre of the {kind.name}")
        else:
            yield MassItem(kind.name, kind.laid_mm / 1000 * per_metre.value / 1000)


def _balance(deck: MassItem, things: tuple[MassItem, ...]) -> Balance:
    parts = (*(item for item in things if item.deck == deck.name), deck)
    missing = [item.missing for item in parts if item.missing]
    missing += [f"the size of '{deck.name}'"] if deck.x_mm is None else []
    missing += [f"the place or body of '{item.name}'" for item in things if item.x_mm is None]
    if missing:
        return Balance(deck.name, None, None, None, tuple(missing))
    weighed = [(item.kg or 0.0, item.x_mm or 0.0, item.y_mm or 0.0, item.z_mm or 0.0) for item in parts]
    kg = sum(each for each, *_ in weighed)
    x_mm, y_mm, z_mm = (sum(each[0] * each[axis] for each in weighed) / kg for axis in (1, 2, 3))
    low = tuple(item.name for item in parts if item.z_mm is None)
    return Balance(deck.name, kg, x_mm, y_mm, (), None if low else z_mm, low)


COMPUTE = mass
