"""Currents that are so many times what any outlet gives that their unit of measure is more likely misread than meant."""

from __future__ import annotations

from rigc.model.rig import Rig
from rigc.model.things import Unit

_SLIP = 4  # times the strongest outlet of all: more a slip of the unit of measure than a wish


def misread(rig: Rig, unit: Unit) -> bool:
    """Whether a unit's stated current is one of them."""
    largest = max(
        (each.milliamps.value for it in rig.supplies.values() for out in it.outlets for each in out.ratings),
        default=0.0,
    )
    return unit.draws_ma is not None and unit.draws_ma.value > _SLIP * largest > 0


def look_again(unit: Unit) -> str:
    """What to do about one, as in: check the unit of `draws 80 A` in 'plumb'."""
    return "" if unit.draws_ma is None else f"check the unit of `draws {unit.draws_ma.typed}` in '{unit.name}'"
