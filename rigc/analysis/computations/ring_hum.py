"""Rings, routes and gains -> what each ring that matters picks up, and how much of it is heard."""

from __future__ import annotations

from math import log10

from rigc.analysis.computations.cable_routes import CableRoutes
from rigc.analysis.computations.ground_systems import GroundSystems
from rigc.analysis.computations.leads import Lead, Leads
from rigc.analysis.computations.placement import Placement
from rigc.analysis.ground.gain_after import Gain, GainAfter
from rigc.analysis.ground.induction import coupled_volts, pair_to_loop_henry, uniform_field_volts
from rigc.analysis.ground.neighbours_of_ring import Beside, beside
from rigc.analysis.ground.plan_ways import Spot, area_mm2, length_mm, plan_way
from rigc.analysis.ground.rings import Ring
from rigc.analysis.ground.states import GroundState
from rigc.facts.hum import FIELD_UT, HERTZ, NOMINAL_MV
from rigc.model.graphs import signal_graph
from rigc.model.rig import Rig
from rigc.model.wishes import When
from rigc.record import Record


class Coupled(Record):
    """The lead beside a ring: mutual inductance in H, and the hum in V for each ampere of hum current in that lead."""

    beside: Beside
    henry: float
    volts_per_ampere: float


class Hum(Record):
    """What one ring picks up in a field of 1 µT at `hertz` Hz: `volts` and `area_m2`, None where its leads have no routes.

    `gain` is the most that follows any of its audio leads.
    """

    ring: Ring
    hertz: float
    area_m2: float | None
    volts: float | None
    gain: Gain
    coupled: Coupled | None

    @property
    def level_db(self) -> float | None:
        """The hum against instrument level (77.5 mV), in dB, before any gain."""
        return None if not self.volts else 20 * log10(self.volts / (NOMINAL_MV.value / 1000))


class RingHum(Record):
    """For each state of the grounds (in their order) the hum of its rings that matter."""

    states: tuple[tuple[Hum, ...], ...]


def ring_hum(rig: Rig, grounds: GroundSystems, leads: Leads, routes: CableRoutes, placement: Placement) -> RingHum:
    """Pairs are left out: they are silent."""
    if not any(ring.matters for state in grounds.states for ring in state.rings):
        return RingHum(tuple(() for _ in grounds.states))
    ways = {lead.mark: way for lead in leads.all if (way := plan_way(lead, routes, placement)) is not None}
    return RingHum(tuple(_state(rig, state, leads, ways) for state in grounds.states))


def _state(rig: Rig, state: GroundState, leads: Leads, ways: dict[str, tuple[Spot, ...]]) -> tuple[Hum, ...]:
    rings = [ring for ring in state.rings if ring.matters]
    if not rings:
        return ()
    gains = GainAfter(rig, signal_graph(rig, When(state.scenarios)).ways)
    return tuple(_hum(rig, ring, _hertz(rig, state), leads, ways, gains) for ring in rings)


def _hertz(rig: Rig, state: GroundState) -> float:
    """The highest mains frequency of the scenarios: it induces most."""
    mains = [rig.scenarios[name].mains for name in state.scenarios]
    return max((each.hertz_high for each in mains if each and each.hertz_high), default=HERTZ.value)


def _hum(rig: Rig, ring: Ring, hertz: float, leads: Leads, ways: dict[str, tuple[Spot, ...]], gains: GainAfter) -> Hum:
    own = [lead for mark in ring.marks for lead in leads.all if lead.mark == mark]
    area = _area_m2(ring, own, ways)
    volts = None if area is None else uniform_field_volts(hertz, FIELD_UT.value * 1e-6, area)
    behind = [gains.of(lead.end) for lead in own if lead.signal == "audio"]
    unknown = dict.fromkeys(name for gain in behind for name in gain.unknown)
    gain = Gain(max((gain.most_db for gain in behind), default=0.0), tuple(unknown))
    return Hum(ring, hertz, area, volts, gain, _coupled(rig, ring, hertz, area, leads, ways))


def _area_m2(ring: Ring, own: list[Lead], ways: dict[str, tuple[Spot, ...]]) -> float | None:
    """The polygon of all its leads in turn, each walked as the ring goes; inside things the way is taken as straight."""
    if ring.through_earth or any(lead.mark not in ways for lead in own):
        return None
    by_mark = {lead.mark: lead for lead in own}
    points: list[Spot] = []
    for pole, link in zip(ring.poles, ring.links, strict=True):
        here = pole[0]
        for mark in link.marks:
            start, end = by_mark[mark].start.thing, by_mark[mark].end.thing
            points += ways[mark] if end != here else ways[mark][::-1]
            here = end if end != here else start
    return area_mm2(tuple(points)) / 1e6


def _coupled(
    rig: Rig, ring: Ring, hertz: float, area: float | None, leads: Leads, ways: dict[str, tuple[Spot, ...]]
) -> Coupled | None:
    """The ring as a flat loop as long as the stretch beside the lead; its far side as far away as its area asks."""
    own = {mark: ways[mark] for mark in ring.marks if mark in ways}
    others = {lead.mark: lead for lead in leads.all if lead.signal in ("dc", "ac") and lead.mark not in own}
    near = beside(own, {mark: ways[mark] for mark in others if mark in ways})
    if near is None or not area:
        return None
    cable = rig.stock.cables.get(others[near.mark].cable or "")
    if cable is None or cable.outer_mm is None:
        return None
    spacing = cable.outer_mm.value / 2000
    apart = max(near.near_mm, cable.outer_mm.value) / 1000
    longest = max(length_mm(way) for way in own.values()) / 1000
    length = min(near.long_mm / 1000, longest)
    henry = pair_to_loop_henry(length, apart, apart + area / length, spacing)
    return Coupled(near, henry, coupled_volts(hertz, henry, 1.0))


COMPUTE = ring_hum
