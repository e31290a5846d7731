"""A rig -> how often each unit is stamped on, as a weight: what the most presets use shall stand in front."""

from __future__ import annotations

from rigc.analysis.deck.foot_spots import worked_by_hand
from rigc.model.rig import Rig

_MOST = 20  # weight of a unit that all presets use: hundredths of a length of cable


def uses(rig: Rig) -> dict[str, int]:
    """Weights by unit, in hundredths; none where there are no presets. A unit that switches the presets counts in each."""
    if not rig.presets:
        return {}
    counts: dict[str, int] = {}
    holds = {(use.switcher, use.number): use for use in rig.loops}
    for preset in rig.presets.values():
        used = {name for name, _ in preset.on}
        for switcher, number, _ in preset.loops:
            used |= {switcher} if switcher else {name for name, _ in holds}
            used |= {
                stop.thing
                for (name, at), use in holds.items()
                if at == number and switcher in (None, name)
                for stop in use.stops
            }
        for name in used | ({rig.midi_master} if rig.midi_master else set()):
            if name is not None:
                counts[name] = counts.get(name, 0) + 1
    trodden = {name for name in counts if (unit := rig.units.get(name)) is None or not worked_by_hand(unit)}
    return {name: _MOST * count // len(rig.presets) for name, count in counts.items() if name in trodden}
