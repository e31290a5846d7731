"""Ground sheet: what is joined, what earths it, which rings are left and where they are broken."""

from __future__ import annotations

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.ground.ground_systems import GroundSystems
from rigc.analysis.ground.ring_hum import RingHum
from rigc.analysis.leads.leads import Leads
from rigc.model.rig import Rig
from rigc.reports.content import Block, Paragraph, Sheet
from rigc.reports.drawings.ground.one_line import one_lines
from rigc.reports.front.cautions import care
from rigc.reports.ground.tables import breaks_table, hum_table, rings_table, systems_table

_READING = (
    "One earth reference in each joined system is right: two make a ring through the mains, none lets the board float.",
    "Hum: the voltage induced in the ring, square to a field of 1 µT at the highest mains frequency of the scenarios "
    "(V = 2πfBA); the area is that of its leads in plan. The gain is the most that follows; amps are not counted.",
)
_MIDI = "MIDI leads join no grounds: their shield is joined at the sending end only. So make or buy them."


def ground_sheet(rig: Rig, power: PowerAssignment, grounds: GroundSystems, hums: RingHum, leads: Leads) -> Sheet:
    """Cautions, tables, and a one-line drawing for each way in which the scenarios join grounds."""
    several = len(grounds.states) > 1
    drawings = [
        drawing
        for at, state in enumerate(grounds.states, 1)
        for drawing in one_lines(rig, leads, state, at if several else 0)
    ]
    blocks: tuple[Block, ...] = (
        care("ground-sheet", rig, power, "before you break or join a ground", "cautions"),
        systems_table(grounds),
        rings_table(rig, grounds, leads),
        hum_table(grounds, hums),
        breaks_table(rig, grounds, leads),
        Paragraph("reading", (*_READING, *_midi(rig, leads)), heading="How to read this sheet"),
        *drawings,
    )
    return Sheet("ground-sheet", "Ground sheet", "the tech who looks for hum", blocks)


def _midi(rig: Rig, leads: Leads) -> tuple[str, ...]:
    """Nothing where there are no MIDI leads; else which of them join grounds after all."""
    if all(lead.signal != "midi" for lead in leads.all):
        return ()
    both = {frozenset((each.start, each.end)) for each in rig.connections if each.shield_at_both}
    marks = [lead.mark for lead in leads.all if frozenset((lead.start, lead.end)) in both]
    return (f"{_MIDI} Stated otherwise of {', '.join(marks)}." if marks else _MIDI,)


PLACE = 3
SHEET = ground_sheet
