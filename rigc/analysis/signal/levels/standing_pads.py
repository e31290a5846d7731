"""Rig and a jack -> what the pads take that always stand in the way of the sound up to it."""

from __future__ import annotations

from functools import partial

from rigc.analysis.signal.levels.sources_first import sources_first
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.things import ENDS, Panel, Unit
from rigc.model.ways.inner_ways import handed_on

_NOTHING: frozenset[float | None] = frozenset((0.0,))
_DECIMALS = 6  # of a sum in dB: ways with the same pads in another order have the same loss


def standing_loss_db(unit: Unit) -> float:
    """What a unit always takes, in dB above 0: its gain is below 0, and nothing takes it out of the way; else 0."""
    switched = unit.bypass is not None and unit.bypass.value != "always-on"
    if unit.kind != "unit" or unit.gain_db is None or unit.gain_db.value >= 0 or switched:
        return 0.0
    return -unit.gain_db.value


def losses_before(rig: Rig, port: Port) -> frozenset[float | None]:
    """The sums of such losses, in dB, on each way from an instrument or an amp to the sound that leaves by `port`; what a loop
    holds can be taken out and does not count. None for a way through a passive transformer that does not say what it takes."""
    known: dict[Port, frozenset[float | None]] = {}
    for each in sources_first(port, partial(_sources, rig)):
        thing = rig.things[each.thing]
        own = _own_loss_db(thing, each.jack) if isinstance(thing, Unit) else 0.0
        before = frozenset[float | None]().union(*(known.get(start, _NOTHING) for start in _sources(rig, each)))
        known[each] = frozenset(
            None if own is None or loss is None else round(own + loss, _DECIMALS) for loss in before or _NOTHING
        )
    return known[port]


def _own_loss_db(unit: Unit, jack: str) -> float | None:
    """A transformer without power of its own has a ratio: what it takes is not known unless it is stated."""
    if handed_on(unit, jack):
        return 0.0
    wound = any(path.end == jack and path.how.startswith("transformer") for path in unit.paths)
    if wound and "passive" in unit.flags and unit.gain_db is None:
        return None
    return standing_loss_db(unit)


def _sources(rig: Rig, port: Port) -> list[Port]:
    """The outputs that are led to what can leave by a jack; what begins or ends a chain has none."""
    thing = rig.things[port.thing]
    if not isinstance(thing, Unit | Panel) or thing.kind in ENDS:
        return []
    return [
        lead.start
        for lead in rig.leads_into.get(thing.name, ())
        if lead.signal == "audio" and _leads_on(thing, lead.end.jack, port.jack)
    ]


def _leads_on(thing: Unit | Panel, start: str, end: str) -> bool:
    """Whether sound that comes in by `start` can leave by `end` with all loops out."""
    if isinstance(thing, Panel):
        return start == end
    if start in {loop.back for loop in thing.loops}:
        return False
    ways = [path.start for path in thing.paths if path.end == end]
    return not ways or start in ways
