"""A lead of two conductors, or with a two-pole plug, goes to an expression jack, which needs three.

Why it matters: an expression pedal is a divider: supply, wiper and return. A two-pole plug shorts ring to sleeve, so the
pedal does nothing, jumps, or loads the unit's supply.
What to do: use cable of three conductors (or a pair and its screen) and three-pole plugs at both ends.
Source: physics: a divider has three ends.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.leads.leads import Lead, Leads
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Level, Number
from rigc.diagnostics.wanted import how_to_state
from rigc.facts.leads import EXPRESSION_POLES
from rigc.model.rig import Rig
from rigc.model.stock import Cable
from rigc.model.ways.conductors import SCREENED, conducting_paths

KIND = Kind(
    "two-conductor-expression",
    Level.ERROR,
    __doc__,
    "an expression lead has three conductors and three-pole plugs",
    "physics: a divider has three ends",
)

_JACKS = ("trs", "mini-trs")


def two_conductor_expression(rig: Rig, leads: Leads) -> Iterator[Diagnostic]:
    """One finding for each expression lead, naming what has too few; else what is not known of it."""
    for lead in leads.all:
        if _expression(rig, lead):
            cable = rig.stock.cables.get(lead.cable or "")
            conductors = None if cable is None else conducting_paths(cable)
            few, unknown = _plugs(rig, lead)
            if cable is None or conductors is None:
                unknown.insert(0, "its cable" if cable is None else f"the conductors of cable '{cable.name}'")
            elif conductors < EXPRESSION_POLES.value:
                few.insert(0, f"cable '{cable.name}' has {_counted(cable)}")
            if few:
                yield _told(lead, few, conductors)
            elif unknown:
                yield _unknown(lead, unknown)


def _expression(rig: Rig, lead: Lead) -> bool:
    jacks = (rig.jack(port) for port in (lead.start, lead.end))
    return any(
        jack is not None and jack.role.startswith("expression") and jack.connector.kind in _JACKS for jack in jacks
    )


def _plugs(rig: Rig, lead: Lead) -> tuple[list[str], list[str]]:
    """What is wrong with the plugs, and what is not known of them; a soldered end has none."""
    few: dict[str, None] = {}
    unknown: dict[str, None] = {}
    for port, name in zip((lead.start, lead.end), lead.ends, strict=True):
        plug = None if name is None else rig.stock.plugs[name]
        if plug is None:
            unknown[f"a plug that fits '{port}'"] = None
        elif plug.poles is None and not plug.soldered:
            unknown[f"the poles of plug '{plug.name}'"] = None
        elif plug.poles is not None and plug.poles < EXPRESSION_POLES.value:
            few[f"plug '{plug.name}' has {plug.poles} poles"] = None
    return list(few), list(unknown)


def _counted(cable: Cable) -> str:
    screen = " and a screen" if cable.signal in SCREENED else ""
    return f"{cable.conductors} conductor{'' if cable.conductors == 1 else 's'}{screen}"


def _told(lead: Lead, few: list[str], conductors: int | None) -> Diagnostic:
    numbers = () if conductors is None else (Number("conductors", conductors, ""),)
    return KIND.at(
        lead.span,
        f"{lead.mark} from '{lead.start}' to '{lead.end}' needs three conductors, but {' and '.join(few)}",
        subject=(lead.mark,),
        label="an expression lead",
        numbers=(*numbers, Number("needed", EXPRESSION_POLES.value, "")),
        help="take a cable of three conductors and three-pole plugs",
    )


def _unknown(lead: Lead, unknown: list[str]) -> Diagnostic:
    facts = " and ".join(unknown)
    return KIND.cant_check(
        lead.span,
        f"whether {lead.mark} from '{lead.start}' to '{lead.end}' has three conductors is not known, for want of {facts}",
        subject=(lead.mark,),
        help=how_to_state(unknown[0]),
    )


CHECK = two_conductor_expression
