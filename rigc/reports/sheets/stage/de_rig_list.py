"""De-rig list: what comes off, in which state, and to whom each thing goes back."""

from __future__ import annotations

from rigc.analysis.control.switch_settings import SwitchSettings
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.feeds.used_things import spare_things, used_things
from rigc.model.deck import Case, Deck
from rigc.model.rig import Rig
from rigc.model.things import Instrument, Panel, Thing
from rigc.reports.content import Cell, Column, NoSheet, Paragraph, Row, Sheet, Table
from rigc.reports.schedule.cells import stated

NAME, TITLE = "de-rig-list", "De-rig list"

_COLUMNS = (
    Column("thing"),
    Column("what it is", key="title"),
    Column("serial", folds="serial {}"),
    Column("feet", key="feet", folds="feet: {}"),
    Column("set back to", key="settings", folds="set back to {}"),
    Column("goes back to", key="owner", folds="goes back to {}"),
    Column("signed", least_mm=30),
)
_READING = Paragraph(
    "reading",
    (
        "Amps and desk are muted first; the mains lead comes out before any other. A switch that was taped over goes back to where it "
        "leaves its maker, and the tape comes off: the next user does not know of it.",
        "Compare each serial with the thing in your hand. Cells that are not in use come out.",
    ),
    heading="How to use it",
)


def de_rig_list(rig: Rig, power: PowerAssignment, settings: SwitchSettings) -> Sheet | NoSheet:
    """Thing, serial, feet, switches to set back, owner, signed."""
    here = {*rig.places, *rig.off_board}
    things = [thing for thing in _things(rig, power) if thing.name in here or thing.papers.owner is not None]
    if not things:
        return NoSheet(NAME, TITLE, "Nothing stands on the board, and nobody's property is stated.")
    rows = tuple(_row(thing, settings) for thing in things)
    return Sheet(
        NAME, TITLE, "crew", (Table("things", "What comes off", _COLUMNS, rows, tick=True), _READING), landscape=True
    )


_Returned = Thing | Instrument | Panel | Deck | Case


def _things(rig: Rig, power: PowerAssignment) -> tuple[_Returned, ...]:
    """What may come off or go back to somebody."""
    return (
        *used_things(rig, power),
        *rig.mains_strips.values(),
        *rig.instruments.values(),
        *rig.panels.values(),
        *rig.decks.values(),
        *rig.cases.values(),
        *spare_things(rig, power),
    )


def _row(thing: _Returned, settings: SwitchSettings) -> Row:
    moved = [
        f"{each.at.removeprefix(f'{thing.name}.')}: {each.new}"
        for each in settings.all
        if each.at.partition(".")[0] == thing.name and each.new and each.new != each.position
    ]
    stated_feet = thing.feet if isinstance(thing, Thing) else None
    feet = ""
    if stated_feet is not None:
        feet = "back on, from the bag" if stated_feet.value == "removed" else stated_feet.value
    return Row(
        (
            Cell(thing.name, strong=True),
            Cell(thing.title),
            stated(thing.papers.serial),
            Cell(feet),
            Cell("; ".join(moved)),
            stated(thing.papers.owner),
            Cell(""),
        )
    )


PLACE = 9
SHEET = de_rig_list
