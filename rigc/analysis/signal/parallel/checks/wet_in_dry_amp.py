"""Sound comes to a dry amp by way of a delay or a reverb.

Why it matters: the dry amp holds the middle clear while the wet ones blur; one that hears echoes too is a third wet amp, and nothing stays dry.
What to do: part the dry sound off before the first delay or reverb, or do not call the amp dry. What a stated `straight` path of the unit lets
through is dry.
Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.signal.amp_ends import amp_ends
from rigc.analysis.signal.parallel.leg import TIME
from rigc.analysis.signal.sound_ways import Hookup, SoundWays
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.diagnostics.wording import listed
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.things import Unit
from rigc.model.ways.inner_ways import main_inputs
from rigc.model.ways.reached import reached

KIND = Kind(
    "wet-in-dry-amp",
    Level.WARNING,
    __doc__,
    "no delay or reverb stands before an amp that is dry",
    "common practice, no source",
)


def wet_in_dry_amp(rig: Rig, ways: SoundWays) -> Iterator[Diagnostic]:
    """One finding for all dry amps that hear the same."""
    alike: dict[tuple[str, ...], list[Unit]] = {}
    for amp in rig.units.values():
        if amp.kind == "amp" and amp.role == "dry":
            found = tuple(dict.fromkeys(name for hookup in ways.hookups for name in _heard(rig, hookup, amp)))
            if found:
                alike.setdefault(found, []).append(amp)
    for names, amps in alike.items():
        yield _told(rig, amps, names)


def _heard(rig: Rig, hookup: Hookup, amp: Unit) -> Iterator[str]:
    """The delays and reverbs between the sources and an amp, in the order in which sound comes to them."""
    back: dict[Port, list[Port]] = {}
    for start, ends in hookup.onward.items():
        for end in ends:
            back.setdefault(end, []).append(start)
    heard_at = {*amp_ends(amp, hookup.wired), *(port for port in main_inputs(amp) if port in hookup.wired)}
    from_sources, to_amp = reached(hookup.onward, hookup.sources), reached(back, heard_at)
    for start, end in hookup.inner:
        unit = rig.units.get(start.thing)
        if unit is None or not unit.flags & TIME or start not in from_sources or end not in to_amp:
            continue
        if not any(path.how == "straight" and (path.start, path.end) == (start.jack, end.jack) for path in unit.paths):
            yield unit.name


def _told(rig: Rig, amps: list[Unit], names: tuple[str, ...]) -> Diagnostic:
    listed_amps, one = listed(amp.name for amp in amps), len(amps) == 1
    return KIND.at(
        amps[0].declared,
        f"{listed_amps} {'is' if one else 'are'} dry, and {'hears' if one else 'hear'} {listed(names)}",
        subject=(*(amp.name for amp in amps), *names),
        label="a dry amp",
        also=tuple(Label(rig.units[name].declared, "before it") for name in names),
        help=f"let the chain to {'it' if one else 'them'} part before '{names[0]}'; or delete `dry` in {listed_amps}, if "
        f"{'it' if one else 'they'} shall hear {'it' if len(names) == 1 else 'them'}",
    )


CHECK = wet_in_dry_amp
