"""Cautions, notes to the crew and bypass plans -> the paragraphs of the wiring sheet."""

from __future__ import annotations

from rigc.model.rig import Rig
from rigc.reports.content import Paragraph


def crew_notes(rig: Rig) -> Paragraph:
    """What the source says to the crew: of the rig, of scenarios, of things."""
    lines = [*rig.notes]
    named = {**rig.scenarios, **rig.things, **rig.decks, **rig.cases}
    lines += [f"{name}: {note}" for name, thing in named.items() for note in thing.notes]
    lines += [f"preset {preset.number}: {note}" for preset in rig.presets.values() for note in preset.notes]
    return Paragraph("crew_notes", tuple(lines), heading="Notes to the crew", kind="note")


def bypass_plan(rig: Rig) -> Paragraph:
    """The way round the board when everything fails."""
    lines = tuple(f"{plan.start} → {plan.end}: {plan.text}" for plan in rig.bypass_plans)
    return Paragraph("bypass_plan", lines or ("No bypass plan is stated.",), heading="If everything fails")
