"""Customs list: every thing that crosses a border, instruments, decks, cases, leads and spares too, with marks, mass, value and origin."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from rigc.analysis.deck.used_decks import used_decks
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.feeds.used_things import spare_things, used_supplies, used_things
from rigc.analysis.leads.leads import Leads
from rigc.analysis.power.pack_lives import PackLives
from rigc.analysis.weight.mass import Mass
from rigc.diagnostics.figures import kilograms
from rigc.model.deck import Case, Deck
from rigc.model.fact import Choice, Quantity
from rigc.model.money import summed
from rigc.model.rig import Rig
from rigc.model.things import Instrument, Panel, Paperwork, Thing
from rigc.record import Record
from rigc.reports.content import Cell, Column, NoSheet, Paragraph, Row, Sheet, Table
from rigc.reports.figure_cell import figure_cell
from rigc.reports.front.sheet_codes import in_runs, see
from rigc.reports.schedule.cells import stated
from rigc.traced.figure import AnyFigure, Figure

_COLUMNS = (
    Column("item", number=True),
    Column("description"),
    Column("marks, serial", key="marks"),
    Column("owner", folds="of {}"),
    Column("pieces", number=True, folds="{} of each"),
    Column("mass", "kg", number=True),
    Column("insured value", key="insured"),
    Column("price", key="price", folds="price {}"),
    Column("origin"),
    Column("for the customs", key="blank", least_mm=22),
)
_READING = Paragraph(
    "reading",
    (
        "A list to fill a carnet or a pro-forma from, as stated in the source: check serials against the things. The forms and their "
        "rules are the customs' own. Sums are of what is stated; what has no cell, or an empty one, was not.",
        f"Leads are told by their signal, each of them stands on the {see('cable-list')}; what holds the units is not in it.",
    ),
    heading="How to use it",
)


def customs_list(rig: Rig, power: PowerAssignment, leads: Leads, mass: Mass, packs: PackLives) -> Sheet | NoSheet:
    """Item, description, marks, pieces, mass, value, origin, blank; what may be the house's (amps, desks, sources that are no
    instruments) only where it bears such facts."""
    things = tuple(_things(rig, power))
    if not _is_stated(rig, power):
        reason = "Of nothing that travels is its insured value, its price or its origin stated."
        return NoSheet("customs-list", "Customs list", reason)
    masses = {item.name: item.mass for item in mass.items}
    items = [
        *(_of_thing(thing, masses) for thing in things),
        *_leads(rig, leads, masses),
        *(_Item(_length(each.what, each.length_mm), each.count) for each in rig.spares if not each.thing),
    ]
    rows = [_row(number, item) for number, item in enumerate(items, 1)]
    table = Table("things", "Things that travel", _COLUMNS, (*rows, _sum(items)))
    return Sheet(
        "customs-list",
        "Customs list",
        "customs, insurer",
        (_READING, table, *_cells(rig, power, packs)),
        landscape=True,
    )


def _cells(rig: Rig, power: PowerAssignment, packs: PackLives) -> tuple[Paragraph, ...]:
    """Which supplies hold a battery, with its energy as the carrier asks for it."""
    energies = {life.supply: life.energy for life in packs.all}
    held = [
        f"{supply.name}: {supply.pack.kind}, {_energy(energies.get(supply.name))}."
        for supply in used_supplies(rig, power)
        if supply.pack is not None
    ]
    note = (
        "Lithium cells travel in the cabin with their contacts covered (dangerous-goods rules of IATA, from memory); the carrier says how "
        "many, and up to what energy."
    )
    return (Paragraph("cells", (*held, note), heading="Batteries that travel"),) if held else ()


def _energy(energy: AnyFigure | None) -> str:
    return f"{energy.text} Wh" if isinstance(energy, Figure) else "its energy is not stated"


_Travels = Thing | Instrument | Panel | Deck | Case


class _Item(Record):
    """One row of the list; the mass in kg of all its pieces."""

    what: str
    pieces: int
    kg: float | None = None
    mass: AnyFigure | None = None
    papers: Paperwork = Paperwork()
    marks: str = ""


def _things(rig: Rig, power: PowerAssignment) -> Iterator[_Travels]:
    ours = ("unit", "supply", "mains strip", "instrument", "panel")
    every = (*rig.instruments.values(), *used_things(rig, power), *rig.mains_strips.values(), *rig.panels.values())
    yield from (thing for thing in every if thing.kind in ours or _papers(thing))
    yield from used_decks(rig)
    yield from rig.cases.values()
    yield from spare_things(rig, power)


def _papers(thing: _Travels) -> bool:
    papers = thing.papers
    return any(each is not None for each in (papers.insured, papers.price, papers.origin))


def _of_thing(thing: _Travels, masses: dict[str, AnyFigure]) -> _Item:
    what = f"{thing.title} ({thing.name})" if thing.title else thing.name
    kg = None if thing.mass_kg is None else thing.mass_kg.value
    return _Item(what, 1, kg, masses.get(thing.name), thing.papers)


def _leads(rig: Rig, leads: Leads, masses: dict[str, AnyFigure]) -> Iterator[_Item]:
    """The leads of the board by signal, but for those that are fixed to a thing, then those on the stage."""
    for signal in dict.fromkeys(lead.signal for lead in leads.all):
        of_signal = [lead for lead in leads.all if lead.signal == signal and lead.captive is None]
        for stage, where in ((False, "on the board"), (True, "on the stage")):
            marks = dict.fromkeys(lead.leg_of or lead.mark for lead in of_signal if lead.stage == stage)
            if marks:
                own = None if stage else masses.get(f"{signal} leads")
                yield _Item(
                    f"{signal} leads {where}",
                    len(marks),
                    own if isinstance(own, Figure) else None,
                    own,
                    marks=in_runs(marks),
                )
    for each in rig.instruments.values():
        if each.plain_mm is not None:
            yield _Item(_length(f"plain lead of {each.name}", each.plain_mm), 1)


def _length(what: str, length: Quantity | None) -> str:
    return what if length is None else f"{what}, {length.typed}"


def _row(number: int, item: _Item) -> Row:
    papers = item.papers
    weighs = "" if item.kg is None else kilograms(item.kg)
    return Row(
        (
            Cell(str(number)),
            Cell(item.what, strong=True),
            stated(papers.serial) if papers.serial is not None else Cell(item.marks),
            stated(papers.owner),
            Cell(str(item.pieces)),
            figure_cell(item.mass, lacking=weighs),
            stated(papers.insured),
            stated(papers.price),
            stated(papers.origin),
            Cell(""),
        )
    )


def _sum(items: list[_Item]) -> Row:
    known = [item.kg for item in items if item.kg is not None]
    some = "at least" if len(known) < len(items) else ""
    return Row(
        (
            Cell(""),
            Cell("sum", strong=True),
            *(Cell(""),) * 2,
            Cell(str(sum(item.pieces for item in items))),
            Cell(kilograms(sum(known)), strong=True, mark=some),
            _money(item.papers.insured for item in items),
            _money(item.papers.price for item in items),
            *(Cell(""),) * 2,
        ),
        total=True,
    )


def _money(facts: Iterable[Choice | None]) -> Cell:
    """The sum in each currency, marked where a thing states none."""
    facts = list(facts)
    text = ", ".join(f"{number} {currency}" for currency, number in summed(facts).items())
    return Cell(text, strong=True, mark="at least" if text and None in facts else "")


def _is_stated(rig: Rig, power: PowerAssignment) -> bool:
    """Whether anything that travels bears such facts."""
    return any(map(_papers, _things(rig, power)))


PLACE = 9
SHEET = customs_list
THERE = _is_stated
