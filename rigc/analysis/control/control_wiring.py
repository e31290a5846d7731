"""Control connections -> the two jacks of each, in what their wiring differs, and what would mend it."""

from __future__ import annotations

from rigc.model.jacks import Jack, Port
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.source import Span


class ControlLink(Record):
    """An expression or switch connection with the jacks at both ends; `differences` is empty where they suit each other."""

    start: Port
    end: Port
    here: Jack
    there: Jack
    differences: tuple[str, ...]
    remedy: str
    span: Span


def control_links(rig: Rig) -> tuple[ControlLink, ...]:
    """Every control connection in the order of the source."""
    links = []
    for each in rig.connections:
        here, there = rig.jack(each.start), rig.jack(each.end)
        if each.signal == "control" and here is not None and there is not None:
            differences, remedy = _differences(here, there, each.crossover)
            links.append(ControlLink(each.start, each.end, here, there, differences, remedy, each.span))
    return tuple(links)


def is_expression(jack: Jack) -> bool:
    """Whether it takes or gives an expression treadle's divider, as against a switch line."""
    return jack.role.startswith("expression")


def wiring(jack: Jack) -> tuple[str, str, str]:
    """What tip, ring and sleeve of an expression jack carry; of a switch line, as far as that is common to all."""
    if jack.wiper == "tip-wiper":
        return "wiper", "supply", "ground"
    if jack.wiper == "ring-wiper":
        return "supply", "wiper", "ground"
    return "switch", "second switch, if any" if jack.connector.kind != "ts" else "", "common"


def _differences(here: Jack, there: Jack, crossed: bool) -> tuple[tuple[str, ...], str]:
    if is_expression(here) != is_expression(there):
        kinds = ["an expression jack" if is_expression(jack) else "a switch line" for jack in (here, there)]
        return (f"{kinds[0]} meets {kinds[1]}",), "use a jack of the same kind at both ends"
    if not is_expression(here):
        return (), ""
    found, remedies = [], []
    if here.wiper != there.wiper and not crossed:
        found.append(f"{here.wiper} meets {there.wiper}")
        remedies.append(
            "use a crossover lead (tip to ring, ring to tip), marked at both ends, and write `crossover` behind the link"
        )
    elif here.wiper == there.wiper and crossed:
        found.append(f"both are {here.wiper}, and a crossover lead joins tip to ring")
        remedies.append("use a straight lead, and delete `crossover`")
    if here.track_ohm is not None and there.track_ohm is not None and here.track_ohm.value != there.track_ohm.value:
        found.append(f"a track of {here.track_ohm.typed} meets a jack for {there.track_ohm.typed}")
        remedies.append(f"take a treadle of {there.track_ohm.typed}, then calibrate")
    return tuple(found), "; ".join(remedies)
