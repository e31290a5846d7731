"""Signal flow: chains and loops as a drawing; the wiring sheet holds their table."""

from __future__ import annotations

from rigc.analysis.signal.signal_steps import SignalSteps
from rigc.model.rig import Rig
from rigc.reports.content import Paragraph, Sheet
from rigc.reports.drawings.flow.flow_drawing import flow_drawings
from rigc.reports.front.sheet_codes import see


def signal_flow(rig: Rig, steps: SignalSteps) -> Sheet:
    """The drawings, and where the jacks are listed; a sentence where the source has no chain."""
    drawings = flow_drawings(rig, steps)
    told = (
        f"Jacks, levels and what each unit does without power: see the table of the {see('wiring-sheet')}."
        if drawings
        else "no chain"
    )
    return Sheet("signal-flow", "Signal flow", "everybody", (*drawings, Paragraph("table", (told,))), landscape=True)


PLACE = 4
SHEET = signal_flow
