"""Two bodies -> whether one is a supply that hangs under the other."""

from __future__ import annotations

from rigc.analysis.computations.placement import Outline
from rigc.model.rig import Rig

_HAIR_MM = 1e-6


def hangs_below(rig: Rig, supply: Outline, body: Outline) -> bool:
    """Whether a supply hangs under part of what stands on the same deck."""
    hangs = supply.under and supply.deck == body.deck and supply.thing in rig.supplies
    return hangs and min(body.area.overlap(supply.area)) > _HAIR_MM
