"""A jack of a panel is joined to nothing: no chain names it, and no control lead comes to it; or no lead leaves its mains inlet, while a thing on
the deck has one to which none comes.

Why it matters: a hole is drilled and a jack bought for nothing, or a lead was forgotten; on the night somebody plugs in there and hears nothing.
What to do: let a chain or a control lead go to it, or take its line out of the panel.
Nothing is told before a lead is stated, nor of a mains inlet where all on the deck bring a mains lead of their own, or hang in a mains strip.
Source: arithmetic on the stated chains.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.leads.leads import Leads
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.diagnostics.wording import listed
from rigc.model.jacks import Jack, Port
from rigc.model.rig import Rig
from rigc.model.things import Panel

KIND = Kind(
    "idle-panel-jack",
    Level.REMARK,
    __doc__,
    "each jack of a panel is joined to something",
    "arithmetic on the stated chains",
)


def idle_panel_jack(rig: Rig, leads: Leads) -> Iterator[Diagnostic]:
    """One finding for the jacks of each panel, and one for its mains inlet."""
    joined = {port for lead in leads.all for port in (lead.start, lead.end)}
    for panel in rig.panels.values() if joined else ():
        yield from _mains(rig, panel, joined)
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


def _mains(rig: Rig, panel: Panel, joined: set[Port]) -> Iterator[Diagnostic]:
    """The inlets of the panel from which no lead goes on, while something on its deck waits for one."""
    idle = [jack for jack in panel.jacks if _is_mains(jack) and Port(panel.name, jack.name) not in joined]
    waiting = [port for port in _mains_inlets(rig, panel) if port not in joined] if idle else []
    if waiting:
        start = Port(panel.name, idle[0].name)
        yield KIND.at(
            idle[0].span,
            f"no lead leaves '{start}', and none comes to {listed(map(str, waiting))} on its deck",
            subject=(panel.name, str(start), *dict.fromkeys(port.thing for port in waiting)),
            label="what comes in here goes nowhere",
            help=f"write the lead that joins them in a leads block: `N1 {start} -> {waiting[0]}`",
        )


def _mains_inlets(rig: Rig, panel: Panel) -> Iterator[Port]:
    """Those of what stands on the panel's deck and hangs in no mains strip."""
    first = None if rig.deck is None else rig.deck.name
    hanging = {name for name, *_ in rig.power.plugged}
    for name, place in rig.places.items():
        if (place.deck or first) == (panel.deck or first) and name not in hanging:
            thing = rig.things.get(name)
            yield from (Port(name, jack.name) for jack in (() if thing is None else thing.jacks) if _is_mains(jack))


def _is_mains(jack: Jack) -> bool:
    return jack.role == "inlet" and jack.connector.is_appliance


CHECK = idle_panel_jack
