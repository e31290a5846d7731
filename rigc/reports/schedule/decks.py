"""Decks and cases -> what is stated of them."""

from __future__ import annotations

from rigc.analysis.deck.used_decks import used_decks
from rigc.model.deck import Case, Deck
from rigc.model.rig import Rig
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.schedule.cells import stated, stated_all, words
from rigc.reports.schedule.sources import sources_of

_COLUMNS = (
    Column("deck or case", key="name"),
    Column("what it is", key="title"),
    Column("size"),
    Column("thickness"),
    Column("angle"),
    Column("room below, or in the lid", key="room"),
    Column("mass"),
    Column("price"),
    Column("serial", folds="serial {}"),
    Column("owner", folds="of {}"),
    Column("feet in"),
    Column("heel"),
    Column("made of, leads pass, holds", key="notes"),
    Column("facts are", key="source"),
)


def deck_table(rig: Rig) -> Table:
    """A row for every deck on which something is placed, the one that is meant where none is named, and every case."""
    rows = (*map(_deck, used_decks(rig)), *map(_case, rig.cases.values()))
    return Table("decks", "Decks and cases", _COLUMNS, rows, empty="no deck is stated", landscape=True)


def _deck(deck: Deck) -> Row:
    drops = f"drops at y {', '.join(f'{line:g}' for line in deck.drops_mm)} mm" if deck.drops_mm else ""
    return Row(
        (
            Cell(deck.name, strong=True),
            Cell(deck.title),
            stated_all((deck.width_mm, deck.depth_mm), " × "),
            stated(deck.thickness_mm),
            stated(deck.angle_deg),
            stated(deck.clearance_mm),
            stated(deck.mass_kg),
            stated(deck.papers.price),
            stated(deck.papers.serial),
            stated(deck.papers.owner),
            stated(deck.feet_inset_mm),
            stated(deck.heel_mm),
            words("bare metal" if deck.bare_metal else "insulating" if deck.insulating else "", drops),
            Cell(sources_of(deck)),
        )
    )


def _case(case: Case) -> Row:
    inside = "" if case.inside_mm is None else " × ".join(f"{side:g}" for side in case.inside_mm) + " mm inside"
    return Row(
        (
            Cell(case.name, strong=True),
            Cell(case.title),
            Cell(inside),
            *(Cell(""),) * 2,
            stated(case.lid_mm),
            stated(case.mass_kg),
            stated(case.papers.price),
            stated(case.papers.serial),
            stated(case.papers.owner),
            *(Cell(""),) * 2,
            words(f"holds {', '.join(case.holds)}" if case.holds else ""),
            Cell(sources_of(case)),
        )
    )
