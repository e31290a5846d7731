"""Behind an isolator, a jack with a metal bushing sits on a bare metal panel, or a unit is bolted to a deck of bare metal.

Why it matters: the panel joins the ground that the isolator separated with every other bonded jack on it, and with its
mains earth if it has one.
What to do: use a jack with an insulated bushing; put an insulating sheet and bushes under the unit.
Source: physics: metal on metal conducts.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.ground.deck_metal import deck_metal
from rigc.analysis.ground.ground_conductors import leads_in_use
from rigc.analysis.ground.ground_systems import GroundSystems
from rigc.analysis.ground.landing import landing
from rigc.analysis.ground.ring_words import in_scenarios
from rigc.analysis.ground.states import GroundState
from rigc.analysis.leads.leads import Leads
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.model.jacks import Jack, Port
from rigc.model.rig import Rig
from rigc.model.ways.ground_link import FAR, GROUND, GroundLink, Pole

KIND = Kind(
    "bare-panel-jack",
    Level.WARNING,
    __doc__,
    "what stands behind an isolator does not touch metal that others touch",
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
    yield from _bolted(rig, grounds)


def _bolted(rig: Rig, grounds: GroundSystems) -> Iterator[Diagnostic]:
    """One finding for each unit behind an isolated output that touches a deck's metal together with something else."""
    found: dict[tuple[Port, GroundLink], list[str]] = {}
    for state in grounds.states:
        metal = deck_metal(rig, [link for link in state.links if link.kind != "metal"], presumed=True)
        for output in _isolated(rig, state) if metal else ():
            behind = _beyond(state, output) - {(output.thing, GROUND)}
            for link in metal:
                beside = any(link.ends[1] in other.ends for other in metal if other is not link)
                if link.ends[0] in behind and beside:
                    found.setdefault((output, link), []).extend(state.scenarios)
    for (output, link), names in found.items():
        yield _on_metal(rig, output, link, names)


def _on_metal(rig: Rig, output: Port, link: GroundLink, names: list[str]) -> Diagnostic:
    unit, deck = link.ends[0][0], link.ends[1][0]
    subject, where = (unit, str(output)), in_scenarios(rig, names)
    if not rig.decks[deck].bare_metal:
        return KIND.cant_check(
            rig.decks[deck].declared,
            f"'{unit}', behind the isolated '{output}', is bolted to '{deck}', which does not say whether it is of bare metal{where}",
            subject=(*subject, deck),
            help=f"write `bare metal` or `insulating` into the block of '{deck}'",
        )
    if link.unsure is not None:
        said = f"{link.unsure[0]}; it stands behind the isolated '{output}'{where}"
        return KIND.cant_check(link.span, said, subject=subject, help=link.unsure[1])
    return KIND.at(
        link.span,
        f"'{unit}' is bolted to the bare metal of '{deck}', behind the isolated '{output}'{where}",
        subject=subject,
        label="joins what the isolator separates",
        help=f"put an insulating sheet and bushes between '{unit}' and '{deck}', or hold it with strip",
    )


def _behind(rig: Rig, leads: Leads, state: GroundState) -> Iterator[tuple[Port, Port]]:
    """Isolated outputs, each with the panel jacks that its ground, or what is plugged in behind it, comes to."""
    scenario = rig.scenarios[state.scenarios[0]] if state.scenarios else None
    used = [lead for lead in leads_in_use(rig, leads, scenario) if lead.signal == "audio"]
    for output in _isolated(rig, state):
        near = _beyond(state, output) | {(output.thing, f"{FAR} {output.jack}")}
        for lead in used:
            for here, there in ((lead.start, lead.end), (lead.end, lead.start)):
                panel = rig.panels.get(there.thing)
                jack = panel.jack(there.jack) if panel is not None else None
                if jack is not None and jack.bushing != "insulated" and _from(here, output, near):
                    yield output, there


def _isolated(rig: Rig, state: GroundState) -> list[Port]:
    """The outputs whose grounds an isolating path keeps apart."""
    scenario = rig.scenarios[state.scenarios[0]] if state.scenarios else None
    ends = (Port(unit.name, path.end) for unit in rig.units.values() for path in unit.paths)
    return sorted({end for end in ends if landing(rig, end, scenario).isolated}, key=str)


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
