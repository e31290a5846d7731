"""Places: where everything stands, chosen or stated, as statements to paste, and how far the leads are from the least."""

from __future__ import annotations

from rigc.analysis.leads.leads import Leads
from rigc.analysis.leads.lengths.cable_lengths import CableLengths
from rigc.analysis.leads.lengths.cable_routes import CableRoutes
from rigc.model.deck import Place
from rigc.model.rig import Rig
from rigc.model.things import Area
from rigc.reports.content import Cell, Column, Paragraph, Row, Sheet, Table
from rigc.reports.laying.gap_table import gap_note, gap_table
from rigc.reports.laying.statements import chosen_on_leads, chosen_statements


def places(rig: Rig, leads: Leads, lengths: CableLengths, routes: CableRoutes) -> Sheet:
    """The places of a rig; where all are stated there is nothing to paste."""
    from rigc.analysis.laying.gap import lead_gaps  # the search's rooms are loaded only for a rig that asks for them
    from rigc.analysis.laying.objective import objective
    from rigc.reports.laying.objective_table import objective_note, objective_table

    return Sheet(
        "places",
        "Places",
        "builder",
        (
            _table(rig),
            *((_plugs(rig),) if rig.chosen_plugs else ()),
            objective_table(objective(rig, leads)),
            objective_note(),
            gap_table(lead_gaps(rig, leads, lengths)),
            gap_note(),
            Paragraph("statements", (*chosen_statements(rig), *chosen_on_leads(leads, routes)), kind="statements"),
        ),
    )


def _table(rig: Rig) -> Table:
    columns = (
        Column("thing"),
        Column("x", "mm", number=True),
        Column("y", "mm", number=True),
        Column("turned", "°", number=True),
        Column("side"),
        Column("place"),
    )
    rows = (*map(_row, rig.places.values()), *map(_room, rig.reserved_rooms))
    return Table("places", "Places", columns, rows, "nothing has a place")


def _plugs(rig: Rig) -> Table:
    """Plugs that were chosen with the places, and why."""
    columns = (Column("jack"), Column("plug"), Column("in place of"), Column("which would meet"))
    rows = tuple(
        Row(tuple(map(Cell, (str(each.port), each.plug, each.instead, each.spares)))) for each in rig.chosen_plugs
    )
    return Table("chosen-plugs", "Plugs chosen with the places", columns, rows, "none")


def _row(place: Place) -> Row:
    side = "under" if place.under else f"on {place.tier}" if place.tier is not None else "on top"
    known = "chosen" if place.chosen else "stated"
    texts = (place.thing, f"{place.x_mm:g}", f"{place.y_mm:g}", str(place.turned), side, known)
    return Row(tuple(map(Cell, texts)))


def _room(room: Area) -> Row:
    what = "reserved" if room.what == "reserved" else f"reserved: {room.what}"
    known = "chosen" if room.chosen else "stated"
    return Row(tuple(map(Cell, (what, f"{room.x_mm:g}", f"{room.y_mm:g}", "", "on top", known))))


VIEW = places
