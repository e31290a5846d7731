"""What joins grounds -> the systems and rings that come of it."""

from __future__ import annotations

from rigc.analysis.ground.ground_conductors import Joins
from rigc.analysis.ground.ring_words import pole_words
from rigc.analysis.ground.rings import Ring, named_ring
from rigc.model.graphs import ground_graph, ground_rings, joined_grounds
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.ways.ground_link import EARTH, GROUND, GroundLink, Pole
from rigc.record import Record


class GroundSystem(Record):
    """Grounds that are joined. Exactly one of its things should be earthed: `earths` names those that are, `unknown` the
    amps, desks, sources and units on mains that do not say, `open_ends` the panel jacks into which something may yet be plugged; no
    sound goes through what is `silent`, such as a controller with its treadle, and no earth is asked of it."""

    poles: tuple[Pole, ...]
    earths: tuple[str, ...]
    unknown: tuple[str, ...]
    open_ends: tuple[Port, ...]
    silent: bool

    @property
    def members(self) -> tuple[str, ...]:
        """Its grounds in words."""
        return tuple(pole_words(pole) for pole in self.poles)


class GroundState(Record):
    """The grounds in some scenarios, which join them alike (no name where the rig states none)."""

    scenarios: tuple[str, ...]
    poles: tuple[Pole, ...]
    links: tuple[GroundLink, ...]
    systems: tuple[GroundSystem, ...]
    rings: tuple[Ring, ...]


def ground_state(rig: Rig, joined: Joins, scenarios: tuple[str, ...]) -> GroundState:
    """The systems and rings of the grounds that these scenarios join alike."""
    graph = ground_graph(joined.poles, joined.links)
    order = {pole: number for number, pole in enumerate(graph.poles)}
    rings = tuple(named_ring(rig, links, order) for links in ground_rings(graph))
    systems = tuple(_system(rig, joined, poles) for poles in joined_grounds(graph))
    return GroundState(scenarios, graph.poles, joined.links, systems, rings)


def _system(rig: Rig, joined: Joins, poles: list[Pole]) -> GroundSystem:
    here = set(poles)
    earths = [link.other(EARTH)[0] for link in joined.links if EARTH in link.ends and link.other(EARTH) in here]
    unknown = [
        thing
        for thing, part in poles
        if part == GROUND
        and (owner := rig.units.get(thing) or rig.instruments[thing]).may_be_earthed
        and owner.earth is None
    ]
    open_ends = tuple(port for port, pole in joined.open_ends if pole in here)
    sounding = {port.thing for each in rig.connections if each.signal == "audio" for port in (each.start, each.end)}
    silent = not any(thing in sounding for thing, _ in poles)
    return GroundSystem(tuple(poles), tuple(earths), tuple(unknown), open_ends, silent)
