"""The ways of all leads in plan -> which leads of unlike classes cross or run side by side, at what angle, how long,
how near: `A5.D4.angle`, `.parallel`, `.distance`."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable
from functools import cached_property, partial
from typing import ClassVar

from rigc.analysis.leads.leads import Lead, Leads
from rigc.analysis.routes.kept_apart import from_pickup
from rigc.analysis.routes.meetings import Pair, meetings
from rigc.analysis.routes.route_paths import RoutePaths
from rigc.analysis.routes.stretches import Together
from rigc.analysis.signal.loading.loading import Loading
from rigc.facts.separation import BESIDE_AC_MM, BESIDE_DC_MM, LEAST_ANGLE_DEG, LONG_MM
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.traced.figure import Answer, Figure, known_figure
from rigc.traced.given import ours
from rigc.traced.means import alike, least, total
from rigc.traced.reason import ARITHMETIC
from rigc.traced.units import NEAREST_TENTH

FINE, TIED, FLAT, BESIDE = "fine", "tied on purpose", "crosses too flat", "too long side by side"


class Crossing(Record):
    """Two leads of unlike classes, an audio lead first, what they do where they have `met`, and what gives the ways that they run. `hearing`
    is the state in which a pickup drives the audio lead, empty if none. What is told of it is made when it is asked for: of most nobody asks."""

    TOLD: ClassVar[tuple[str, ...]] = ("angle", "parallel", "nearest")
    one: Lead
    other: Lead
    met: Together
    ways: Callable[[], tuple[Answer, ...]]
    hearing: str
    is_tied: bool

    @cached_property
    def angles(self) -> tuple[float, ...]:
        """In degrees, at which they cross; 0: one lies on the other."""
        return tuple(sorted(self.met.angles))

    @cached_property
    def angle(self) -> Answer | None:
        """The angles, each once; None where they do not cross."""
        if not self.angles:
            return None
        counts = Counter(f"{angle:.0f}" for angle in self.angles)
        return Answer(
            f"{self._name}.angle",
            ", ".join(counts),
            ", ".join(f"{angle}° at {count} point{'s' * (count > 1)}" for angle, count in counts.items()),
            self.ways,
            rule="the lesser angle between the two at each crossing on one side of the deck; 0: one lies on the other",
            source="geometry on reckoned ways",
            unit="°",
        )

    @cached_property
    def parallel(self) -> Figure | None:
        """How long they run side by side in all, in mm; None where they do not."""
        if not self.met.runs:
            return None
        return known_figure(
            f"{self._name}.parallel",
            total(alike(long / 10) for long, _ in self.met.runs),
            NEAREST_TENTH,
            self.ways,
            ours(BESIDE_DC_MM if self.other.signal == "dc" else BESIDE_AC_MM),
            rule="runs beside each other on one side of the deck, nearer than the distance at which they count",
            source=ARITHMETIC,
        )

    @cached_property
    def nearest(self) -> Figure | None:
        """How near they are at the nearest of these runs, in mm; None where there is none."""
        if not self.met.runs:
            return None
        return known_figure(
            f"{self._name}.distance",
            least(*(alike(apart / 10) for _, apart in self.met.runs)),
            NEAREST_TENTH,
            self.ways,
            rule="the nearest of these runs",
            source=ARITHMETIC,
        )

    @property
    def verdict(self) -> str:
        """Whether they may run so."""
        return TIED if self.is_tied else _verdict(self.other.signal, self.parallel_mm, self.angles)

    @property
    def parallel_mm(self) -> float:
        """How long they run side by side in all."""
        return self.parallel or 0.0

    @property
    def nearest_mm(self) -> float:
        """How near they are at the nearest of these runs; 0 where there is none."""
        return self.nearest or 0.0

    @property
    def _name(self) -> str:
        return f"{self.one.mark}.{self.other.mark}"


class Crossings(Record):
    """All pairs that cross or run side by side, in the order of the leads."""

    all: tuple[Crossing, ...]


def crossings(rig: Rig, leads: Leads, paths: RoutePaths, loading: Loading) -> Crossings:
    """Looks at every audio lead with the d.c., a.c. and mains leads near it, on one side of the deck at a time."""
    hearing = from_pickup(loading)
    tied = {frozenset(pair) for pair in rig.lead_wishes.ties}
    routed = [lead for lead in leads.all if lead.mark in paths.paths]
    sides = [paths.paths[lead.mark].sides for lead in routed]
    audio = [place for place, lead in enumerate(routed) if lead.signal == "audio"]
    met: dict[Pair, Together] = {}
    for signal, within in (("dc", BESIDE_DC_MM), ("ac", BESIDE_AC_MM), ("mains", BESIDE_AC_MM)):
        power = [place for place, lead in enumerate(routed) if lead.signal == signal]
        met |= meetings(sides, audio, power, within.value * 10)
    found = []
    for first, second in sorted(met):
        one, other = routed[first], routed[second]
        is_tied = bool(tied) and frozenset((one.mark, other.mark)) in tied
        ways = partial(tuple, (paths.told[one.mark], paths.told[other.mark]))
        found.append(Crossing(one, other, met[first, second], ways, hearing.get(one.mark, ""), is_tied))
    return Crossings(tuple(found))


def _verdict(signal: str, parallel_mm: float, angles: tuple[float, ...]) -> str:
    if parallel_mm > (LONG_MM.value if signal == "dc" else 0):
        return BESIDE
    return FLAT if any(0 < angle < LEAST_ANGLE_DEG.value for angle in angles) else FINE


COMPUTE = crossings
