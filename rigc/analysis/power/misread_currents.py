"""Currents that are so many times what any outlet gives that their unit of measure is more likely misread than meant."""

from __future__ import annotations

from rigc.model.rig import Rig
from rigc.model.things import Unit

_SLIP = 4  # times the strongest outlet of all: more a slip of the unit of measure than a wish


def misread(rig: Rig, unit: Unit) -> bool:
    """Whether a unit's stated current is one of them."""
    if unit.draws_ma is None:
        return False
    given = False
    for rating in (each for supply in rig.supplies.values() for outlet in supply.outlets for each in outlet.ratings):
        milliamps = rating.milliamps.value
        if unit.draws_ma.value <= _SLIP * milliamps:  # nearly always so of the first: asked of thousands
            return False
        given = given or milliamps > 0
    return given


def look_again(unit: Unit) -> str:
    """What to do about one, as in: check the unit of `draws 80 A` in 'plumb'."""
    return "" if unit.draws_ma is None else f"check the unit of `draws {unit.draws_ma.typed}` in '{unit.name}'"
