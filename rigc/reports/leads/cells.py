"""Lengths, leads and stock -> the cells that several tables of the cable list share."""

from __future__ import annotations

from collections.abc import Mapping

from rigc.analysis.leads.leads import Lead
from rigc.analysis.leads.lengths.cable_lengths import Length
from rigc.analysis.stores.bought_leads import Bought
from rigc.model.rig import Rig
from rigc.reports.content import Cell
from rigc.reports.deck.chosen_places import MARK
from rigc.reports.figure_cell import figure_cell
from rigc.traced.figure import Answer, Figure


def plug_cells(lead: Lead) -> tuple[Cell, Cell]:
    """The plug kinds of both ends, marked where they were chosen with places; blank and marked where no kind of the stock
    goes in. A captive lead bears its own at the far end, though no kind of the stock is like it."""
    ends = zip((lead.start, lead.end), lead.ends, lead.chosen, strict=True)
    start, end = (
        Cell("captive")
        if port == lead.captive
        else Cell("as bought")
        if plug is None and lead.signal == "mains"
        else Cell("its own")
        if plug is None and lead.captive is not None
        else _plug(plug, chosen)
        for port, plug, chosen in ends
    )
    return start, end


def cable_cell(lead: Lead) -> Cell:
    """The cable; blank and marked where none is stated and the stock has none for the signal. A captive lead is of none of ours."""
    if lead.cable is None and lead.signal == "mains":
        return Cell("certified lead set")
    if lead.cable is None:
        return Cell("", mark="" if lead.captive is not None else "no cable")
    return Cell(lead.cable)


def colour(rig: Rig, lead: Lead) -> str:
    """The colour letters of the lead's cable, empty if it has none."""
    cable = rig.stock.cables.get(lead.cable or "")
    return "" if cable is None or cable.colour is None else cable.colour


def made_words(lead: Lead, status: str) -> str:
    """The status of a lead, and the revision in which it was made where the source says so."""
    return f"{status}, of revision {lead.made_in}" if lead.made_in else status


def cut_cell(length: Length) -> Cell:
    """The cut length; of a lead that is not cut here why, as far as that is known."""
    cut = length.cutting
    return Cell(cut.text) if isinstance(cut, Answer) else figure_cell(cut, lacking="")


def premade_cell(length: Length) -> Cell:
    """The next premade length; `none` where no stock length will do, blank where the stock has no list."""
    return figure_cell(length.bought, lacking="")


def price_cell(bought: Bought, mark: str) -> Cell:
    """What a bought lead costs; marked where its length has no price, empty where it is not bought."""
    return _stated_cell(bought.prices, mark, with_unit=True)


def mass_cell(bought: Bought, mark: str) -> Cell:
    """What a bought lead weighs in g; the same where that is not stated, or it is not bought."""
    return _stated_cell(bought.masses, mark)


def _stated_cell(figures: Mapping[str, Figure | None], mark: str, *, with_unit: bool = False) -> Cell:
    if mark not in figures:
        return Cell("")
    figure = figures[mark]
    return Cell("", mark="not stated") if figure is None else figure_cell(figure, with_unit=with_unit)


def _plug(plug: str | None, chosen: bool) -> Cell:
    return Cell("", mark="no plug fits") if plug is None else Cell(plug, mark=MARK if chosen else "")
