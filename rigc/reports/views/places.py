"""Places: where everything stands, chosen or stated, as statements to paste, and how far the leads are from the least."""

from __future__ import annotations

from rigc.analysis.leads.leads import Leads
from rigc.analysis.leads.lengths.cable_lengths import CableLengths
from rigc.model.deck import Place
from rigc.model.rig import Rig
from rigc.reports.content import Cell, Column, Paragraph, Row, Sheet, Table
from rigc.reports.laying.gap_table import gap_note, gap_table
from rigc.reports.laying.statements import place_block


def places(rig: Rig, leads: Leads, lengths: CableLengths) -> Sheet:
    """The places of a rig; where all are stated there is nothing to paste."""
    from rigc.analysis.laying.gap import lead_gaps  # the search's rooms are loaded only for a rig that asks for them
    from rigc.analysis.laying.objective import objective
    from rigc.reports.laying.objective_table import objective_note, objective_table

    chosen = [place for place in rig.places.values() if place.chosen]
    lines = place_block(chosen) if chosen else ("# every place is stated",)
    return Sheet(
        "places",
        "Places",
        "builder",
        (
            _table(rig),
            objective_table(objective(rig, leads)),
            objective_note(),
            gap_table(lead_gaps(rig, leads, lengths)),
            gap_note(),
            Paragraph("statements", lines, kind="statements"),
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
    return Table("places", "Places", columns, tuple(map(_row, rig.places.values())), "nothing has a place")


def _row(place: Place) -> Row:
    side = "under" if place.under else f"on {place.tier}" if place.tier is not None else "on top"
    known = "chosen" if place.chosen else "stated"
    texts = (place.thing, f"{place.x_mm:g}", f"{place.y_mm:g}", str(place.turned), side, known)
    return Row(tuple(map(Cell, texts)))


VIEW = places
