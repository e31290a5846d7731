"""A jack of a panel is joined to nothing: no chain names it, and no control lead comes to it.

Why it matters: a hole is drilled and a jack bought for nothing, or a lead was forgotten; on the night somebody plugs in there and hears nothing.
What to do: let a chain or a control lead go to it, or take its line out of the panel.
Source: arithmetic on the stated chains. Nothing is told before a lead is stated.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.leads.leads import Leads
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.diagnostics.wording import listed
from rigc.model.jacks import Port
from rigc.model.rig import Rig

KIND = Kind(
    "idle-panel-jack",
    Level.REMARK,
    __doc__,
    "each jack of a panel is joined to something",
    "arithmetic on the stated chains",
)


def idle_panel_jack(rig: Rig, leads: Leads) -> Iterator[Diagnostic]:
    """One finding for each panel; a mains inlet is left out, because what stands behind it may bring its own lead."""
    joined = {port for lead in leads.all for port in (lead.start, lead.end)}
    for panel in rig.panels.values() if joined else ():
        idle = [jack for jack in panel.jacks if jack.role == "panel" and Port(panel.name, jack.name) not in joined]
        if not idle:
            continue
        ports = [f"{panel.name}.{jack.name}" for jack in idle]
        one = len(idle) == 1
        yield KIND.at(
            idle[0].span,
            f"nothing is joined to {listed(ports)}",
            subject=(panel.name, *ports),
            label="in no chain and on no control lead",
            also=tuple(Label(jack.span, "nor is this one") for jack in idle[1:]),
            help=f"let a chain go to {'it' if one else 'them'}, or take {'its line' if one else 'their lines'} out of the panel",
        )


CHECK = idle_panel_jack
