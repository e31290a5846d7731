"""Crossings, bundles, ties and routes -> the tables of the crossing list."""

from __future__ import annotations

from rigc.analysis.leads.lengths.cable_routes import CableRoutes
from rigc.analysis.routes.bundles import Bundles
from rigc.analysis.routes.crossings import FINE, TIED, Crossing, Crossings
from rigc.analysis.routes.joint_savings import JointSavings
from rigc.diagnostics.figures import millimetres
from rigc.model.rig import Rig
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.figure_cell import figure_cell


def crossing_table(crossings: Crossings) -> Table:
    """What is to be looked at first; the leads that an audio lead crosses in one fine way, and meets nowhere else, in one row."""
    columns = (
        Column("lead 1", least_mm=15),
        Column("lead 2"),
        Column("classes", least_mm=22, folds="{}"),
        Column("angle", "°", number=True),
        Column("parallel", "mm", number=True),
        Column("distance", "mm", number=True),
        Column("verdict"),
    )
    alike: dict[tuple[object, ...], list[Crossing]] = {}
    for each in crossings.all:
        apart = "" if _is_plain(each) else each.other.mark
        alike.setdefault((each.one.mark, each.other.signal, _angles(each), apart), []).append(each)
    rows = tuple(map(_crossing, sorted(alike.values(), key=lambda group: not _to_look_at(group[0]))))
    count = sum(not _to_look_at(each) and not each.hearing for each in crossings.all)
    fine = f"{count} {'is' if count == 1 else 'are'} square and short enough; shown: what needs a hand" if count else ""
    empty = "no audio lead crosses a DC or AC lead, or runs beside one"
    return Table("crossings", "Crossings and runs side by side", columns, rows, empty=empty, fine=fine)


def bundle_table(rig: Rig, bundles: Bundles) -> Table:
    """Leads of one class that lie together, and the pairs that the source ties."""
    columns = (Column("class"), Column("leads"), Column("together", "mm", number=True), Column("why", folds="{}"))
    rows = [
        Row(
            (
                Cell(each.signal),
                Cell(", ".join(each.marks)),
                figure_cell(each.together),
                Cell("one class, one way"),
            )
        )
        for each in bundles.all
    ]
    rows += [Row((Cell("tied"), Cell(", ".join(pair)), Cell(""), Cell("stated"))) for pair in rig.lead_wishes.ties]
    return Table("bundles", "Bundles and tied pairs", columns, tuple(rows), empty="")


def joint_table(savings: JointSavings, routes: CableRoutes) -> Table:
    """What leads would save by a pair of drop lines that is not the nearest, which `through` states."""
    columns = (
        Column("lead"),
        Column("drop lines", "mm"),
        Column("both together", "mm", folds="{} both together"),
        Column("saves", "mm", number=True),
    )
    rows = []
    for mark, each in savings.all.items():
        taken = ", ".join(millimetres(line) for line in routes.routes[mark].drops if line is not None)
        cells = (Cell(mark), Cell(taken), Cell(", ".join(map(millimetres, each.lines))), figure_cell(each.saves))
        rows.append(Row(cells))
    caption = "What other drop lines would save: state them behind the lead, as `through 145 mm`"
    return Table("joint-choice", caption, columns, tuple(rows), empty="")


def _to_look_at(each: Crossing) -> bool:
    return each.verdict not in (FINE, TIED)


def _is_plain(each: Crossing) -> bool:
    """Whether a crossing has neither a length nor a remark of its own."""
    return each.verdict == FINE and not each.parallel_mm and not each.hearing


def _angles(each: Crossing) -> str:
    return "" if each.angle is None else each.angle.text


def _crossing(group: list[Crossing]) -> Row:
    """A row of one crossing, or of several plain ones at one angle."""
    each = group[0]
    verdict = each.verdict
    if each.hearing:
        verdict += f"; in the state '{each.hearing}' a pickup drives {each.one.mark}"
    return Row(
        (
            Cell(each.one.mark, strong=True),
            Cell(", ".join(one.other.mark for one in group), strong=True),
            Cell(f"{each.one.signal}, {each.other.signal}"),
            figure_cell(each.angle, lacking=""),
            figure_cell(each.parallel, lacking=""),
            figure_cell(each.nearest, lacking=""),
            Cell(verdict, mark="look" if _to_look_at(each) else ""),
        ),
        fine=not _to_look_at(each) and not each.hearing,
    )
