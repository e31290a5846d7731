"""Two units listen on one MIDI channel, and nothing says that this is meant.

Why it matters: a program change for one of them changes the program of the other too; on stage that sounds like a fault
of the unit.
What to do: give one of them a channel of its own, or write `deliberate` behind its channel.
Source: MIDI 1.0 (16 channels); common practice, no source, that each unit has its own.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.control.control_map import ControlMap
from rigc.analysis.control.midi_channel import free_channels, in_runs, shared_channels
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.diagnostics.mend import Mend, Replace
from rigc.diagnostics.wording import joined
from rigc.model.rig import Rig
from rigc.model.wishes import Channel

KIND = Kind(
    "shared-midi-channel",
    Level.WARNING,
    __doc__,
    "units that hear the same sender listen on channels of their own, or share one deliberately",
    "MIDI 1.0 (16 channels); common practice, no source",
)


def shared_midi_channel(rig: Rig, control: ControlMap) -> Iterator[Diagnostic]:
    """One finding for each channel that is shared; one for each unit whose channel is not stated, if another hears its sender."""
    for group in shared_channels(rig, control):
        if sum(not channel.deliberate for channel in group) > 1:
            yield _shared(rig, group)
    stated = {channel.unit for channel in rig.channels}
    for name in dict.fromkeys(way.unit for way in control.ways):
        if name not in stated and _plays(rig, name) and _hears_with_others(rig, control, name):
            yield KIND.cant_check(
                control.to(name)[0].links[-1].span,
                f"whether another unit listens on the channel of '{name}' is not known: it gets MIDI, its channel is not stated",
                subject=(name,),
                help=_state(rig, name),
            )


def _state(rig: Rig, name: str) -> str:
    free = next(iter(free_channels(rig)), None)
    if free is None:
        return f"write '{name} channel ___' in the midi block; all sixteen are taken, so free one first, or put `deliberate` behind it"
    return f"write for example '{name} channel {free}' in the midi block"


def _plays(rig: Rig, name: str) -> bool:
    return name in rig.units and any(jack.audio for jack in rig.units[name].jacks)


def _hears_with_others(rig: Rig, control: ControlMap, name: str) -> bool:
    """Whether a sender of a unit is heard by another one as well: a unit that is alone with it has its channel to itself."""
    mine = {way.links[0].start.thing for way in control.to(name)}
    return any(way.unit != name and way.links[0].start.thing in mine and _plays(rig, way.unit) for way in control.ways)


def _shared(rig: Rig, group: tuple[Channel, ...]) -> Diagnostic:
    """Told at the last unit of which nothing says that it shares deliberately."""
    names = [f"'{channel.unit}'" for channel in group]
    free, number = in_runs(free_channels(rig)), group[0].number
    last = [channel for channel in group if not channel.deliberate][-1]
    said = last.span.text
    mends = [
        Mend(
            f"set '{last.unit}' to channel {each}, which is free",
            (Replace(last.span, said.replace(f"channel {number}", f"channel {each}", 1)),),
        )
        for each in list(free_channels(rig))[:1]
    ]
    mends.append(
        Mend("say that it is meant: `deliberate` behind its channel", (Replace(last.span, f"{said} deliberate"),))
    )
    return KIND.at(
        last.span,
        f"{joined(names)} listen on MIDI channel {number}; {f'free are {free}' if free else 'none is free'}",
        subject=tuple(channel.unit for channel in group),
        label=f"channel {number} again",
        also=tuple(Label(channel.span, f"'{channel.unit}' is on it here") for channel in group if channel is not last),
        numbers=(Number("channel", number, ""),),
        mends=tuple(mends),
        help="" if free else "free a channel",
    )


CHECK = shared_midi_channel
