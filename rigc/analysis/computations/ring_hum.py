"""Rings, routes and gains -> what each ring that matters picks up, and how much of it is heard."""

from __future__ import annotations

from math import log10

from rigc.analysis.computations.cable_routes import CableRoutes
from rigc.analysis.computations.ground_systems import GroundSystems
from rigc.analysis.computations.leads import Lead, Leads
from rigc.analysis.computations.route_paths import RoutePaths
from rigc.analysis.ground.gain_after import Gain, GainAfter
from rigc.analysis.ground.induction import coupled_volts, pair_to_loop_henry, uniform_field_volts
from rigc.analysis.ground.neighbours_of_ring import Beside, Ways, beside
from rigc.analysis.ground.plan_ways import Spot, area_mm2
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

    `why_not` says what they lack. `gain` is the most that follows any of its audio leads.
    """

    ring: Ring
    hertz: float
    area_m2: float | None
    volts: float | None
    why_not: str
    gain: Gain
    coupled: Coupled | None

    @property
    def level_db(self) -> float | None:
        """The hum against instrument level (77.5 mV), in dB, before any gain."""
        return None if not self.volts else 20 * log10(self.volts / (NOMINAL_MV.value / 1000))


class RingHum(Record):
    """For each state of the grounds (in their order) the hum of its rings that matter."""

    states: tuple[tuple[Hum, ...], ...]


class _Board(Record):
    """What all rings are measured on: the leads, their routes, and their ways in plan."""

    rig: Rig
    leads: dict[str, Lead]
    routes: CableRoutes
    ways: Ways


def ring_hum(rig: Rig, grounds: GroundSystems, leads: Leads, routes: CableRoutes, paths: RoutePaths) -> RingHum:
    """Pairs are left out: they are silent."""
    if not any(ring.matters for state in grounds.states for ring in state.rings):
        return RingHum(tuple(() for _ in grounds.states))
    ways = {mark: path.points for mark, path in paths.paths.items()}
    board = _Board(rig, {lead.mark: lead for lead in leads.all}, routes, ways)
    return RingHum(tuple(_state(board, state) for state in grounds.states))


def _state(board: _Board, state: GroundState) -> tuple[Hum, ...]:
    rings = [ring for ring in state.rings if ring.matters]
    if not rings:
        return ()
    gains = GainAfter(board.rig, signal_graph(board.rig, When(state.scenarios)).ways)
    hertz = _hertz(board.rig, state)
    return tuple(_hum(board, ring, hertz, gains) for ring in rings)


def _hertz(rig: Rig, state: GroundState) -> float:
    """The highest mains frequency of the scenarios: it induces most."""
    mains = [rig.scenarios[name].mains for name in state.scenarios]
    return max((each.hertz_high for each in mains if each and each.hertz_high), default=HERTZ.value)


def _hum(board: _Board, ring: Ring, hertz: float, gains: GainAfter) -> Hum:
    why_not = _why_not(board, ring)
    area = None if why_not else _area_m2(board, ring)
    volts = None if area is None else uniform_field_volts(hertz, FIELD_UT.value * 1e-6, area)
    behind = [gains.of(board.leads[mark].end) for mark in ring.marks if board.leads[mark].signal == "audio"]
    unknown = dict.fromkeys(name for gain in behind for name in gain.unknown)
    gain = Gain(max((gain.most_db for gain in behind), default=0.0), tuple(unknown))
    coupled = None if area is None else _coupled(board, ring, hertz, area)
    return Hum(ring, hertz, area, volts, why_not, gain, coupled)


def _why_not(board: _Board, ring: Ring) -> str:
    """Why a ring has no area; empty if it has one."""
    if ring.through_earth:
        return "it closes off the board, through the mains"
    mark = next((mark for mark in ring.marks if mark not in board.ways), None)
    if mark is None:
        return ""
    route = board.routes.routes.get(mark)
    if route is None:
        return f"{mark} leaves the board"
    return f"{mark} has no route: {route.reason}{' is not stated' if route.missing else ''}"


def _area_m2(board: _Board, ring: Ring) -> float:
    """The polygon of all its leads in turn, each walked as the ring goes; inside things the way is taken as straight."""
    points: list[Spot] = []
    for pole, link in zip(ring.poles, ring.links, strict=True):
        here = pole[0]
        for mark in link.marks:
            start, end = board.leads[mark].start.thing, board.leads[mark].end.thing
            points += board.ways[mark] if end != here else board.ways[mark][::-1]
            here = end if end != here else start
    return area_mm2(tuple(points)) / 1e6


def _coupled(board: _Board, ring: Ring, hertz: float, area: float) -> Coupled | None:
    """The ring as a flat loop as long as the stretch beside the lead; its far side as far away as its area asks."""
    own = {mark: board.ways[mark] for mark in ring.marks}
    others = {
        mark: way
        for mark, way in board.ways.items()
        if board.leads[mark].signal in ("dc", "ac", "mains") and mark not in own
    }
    near = beside(own, others)
    cable = board.rig.stock.cables.get(board.leads[near.mark].cable or "") if near is not None else None
    if near is None or cable is None or cable.outer_mm is None or not area:
        return None
    apart, length = max(near.near_mm, cable.outer_mm.value) / 1000, near.long_mm / 1000
    henry = pair_to_loop_henry(length, apart, apart + area / length, cable.outer_mm.value / 2000)
    return Coupled(near, henry, coupled_volts(hertz, henry, 1.0))


COMPUTE = ring_hum
