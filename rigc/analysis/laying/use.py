"""A rig -> how often a foot comes down on each unit, as a weight: what is stamped on most shall stand in front, what no foot works behind."""

from __future__ import annotations

from rigc.analysis.deck.foot_spots import worked_by_hand
from rigc.facts.laying import LOOPED_SHARE
from rigc.model.rig import Rig
from rigc.model.things import Unit


def uses(rig: Rig, weighed: dict[str, int]) -> dict[str, int]:
    """Weights by unit, in hundredths of a length; below 0 for what no foot works, a part for what stands in a loop of a switcher.

    A unit that switches the presets is stamped on in each, and so is a switcher whose loops a preset uses.
    """
    counts = _stamped(rig)
    looped = {stop.thing for use in rig.loops if use.switcher is not None for stop in use.stops}
    found = {}
    for unit in rig.units.values():
        if unit.kind != "unit":
            continue
        if not trodden(unit):
            found[unit.name] = -weighed["behind"]
        elif unit.name not in looped or unit.treadle_mm is not None:
            share = counts.get(unit.name, 0) / len(rig.presets) if rig.presets else 0.0
            found[unit.name] = round(weighed["bare deck"] + weighed["stamped"] * share)
        else:
            found[unit.name] = round(weighed["bare deck"] * LOOPED_SHARE.value / 100)
    return found


def trodden(unit: Unit) -> bool:
    """Whether a foot works it: it has a switch, a treadle, a bypass to stamp on or (unless it is always on) loops, and is not worked
    by hand."""
    always = unit.bypass is not None and unit.bypass.value == "always-on"
    stamped = unit.bypass is not None and not always
    worked = unit.switches or unit.treadle_mm is not None or stamped or (unit.loops and not always)
    return bool(worked) and not worked_by_hand(unit)


def switches_presets(rig: Rig) -> frozenset[str]:
    """The things on which a foot comes down from one preset to the next: the switchers whose loops presets use, and what sends their programs."""
    switchers = {use.switcher for use in rig.loops if use.switcher is not None}
    found = {rig.midi_master} if rig.presets and rig.midi_master else set()
    for preset in rig.presets.values():
        for switcher, _, _ in preset.loops:
            found |= {switcher} if switcher else switchers
    return frozenset(found)


def _stamped(rig: Rig) -> dict[str, int]:
    """In how many presets each unit is stamped on."""
    counts: dict[str, int] = {}
    switchers = {use.switcher for use in rig.loops if use.switcher is not None}
    for preset in rig.presets.values():
        used = {name for name, _ in preset.on}
        for switcher, _, _ in preset.loops:
            used |= {switcher} if switcher else switchers
        for name in used | ({rig.midi_master} if rig.midi_master else set()):
            counts[name] = counts.get(name, 0) + 1
    return counts
