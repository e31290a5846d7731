"""Intake sheet: what the builder asks the client before anything is designed, with the answers that the source has."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from rigc.analysis.deck.used_decks import used_decks
from rigc.analysis.deck.used_units import used_units
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.feeds.used_things import used_things
from rigc.analysis.stores.head_count import HeadCount
from rigc.model.asked_facts import COLUMNS, FACTS, OF_INSTRUMENTS, AskedFact
from rigc.model.deck import Case, Deck
from rigc.model.rig import Rig, Scenario
from rigc.model.things import Instrument, Thing, Unit
from rigc.reports.content import Cell, Column, Paragraph, Row, Sheet, Table
from rigc.reports.figure_cell import figure_cell

_COLUMNS = (
    Column("question"),
    Column("answer", least_mm=70),
    Column("must be answered", key="mandatory"),
    Column("initials", least_mm=18),
)
_OF_UNITS = (
    Column("what is asked"),
    Column("how the source states it"),
    Column("must be answered", key="mandatory"),
    Column("not stated of"),
)
_READING = Paragraph(
    "reading",
    (
        "Answers are as stated in the source. What is blank was never asked or never said: write it in, and initial it. Without an "
        "answer to what must be answered the design rests on guesses.",
    ),
    heading="How to use it",
)


def intake_sheet(rig: Rig, count: HeadCount, power: PowerAssignment) -> Sheet:
    """Question, answer, whether it must be answered, initials."""
    rows = tuple(
        Row((Cell(question, strong=True), answer, Cell("yes" if must else ""), Cell("")))
        for question, answer, must in _asked(rig, count, power)
    )
    tables = (Table("asked", "Intake", _COLUMNS, rows), _units_table(rig), *_instruments_table(rig))
    return Sheet("intake-sheet", "Intake sheet", "client and builder", (*tables, _READING))


def _units_table(rig: Rig) -> Table:
    """What is asked of each unit, in the words of the empty list that a client fills in, and by which his own is read."""
    units = tuple(unit for unit in used_units(rig) if not unit.ends)
    rows = (
        (
            ", ".join(each.heading for each in COLUMNS if each.fact == fact.key and each.handed_out),
            fact.blank,
            "yes" if fact.needed else "",
            _lacking(units, fact),
        )
        for fact in FACTS
    )
    return Table("asked-of-units", "Of each unit", _OF_UNITS, tuple(Row(tuple(map(Cell, row))) for row in rows))


def _instruments_table(rig: Rig) -> Iterator[Table]:
    """The same of the instruments, where there are any; a client states them in words, in no list."""
    every = tuple(rig.instruments.values())
    rows = ((fact.blank, "yes" if fact.needed else "", _lacking(every, fact)) for fact in OF_INSTRUMENTS)
    if every:
        heads = _OF_UNITS[1:]
        yield Table(
            "asked-of-instruments", "Of each instrument", heads, tuple(Row(tuple(map(Cell, row))) for row in rows)
        )


def _lacking(things: tuple[Unit | Instrument, ...], fact: AskedFact) -> str:
    found = [thing.name for thing in things if not fact.known(thing)]
    return "all" if len(found) == len(things) > 1 else ", ".join(found)


def _asked(rig: Rig, count: HeadCount, power: PowerAssignment) -> Iterator[tuple[str, Cell, bool]]:
    head = rig.head
    yield "Who plays it?", Cell(head.client), True
    yield "Home, gigging, touring, fly or studio?", Cell(head.rig_class), True
    yield "How long is a show?", Cell("" if head.show_min is None else head.show_min.typed), False
    yield "What is played into it?", _named(rig.instruments), True
    yield "What does it play into?", _named({name: unit for name, unit in rig.units.items() if unit.ends}), True
    yield "How many units?", figure_cell(count.units), True
    yield "Whose are they?", Cell(", ".join(_owners(rig, power))), True
    countries = dict.fromkeys(each.country for each in rig.scenarios.values() if each.country)
    yield "In which countries?", Cell(", ".join(countries)), True
    mains = dict.fromkeys(each.mains.typed for each in rig.scenarios.values() if each.mains is not None)
    yield "On which mains?", Cell("; ".join(mains)), True
    yield "Where does it play?", _named(rig.scenarios), False
    lift, airline = (rig.limit(name) for name in ("lift", "airline"))
    yield "How heavy may it be for who lifts it?", Cell("" if lift is None else lift.amount.typed), True
    yield "Does it fly, and how heavy may a piece be?", Cell("" if airline is None else airline.amount.typed), False
    yield "In which case?", _named(rig.cases), False
    yield "How many presets and songs?", Cell(_presets(rig)), False
    yield (
        "If everything fails, which way round?",
        Cell("; ".join(dict.fromkeys(each.text for each in rig.bypass_plans))),
        True,
    )
    yield "What travels as a spare?", Cell(", ".join(f"{each.count} × {each.what}" for each in rig.spares)), False


def _named(things: Mapping[str, Thing | Instrument | Scenario | Case]) -> Cell:
    return Cell(", ".join(f"{name} ({each.title})" if each.title else name for name, each in things.items()))


def _owners(rig: Rig, power: PowerAssignment) -> dict[str, None]:
    things: tuple[Instrument | Thing | Deck | Case, ...] = (
        *rig.instruments.values(),
        *used_things(rig, power),
        *used_decks(rig),
        *rig.cases.values(),
    )
    owners = (thing.papers.owner for thing in things)
    return dict.fromkeys(owner.value for owner in owners if owner is not None)


def _presets(rig: Rig) -> str:
    return f"{len(rig.presets)} presets, {len(rig.songs)} songs" if rig.presets or rig.songs else ""


PLACE = 4
SHEET = intake_sheet
