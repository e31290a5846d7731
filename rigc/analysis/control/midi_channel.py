"""Channels and ways -> which units hear each other's messages; numbers of channels as text."""

from __future__ import annotations

from collections.abc import Iterable

from rigc.analysis.control.control_map import ControlMap
from rigc.diagnostics.wording import runs_of
from rigc.facts.midi import CHANNELS
from rigc.model.rig import Rig
from rigc.model.wishes import Channel


def shared_channels(rig: Rig, control: ControlMap) -> tuple[tuple[Channel, ...], ...]:
    """The groups of units that listen to the same sender on one channel, lowest channel first.

    A unit that no MIDI lead reaches counts as one that could hear any sender.
    """
    groups: list[list[Channel]] = []
    for channel in sorted(rig.channels, key=lambda each: each.number):
        mine = [group for group in groups if any(_together(control, channel, other) for other in group)]
        for group in mine:
            groups.remove(group)
        groups.append([*(other for group in mine for other in group), channel])
    return tuple(tuple(group) for group in groups if len(group) > 1)


def free_channels(rig: Rig) -> tuple[int, ...]:
    """The channels on which no unit is stated to listen."""
    used = {channel.number for channel in rig.channels}
    return tuple(number for number in range(1, round(CHANNELS.value) + 1) if number not in used)


def in_runs(numbers: Iterable[int]) -> str:
    """Ascending numbers as text, three and more in a row as a run: `2, 4…16`."""
    runs = runs_of(numbers, lambda before, number: before == number - 1)
    return ", ".join(f"{run[0]}…{run[-1]}" if len(run) > 2 else ", ".join(map(str, run)) for run in runs)


def _together(control: ControlMap, one: Channel, other: Channel) -> bool:
    if one.number != other.number:
        return False
    heard, there = control.heard(one.unit), control.heard(other.unit)
    return not heard or not there or bool(heard & there)
