"""Cautions, notes to the crew and bypass plans -> the paragraphs of the wiring sheet."""

from __future__ import annotations

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.model.rig import Rig
from rigc.reports.content import Paragraph

_ALWAYS = (
    "Plug in and change leads with the amps muted and the volume down: a thump can hurt ears and loudspeakers.",
    "Never lift, cut or tape a protective earth to cure hum: strings and microphones can become live, and that kills. "
    "Break the signal ground with a transformer or an opto-coupler instead.",
    "Check the voltage and polarity of every DC plug with a meter before it goes in: a wrong one destroys a unit at once.",
    "Mains wiring is not on this sheet. It is made and tested by a competent person to the local code; "
    "unplug the mains before a lid is opened.",
    "Tape down leads that lie on the stage; see that the board cannot tip and that treadles are held.",
)
_VERIFY = (
    "Figures are computed from the facts entered. Verify them by measurement before use; "
    "the builder answers for the rig as built."
)


def cautions(rig: Rig, power: PowerAssignment) -> Paragraph:
    """The cautions that this rig calls for."""
    lines = list(_ALWAYS)
    if any(feed.how in ("series", "parallel") for feed in power.feeds):
        lines.append(
            "Leads that join two outlets are used only as the maker of the supply allows; mark them, keep them apart."
        )
    if any(feed.reversed for feed in power.feeds):
        lines.append("Mark the reversing lead at both ends: on another unit it does damage.")
    jacks = [jack for thing in rig.things.values() for jack in thing.jacks]
    if any(unit.kind == "desk" for unit in rig.units.values()) or any(jack.connector.kind == "xlr" for jack in jacks):
        lines.append("A desk's microphone lines can carry 48 V: use a DI rated for it, and mute the channel first.")
    if any(jack.connector.kind == "wireless" for jack in jacks):
        lines.append(
            "Radio: use only frequencies that the country allows; carry lithium cells in the cabin, terminals covered."
        )
    return Paragraph("cautions", (*lines, _VERIFY), heading="before you plug in", kind="caution")


def crew_notes(rig: Rig) -> Paragraph:
    """What the source says to the crew: of the rig, of scenarios, of things."""
    lines = [*rig.notes]
    named = {**rig.scenarios, **rig.things, **rig.decks, **rig.cases}
    lines += [f"{name}: {note}" for name, thing in named.items() for note in thing.notes]
    lines += [f"preset {preset.number}: {note}" for preset in rig.presets.values() for note in preset.notes]
    return Paragraph("crew_notes", tuple(lines) or ("No notes.",), heading="Notes to the crew", kind="note")


def bypass_plan(rig: Rig) -> Paragraph:
    """The way round the board when everything fails."""
    lines = tuple(f"{plan.start} → {plan.end}: {plan.text}" for plan in rig.bypass_plans)
    return Paragraph("bypass_plan", lines or ("No bypass plan is stated.",), heading="If everything fails")
