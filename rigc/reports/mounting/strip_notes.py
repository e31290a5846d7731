"""Bases -> the words beside the strips: notes by unit, how to prepare, what to take care of."""

from __future__ import annotations

from rigc.facts import fastening
from rigc.facts.weight import GRAVITY_M_PER_S2
from rigc.model.things import Thing
from rigc.reports.content import Paragraph

_FEET = {
    "removed": "feet off, in a labelled bag",
    "stay": "feet stay: a strip does not hold on rubber",
    "none": "no feet",
}
_BASES = {"textured": "textured base: primer, or a bolted plate", "screws": "base screws stand proud"}
_COVERED = {
    "battery-door": "strip over the battery door",
    "vent": "strip over a vent",
    "trim": "strip over a trim",
    "base-label": "strip over the label: photograph the serial first",
}
_FREE = {"battery-door": "battery door stays free", "vent": "vent stays free", "trim": "trim stays free"}


def base_notes(thing: Thing, covered: tuple[str, ...]) -> tuple[str, ...]:
    """What the bench must know of a unit's base: feet, flatness, doors and labels, serial."""
    notes = []
    if thing.feet is not None:
        notes.append(_FEET.get(thing.feet.value, thing.feet.value))
    if thing.base is not None and thing.base.value in _BASES:
        notes.append(_BASES[thing.base.value])
    for area in dict.fromkeys(area.what for area in thing.no_tape):
        words = _COVERED if area in covered else _FREE
        if area in words:
            notes.append(words[area])
    if thing.papers.serial is not None:
        notes.append(f"serial {thing.papers.serial.value} stays legible")
    return tuple(notes)


def preparation() -> tuple[Paragraph, ...]:
    """How strips are laid and bases made ready."""
    rule = (
        f"Strips run from front to back under each unit, {fastening.PIECE_SHORTER_MM.value:g} mm shorter than it is deep, "
        "and lie in the middle of its depth. Centres across the base count from its left edge, seen from above; "
        "places on the deck are front-left corners, counted from the deck's front-left corner.",
        f"Engaged is what meets tape or plate. Needed is mass × {fastening.SHOCK_G.value:g} × "
        f"{GRAVITY_M_PER_S2.value:g} / pull: a case that falls 150 mm onto foam giving way by 7 to 8 mm "
        "(physics: a/g is about height of fall / travel). The rule for laying strips is common practice, no source; "
        "the pull is the stock's: measure your own with a spring balance.",
    )
    steps = (
        "Take the feet off, bag and label them: they are needed when the unit is sold.",
        "Keep the serial legible: photograph it, or move the label.",
        "Cover no vent, no battery door, no trim.",
        "Wipe the base with isopropyl alcohol (50 to 70 %) and let it dry: power off, no flame.",
        "Lay strips at 18 °C or more and press hard for 15 s; powder-textured decks need primer or bolted plates.",
        f"Wait {fastening.WAIT_H.value:g} h before the strip bears load: the adhesive then has about 90 % of its hold "
        "(from memory).",
        "Treadles get all their strips and a mechanical stop.",
    )
    return (
        Paragraph("rule", rule, heading="How to read this sheet"),
        Paragraph("preparation", steps, heading="Before a strip is laid (common practice, no source)"),
    )
