"""Lengths, leads and stock -> the cells that several tables of the cable list share."""

from __future__ import annotations

from rigc.analysis.cables.lead_status import comes_premade, status
from rigc.analysis.cables.ready_lead import ready_mass, ready_price
from rigc.analysis.computations.cable_lengths import Length
from rigc.analysis.computations.leads import Lead
from rigc.diagnostics.figures import grams, millimetres, money
from rigc.model.money import amount_and_currency
from rigc.model.rig import Rig
from rigc.reports.content import Cell


def plug_cells(lead: Lead) -> tuple[Cell, Cell]:
    """The plug kinds of both ends; blank and marked where no kind of the stock goes in."""
    ends = zip((lead.start, lead.end), lead.ends, strict=True)
    start, end = (
        Cell("captive")
        if port == lead.captive
        else Cell("as bought")
        if plug is None and lead.signal == "mains"
        else _plug(plug)
        for port, plug in ends
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


def cut_text(rig: Rig, lead: Lead, length: Length) -> str:
    """The cut length; of a lead that is not cut here why, as far as that is known."""
    if length.cut is not None:
        return millimetres(length.cut)
    if lead.captive is not None:
        return "captive"
    return "premade" if lead.premade or comes_premade(rig, lead) else ""


def price_cell(rig: Rig, lead: Lead, length: Length | None) -> Cell:
    """What a bought lead costs; marked where its length has no price, empty where it is not bought."""
    if status(rig, lead) != "buy":
        return Cell("")
    price = ready_price(rig, lead, length)
    if price is None:
        return Cell("", mark="not stated")
    return Cell(money(*amount_and_currency(price)), mark="assumed" if price.assumed else "")


def mass_cell(rig: Rig, lead: Lead, length: Length | None) -> Cell:
    """What a bought lead weighs in g; the same where that is not stated, or it is not bought."""
    if status(rig, lead) != "buy":
        return Cell("")
    mass = ready_mass(rig, lead, length)
    if mass is None:
        return Cell("", mark="not stated")
    return Cell(grams(mass.value), mark="assumed" if mass.assumed else "")


def _plug(plug: str | None) -> Cell:
    return Cell("", mark="no plug fits") if plug is None else Cell(plug)
