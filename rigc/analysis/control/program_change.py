"""Programs of a preset and channels -> the program changes that are sent: shown, as a number on the wire, as bytes, and their time."""

from __future__ import annotations

from rigc.facts.midi import BYTE_US, HIGHEST_PROGRAM, PROGRAM_CHANGE
from rigc.model.rig import Rig
from rigc.model.wishes import Preset
from rigc.record import Record
from rigc.source import Span


class ProgramChange(Record):
    """The program of a unit in a preset. `shown` is what the unit shows; `channel` (1 to 16) is None where it has none.

    `sent` is the number on the wire, None where it is not known from which number the unit counts, or where no program
    of that number exists.
    """

    preset: int
    unit: str
    shown: int
    channel: int | None
    first: int | None
    sent: int | None
    span: Span

    @property
    def octets(self) -> tuple[int, ...]:
        """The bytes of the message; none where channel or program is not known."""
        if self.channel is None or self.sent is None:
            return ()
        return (round(PROGRAM_CHANGE.value) + self.channel - 1, self.sent)

    @property
    def hexadecimal(self) -> str:
        """The bytes as text, `C0 00`."""
        return " ".join(f"{octet:02X}" for octet in self.octets)


def program_changes(rig: Rig, preset: Preset, by_hand: frozenset[str]) -> tuple[ProgramChange, ...]:
    """The programs of a preset in the order of the source; units `by_hand` are not reached by MIDI and get no channel."""
    channels = {channel.unit: channel for channel in rig.channels}
    found = []
    for unit, shown, span in preset.programs:
        channel = None if unit in by_hand else channels.get(unit)
        first = None if channel is None else channel.first
        sent = None if first is None or not exists(shown, first) else shown - first
        found.append(
            ProgramChange(preset.number, unit, shown, None if channel is None else channel.number, first, sent, span)
        )
    return tuple(found)


def exists(shown: int, first: int | None) -> bool | None:
    """Whether a unit that counts from `first` has that program; None where that hangs on where it counts from."""
    highest = round(HIGHEST_PROGRAM.value)
    if first is None:
        return True if 1 <= shown <= highest else None if shown in (0, highest + 1) else False
    return 0 <= shown - first <= highest


def time_ms(changes: tuple[ProgramChange, ...]) -> float:
    """How long the messages take on the wire one after the other, in ms; what is the same for two units is sent once."""
    return sum(map(len, {change.octets for change in changes})) * BYTE_US.value / 1000
