"""Customs list: every thing that crosses a border, decks and cases too, with marks, mass, value and origin."""

from __future__ import annotations

from collections.abc import Iterable

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.feeds.used_things import used_things
from rigc.diagnostics.figures import kilograms
from rigc.model.fact import Choice, Quantity
from rigc.model.money import summed
from rigc.model.rig import Rig
from rigc.model.things import Paperwork, Thing
from rigc.record import Record
from rigc.reports.content import Cell, Column, NoSheet, Paragraph, Row, Sheet, Table
from rigc.reports.schedule.cells import stated

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
        "rules are the customs' own. Sums are of what is stated; an empty cell was not.",
        "Leads, spares, and what holds the units are not in it.",
    ),
    heading="How to use it",
)


def customs_list(rig: Rig, power: PowerAssignment) -> Sheet | NoSheet:
    """Item, description, marks, pieces, mass, value, origin, blank; amps and desks only where they bear such facts."""
    things = [thing for thing in used_things(rig, power) if thing.kind in ("unit", "supply") or _papers(thing)]
    if not any(_papers(thing) for thing in things):
        reason = "No unit states its insured value, its price or its origin."
        return NoSheet("customs-list", "Customs list", reason)
    items = [
        *(_of_thing(thing) for thing in (*things, *rig.mains_strips.values())),
        *(_Item(deck.name, deck.title, deck.mass_kg, Paperwork(price=deck.price)) for deck in rig.decks.values()),
        *(_Item(case.name, case.title, case.mass_kg, Paperwork()) for case in rig.cases.values()),
    ]
    rows = [_row(number, item) for number, item in enumerate(items, 1)]
    table = Table("things", "Things that travel", _COLUMNS, (*rows, _sum(items)))
    return Sheet("customs-list", "Customs list", "customs, insurer", (_READING, table), landscape=True)


class _Item(Record):
    """One thing of the list."""

    name: str
    title: str
    mass_kg: Quantity | None
    papers: Paperwork


def _of_thing(thing: Thing) -> _Item:
    return _Item(thing.name, thing.title, thing.mass_kg, thing.papers)


def _papers(thing: Thing) -> bool:
    papers = thing.papers
    return any(each is not None for each in (papers.insured, papers.price, papers.origin))


def _row(number: int, thing: _Item) -> Row:
    papers = thing.papers
    return Row(
        (
            Cell(str(number)),
            Cell(f"{thing.title} ({thing.name})" if thing.title else thing.name, strong=True),
            stated(papers.serial),
            stated(papers.owner),
            Cell("1"),
            Cell("" if thing.mass_kg is None else kilograms(thing.mass_kg.value)),
            stated(papers.insured),
            stated(papers.price),
            stated(papers.origin),
            Cell(""),
        )
    )


def _sum(things: list[_Item]) -> Row:
    known = [thing.mass_kg.value for thing in things if thing.mass_kg is not None]
    some = "at least" if len(known) < len(things) else ""
    return Row(
        (
            Cell(""),
            Cell("sum", strong=True),
            *(Cell(""),) * 2,
            Cell(str(len(things))),
            Cell(kilograms(sum(known)), strong=True, mark=some),
            _money(thing.papers.insured for thing in things),
            _money(thing.papers.price for thing in things),
            *(Cell(""),) * 2,
        ),
        total=True,
    )


def _money(facts: Iterable[Choice | None]) -> Cell:
    """The sum in each currency, marked where a thing states none."""
    facts = list(facts)
    text = ", ".join(f"{number} {currency}" for currency, number in summed(facts).items())
    return Cell(text, strong=True, mark="at least" if text and None in facts else "")


PLACE = 9
SHEET = customs_list
