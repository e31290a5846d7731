"""Rig -> the states of its signal path: all off, each unit alone on, everything on, each preset, no power."""

from __future__ import annotations

from functools import cached_property

from rigc.analysis.deck.used_units import used_units
from rigc.model.rig import Rig
from rigc.model.things import Unit
from rigc.model.ways.audio_state import ALL_OFF, ALONE, EVERYTHING, PRESET, UNPOWERED, AudioState
from rigc.model.ways.preset_loops import preset_loops
from rigc.model.wishes import Connection, Preset, When
from rigc.record import Record

__all__ = ["AudioState", "AudioStates", "audio_states"]

_Loops = frozenset[tuple[str, int]]


class AudioStates(Record):
    """All states; where wiring differs by scenario or instrument, all of one wiring before the next."""

    all: tuple[AudioState, ...]

    @property
    def wirings(self) -> tuple[When, ...]:
        """The wirings that differ, in order."""
        return tuple(self.of_wiring)

    @cached_property
    def of_wiring(self) -> dict[When, tuple[AudioState, ...]]:
        """The states of each wiring, both in order."""
        found: dict[When, list[AudioState]] = {}
        for state in self.all:
            found.setdefault(state.when, []).append(state)
        return {when: tuple(states) for when, states in found.items()}


def audio_states(rig: Rig) -> AudioStates:
    """Every state in which the rig is looked at. A unit that can't be switched has no state of its own."""
    switchers = {use.switcher for use in rig.loops}
    switched = [unit.name for unit in used_units(rig) if _switchable(unit, switchers)]
    holds = _holding(rig)
    every = frozenset((use.switcher, use.number) for use in rig.loops if use.stops)
    wirings = _wirings(rig)
    found: list[AudioState] = []
    for words, when in wirings:
        tail = f", {words}" if words else ""
        found.append(AudioState(f"all off{tail}", ALL_OFF, frozenset(), frozenset(), when))
        for name in switched:
            loops = holds.get(name, frozenset())
            found.append(AudioState(f"{name} alone on{tail}", ALONE, frozenset((name,)), loops, when))
        found.append(AudioState(f"everything on{tail}", EVERYTHING, frozenset(switched), every, when))
        found += [_preset(rig, preset, tail, when) for preset in rig.presets.values()]
        found.append(AudioState(f"no power{tail}", UNPOWERED, frozenset(), frozenset(), when))
    return AudioStates(tuple(found))


def loops_of_preset(rig: Rig, preset: Preset) -> _Loops:
    """The loops that a preset switches in; one that names no switcher means the only one."""
    return frozenset((host, number) for host, number, _ in preset_loops(rig, preset) if host is not None)


def _switchable(unit: Unit, switchers: set[str]) -> bool:
    """Whether sound goes through it and it has a bypass: not a passive one, nor a switcher, whose loops are switched instead."""
    return (
        unit.kind == "unit"
        and unit.name not in switchers
        and "passive" not in unit.flags
        and not (unit.bypass is not None and unit.bypass.value == "always-on")
        and any(jack.audio for jack in unit.jacks)
    )


def _holding(rig: Rig) -> dict[str, _Loops]:
    """The loop that must be in for a unit to be heard."""
    held: dict[str, _Loops] = {}
    for use in rig.loops:
        for stop in use.stops:
            held[stop.thing] = held.get(stop.thing, frozenset()) | {(use.switcher, use.number)}
    return held


def _preset(rig: Rig, preset: Preset, tail: str, when: When) -> AudioState:
    loops = loops_of_preset(rig, preset)
    off = {name for name, _ in preset.off}
    inside = {stop.thing for use in rig.loops if (use.switcher, use.number) in loops for stop in use.stops}
    on = frozenset((inside & set(rig.units) | {name for name, _ in preset.on}) - off)
    title = f' "{preset.title}"' if preset.title else ""
    return AudioState(f"preset {preset.number}{title}{tail}", PRESET, on, loops, when, preset.number)


def _wirings(rig: Rig) -> list[tuple[str, When]]:
    """What differs in its connections, with the words for it; one without words where nothing differs."""
    audio = [each for each in rig.connections if each.signal == "audio"]
    scenarios: list[str | None] = [*rig.scenarios] if any(each.when.scenarios for each in audio) else [None]
    named = {each.when.instrument for each in audio} - {None}
    instruments: list[str | None] = [name for name in rig.instruments if _played(name, audio)] if named else [None]
    groups: dict[tuple[int, ...], list[tuple[str | None, str | None]]] = {}
    for instrument in instruments or [None]:
        for scenario in scenarios or [None]:
            when = When((scenario,) if scenario else (), instrument)
            holds = tuple(at for at, each in enumerate(audio) if each.when.meets(when))
            groups.setdefault(holds, []).append((scenario, instrument))
    several = len(groups) > 1
    return [_wiring(pairs, several) for pairs in groups.values()]


def _wiring(pairs: list[tuple[str | None, str | None]], several: bool) -> tuple[str, When]:
    if not several:
        return "", When()
    instrument = pairs[0][1]
    scenarios = tuple(scenario for scenario, other in pairs if scenario and other == instrument)
    words = " and ".join(filter(None, (", ".join(scenarios), f"with {instrument}" if instrument else "")))
    return words, When(scenarios, instrument)


def _played(name: str, audio: list[Connection]) -> bool:
    return any(each.start.thing == name or each.when.instrument == name for each in audio)


COMPUTE = audio_states
