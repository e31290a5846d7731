"""Sections -> volume treadles whose track is of the other kind than their place wants."""

from __future__ import annotations

from rigc.analysis.signal.loading.loading import Loading
from rigc.analysis.signal.loading.section import Section
from rigc.analysis.signal.loading.section_walk import OUTSIDE
from rigc.analysis.signal.unit_mode import TRACK
from rigc.facts.loading import HIGH_TRACK_OHM, LOW_TRACK_OHM
from rigc.model.rig import Rig
from rigc.model.ways.state_ways import UNKNOWN
from rigc.record import Record


class WrongTracks(Record):
    """Each such treadle, with the sections that tell it: in which it sees a pickup by a low track, or in all of which a buffer drives its high one.
    `unsaid` are those of which no track is stated."""

    all: dict[str, tuple[Section, ...]]
    unsaid: tuple[str, ...]


def wrong_tracks(rig: Rig, loading: Loading) -> WrongTracks:
    """Looks at each treadle in the states in which anybody plays."""
    met: dict[str, list[Section]] = {}
    for section in loading.played:
        for load in section.loads:
            if load.what == TRACK and section.how not in (OUTSIDE, UNKNOWN):
                met.setdefault(load.port.thing, []).append(section)
    wrong: dict[str, tuple[Section, ...]] = {}
    for name, sections in met.items():
        track, first = rig.units[name].track_ohm, tuple(section for section in sections if section.from_pickup)
        if track is None:
            continue
        if first and track.value <= LOW_TRACK_OHM.value:
            wrong[name] = first
        elif not first and track.value >= HIGH_TRACK_OHM.value:
            wrong[name] = tuple(sections)
    return WrongTracks(wrong, tuple(name for name in met if rig.units[name].track_ohm is None))


COMPUTE = wrong_tracks
