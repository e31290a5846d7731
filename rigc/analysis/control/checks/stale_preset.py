"""A preset or a song names a loop, a unit, a program or a preset that this revision does not have, or a preset has a unit on whose loop it
leaves off. A passive unit has no programs, one without audio jacks is neither on nor off, and one that is always on is never off.

Why it matters: the sheet on the music stand promises a sound that the rig can't make.
What to do: bring presets and songs up to date, or put back what they name.
Source: common practice, no source; program numbers after MIDI 1.0 (0 to 127 on the wire).
"""

from __future__ import annotations

from collections.abc import Container, Iterator

from rigc.analysis.control.control_map import ControlMap
from rigc.analysis.control.midi_channel import in_runs
from rigc.analysis.control.program_change import ProgramChange, exists
from rigc.analysis.control.unheard_channels import unheard_channels
from rigc.analysis.deck.used_units import used_units
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.diagnostics.mend import Mend, Replace
from rigc.diagnostics.wording import joined
from rigc.facts.midi import HIGHEST_PROGRAM
from rigc.model.rig import Rig
from rigc.model.things import Unit
from rigc.model.ways.preset_loops import preset_loops
from rigc.model.wishes import Preset
from rigc.source import Span

KIND = Kind(
    "stale-preset",
    Level.WARNING,
    __doc__,
    "presets and songs name only loops, units, programs and presets of this revision; a unit that is on lies in no loop that is off, "
    "and what is on or off can be",
    "common practice, no source; program numbers after MIDI 1.0",
)

_OUT = "take out what is not there"

Named = tuple[str, Span]
"""Who names it (`preset 3`), and where."""


def stale_preset(rig: Rig, control: ControlMap) -> Iterator[Diagnostic]:
    """One finding for each loop, unit and preset that is not there, and for each unit with programs that are not there."""
    for (switcher, number), named in _loops(rig).items():
        yield _loop(rig, switcher, number, named)
    for preset, named in _presets(rig).items():
        has = f"it has {in_runs(sorted(rig.presets))}" if rig.presets else "it has no presets"
        yield _found(
            f"preset {preset}, which the rig does not have; {has}",
            (f"preset {preset}",),
            named,
            f"declare preset {preset}",
        )
    used = {unit.name for unit in used_units(rig)}
    for name, named in _units(rig).items():
        if name not in used:
            yield _found(f"'{name}', which is wired nowhere and placed nowhere", (name,), named, f"wire '{name}' up")
    for name, changes in _programs(control).items():
        if name in used:
            yield from _judged(rig, control, name, changes)
    for each in rig.presets.values():
        yield from _left_off(rig, each)
    yield from _unswitched(rig, used)


def _unswitched(rig: Rig, used: Container[str]) -> Iterator[Diagnostic]:
    """One finding for each unit that presets have on, or off, and that can't be so."""
    named: dict[tuple[str, str, str], list[Named]] = {}
    for preset in rig.presets.values():
        for state, units in (("on", preset.on), ("off", preset.off)):
            for name, span in units:
                why = _why_not(rig.units[name], state) if name in rig.units and name in used else ""
                if why:
                    named.setdefault((name, state, why), []).append((f"preset {preset.number}", span))
    for (name, state, why), places in named.items():
        presets = [preset for preset, _ in places]
        yield KIND.at(
            places[0][1],
            f"{joined(presets)} {'has' if len(presets) == 1 else 'have'} '{name}' {state}, {why}",
            subject=(name,),
            label="named here",
            also=tuple(Label(span, "and here") for _, span in places[1:]),
            help=f"take '{name}' out of what is {state}",
        )


def _why_not(unit: Unit, state: str) -> str:
    """Why a unit can't be on or off; empty if it can, or if nothing tells."""
    if "passive" in unit.flags and not any(jack.audio for jack in unit.jacks):
        return "which is passive and has no audio jack"
    always = unit.bypass is not None and unit.bypass.value == "always-on"
    return "which is always on (`bypass always-on`)" if state == "off" and always else ""


def _left_off(rig: Rig, preset: Preset) -> Iterator[Diagnostic]:
    """One finding for each unit that a preset has on and that lies in a loop which it leaves off, of a switcher whose loops it names."""
    on = {(switcher, number): span for switcher, number, span in preset_loops(rig, preset)}
    last = {switcher: span for (switcher, _), span in on.items()}
    units = dict(preset.on)
    for use in rig.loops:
        if use.switcher not in last or (use.switcher, use.number) in on:
            continue
        if any(rig.units[use.switcher].loop(number) is None for switcher, number in on if switcher == use.switcher):
            continue  # a loop that is named and not there may have been to be this one
        for name in dict.fromkeys(stop.thing for stop in use.stops if stop.thing in units):
            span = last[use.switcher]
            yield KIND.at(
                units[name],
                f"preset {preset.number} has '{name}' on, and leaves off loop {use.number} of '{use.switcher}', which holds it",
                subject=(name, use.switcher, f"loop {use.number}"),
                label="not heard here",
                also=(Label(span, f"loop {use.number} is not among these"), Label(use.span, "it lies in this loop")),
                mends=(
                    Mend(
                        f"add loop {use.number} to the loops of preset {preset.number}",
                        (Replace(span, f"{span.text}, {use.number}"),),
                    ),
                ),
                otherwise=f"take '{name}' out of what is on",
            )


def _loops(rig: Rig) -> dict[tuple[str | None, int], list[Named]]:
    """The loops that no switcher has, with the presets that name them."""
    found: dict[tuple[str | None, int], list[Named]] = {}
    for preset in rig.presets.values():
        for switcher, number, span in preset_loops(rig, preset):
            if switcher is None or number not in _numbers(rig, switcher):
                found.setdefault((switcher, number), []).append((f"preset {preset.number}", span))
    return found


def _presets(rig: Rig) -> dict[int, list[Named]]:
    """The presets that are not declared, with the songs that are played on them."""
    found: dict[int, list[Named]] = {}
    for song in rig.songs:
        if song.preset is not None and song.preset not in rig.presets:
            found.setdefault(song.preset, []).append((f"song '{song.title}'", song.preset_span or song.span))
    return found


def _units(rig: Rig) -> dict[str, list[Named]]:
    found: dict[str, list[Named]] = {}
    for preset in rig.presets.values():
        spans = [*preset.on, *preset.off, *((name, span) for name, _, span in preset.programs)]
        spans += [(name, floor.span) for name, floor in preset.floors]
        spans += [(name, span) for name, _, span in preset.loops if name is not None]
        for name, span in spans:
            found.setdefault(name, []).append((f"preset {preset.number}", span))
    for song in rig.songs:
        for name, _, _ in song.settings:
            found.setdefault(name, []).append((f"song '{song.title}'", song.span))
    return found


def _programs(control: ControlMap) -> dict[str, list[ProgramChange]]:
    found: dict[str, list[ProgramChange]] = {}
    for change in (change for changes in control.programs.values() for change in changes):
        found.setdefault(change.unit, []).append(change)
    return found


def _loop(rig: Rig, switcher: str | None, number: int, named: list[Named]) -> Diagnostic:
    if switcher is None:
        what = f"loop {number} without its switcher, and the rig has not exactly one"
        return _found(what, (f"loop {number}",), named, f"write `loops {number} of` and the switcher's name")
    numbers = _numbers(rig, switcher)
    has = f"has only loops {in_runs(numbers)}" if numbers else "has no loops"
    return _found(f"loop {number} of '{switcher}', which {has}", (switcher, f"loop {number}"), named, _OUT)


def _numbers(rig: Rig, switcher: str) -> list[int]:
    return sorted(loop.number for loop in rig.things[switcher].loops)


def _judged(rig: Rig, control: ControlMap, name: str, changes: list[ProgramChange]) -> Iterator[Diagnostic]:
    if "passive" in rig.units[name].flags:
        named = [_named(change) for change in changes]
        yield _found(f"programs of '{name}', which is passive and has none", (name,), named, _OUT)
        return
    if any(channel.unit == name for channel in rig.channels) and not control.to(name):
        if any(each.unit == name for each in unheard_channels(rig)):
            return  # that no lead comes to it at all is told of its channel
        named = [_named(change) for change in changes]
        yield _found(
            f"programs of '{name}', which no MIDI lead reaches", (name,), named, f"join '{name}' to the MIDI chain"
        )
        return
    sent = [change for change in changes if change.channel is not None]
    missing = [change for change in sent if exists(change.shown, change.first) is False]
    unclear = [change for change in sent if exists(change.shown, change.first) is None]
    if missing:
        first = missing[0].first or 0
        numbers = ", ".join(dict.fromkeys(str(change.shown) for change in missing))
        spoken = f"program{'s' if ',' in numbers else ''} {numbers} on '{name}', which has {first}…{HIGHEST_PROGRAM.value + first:g}"
        yield _found(spoken, (name,), [_named(change) for change in missing], _OUT)
    if unclear:
        yield KIND.cant_check(
            unclear[0].span,
            f"whether '{name}' has a program {unclear[0].shown} is not known: nothing says if it counts from 0 or from 1",
            subject=(name,),
            help=f"write `programs from 0` or `programs from 1` behind the channel of '{name}'",
        )


def _named(change: ProgramChange) -> Named:
    return f"preset {change.preset}", change.span


def _found(what: str, subject: tuple[str, ...], named: list[Named], other: str) -> Diagnostic:
    names = list(dict.fromkeys(name for name, _ in named))
    return KIND.at(
        named[0][1],
        f"{joined(names)} name{'s' if len(names) == 1 else ''} {what}",
        subject=subject,
        label="named here",
        also=tuple(Label(span, "and here") for _, span in named[1:]),
        help=f"correct {'it' if len(named) == 1 else 'them'}{f', or {other}' if other else ''}",
    )


CHECK = stale_preset
