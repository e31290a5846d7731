"""The ways of all leads in plan -> which leads of unlike classes cross or run side by side, at what angle, how long, how near."""

from __future__ import annotations

from rigc.analysis.cables.from_pickup import from_pickup
from rigc.analysis.cables.meetings import Pair, meetings
from rigc.analysis.cables.stretches import Together
from rigc.analysis.computations.leads import Lead, Leads
from rigc.analysis.computations.loading import Loading
from rigc.analysis.computations.route_paths import RoutePaths
from rigc.facts.separation import BESIDE_AC_MM, BESIDE_DC_MM, LEAST_ANGLE_DEG, LONG_MM
from rigc.model.rig import Rig
from rigc.record import Record

FINE, TIED, FLAT, BESIDE = "fine", "tied on purpose", "crosses too flat", "too long side by side"


class Crossing(Record):
    """Two leads of unlike classes, an audio lead first: `angles` in degrees at which they cross (0: one lies on the other),
    how long they run side by side in all and how near at the nearest, in mm. `hearing` is the state in which a pickup
    drives the audio lead, empty if none."""

    one: Lead
    other: Lead
    angles: tuple[float, ...]
    parallel_mm: float
    nearest_mm: float
    hearing: str
    verdict: str


class Crossings(Record):
    """All pairs that cross or run side by side, in the order of the leads."""

    all: tuple[Crossing, ...]


def crossings(rig: Rig, leads: Leads, paths: RoutePaths, loading: Loading) -> Crossings:
    """Looks at every audio lead with the d.c., a.c. and mains leads near it, on one side of the deck at a time."""
    hearing = from_pickup(loading)
    tied = {frozenset(pair) for pair in rig.lead_wishes.ties}
    routed = [lead for lead in leads.all if lead.mark in paths.paths]
    sides = [(paths.paths[lead.mark].side(True), paths.paths[lead.mark].side(False)) for lead in routed]
    audio = [place for place, lead in enumerate(routed) if lead.signal == "audio"]
    met: dict[Pair, Together] = {}
    for signal, within in (("dc", BESIDE_DC_MM), ("ac", BESIDE_AC_MM), ("mains", BESIDE_AC_MM)):
        power = [place for place, lead in enumerate(routed) if lead.signal == signal]
        met |= meetings(sides, audio, power, within.value * 10)
    found = []
    for first, second in sorted(met):
        one, other = routed[first], routed[second]
        is_tied = frozenset((one.mark, other.mark)) in tied
        found.append(_crossing(one, other, met[first, second], hearing.get(one.mark, ""), is_tied))
    return Crossings(tuple(found))


def _crossing(one: Lead, other: Lead, met: Together, hearing: str, is_tied: bool) -> Crossing:
    angles, parallel = tuple(sorted(met.angles)), met.parallel / 10
    verdict = TIED if is_tied else _verdict(other, angles, parallel)
    return Crossing(one, other, angles, parallel, met.nearest / 10, hearing, verdict)


def _verdict(other: Lead, angles: tuple[float, ...], parallel_mm: float) -> str:
    if parallel_mm > (LONG_MM.value if other.signal == "dc" else 0):
        return BESIDE
    return FLAT if any(0 < angle < LEAST_ANGLE_DEG.value for angle in angles) else FINE


COMPUTE = crossings
