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
    """Two leads of unlike classes, an audio lead first: `angles` in degrees at which they cross (0: one lies on the other);
    `runs_mm`: how long and how far apart, each time that they run side by side. `hearing` is the state in which a pickup
    drives the audio lead, empty if none."""

    one: Lead
    other: Lead
    angles: tuple[float, ...]
    runs_mm: tuple[tuple[float, float], ...]
    hearing: str
    verdict: str

    @property
    def parallel_mm(self) -> float:
        """How long they run side by side in all."""
        return sum(long for long, _ in self.runs_mm)

    @property
    def nearest_mm(self) -> float:
        """How near they are at the nearest of these runs; 0 where there is none."""
        return min((apart for _, apart in self.runs_mm), default=0.0)


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
    runs = tuple((long / 10, apart / 10) for long, apart in met.runs)
    crossing = Crossing(one, other, tuple(sorted(met.angles)), runs, hearing, TIED)
    return crossing if is_tied else crossing.replace(verdict=_verdict(crossing))


def _verdict(each: Crossing) -> str:
    if each.parallel_mm > (LONG_MM.value if each.other.signal == "dc" else 0):
        return BESIDE
    return FLAT if any(0 < angle < LEAST_ANGLE_DEG.value for angle in each.angles) else FINE


COMPUTE = crossings
