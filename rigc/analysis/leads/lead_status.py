"""A lead and the rig's wishes -> whether it is kept, bought or made at the bench."""

from __future__ import annotations

from rigc.analysis.leads.leads import Lead
from rigc.model.rig import Rig


def status(rig: Rig, lead: Lead) -> str:
    """`keep` a lead that exists, `buy` one that is or must be premade, `make` the others at the bench."""
    if lead.captive is not None or (lead.made_mm is not None and not lead.premade):
        return "keep"
    return "buy" if lead.premade or comes_premade(rig, lead) else "make"


def made_here(rig: Rig, lead: Lead) -> bool:
    """Whether a lead of the board is made at the bench; leads of the stage are not the board's."""
    return not lead.stage and status(rig, lead) == "make"


def comes_premade(rig: Rig, lead: Lead) -> bool:
    """Whether the rig buys this signal's leads ready, as it does USB and mains leads, or a plug kind comes on premade leads only."""
    ready = lead.signal in ("usb", "mains") or dict(rig.lead_wishes.cutting).get(lead.signal) == "premade"
    return ready or any(plug is not None and rig.stock.plugs[plug].cut_in_mm is None for plug in lead.ends)
