"""Primaries -> the mains sheet's rows of what to set, and put before, each supply in each scenario."""

from __future__ import annotations

from rigc.analysis.mains.primaries import Primaries
from rigc.analysis.mains.primary import Primary
from rigc.model.rig import Rig
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.figure_cell import figure_cell
from rigc.reports.schedule.worst_first import worst_first

_COLUMNS = (
    Column("selector to", folds="selector: {}"),
    Column("at the primary"),
    Column("made for", "V"),
    Column("step transformer", folds="step transformer: {}"),
    Column("least", "VA", number=True, folds="of at least {}"),
    Column("flux of a winding", "V/Hz", number=True),
    Column("of design", "%", number=True),
    Column("secondary", "% of design", number=True),
    Column("verdict"),
)


def setting_table(rig: Rig, primaries: Primaries) -> Table:
    """A row for every supply, and for all else that says what mains it takes, in every scenario that states its mains."""
    rows = worst_first(_row(each) for each in primaries.all)
    others = any(each.supply not in rig.supplies for each in primaries.all)
    what = Column("supply or amp" if others else "supply", key="supply")
    return Table(
        "settings",
        "What to set and check, by scenario",
        (Column("scenario"), what, *_COLUMNS),
        rows,
        empty="",
        landscape=True,
    )


def _row(each: Primary) -> Row:
    verdict, mark = _verdict(each)
    return Row(
        (
            Cell(each.scenario),
            Cell(each.supply, strong=True),
            Cell(_selector(each), strong=each.positions > 1),
            Cell(_arrives(each)),
            Cell("?" if each.place is None else f"{each.place.low_v:g} to {each.place.high_v:g}"),
            Cell("none" if each.step is None else f"{each.step[0]:g} to {each.step[1]:g} V, {each.step_va:g} VA"),
            figure_cell(each.least, lacking=""),
            figure_cell(each.winding_flux, lacking=""),
            figure_cell(each.flux_share, lacking=""),
            figure_cell(each.secondary, lacking=""),
            Cell(verdict, mark=mark),
        )
    )


def _selector(each: Primary) -> str:
    if each.positions < 2:
        return "none"
    return "?" if each.position_v is None else f"{each.position_v:g} V"


def _arrives(each: Primary) -> str:
    low, high = (f"{volts:.4g}" for volts in each.volts)
    hertz = (
        "?"
        if each.hertz is None
        else f"{each.hertz[0]:g}" + ("" if each.hertz[0] == each.hertz[1] else f" to {each.hertz[1]:g}")
    )
    return f"{low if low == high else f'{low} to {high}'} V {hertz} Hz"


def _verdict(each: Primary) -> tuple[str, str]:
    if each.in_voltage is None:
        return "its range is not stated", "can't check"
    if not each.in_voltage:
        return "voltage outside its range", "FAIL"
    if each.over_flux:
        return "core over its flux", "CARE"
    if each.in_frequency is False:
        return "frequency outside its range", "CARE"
    if each.step_too_small:
        return "step transformer too small", "CARE"
    return ("ok", "") if each.in_frequency else ("voltage ok, frequency not stated", "can't check")
