"""What is broken -> the shortest way to sound again: loops left out, or the fewest leads from jack to jack.

Each is tried in the model: with the patch in and the broken part gone sound must reach every end again. At most `FAR` jacks before
the break are tried with as many behind it, and pairs of such patches, and no more once `ENOUGH` bring all back: no rig makes it long.
"""

from __future__ import annotations

from collections.abc import Iterable
from itertools import combinations

from rigc.analysis.deck.placement import Placement
from rigc.analysis.faults.hearing import Hearing, LoopsOut, Patch
from rigc.analysis.faults.questions import inputs, joins, may_join, outputs
from rigc.analysis.faults.single_breaks import Break, Part
from rigc.facts import rework
from rigc.model.jacks import Port
from rigc.record import Record
from rigc.traced.figure import Figure, known_figure
from rigc.traced.given import ours
from rigc.traced.means import alike, total
from rigc.traced.reason import PRACTICE
from rigc.traced.units import MINUTES

FAR, ENOUGH = 4, 4


class Repair(Record):
    """What brings sound back, whichever of the breaks it is: loops switched `out`, or `patches`; neither where nothing does.

    `back` are the ends that sound again, `without` the things passed over. `minutes` is how long a hand takes."""

    out: LoopsOut | None
    patches: tuple[Patch, ...]
    back: frozenset[Port]
    without: tuple[str, ...]
    minutes: Figure | None


def repair(hearing: Hearing, breaks: Iterable[Break], places: Placement, name: str) -> Repair:
    """The first that brings most ends back: with the fewest leads, then the fewest things passed over, then from what fed the broken thing,
    then the shortest."""
    each_gone = tuple(dict.fromkeys(each.gone & hearing.parts for each in breaks))
    every = frozenset().union(*each_gone)
    tries: list[tuple[LoopsOut | None, tuple[Patch, ...]]] = [
        (out, ()) for out in sorted(hearing.switched, key=lambda out: len(out.numbers))
    ]
    found = _best(hearing, each_gone, tries, places)
    if found is None or len(found.back) < len(hearing.ends):
        found = _better(found, _best(hearing, each_gone, _instead(hearing, every), places))
    if found is None or len(found.back) < len(hearing.ends):
        patches = _near(hearing, every)
        found = _better(found, _best(hearing, each_gone, [(None, (patch,)) for patch in patches], places))
        if found is None or len(found.back) < len(hearing.ends):
            lone = [each for patch in patches for each in _alone(hearing, patch)]
            found = _better(found, _best(hearing, each_gone, [(None, (patch,)) for patch in lone], places))
        if found is None or len(found.back) < len(hearing.ends):
            pairs = [pair for pair in combinations(patches, 2) if len({*_jacks(pair)}) == 4]
            found = _better(found, _best(hearing, each_gone, [(None, pair) for pair in pairs], places))
    if found is None:
        return Repair(None, (), frozenset(), (), None)
    made: Repair = found.replace(minutes=_minutes(name, found))
    return made


def _better(one: Repair | None, other: Repair | None) -> Repair | None:
    if one is None or other is None:
        return one or other
    return other if len(other.back) > len(one.back) else one


def _best(
    hearing: Hearing,
    each_gone: tuple[frozenset[Part], ...],
    tries: Iterable[tuple[LoopsOut | None, tuple[Patch, ...]]],
    places: Placement,
) -> Repair | None:
    """Of these, the likeliest first, the best that brings an end back which is silent without it."""
    silent = frozenset(hearing.ends) - frozenset.intersection(*(hearing.heard(gone) for gone in each_gone))
    fed = _fed(hearing, frozenset().union(*each_gone))
    best: tuple[tuple[int, int, int, float], Repair] | None = None
    whole = 0
    for out, patches in tries:
        back = frozenset.intersection(*(hearing.heard(gone, out, patches) for gone in each_gone))
        if not back & silent or not back >= frozenset(hearing.ends) - silent:
            continue
        if best is not None and len(back) < -best[0][0]:
            continue
        still = frozenset.intersection(*(hearing.sounding(gone, out, patches) for gone in each_gone))
        other = sum(patch.start not in fed for patch in patches)
        rank = (-len(back), len(hearing.ways - still), other, sum(_reach(places, patch) for patch in patches))
        if best is None or rank < best[0]:
            best = rank, Repair(out, patches, back, hearing.passed_over(still), None)
        whole += len(back) == len(hearing.ends)
        if whole == ENOUGH:
            break
    return None if best is None else best[1]


def _fed(hearing: Hearing, gone: frozenset[Part]) -> frozenset[Port]:
    """The jacks from which sound went into what is gone: all of it comes out there, and not only what another way made of it."""
    return frozenset(start for start, end, part in hearing.leads if part in gone or ("thing", end.thing) in gone)


def _reach(places: Placement, patch: Patch) -> float:
    """How far apart the two jacks are, in mm; 0 where one of them has no place."""
    points = [places.points.get(port) for port in (patch.start, patch.end)]
    if None in points:
        return 0.0
    here, there = (point for point in points if point is not None)
    return abs(here.x_mm - there.x_mm) + abs(here.y_mm - there.y_mm)


def _instead(hearing: Hearing, gone: frozenset[Part]) -> list[tuple[None, tuple[Patch, ...]]]:
    """Other leads in the place of those that are gone, if nothing else is."""
    leads = [(start, end) for start, end, part in hearing.leads if part in gone]
    if len(leads) < len(gone) or not all(joins(hearing.rig, start, end) for start, end in leads):
        return []
    return [(None, tuple(Patch(start, end) for start, end in leads))]


def _near(hearing: Hearing, gone: frozenset[Part]) -> list[Patch]:
    """Patches from the last jacks that sound still reaches to the first from which it still goes on: those that should bring most
    ends back, and of these those from what fed the broken thing, and the shortest along the sound, first."""
    reached = hearing.after(hearing.sources, gone)
    onward = {end: hearing.before((end,), gone) for end in hearing.ends if hearing.alive(end, gone)}
    starts = [port for port in (*hearing.sources, *outputs(hearing)) if port in reached]
    ends = {port: sum(port in there for there in onward.values()) for port in inputs(hearing) if port not in reached}
    fed = _fed(hearing, gone)
    before = sorted(starts, key=lambda port: (port not in fed, -hearing.steps[port], str(port)))[:FAR]
    behind = sorted(ends, key=lambda port: (-ends[port], hearing.steps[port], str(port)))
    after = [*behind[:FAR], *(port for port in onward if port in behind[FAR:])]
    return [Patch(start, end) for end in after for start in before if ends[end] and may_join(hearing.rig, start, end)]


def _alone(hearing: Hearing, patch: Patch) -> Iterable[Patch]:
    """The patch with the other side of the pair that it goes into left empty."""
    unit = hearing.rig.units.get(patch.end.thing)
    for pair in () if unit is None else unit.pairs:
        if patch.end.jack in pair:
            other = Port(patch.end.thing, pair[pair[0] == patch.end.jack])
            if other in hearing.hookup.wired:
                yield Patch(patch.start, patch.end, other)


def _jacks(patches: Iterable[Patch]) -> Iterable[Port]:
    return (port for patch in patches for port in (patch.start, patch.end))


def _minutes(name: str, found: Repair) -> Figure:
    count = len(found.patches)
    out = 2 * count + sum(patch.alone is not None for patch in found.patches)
    times = (("pack", count), ("unplug", out), ("plug in", 2 * count)) if count else ()
    return known_figure(
        f"{name}.minutes",
        total(alike(often) * ours(rework.MINUTES[action]) for action, often in times),
        MINUTES,
        rule="for each lead: it is taken out of its bag, at both jacks what is plugged in comes out and it goes in; a loop is out at a press",
        source=PRACTICE,
    )
