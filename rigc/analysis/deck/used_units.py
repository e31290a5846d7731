"""Rig -> the units that it uses, as against those that its bench files only declare."""

from __future__ import annotations

from rigc.model.rig import Rig
from rigc.model.things import Unit


def used_units(rig: Rig) -> tuple[Unit, ...]:
    """The units that are wired, placed or named in the power block, in order of declaration."""
    used = {end.thing for lead in rig.connections for end in (lead.start, lead.end)}
    used.update(stop.thing for chain in rig.chains for stop in chain.stops)
    used.update(stop.thing for loop in rig.loops for stop in loop.stops)
    used.update(stop.thing for blend in rig.blends for path in blend.paths for stop in path.stops)
    used.update(
        rig.places,
        rig.off_board,
        (name for hint in rig.hints for name in hint.named),
        rig.power.alone,
        rig.power.turned,
    )
    used.update(name for feed in rig.power.feeds for name in feed.units)
    used.update(name for group in rig.power.may_share for name in group)
    return tuple(unit for name, unit in rig.units.items() if name in used)
