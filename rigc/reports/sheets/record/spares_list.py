"""Spares list: what travels as a spare, what it fits, how many there must be, and in which bag."""

from __future__ import annotations

from rigc.analysis.leads.leads import Lead, Leads
from rigc.analysis.leads.lengths.cable_lengths import CableLengths
from rigc.analysis.leads.lengths.lead_ends import tenths
from rigc.analysis.leads.lengths.lead_spares import SparesAsked, spares_asked, straight_stands_in
from rigc.analysis.mains.fuses import Fuses
from rigc.model.records import Spare
from rigc.model.rig import Rig
from rigc.reports.content import Cell, Column, NoSheet, Paragraph, Row, Sheet, Table
from rigc.reports.schedule.worst_first import worst_first

_COLUMNS = (
    Column("item"),
    Column("length"),
    Column("fits"),
    Column("not for", key="not_for"),
    Column("carried", number=True),
    Column("bag"),
    Column("seen", least_mm=20),
)
_ASKED = (
    Column("leads"),
    Column("at least", number=True, key="least"),
    Column("as long as", "mm", number=True, key="length"),
    Column("which is the length of", key="longest"),
    Column("carried, long enough", number=True, key="carried"),
)


def spares_list(rig: Rig, leads: Leads, lengths: CableLengths, fuses: Fuses) -> Sheet | NoSheet:
    """Item, what it fits, quantity, least quantity, bag."""
    if not rig.spares:
        return NoSheet("spares-list", "Spares list", "No spare is stated.")
    rows = tuple(_row(rig, spare, leads, lengths, fuses) for spare in rig.spares)
    asked = spares_asked(rig, leads, lengths)
    blocks = (
        Table("spares", "Spares that travel", _COLUMNS, rows, tick=True),
        *((_least(rig, asked),) if asked else ()),
        Paragraph(
            "reading",
            (
                "Spare leads are straight. For a lead that is reversed, crossed, or a leg of a Y lead, carry its like, marked as it is.",
                "A spare that was used is written down and replaced before the next show. Pack it where the list says.",
            ),
            heading="How to use it",
        ),
    )
    return Sheet("spares-list", "Spares list", "crew", blocks)


def _row(rig: Rig, spare: Spare, leads: Leads, lengths: CableLengths, fuses: Fuses) -> Row:
    length = spare.length_mm
    fits, not_for = _fits(rig, spare, leads, lengths)
    fits = fits or ", ".join(fuses.fitting(spare))
    return Row(
        (
            Cell(_item(rig, spare), strong=True),
            Cell("" if length is None else length.typed),
            Cell(fits),
            Cell(not_for, strong=True),
            Cell(str(spare.count)),
            Cell(spare.bag),
            Cell(""),
        )
    )


def _item(rig: Rig, spare: Spare) -> str:
    """`stereo delay (lant-2)` of a thing that is declared, else as the source says."""
    title = rig.things[spare.thing].title if spare.thing else ""
    return f"{title} ({spare.thing})" if title else spare.what


def _fits(rig: Rig, spare: Spare, leads: Leads, lengths: CableLengths) -> tuple[str, str]:
    """The units and supplies that take a battery named so; the leads of the board that a spare lead of this signal, or a spare plug of this kind, can stand in for; and those of the
    signal for which it must not be taken, each with why."""
    kind, _, what = spare.what.partition(" ")
    if kind == "plug" and what in rig.stock.plugs:
        found = [lead.mark for lead in leads.all if what in lead.ends]
        return ", ".join(dict.fromkeys(found)) or "no lead of the board", ""
    if spare.length_mm is None:
        held = (
            *((unit.name, unit.battery) for unit in rig.units.values()),
            *((each.name, each.battery) for each in rig.instruments.values()),
            *((supply.name, supply.pack) for supply in rig.supplies.values()),
        )
        takers = [name for name, battery in held if battery and battery.kind == spare.what]
        return ", ".join(takers), ""
    longest = tenths(spare.length_mm.value)
    found, others = [], []
    for lead in leads.all:
        if f"{lead.signal} lead" == spare.what and not lead.stage:
            why = _unfit(lead, longest, lengths.supplied_tenths(lead.mark))
            others += [f"{lead.mark} ({why})"] if why else []
            found += [] if why else [lead.mark]
    return ", ".join(dict.fromkeys(found)) or "no lead of the board", ", ".join(dict.fromkeys(others))


def _unfit(lead: Lead, longest: int, length: int | None) -> str:
    """Why a straight lead so many tenths of a millimetre long does not take the place of a lead; empty where it does."""
    if not straight_stands_in(lead):
        return lead.make.kind or "captive"
    if length is None:
        return "its length is not known"
    return "longer" if length > longest else ""


def _least(rig: Rig, asked: tuple[SparesAsked, ...]) -> Table:
    rows = tuple(
        Row(
            (
                Cell(each.signal),
                Cell(str(each.number)),
                Cell(f"{each.longest / 10:g}" if each.longest_mark else "?"),
                Cell(each.longest_mark),
                Cell(str(each.carried), mark="" if each.carried >= each.number else "TOO FEW"),
            )
        )
        for each in asked
    )
    return Table(
        "least",
        f"What a {rig.head.rig_class} rig carries at least (common practice, no source)",
        _ASKED,
        worst_first(rows),
    )


PLACE = 8
SHEET = spares_list
