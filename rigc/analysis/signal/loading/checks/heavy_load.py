"""An input, or several side by side, loads an output, a winding or a treadle too heavily.

Why it matters: level is lost, and with it treble where the source is a winding or a treadle.
What to do: put a buffer between, or choose an input of higher impedance.
Source: general reference on impedance bridging: an input of ten times the source's impedance or more loses 0.83 dB at most,
20·log10(Zin/(Zin+Zout)). A treadle is reckoned at its worst, a quarter of its track. A unit that wants to see the pickup is
left out, and what a pickup drives is judged by the loading table. Headphones are left out too: what they plug into is made to
drive some tens of ohms, which is no bridging.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import inf

from rigc.analysis.signal.at_limit import over
from rigc.analysis.signal.loading.loading import Loading
from rigc.analysis.signal.loading.section import Load, Section
from rigc.analysis.signal.loading.section_walk import OUTSIDE, PICKUP
from rigc.analysis.signal.loading.state_words import fact_of, remedy, worst_told
from rigc.analysis.signal.loading.wrong_tracks import WrongTracks
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.diagnostics.figures import ohms
from rigc.facts.loading import LEAST_BRIDGING
from rigc.model.rig import Rig
from rigc.model.ways.jack_use import crowded
from rigc.traced.term import known

KIND = Kind(
    "heavy-load",
    Level.WARNING,
    __doc__,
    f"inputs together ≥ {LEAST_BRIDGING} times the impedance of what feeds them (0.83 dB)",
    "general reference on impedance bridging; loss by 20·log10(Zin/(Zin+Zout))",
)


def heavy_load(rig: Rig, loading: Loading, tracks: WrongTracks) -> Iterator[Diagnostic]:
    """One finding for each thing that is loaded too heavily, but for treadles of a wrong track, of which that is told; can't-check for each thing whose impedance is not said."""
    heavy: dict[str, list[Section]] = {}
    taken_twice = {socket[0] for socket in crowded(rig)}  # of which that is told
    lacking: dict[str, tuple[str, str]] = {}
    for section in loading.played:
        loads = [load for load in section.loads if not load.wants_pickup]
        if section.how in (PICKUP, OUTSIDE) or not loads or any(_headphones(rig, load) for load in loads):
            continue
        if section.source.thing in tracks.all or section.source in taken_twice:
            continue
        if over(LEAST_BRIDGING.value, section.bridging):
            heavy.setdefault(section.source.thing, []).append(section)
            continue
        if section.source_ohm is None:
            lacking.setdefault(section.source.thing, ("is loaded", section.missing_end[-1]))
        for load in loads:
            if load.ohm is None:
                lacking.setdefault(load.port.thing, ("loads what feeds it", _reason(section, load)))
    for name, sections in heavy.items():
        yield _told(rig, loading, name, sections)
    for name, (what, reason) in lacking.items():
        yield KIND.cant_check(
            rig.things[name].declared,
            f"whether '{name}' {what} too heavily can't be checked: {reason}",
            subject=(name,),
            help=remedy(reason),
            wants=(fact_of(reason),),
        )


def _headphones(rig: Rig, load: Load) -> bool:
    unit = rig.units.get(load.port.thing)
    return unit is not None and "headphones" in unit.flags


def _reason(section: Section, load: Load) -> str:
    told = (reason for reason in section.missing_end if f"'{load.port}'" in reason or f"'{load.port.thing}'" in reason)
    return next(told)


def _told(rig: Rig, loading: Loading, name: str, sections: list[Section]) -> Diagnostic:
    worst = min(sections, key=lambda section: section.bridging)
    told = loading.figures(worst)
    parts = (told.source, told.judged_load, told.judged_loss)
    ohm, load, loss = (
        known(each) or 0.0 for each in parts if each is not None
    )  # all are there, or it would not be heavy
    into = [each for each in worst.loads if each.ohm is not None and each.ohm < inf and not each.wants_pickup]
    inputs = " and ".join(f"'{each.port}' ({ohms(each.ohm or 0)})" for each in into)
    alike = [each for each in sections if each.source == worst.source and each.loads == worst.loads]
    return KIND.at(
        rig.things[name].declared,
        f"'{worst.source}' ({ohms(ohm)}) into {inputs} loses {-loss:.2f} dB: {load / ohm:.3g} times, less than "
        f"{LEAST_BRIDGING.value:g} ({worst_told(loading, alike, sections)})",
        subject=(name, *(str(each.source) for each in sections), *(str(each.port) for each in into)),
        label="loaded too heavily",
        also=tuple(Label(rig.things[each].declared, "loads it") for each in dict.fromkeys(e.port.thing for e in into)),
        numbers=(Number("source", ohm, "Ω"), Number("load", load, "Ω"), Number("loss", -loss, "dB")),
        help=f"put a buffer right behind '{name}', or feed an input of higher impedance",
    )


CHECK = heavy_load
