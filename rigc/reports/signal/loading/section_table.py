"""Sections -> the loading table proper: leads, capacitance, source, resonance or treble corner, loss, verdict."""

from __future__ import annotations

from rigc.analysis.signal.at_limit import over
from rigc.analysis.signal.loading.loading import Loading
from rigc.analysis.signal.loading.section import Section
from rigc.analysis.signal.loading.section_figures import SectionFigures
from rigc.analysis.signal.loading.section_walk import OUTSIDE
from rigc.analysis.signal.loading.state_words import marks
from rigc.analysis.signal.unit_mode import TRACK
from rigc.facts.loading import CABLE_LIMIT, LEAST_BRIDGING, TREBLE_CORNER_HZ
from rigc.model.rig import Rig
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.figure_cell import told_cell
from rigc.reports.schedule.worst_first import worst_first
from rigc.reports.signal.loading.words import state_names, way
from rigc.traced.figure import Answer, Figure, assumed
from rigc.traced.given import limit
from rigc.traced.reason import NOT_KNOWN
from rigc.traced.term import Term

COLUMNS = (
    Column("section"),
    Column("state"),
    Column("leads"),
    Column("length", "m", number=True),
    Column("per metre", "pF/m", folds="{} of cable"),
    Column("cable", "pF", number=True),
    Column("total", "pF", number=True),
    Column("source", folds="source {}"),
    Column("inputs together", key="load"),
    Column("unloaded resonance", "Hz", number=True, folds="unloaded resonance {}"),
    Column("peak", "Hz", number=True, folds="peak {}"),
    Column("treble corner", "kHz", number=True),
    Column("loss", "dB", number=True),
    Column("verdict"),
)


def section_table(rig: Rig, loading: Loading) -> Table:
    """One row a section, in the order of the signal with all off, then what other states add."""
    most = float(limit(rig, "capacitance", CABLE_LIMIT))
    played = {section.name for section in loading.played}
    rows = worst_first(_row(loading, section, most, played) for section in loading.sections)
    return Table("sections", "Sections", COLUMNS, rows, empty="nothing drives a lead", landscape=True)


def _row(loading: Loading, section: Section, limit_pf: float, played: set[str]) -> Row:
    told, pickup = loading.figures(section), loading.figures(section).by_pickup
    return Row(
        (
            Cell(way(section), strong=True),
            Cell(state_names(loading, (section,))),
            Cell(marks(section), strong=True),
            told_cell(told.length),
            _per_metre(section),
            told_cell(told.cable),
            told_cell(told.cable if pickup is None else pickup.total),
            _source(told),
            told_cell(told.load),
            told_cell(None if pickup is None else pickup.resonance),
            told_cell(None if pickup is None else pickup.peak),
            Cell("") if isinstance(told.corner, Answer) else told_cell(told.corner),
            told_cell(told.loss),
            _verdict(told, limit_pf) if section.name in played else Cell("not judged: nobody plays without power"),
        )
    )


def _per_metre(section: Section) -> Cell:
    known = [lead.pf_per_m for lead in section.leads if isinstance(lead.pf_per_m, Term)]
    guessed = "assumed" if any(map(assumed, known)) else ""
    told = ", ".join(f"{each:g}" for each in dict.fromkeys(known))
    return Cell(told, mark=NOT_KNOWN if len(known) < len(section.leads) else guessed)


def _source(told: SectionFigures) -> Cell:
    if told.source is None:
        return Cell("pickup")
    cell = told_cell(told.source)
    treadle = told.section.how == TRACK and cell.text
    return cell.replace(text=f"{cell.text} (a quarter of the track)") if treadle else cell


def _verdict(told: SectionFigures, limit_pf: float) -> Cell:
    section = told.section
    faults = []
    if section.from_pickup:
        if over(section.known_pf, limit_pf):
            faults.append(f"over {limit_pf:g} pF")
    else:
        if isinstance(told.corner, Figure) and over(TREBLE_CORNER_HZ.value, told.corner):
            faults.append(f"corner under {TREBLE_CORNER_HZ.value / 1000:g} kHz")
        if over(LEAST_BRIDGING.value, section.bridging):
            faults.append(f"inputs under {LEAST_BRIDGING.value:g} times the source")
    if faults:
        return Cell("; ".join(faults), mark="FAIL")
    if any(load.what == OUTSIDE for load in section.loads):
        return Cell("the rig ends here: what is plugged in behind is not counted")
    if any(load.wants_pickup for load in section.loads) and not section.from_pickup:
        return Cell("feeds a unit that wants the pickup: its loss is not judged")
    if section.missing_wire or section.missing_end:
        return Cell("", mark=NOT_KNOWN)
    return Cell("ok")
