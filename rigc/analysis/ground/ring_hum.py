"""Rings, routes and gains -> what each ring that matters picks up, and how much of it is heard."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import count

from rigc.analysis.ground.gain_after import Gain, GainAfter
from rigc.analysis.ground.ground_systems import GroundSystems
from rigc.analysis.ground.induction import coupled_volts, pair_to_loop_henry, uniform_field_volts
from rigc.analysis.ground.ring_ways import Beside, Spot, Ways, area_mm2, beside
from rigc.analysis.ground.ring_words import ring_words
from rigc.analysis.ground.rings import Ring
from rigc.analysis.ground.states import GroundState
from rigc.analysis.leads.leads import Lead, Leads
from rigc.analysis.leads.lengths.cable_routes import CableRoutes
from rigc.analysis.routes.route_paths import RoutePaths
from rigc.analysis.signal.decibels import decibels
from rigc.diagnostics.figures import plain
from rigc.facts.hum import FIELD_UT, HERTZ, NOMINAL_MV
from rigc.model.graphs import signal_graph
from rigc.model.rig import Rig
from rigc.model.wishes import When
from rigc.record import Record
from rigc.traced.figure import AnyFigure, Figure, Lacking, figure, known_figure
from rigc.traced.given import Barred, at_place, mentioned, ours, stated, unstated
from rigc.traced.means import found, highest, total_known, worked
from rigc.traced.term import Term, Traced, Unknown, known
from rigc.traced.units import (
    GAIN,
    HERTZ_MAINS,
    HUM_DECIBELS,
    LEAST_GAIN,
    MICROTESLA,
    MICROVOLTS,
    NOMINAL_MILLIVOLTS,
    SQUARE_METRES,
)

_FARADAY = "physics: Faraday's law, the face square to the field, the worst case"


OFF_THE_BOARD = " leaves the board"  # so no fact would tell its area


class Coupled(Record):
    """The lead beside a ring: mutual inductance in H, and the hum in V for each ampere of hum current in that lead."""

    beside: Beside
    henry: float
    volts_per_ampere: float


class Hum(Record):
    """What one ring picks up in a field of 1 µT at `frequency` in Hz: `induced` in V, by its `area` in m², both lacking where
    its leads have no routes. `level` is the hum against instrument level (77.5 mV) in dB, before any gain; lacking where there is none.

    `why_not` says what the leads lack. `follows` is the most gain in dB that follows any of its audio leads, but for that of
    the units of `gain` that do not say theirs.
    """

    ring: Ring
    frequency: Figure
    area: AnyFigure
    induced: AnyFigure
    level: AnyFigure
    follows: Figure
    why_not: str
    gain: Gain
    coupled: Coupled | None

    @property
    def hertz(self) -> float:
        """The frequency in Hz."""
        return self.frequency

    @property
    def level_db(self) -> float | None:
        """The hum against instrument level, in dB; None where not known."""
        return known(self.level)


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
    numbers = count(1)
    return RingHum(tuple(_state(board, state, numbers) for state in grounds.states))


def _state(board: _Board, state: GroundState, numbers: Iterator[int]) -> tuple[Hum, ...]:
    rings = [ring for ring in state.rings if ring.matters]
    if not rings:
        return ()
    gains = GainAfter(board.rig, signal_graph(board.rig, When(state.scenarios)).ways)
    return tuple(_hum(board, f"ring-{next(numbers)}", ring, state, gains) for ring in rings)


def _hum(board: _Board, name: str, ring: Ring, state: GroundState, gains: GainAfter) -> Hum:
    why_not = _why_not(board, ring)
    frequency, area = _frequency(board.rig, name, state), _area(board, name, ring, why_not)
    field = ours(FIELD_UT, shown=MICROTESLA)
    induced = figure(
        f"{name}.hum",
        worked("2π × {} Hz × {} µT × {} m²", uniform_field_volts, frequency, field, area, moves="+++"),
        MICROVOLTS,
        rule="V = 2πfBA",
        source=_FARADAY,
    )
    level = figure(
        f"{name}.level",
        _against_nominal(induced),
        HUM_DECIBELS,
        field,
        rule="the hum against instrument level, before any gain",
        source=_FARADAY,
    )
    audio = [board.leads[mark] for mark in ring.marks if board.leads[mark].signal == "audio"]
    gain = Gain.most(gains.of(lead.end) for lead in audio)
    coupled = None if isinstance(area, Lacking) else _coupled(board, ring, frequency, area)
    return Hum(ring, frequency, area, induced, level, _follows(board.rig, name, audio, gain), why_not, gain, coupled)


def _frequency(rig: Rig, name: str, state: GroundState) -> Figure:
    mains = {each: rig.scenarios[each].mains for each in state.scenarios}
    given = [
        at_place(f"mains of {each}", one.hertz_high, one.span, one.typed)
        for each, one in mains.items()
        if one is not None and one.hertz_high
    ]
    return known_figure(
        f"{name}.hertz",
        highest(*given) if given else ours(HERTZ),
        HERTZ_MAINS,
        rule="the highest mains frequency of the scenarios: it induces most",
        source="physics: the voltage grows with the frequency",
        label="frequency",
    )


def _area(board: _Board, name: str, ring: Ring, why_not: str) -> AnyFigure:
    value: Traced
    if why_not:
        value = Unknown((f"a way on the deck: {why_not}",), Barred(why_not))
    else:
        area = _area_m2(board, ring)
        value = found(
            area,
            lambda: f"|Σ (x₁ y₂ − x₂ y₁)| / 2 = {plain(round(area * 1e6, 1))} mm² = {SQUARE_METRES.text(area)} m²",
        )
    return figure(
        f"{name}.area",
        value,
        SQUARE_METRES,
        mentioned("ring", ring_words(ring)),
        *(_mentioned(board.leads[mark]) for mark in ring.marks),
        *(each for mark in ring.marks if mark in board.routes.routes for each in board.routes.routes[mark].told),
        rule="the polygon of its leads in plan, each along its route in turn; inside things the way is straight",
        source="geometry: area of a polygon",
        label="area",
    )


def _mentioned(lead: Lead) -> Unknown:
    return mentioned(lead.mark, f"{lead.start} -> {lead.end}", lead.span)


def _against_nominal(volts: AnyFigure) -> Traced:
    if isinstance(volts, Figure) and not volts:
        return mentioned("any hum", "none: the ring encloses nothing")
    level: Traced = worked(
        "20 log10({} µV / {} mV)",
        lambda hum, nominal: decibels(hum / nominal),
        volts,
        ours(NOMINAL_MV, shown=NOMINAL_MILLIVOLTS),
        moves="+-",
    )
    return level


def _follows(rig: Rig, name: str, audio: list[Lead], gain: Gain) -> Figure:
    lifts = [gain.most_db] if isinstance(gain.most_db, Term) else []
    most = lifts[0] if lifts else found(0.0, lambda: "nothing that follows lifts: 0")
    unknown = [unstated(f"gain of {each}") for each in gain.unknown]
    return known_figure(
        f"{name}.gain",
        total_known(lifts, unknown) if unknown else most,
        LEAST_GAIN if unknown else GAIN,
        *(_mentioned(lead) for lead in audio),
        *(stated(f"gain of {each}", rig.units[each].gain_db) for each in gain.stated),
        rule="the gains of the units behind it, on the way that lifts most; amps and desks are not counted",
        source="arithmetic on stated gains",
    )


def _why_not(board: _Board, ring: Ring) -> str:
    """Why a ring has no area; empty if it has one."""
    if ring.through_earth:
        return "it closes off the board, through the mains"
    without = {mark: board.routes.routes.get(mark) for mark in ring.marks if mark not in board.ways}
    off = next((mark for mark, route in without.items() if route is None), None)
    if off is not None:
        return f"{off}{OFF_THE_BOARD}"
    return next(
        (
            f"{mark} has no route: {route.reason}{' is not stated' if route.missing else ''}"
            for mark, route in without.items()
            if route is not None
        ),
        "",
    )


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
