"""Missing and assumed facts: what is not known or was guessed, what leans on it, and room for who measures it by when."""

from __future__ import annotations

from typing import Any

from rigc.analysis.findings.open_facts import MissingFact, OpenFacts, UnsureFact
from rigc.diagnostics.decimals import decimals
from rigc.model.fact import Fact, spread_of
from rigc.reports.content import Cell, Column, NoSheet, Paragraph, Row, Sheet, Table
from rigc.reports.front.sheet_codes import in_words
from rigc.reports.reach import sheets_of
from rigc.reports.schedule.sources import provenance_words, statement_word

_WHO = (Column("who measures", key="who", least_mm=26), Column("by when", key="when", least_mm=24))
_UNSURE = (
    Column("thing"),
    Column("fact"),
    Column("used value", key="value"),
    Column("may be off by", key="spread"),
    Column("leans on it", key="affects"),
    Column("stated", key="source"),
    *_WHO,
)
_MISSING = (
    Column("thing"),
    Column("what is not known", key="message"),
    Column("what to do", key="help"),
    Column("rules"),
    *_WHO,
)
_READING = Paragraph(
    "reading",
    (
        "Measure from the top: first what decides whether a limit is kept, before anything is cut or bought; then what may take "
        "most of what is left to a limit; the rest last. What is measured is written "
        'into the block of its thing, with `measured DATE by "WHO"`. What a guess may be off by is what its kind is usually off by '
        "(common practice), until it is stated behind the number: `+- 10 %`.",
    ),
    heading="How to use it",
)


def missing_and_assumed_facts(facts: OpenFacts) -> Sheet | NoSheet:
    """Thing, fact, used value, what leans on it, who measures it, by when."""
    name, title = "missing-and-assumed-facts", "Missing and assumed facts"
    if not facts.unsure and not facts.missing:
        return NoSheet(name, title, "Every fact that a rule asks for is stated, and none of them was assumed.")
    unsure = Table(
        "assumed",
        "Assumed facts, and others that decide",
        _UNSURE,
        tuple(map(_unsure, facts.unsure)),
        empty="none",
        landscape=True,
    )
    missing = Table(
        "missing", "Missing facts", _MISSING, tuple(map(_missing, facts.missing)), empty="none", landscape=True
    )
    return Sheet(name, title, "builder, whoever measures", (_READING, unsure, missing), landscape=True)


def _unsure(each: UnsureFact) -> Row:
    word = statement_word(each.fact)
    affects = ", ".join(map(in_words, sheets_of(word)))
    return Row(
        (
            Cell(each.thing, strong=True),
            Cell(word),
            Cell(each.fact.typed, strong=True, mark="MEASURE FIRST" if each.decides else ""),
            Cell(_off(each.fact)),
            Cell("; ".join(part for part in (*each.decides, _takes(each), affects) if part)),
            Cell(provenance_words(each.fact.provenance)),
            *(Cell(""),) * 2,
        )
    )


def _off(fact: Fact[Any]) -> str:
    """What it may be off by: as stated, else what guesses of its kind are off by."""
    off = spread_of(fact)
    return "" if off is None else f"{off.typed}, stated" if fact.spread is not None else off.typed


def _takes(each: UnsureFact) -> str:
    """What it takes of the room to a limit that is not in doubt; nothing where that is too little to show."""
    share = decimals(each.takes * 100, 0)
    return "" if each.decides or share == "0" else f"takes {share} % of what is left to a limit: {each.of.rstrip(',')}"


def _missing(each: MissingFact) -> Row:
    return Row(
        (
            Cell(", ".join(each.things), strong=True),
            Cell(each.message),
            Cell(each.help),
            Cell(", ".join(each.rules)),
            *(Cell(""),) * 2,
        )
    )


PLACE = 2
SHEET = missing_and_assumed_facts
