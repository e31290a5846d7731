"""Stage hook-up: which jack of the board goes to what on the stage, by which lead, at what level, with which lift and phantom power."""

from __future__ import annotations

from rigc.analysis.control.switch_settings import GROUND_LIFT, SwitchSettings
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.leads.leads import Lead, Leads
from rigc.analysis.leads.lengths.cable_lengths import CableLengths
from rigc.analysis.signal.levels.levels import Levels
from rigc.analysis.signal.phantom_ways import PhantomWays
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.reports.content import Cell, Column, NoSheet, Row, Sheet, Table
from rigc.reports.figure_cell import figure_cell
from rigc.reports.front.cautions import care
from rigc.reports.leads.cells import plug_cells
from rigc.reports.signal.phantom_table import phantom_words
from rigc.reports.signal.radio_links import radio_links, radio_table

_COLUMNS = (
    Column("lead"),
    Column("from"),
    Column("to"),
    Column("plug A"),
    Column("plug B"),
    Column("cable", folds="{}"),
    Column("length", "mm", number=True),
    Column("level out", "dBu", number=True, key="level"),
    Column("ground lift", key="lift", folds="ground lift {}"),
)
_PHANTOM = Column("phantom power", key="phantom", folds="phantom power {}")


def stage_hook_up(
    rig: Rig,
    power: PowerAssignment,
    leads: Leads,
    lengths: CableLengths,
    levels: Levels,
    settings: SwitchSettings,
    phantom: PhantomWays,
) -> Sheet | NoSheet:
    """A row for each lead between the board and the stage, from deck to deck, and for what comes through the air; who plays where is told
    by scenario."""
    stage, links = [lead for lead in leads.all if lead.stage], radio_links(rig, leads)
    if not stage and not links and not rig.off_board and not rig.joins:
        return NoSheet("stage-hook-up", "Stage hook-up", "No lead goes from the board to the stage.")
    rows = tuple(_row(lead, lengths, levels, settings) for lead in stage)
    columns: tuple[Column, ...] = _COLUMNS
    given = [phantom_words(phantom, lead.start, lead.end) for lead in stage]
    if any(given):
        rows = tuple(row.replace(cells=(*row.cells, Cell(words))) for row, words in zip(rows, given, strict=True))
        columns = (*_COLUMNS, _PHANTOM)
    table = Table(
        "stage", "What is plugged in on the stage", columns, rows, empty="nothing leaves the decks", tick=True
    )
    joined, where, beside = _joined(rig, leads, lengths), _scenarios(rig), _beside(rig, stage)
    return Sheet(
        "stage-hook-up",
        "Stage hook-up",
        "crew",
        (
            *((joined,) if joined.rows else ()),
            table,
            *((radio_table(links),) if links else ()),
            *((beside,) if beside.rows else ()),
            *((where,) if where.rows else ()),
            care("stage-hook-up", rig, power),
        ),
        landscape=True,
    )


def _row(lead: Lead, lengths: CableLengths, levels: Levels, settings: SwitchSettings) -> Row:
    return Row((*_plugged(lead, lengths), _level(lead, levels), Cell(_lifts(lead.start, lead.end, settings))))


def _plugged(lead: Lead, lengths: CableLengths) -> tuple[Cell, ...]:
    """From where to where, with which plugs, of what, how long."""
    return (
        Cell(lead.mark, strong=True),
        Cell(str(lead.start), strong=True),
        Cell(str(lead.end), strong=True),
        *plug_cells(lead),
        Cell(lead.cable or ""),
        figure_cell(lengths.as_supplied[lead.mark], lacking="?"),
    )


def _joined(rig: Rig, leads: Leads, lengths: CableLengths) -> Table:
    """Decks that travel apart are joined on the stage, show by show: the leads between them are nowhere on either."""
    rows = tuple(
        Row((*_plugged(lead, lengths), Cell(f"{one} to {other}")))
        for one, other, marks in rig.joins
        for lead in map(leads.of, marks)
        if lead is not None
    )
    columns = (*_COLUMNS[:7], Column("decks", folds="{}"))
    return Table("joined", "What joins the decks", columns, rows, tick=True)


def _beside(rig: Rig, stage: list[Lead]) -> Table:
    """What belongs to the rig and stands off the board: where, what of it goes to the board, and which mains strip it is plugged into."""
    strips = {name: strip for name, strip, _ in rig.power.plugged}
    rows = tuple(
        Row(
            (
                Cell(name, strong=True),
                Cell(rig.things[name].title),
                Cell(each.where or "?"),
                Cell(", ".join(lead.mark for lead in stage if name in (lead.start.thing, lead.end.thing))),
                Cell(strips.get(name, "")),
            )
        )
        for name, each in rig.off_board.items()
    )
    columns = (
        Column("thing"),
        Column("what it is", key="title"),
        Column("where"),
        Column("leads"),
        Column("mains strip", key="strip", folds="plugged into {}"),
    )
    return Table("beside", "What stands beside the board", columns, rows, tick=True)


def _level(lead: Lead, levels: Levels) -> Cell:
    """What the board gives, by scenario where that differs; nothing where the lead carries no sound."""
    own = [edge for edge in levels.edges if edge.mark == lead.mark]
    if len(own) == 1:
        return figure_cell(own[0].nominal)
    told = [f"{figure_cell(edge.nominal).text} ({', '.join((*edge.scenarios, *edge.instruments))})" for edge in own]
    return Cell("; ".join(told))


def _lifts(start: Port, end: Port, settings: SwitchSettings) -> str:
    """How the lift at either end stands: by scenario where that differs."""
    found = [each for each in settings.all if each.switch == GROUND_LIFT and each.at in (str(start), str(end))]
    told = ((each.position, ", ".join(each.scenarios)) for each in found)
    return "; ".join(f"{position} ({where})" if where else position for position, where in told)


def _scenarios(rig: Rig) -> Table:
    """Where only some of the amps are played."""
    rows = tuple(
        Row(
            (Cell(each.name, strong=True), Cell(each.title), Cell("all" if each.amps is None else ", ".join(each.amps)))
        )
        for each in rig.scenarios.values()
    )
    columns = (Column("scenario"), Column("place", key="title"), Column("plays into", key="amps"))
    return Table("scenarios", "Where what is plugged in", columns, rows)


PLACE = 2
SHEET = stage_hook_up
