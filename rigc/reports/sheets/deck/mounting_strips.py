"""Mounting strips: what to cut, where it goes, and whether it holds; rails, plates and rolls."""

from __future__ import annotations

from rigc.analysis.deck.placement import Placement
from rigc.analysis.deck.zones import Zones
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.mounting.mounting_strip import MountingStrip, StrippedUnit, Unstripped
from rigc.analysis.mounting.rail_tape import RailTape
from rigc.analysis.mounting.roll_uses import RollUses
from rigc.analysis.mounting.strip_order import OrderedStrip, StripOrder
from rigc.facts import fastening
from rigc.model.rig import Rig
from rigc.model.things import Thing
from rigc.reports.content import Cell, Column, Row, Sheet, Table
from rigc.reports.deck.chosen_places import chosen_note, place_cell
from rigc.reports.deck.zone_column import ZONE, zoned
from rigc.reports.figure_cell import figure_cell
from rigc.reports.front.cautions import care
from rigc.reports.mounting.plate_table import plate_table
from rigc.reports.mounting.rail_table import rail_table
from rigc.reports.mounting.roll_table import roll_table
from rigc.reports.mounting.strip_notes import base_notes, preparation

_UNITS = (
    Column("unit"),
    ZONE,
    Column("strip", folds="{}"),
    Column("n × length", "mm", number=True, key="pieces"),
    Column("width", "mm", number=True, folds="{} wide"),
    Column("strip centres across the base", "mm", key="centres"),
    Column("on the deck: pieces at x, y", "mm", key="on_deck"),
    Column("engaged", "cm²", number=True),
    Column("needed", "cm²", number=True),
    Column("notes", folds="{}"),
)
_ORDERS = (
    Column("strip", folds="{}"),
    Column("width", "mm", number=True, folds="{} wide"),
    Column("on units", "mm", number=True),
    Column("on the deck", "mm", number=True),
    Column("on rails", "mm", number=True),
    Column("sum", "mm", number=True),
    Column("order", "m", number=True),
)


def mounting_strips(
    rig: Rig,
    power: PowerAssignment,
    strips: MountingStrip,
    tape: RailTape,
    order: StripOrder,
    rolls: RollUses,
    placement: Placement,
    zones: Zones,
) -> Sheet:
    """Strips by unit, rails, plates, totals to order, rolls, what is held otherwise, how to prepare, what to mind."""
    held = _held_otherwise(rig)
    blocks = (
        care("mounting-strips", rig, power, name="cautions"),
        _units(rig, strips, zones),
        *chosen_note(rig, (unit.thing for unit in strips.units)),
        rail_table(rig, tape),
        plate_table(rig, placement, strips),
        _orders(order),
        roll_table(rolls),
        held if held.rows else None,
        *preparation(),
    )
    told = tuple(each for each in blocks if each is not None)
    return Sheet("mounting-strips", "Mounting strips", "bench", told, landscape=True)


def _units(rig: Rig, strips: MountingStrip, zones: Zones) -> Table:
    by_thing: dict[str, StrippedUnit | Unstripped] = {unit.thing: unit for unit in strips.units}
    by_thing.update({unit.thing: unit for unit in strips.unknown})
    rows = []
    for thing in rig.places:
        each = by_thing.get(thing)
        if isinstance(each, StrippedUnit):
            rows.append(_unit(rig, each, zones))
        elif each is not None:
            unknown = (Cell(""),) * (len(_UNITS) - 3)
            rows.append(
                Row(
                    (
                        Cell(thing),
                        Cell(zones.thing(thing)),
                        *unknown,
                        Cell(f"not known, for want of {each.missing}", mark="missing"),
                    )
                )
            )
    return zoned(Table("strips", "Strips by unit", _UNITS, tuple(rows), empty="nothing stands on the deck"))


def _unit(rig: Rig, unit: StrippedUnit, zones: Zones) -> Row:
    thing, engaged = rig.things[unit.thing], figure_cell(unit.engaged, lacking="not known")
    assert isinstance(thing, Thing)
    return Row(
        (
            Cell(unit.thing),
            Cell(zones.thing(unit.thing)),
            Cell(unit.strip),
            figure_cell(unit.size),
            figure_cell(unit.width_mm),
            figure_cell(unit.centres),
            place_cell(unit.on_deck.text, rig.places[unit.thing]),
            Cell(engaged.text, mark="FAIL") if unit.too_small and not unit.bridged else engaged,
            figure_cell(unit.needed, lacking="not known"),
            Cell("; ".join((*_held(unit), *base_notes(thing, unit.covered)))),
        )
    )


def _held(unit: StrippedUnit) -> tuple[str, ...]:
    bridged = ("on a bridge plate",) if unit.bridged else ()
    fixing = (f"{unit.fixing} as well",) if unit.fixing else ()
    rail = ("meets only one rail",) if unit.tapes_met == 1 and not unit.bridged else ()
    trim = "; trim the deck's flush with the tape" if unit.deck_pieces and unit.tapes_met is not None else ""
    askew = (f"stands askew by {unit.skew_deg:g}°: its pieces turn with it{trim}",) if unit.skew_deg else ()
    return (*bridged, *fixing, *rail, *askew)


def _orders(order: StripOrder) -> Table:
    share = f"{fastening.ORDER_MORE.value * 100:g} %"
    step = f"{fastening.ORDER_STEP_MM.value / 1000:g}"
    caption = f"Totals by strip; the order is the sum and {share}, rounded up to {step} m"
    return Table("order", caption, _ORDERS, tuple(map(_order, order.kinds)), empty="no strip is used")


def _order(kind: OrderedStrip) -> Row:
    lengths = (kind.width_mm, kind.on_units_mm, kind.on_deck_mm, kind.on_rails_mm, kind.laid_mm)
    return Row(
        (
            Cell(kind.name, mark="" if kind.strip else "none so wide in stock"),
            *map(figure_cell, lengths),
            figure_cell(kind.order, strong=True),
        )
    )


def _held_otherwise(rig: Rig) -> Table:
    """Placed things that get no strip, and what is stated to hold them."""
    named = {name for name, _ in rig.mounting.strips}
    rows = []
    for place in rig.places.values():
        fixing = rig.mounting.fixing_of(place.thing)
        if place.under or (fixing is not None and place.thing not in named):
            where = "under the deck" if place.under else "on the deck"
            cell = Cell(fixing) if fixing else Cell("fixing not stated", mark="missing")
            rows.append(Row((Cell(place.thing), Cell(where), cell)))
    columns = (Column("thing"), Column("where", folds="{}"), Column("held by", folds="held by {}"))
    return Table("held_otherwise", "Held otherwise: no strip", columns, tuple(rows))


PLACE = 3
SHEET = mounting_strips
