"""Things in use -> what they are, their papers, their bodies, and where their facts come from."""

from __future__ import annotations

from collections.abc import Iterable

from rigc.model.rig import Rig
from rigc.model.things import ENDS, Instrument, Panel, Paperwork, Thing
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.schedule.cells import in_millimetres, stated, words
from rigc.reports.schedule.sources import sources_of

_COLUMNS = (
    Column("thing"),
    Column("what it is", key="title"),
    Column("stands", folds="{}"),
    Column("version", folds="version {}"),
    Column("firmware", folds="firmware {}"),
    Column("serial", folds="serial {}"),
    Column("owner", folds="of {}"),
    Column("w × d × h", "mm", key="body"),
    Column("mass"),
    Column("base"),
    Column("facts are", key="source", folds="facts {}"),
)


def thing_table(rig: Rig, used: Iterable[Thing], spare: Iterable[Thing]) -> Table:
    """A row for every instrument, unit, amp, desk, supply and panel in use, and for every spare of a thing."""
    rows = [
        *(_bare(instrument, _played(instrument)) for instrument in rig.instruments.values()),
        *(_row(thing, _stands(rig, thing)) for thing in used),
        *(_bare(panel, _on(panel)) for panel in rig.panels.values()),
        *(_row(thing, "spare") for thing in spare),
    ]
    return Table("things", "Units and other things", _COLUMNS, tuple(rows), empty="nothing is in use", landscape=True)


def _row(thing: Thing, stands: str) -> Row:
    papers = thing.papers
    return Row(
        (
            Cell(thing.name, strong=True),
            words(
                thing.title,
                f"was {thing.was}" if thing.was else "",
                f"stands in for {thing.stands_in}" if thing.stands_in else "",
            ),
            Cell(stands),
            _version(papers),
            stated(papers.firmware),
            stated(papers.serial),
            stated(papers.owner),
            _body(thing),
            stated(thing.mass_kg),
            words(
                "" if thing.feet is None else f"feet {thing.feet.value}",
                "" if thing.base is None else thing.base.value,
            ),
            Cell(sources_of(thing)),
        )
    )


def _bare(thing: Instrument | Panel, stands: str) -> Row:
    return Row(
        (
            Cell(thing.name, strong=True),
            Cell(thing.title),
            Cell(stands),
            *(Cell(""),) * 2,
            stated(thing.papers.serial),
            stated(thing.papers.owner),
            Cell(""),
            stated(thing.mass_kg),
            Cell(""),
            Cell(sources_of(thing)),
        )
    )


def _played(instrument: Instrument) -> str:
    if instrument.kind != "source":
        return "instrument"
    return next((kind for kind in ("keyboard", "microphone") if kind in instrument.flags), "line source")


def _on(panel: Panel) -> str:
    return "panel" if panel.deck is None else f"panel on {panel.deck}"


def _stands(rig: Rig, thing: Thing) -> str:
    if thing.name in rig.off_board:
        return " ".join(filter(None, (f"{thing.kind}, off the board", rig.off_board[thing.name].where)))
    place = rig.places.get(thing.name)
    if place is None:
        return f"{thing.kind}, off the board" if thing.kind in ENDS else "no place"
    where = "under the deck" if place.under else "on the deck"
    return where if place.deck is None else where.replace("the deck", place.deck)


def _version(papers: Paperwork) -> Cell:
    """The version that the facts are of; the one that stands there, where it is another."""
    taken, fitted = papers.version, papers.fitted
    if taken is not None and fitted is not None and taken.value == fitted.value:
        return Cell(taken.value)
    known = "" if taken is None else f"facts of {taken.value}"
    there = "" if fitted is None else f"fitted {fitted.value}"
    return words(known, there)


def _body(thing: Thing) -> Cell:
    sides = (thing.width_mm, thing.depth_mm, thing.height_mm)
    if all(side is None for side in sides):
        return Cell("")
    guessed = any(side is not None and side.assumed for side in sides)
    text = " × ".join("?" if side is None else in_millimetres(side) for side in sides)
    return Cell(text, mark="assumed" if guessed else "")
