"""Sections -> the loading table proper: leads, capacitance, source, resonance or treble corner, loss, verdict."""

from __future__ import annotations

from math import inf

from rigc.analysis.computations.loading import Loading
from rigc.analysis.signal.limits import over
from rigc.analysis.signal.section import Section
from rigc.analysis.signal.section_walk import OUTSIDE
from rigc.analysis.signal.source_network import parallel
from rigc.analysis.signal.state_words import marks, ohms
from rigc.analysis.signal.unit_mode import TRACK
from rigc.facts.loading import CABLE_LIMIT, LEAST_BRIDGING, TREBLE_CORNER_HZ
from rigc.model.rig import Rig
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.loading.words import UNKNOWN_MARK, corner, figure, state_names, way

COLUMNS = (
    Column("section"),
    Column("state"),
    Column("leads"),
    Column("length", "m", number=True),
    Column("per metre", "pF/m"),
    Column("cable", "pF", number=True),
    Column("total", "pF", number=True),
    Column("source"),
    Column("inputs together", key="load"),
    Column("unloaded resonance", "Hz", number=True),
    Column("peak", "Hz", number=True),
    Column("treble corner", "kHz", number=True),
    Column("loss", "dB", number=True),
    Column("verdict"),
)


def section_table(rig: Rig, loading: Loading) -> Table:
    """One row a section, in the order of the signal with all off, then what other states add."""
    stated = rig.limit("capacitance")
    limit = CABLE_LIMIT.value if stated is None else stated.amount.value
    played = loading.played
    rows = tuple(_row(loading, section, limit, played) for section in loading.sections)
    return Table("sections", "Sections", COLUMNS, rows, empty="nothing drives a lead", landscape=True)


def _row(loading: Loading, section: Section, limit_pf: float, played: tuple[Section, ...]) -> Row:
    per_metre = dict.fromkeys(lead.pf_per_m for lead in section.leads)
    per_metre_known = [f"{each:g}" for each in per_metre if each is not None]
    blank, pickup = Cell(""), section.from_pickup
    return Row(
        (
            Cell(way(section), strong=True),
            Cell(state_names(loading, (section,))),
            Cell(marks(section), strong=True),
            figure(section.length_m, 3),
            Cell(", ".join(per_metre_known), mark=UNKNOWN_MARK if None in per_metre else ""),
            figure(section.cable_pf, 1, section.assumed),
            figure(section.total_pf, 1, section.assumed),
            _source(section),
            _load(section),
            figure(section.unloaded_hz, 0, section.assumed) if pickup else blank,
            _peak(section) if pickup else blank,
            blank if pickup or section.corner_hz == inf else corner(section.corner_hz, section.assumed),
            blank if pickup else figure(section.loss_db, 2, section.assumed),
            _verdict(section, limit_pf) if section in played else Cell("not judged: nobody plays without power"),
        )
    )


def _source(section: Section) -> Cell:
    if section.from_pickup:
        return Cell("pickup")
    if section.source_ohm is None:
        return Cell("", mark=UNKNOWN_MARK)
    return Cell(ohms(section.source_ohm) + (" (a quarter of the track)" if section.how == TRACK else ""))


def _load(section: Section) -> Cell:
    load = section.load_ohm
    if load is None:
        return Cell("", mark=UNKNOWN_MARK)
    return Cell("none" if load == inf else ohms(load))


def _peak(section: Section) -> Cell:
    if section.network is None:
        return Cell("", mark=UNKNOWN_MARK)
    peak = section.network.peak_hz
    return Cell("none") if peak is None else figure(peak, 0, section.assumed)


def _verdict(section: Section, limit_pf: float) -> Cell:
    faults = []
    if section.from_pickup:
        if over(section.known_pf, limit_pf):
            faults.append(f"over {limit_pf:g} pF")
    else:
        if section.corner_hz is not None and over(TREBLE_CORNER_HZ.value, section.corner_hz):
            faults.append(f"corner under {TREBLE_CORNER_HZ.value / 1000:g} kHz")
        ratio = _ratio(section)
        if ratio is not None and over(LEAST_BRIDGING.value, ratio):
            faults.append(f"inputs under {LEAST_BRIDGING.value:g} times the source")
    if faults:
        return Cell("; ".join(faults), mark="FAIL")
    if any(load.what == OUTSIDE for load in section.loads):
        return Cell("the rig ends here: what is plugged in behind is not counted")
    if any(load.wants_pickup for load in section.loads) and not section.from_pickup:
        return Cell("feeds a unit that wants the pickup: its loss is not judged")
    if section.missing_wire or section.missing_end:
        return Cell("", mark=UNKNOWN_MARK)
    return Cell("ok")


def _ratio(section: Section) -> float | None:
    """The inputs side by side over the source, without those that want the pickup."""
    inputs = [load.ohm for load in section.loads if not load.wants_pickup]
    known = tuple(each for each in inputs if each is not None)
    if section.source_ohm is None or len(known) < len(inputs):
        return None
    return parallel(known) / section.source_ohm
