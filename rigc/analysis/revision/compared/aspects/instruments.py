"""Instruments: that they are there, and their facts."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.revision.compared.aspect import DESIGN, Aspect
from rigc.analysis.revision.compared.facts import fact_aspects, jack_aspects, knowledge
from rigc.model.rig import Rig

FACTS_OF_AN_INSTRUMENT = {
    "inductance_h": "inductance",
    "resistance_ohm": "resistance",
    "capacitance_pf": "capacitance",
    "volume_ohm": "volume",
    "volume_setting": "volume setting",
    "tone_ohm": "tone",
    "tone_nf": "tone capacitor",
    "tone_setting": "tone setting",
    "lead_mm": "lead",
    "lead_cable": "lead's cable",
    "plain_mm": "plain lead",
    "plain_cable": "plain lead's cable",
    "active": "active",
    "lowest_note_hz": "lowest note",
    "earth": "earth",
    "pairs": "pairs",
    "loops": "loops",
    "flags": "kind",
    "title": "title",
    "notes": "notes",
}


def instruments(rig: Rig) -> Iterator[Aspect]:
    """All that is stated of each instrument."""
    for one in rig.instruments.values():
        yield Aspect("instrument", one.name, "", one.title or one.kind, True, DESIGN, span=one.declared)
        yield from fact_aspects("instrument", one, FACTS_OF_AN_INSTRUMENT)
        yield from jack_aspects("instrument", one.name, one.jacks)
        yield knowledge("instrument", one)


ASPECTS = instruments
