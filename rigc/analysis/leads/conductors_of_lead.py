"""A lead and its two jacks -> which contact is joined to which, end A first: audio, control and MIDI."""

from __future__ import annotations

from rigc.analysis.leads.lead_make import CROSSED
from rigc.analysis.leads.leads import Lead
from rigc.model.jacks import Jack
from rigc.model.rig import Rig
from rigc.model.ways.conductors import three_conductors

_XLR = {"tip": "pin 2", "ring": "pin 3", "sleeve": "pin 1"}
"""The pins of an XLR that stand for the contacts of a jack plug: pin 2 is hot (AES14, from memory)."""


def audio_conductors(rig: Rig, lead: Lead) -> str:
    """`tip–tip, sleeve–sleeve` and its like; of two jacks that carry more than a mono signal with the ring."""
    start, end = rig.jack(lead.start), rig.jack(lead.end)
    three = start is not None and end is not None and three_conductors(start, end)
    wanted = ("tip", "ring", "sleeve") if three else ("tip", "sleeve")
    return ", ".join(f"{_contact(start, each)}–{_contact(end, each)}" for each in wanted)


def _contact(jack: Jack | None, contact: str) -> str:
    return _XLR[contact] if jack is not None and jack.connector.kind == "xlr" else contact


_TYPES = {"a": ("5", "4"), "b": ("4", "5")}
"""The DIN pins that tip and ring stand for (type A: MIDI Association RP-054; type B: trade description)."""


def lead_conductors(rig: Rig, lead: Lead) -> str:
    """`tip–tip, ring–ring, sleeve–sleeve` and its like, end A first; empty where a small MIDI jack does not say its type."""
    start, end = rig.jack(lead.start), rig.jack(lead.end)
    crossed = lead.make.turned == CROSSED
    if start is None or end is None:
        return ""
    if lead.signal == "midi":
        return midi_conductors(start, end, crossed, lead.make.shield_at_both)
    if not crossed and "ts" in (start.connector.kind, end.connector.kind):
        return "tip–tip, sleeve–sleeve"
    return f"{_pair(crossed)}, sleeve–sleeve"


def midi_conductors(start: Jack, end: Jack, crossed: bool, shield_at_both: bool) -> str:
    """The same for a MIDI lead; the shield is joined where the lead says."""
    shield = "at both ends" if shield_at_both else "at the sending end only"
    din = [jack.connector.kind == "din" for jack in (start, end)]
    if all(din):
        return f"pins 4–4 and 5–5; pin 2 {shield}"
    forms = [jack.midi_form for jack, pinned in zip((start, end), din, strict=True) if not pinned]
    if None in forms:
        return ""
    if "tip" in forms:
        return "tip only: as the unit's leaflet says"
    if not any(din):
        return f"{_pair(crossed)}; sleeve {shield}"
    tip, ring = _TYPES[forms[0] or ""]
    return f"pin {tip} to tip, pin {ring} to ring; pin 2 to sleeve {shield}"


def _pair(crossed: bool) -> str:
    return "CROSSED: tip–ring, ring–tip" if crossed else "tip–tip, ring–ring"
