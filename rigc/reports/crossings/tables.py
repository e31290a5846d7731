"""Crossings, bundles, ties and routes -> the tables of the crossing list."""

from __future__ import annotations

from rigc.analysis.cables.deck_boxes import deck_boxes
from rigc.analysis.cables.joint_choice import joint_saving
from rigc.analysis.computations.bundles import Bundles
from rigc.analysis.computations.cable_routes import CableRoutes
from rigc.analysis.computations.crossings import FINE, TIED, Crossing, Crossings
from rigc.analysis.computations.leads import Leads
from rigc.analysis.computations.placement import Placement
from rigc.diagnostics.figures import millimetres
from rigc.model.rig import Rig
from rigc.reports.content import Cell, Column, Row, Table


def crossing_table(crossings: Crossings) -> Table:
    """One row for each audio lead and power lead that meet."""
    columns = (
        Column("lead 1"),
        Column("lead 2"),
        Column("classes"),
        Column("angle", "°", number=True),
        Column("parallel", "mm", number=True),
        Column("distance", "mm", number=True),
        Column("verdict"),
    )
    rows = tuple(map(_crossing, crossings.all))
    empty = "no audio lead crosses a d.c. or a.c. lead, or runs beside one"
    return Table("crossings", "Crossings and runs side by side", columns, rows, empty=empty)


def bundle_table(rig: Rig, bundles: Bundles) -> Table:
    """Leads of one class that lie together, and the pairs that the source ties."""
    columns = (Column("class"), Column("leads"), Column("together", "mm", number=True), Column("why"))
    rows = [
        Row((Cell(each.signal), Cell(", ".join(each.marks)), Cell(_mm(each.longest_mm)), Cell("one class, one way")))
        for each in bundles.all
    ]
    rows += [Row((Cell("tied"), Cell(", ".join(pair)), Cell(""), Cell("stated"))) for pair in rig.lead_wishes.ties]
    return Table("bundles", "Bundles and tied pairs", columns, tuple(rows), empty="no leads lie together")


def joint_table(rig: Rig, placement: Placement, leads: Leads, routes: CableRoutes) -> Table:
    """What leads would save if both their drop lines were chosen together."""
    columns = (
        Column("lead"),
        Column("drop lines", "mm"),
        Column("both together", "mm"),
        Column("saves", "mm", number=True),
    )
    boxes, rows = deck_boxes(rig, placement), []
    for lead in leads.all:
        route = routes.routes.get(lead.mark)
        if route is None or not route.kind:
            continue
        saving = joint_saving(route, boxes[placement.points[lead.start].deck])
        if saving is not None:
            saved, *lines = saving
            taken = ", ".join(millimetres(line) for line in route.drops if line is not None)
            cells = (lead.mark, taken, ", ".join(map(millimetres, lines)), millimetres(saved))
            rows.append(Row(tuple(map(Cell, cells))))
    empty = "no lead would be shorter"
    return Table("joint-choice", "What a joint choice of both drop lines would save", columns, tuple(rows), empty=empty)


def _crossing(each: Crossing) -> Row:
    angles = dict.fromkeys(f"{angle:.0f}" for angle in each.angles)
    verdict = each.verdict
    if each.hearing:
        verdict += f"; in the state '{each.hearing}' a pickup drives {each.one.mark}"
    return Row(
        (
            Cell(each.one.mark, strong=True),
            Cell(each.other.mark, strong=True),
            Cell(f"{each.one.signal}, {each.other.signal}"),
            Cell(", ".join(angles)),
            Cell(_mm(each.parallel_mm) if each.parallel_mm else ""),
            Cell(_mm(each.nearest_mm) if each.parallel_mm else ""),
            Cell(verdict, mark="" if each.verdict in (FINE, TIED) else "look"),
        )
    )


def _mm(length: float) -> str:
    return millimetres(round(length * 10))
