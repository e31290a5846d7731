"""A passive volume treadle of low track stands before the first buffer, or one of high track behind a buffer.

Why it matters: 25 kΩ across a pickup dulls and weakens it; 250 kΩ behind a buffer makes hiss and loses treble in the next lead
for nothing.
What to do: swap the treadle for one of the other kind, or move it to the other side of the buffer.
Source: common practice, no source. A treadle of high track that sees the pickup in some state is right and not told; what
it sees without power does not count, since nobody plays then.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.signal.loading.loading import Loading
from rigc.analysis.signal.loading.section import Section
from rigc.analysis.signal.loading.state_words import states_told
from rigc.analysis.signal.loading.wrong_tracks import WrongTracks
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Level, Number
from rigc.diagnostics.figures import ohms
from rigc.diagnostics.wording import listed
from rigc.facts.loading import HIGH_TRACK_OHM, LOW_TRACK_OHM
from rigc.model.rig import Rig
from rigc.model.things import Unit

KIND = Kind(
    "wrong-treadle",
    Level.WARNING,
    __doc__,
    f"no passive treadle of {LOW_TRACK_OHM.value / 1000:g} kΩ or less before the first buffer, none of {HIGH_TRACK_OHM.value / 1000:g} kΩ or more behind one",
    "common practice, no source",
    about=1,
)


def wrong_treadle(rig: Rig, loading: Loading, tracks: WrongTracks) -> Iterator[Diagnostic]:
    """One finding for each treadle; can't-check where its track is not said."""
    for name in tracks.unsaid:
        yield KIND.cant_check(
            rig.units[name].declared,
            f"whether '{name}' suits its place can't be checked: its track is not said",
            subject=(name,),
            help=f"write `track` in '{name}'",
        )
    for name, sections in tracks.all.items():
        unit = rig.units[name]
        if unit.track_ohm is not None:
            yield _told(loading, unit, unit.track_ohm.value, list(sections))


def _told(loading: Loading, unit: Unit, track: float, sections: list[Section]) -> Diagnostic:
    name, sources = unit.name, list(dict.fromkeys(section.source.thing for section in sections))
    before = sections[0].from_pickup
    place = f"loads {listed(sources)} before the first buffer" if before else f"stands behind {listed(sources)}"
    other = HIGH_TRACK_OHM if before else LOW_TRACK_OHM
    return KIND.at(
        unit.track_ohm.span if unit.track_ohm is not None else unit.declared,
        f"the {ohms(track)} of '{name}' {place} ({states_told(loading, sections)})",
        subject=(name, *sources),
        label="the other kind belongs here",
        numbers=(Number("track", track, "Ω"), Number("other kind", other.value, "Ω")),
        help=f"use a treadle of {ohms(other.value)} there" + (", or put a buffer before it" if before else ""),
    )


CHECK = wrong_treadle
