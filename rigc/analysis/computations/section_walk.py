"""An instrument -> the leads that hang on it before the first active input, with every unit off."""

from __future__ import annotations

from rigc.model.inner_ways import bypass_ways
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.things import Unit
from rigc.model.wishes import Connection, When
from rigc.record import Record

ACTIVE_BYPASS = ("buffered", "trails", "always-on")


class SectionWalk(Record):
    """Connections walked through in order, what ended them, and what could not be told."""

    hops: tuple[Connection, ...]
    until: tuple[str, ...]
    missing: tuple[str, ...]


def section_walk(rig: Rig, when: When) -> SectionWalk:
    """Walks from the instrument of `when`, branches included, in the order of the leads."""
    links: dict[Port, list[Connection]] = {}
    for each in rig.connections:
        if each.signal == "audio" and each.when.meets(when):
            links.setdefault(each.start, []).append(each)
    hops: dict[tuple[Port, Port], Connection] = {}
    until: dict[str, None] = {}
    missing: dict[str, None] = {}
    todo = [each for port, leads in links.items() if port.thing == when.instrument for each in leads]
    while todo:
        hop = todo.pop(0)
        if (hop.start, hop.end) in hops:
            continue
        hops[hop.start, hop.end] = hop
        unit = rig.units.get(hop.end.thing)
        if unit is None:
            onward = [hop.end]
        elif _ends(rig, unit, hop.end):
            until[unit.name] = None
            continue
        elif not _is_cable(unit):
            missing[f"how '{unit.name}' is bypassed is not said"] = None
            continue
        else:
            onward = [end for start, end in bypass_ways(unit) if start == hop.end]
        todo += [each for port in onward for each in links.get(port, ())]
    return SectionWalk(tuple(hops.values()), tuple(until), tuple(missing))


def _ends(rig: Rig, unit: Unit, port: Port) -> bool:
    jack = rig.jack(port)
    if unit.kind in ("amp", "desk") or (jack is not None and jack.connector.kind == "wireless"):
        return True
    return "passive" not in unit.flags and unit.bypass is not None and unit.bypass.value in ACTIVE_BYPASS


def _is_cable(unit: Unit) -> bool:
    return "passive" in unit.flags or (unit.bypass is not None and unit.bypass.value == "true")
