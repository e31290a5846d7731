"""Behind an isolator, a jack with a metal bushing sits on a bare metal panel.

Why it matters: the panel joins the ground that the isolator separated with every other bonded jack on it, and with its
mains earth if it has one.
What to do: use a jack with an insulated bushing.
Source: physics: metal on metal conducts.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.ground_systems import GroundSystems
from rigc.analysis.computations.leads import Leads
from rigc.analysis.ground.joins import leads_in_use
from rigc.analysis.ground.landing import landing
from rigc.analysis.ground.ring_words import in_scenarios
from rigc.analysis.ground.states import GroundState
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.model.ground_link import FAR, GROUND, Pole
from rigc.model.jacks import Jack, Port
from rigc.model.rig import Rig

KIND = Kind(
    "G04",
    "bare-panel-jack",
    Level.WARNING,
    __doc__,
    "a panel jack behind an isolator has an insulated bushing",
    "physics: metal on metal conducts",
)


def bare_panel_jack(rig: Rig, grounds: GroundSystems, leads: Leads) -> Iterator[Diagnostic]:
    """One finding for each bonded jack behind an isolated output; can't-check where its bushing is not stated."""
    found: dict[tuple[Port, Port], list[str]] = {}
    for state in grounds.states:
        for pair in _behind(rig, leads, state):
            found.setdefault(pair, []).extend(state.scenarios)
    for (output, port), names in found.items():
        jack = rig.panels[port.thing].jack(port.jack)
        if jack is not None and jack.bushing is None:
            yield KIND.cant_check(
                jack.span,
                f"'{port}', behind the isolated '{output}', does not say whether its bushing is insulated",
                subject=(str(port), str(output)),
                help=f"write `insulated` or `bonded` at jack {port.jack} of '{port.thing}'",
            )
        elif jack is not None:
            yield _told(rig, output, port, jack, names)


def _behind(rig: Rig, leads: Leads, state: GroundState) -> Iterator[tuple[Port, Port]]:
    """Isolated outputs, each with the panel jacks that its ground, or what is plugged in behind it, comes to."""
    scenario = rig.scenarios[state.scenarios[0]] if state.scenarios else None
    used = [lead for lead in leads_in_use(rig, leads, scenario) if lead.signal == "audio"]
    isolated = {
        Port(unit.name, path.end)
        for unit in rig.units.values()
        for path in unit.paths
        if landing(rig, Port(unit.name, path.end), scenario).isolated
    }
    for output in sorted(isolated, key=str):
        near = _beyond(state, output) | {(output.thing, f"{FAR} {output.jack}")}
        for lead in used:
            for here, there in ((lead.start, lead.end), (lead.end, lead.start)):
                panel = rig.panels.get(there.thing)
                jack = panel.jack(there.jack) if panel is not None else None
                if jack is not None and jack.bushing != "insulated" and _from(here, output, near):
                    yield output, there


def _beyond(state: GroundState, output: Port) -> set[Pole]:
    """The grounds of units joined with the far side by anything but metal, if the near side is not among them."""
    far = (output.thing, f"{FAR} {output.jack}")
    found, todo = {far}, [far]
    while todo:
        here = todo.pop()
        for link in state.links:
            if here in link.ends and link.kind != "earth":
                there = link.other(here)
                if there not in found and there[1] == GROUND:
                    found.add(there)
                    todo.append(there)
    return set() if (output.thing, GROUND) in found else found


def _from(here: Port, output: Port, near: set[Pole]) -> bool:
    return here == output or ((here.thing, GROUND) in near)


def _told(rig: Rig, output: Port, port: Port, jack: Jack, names: list[str]) -> Diagnostic:
    where = in_scenarios(rig, names)
    return KIND.at(
        jack.span,
        f"'{port}' is bonded to the metal of '{port.thing}', behind the isolated '{output}'{where}",
        subject=(str(port), str(output)),
        label="joins what the isolator separates",
        also=tuple(
            Label(path.span, "isolated here") for path in rig.units[output.thing].paths if path.end == output.jack
        ),
        help="use a jack with an insulated bushing",
    )


CHECK = bare_panel_jack
