"""Programs of a preset and channels -> the program changes that are sent: shown, as a number on the wire, as bytes, and their time."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TypeVar

from rigc.analysis.control.written_number import written_number
from rigc.facts.midi import BYTE_US, HIGHEST_PROGRAM, PROGRAM_CHANGE, PROGRAM_CHANGE_BYTES
from rigc.model.rig import Rig
from rigc.model.wishes import Channel, Preset
from rigc.record import Record
from rigc.source import Span
from rigc.traced.figure import AnyFigure, Figure, figure, known_figure
from rigc.traced.given import at_place, mentioned, ours, unstated
from rigc.traced.means import total_known
from rigc.traced.term import Term, Traced, known
from rigc.traced.units import COUNT, MILLISECONDS_WIRE

T = TypeVar("T", float, Term)


class ProgramChange(Record):
    """The program of a unit in a preset. `program` is what the unit shows; `channel` (1 to 16) is None where it has none.

    `number` is the one on the wire, lacking where it is not known from which number the unit counts, or where no program
    of that number exists; `wire` the time of the message, None where none is sent.
    """

    preset: int
    unit: str
    program: Figure
    channel: int | None
    first: int | None
    number: AnyFigure
    wire: Figure | None
    span: Span

    @property
    def shown(self) -> int:
        """The program that the unit shows."""
        return int(self.program)

    @property
    def sent(self) -> int | None:
        """The number on the wire; None where not known."""
        number = known(self.number)
        return None if number is None else int(number)

    @property
    def octets(self) -> tuple[int, ...]:
        """The bytes of the message; none where channel or program is not known."""
        return _octets(self.channel, self.sent)

    @property
    def hexadecimal(self) -> str:
        """The bytes as text, `C0 00`."""
        return _hexadecimal(self.octets)


def program_changes(rig: Rig, preset: Preset, by_hand: frozenset[str]) -> tuple[ProgramChange, ...]:
    """The programs of a preset in the order of the source; units `by_hand` are not reached by MIDI and get no channel."""
    channels = {channel.unit: channel for channel in rig.channels}
    return tuple(
        program_change(preset.number, unit, shown, None if unit in by_hand else channels.get(unit), span)
        for unit, shown, span in preset.programs
    )


def program_change(preset: int, unit: str, shown: int, channel: Channel | None, span: Span) -> ProgramChange:
    """One program of a preset; a unit without a channel is switched by hand."""
    name = f"preset-{preset}.{unit}"
    program = written_number(f"{name}.shown", f"program of {unit}", shown, span)
    first = None if channel is None else channel.first
    number = None if channel is None else channel.number
    sent = _on_wire(unit, shown, channel, span)
    octets = _octets(number, None if (value := known(sent)) is None else int(value))
    listens = () if channel is None else (mentioned(f"channel of {unit}", str(channel.number), channel.span),)
    return ProgramChange(
        preset,
        unit,
        program,
        number,
        first,
        figure(
            f"{name}.sent",
            sent,
            COUNT,
            *((*listens, mentioned("bytes", _hexadecimal(octets)), ours(PROGRAM_CHANGE)) if octets else listens),
            rule="number on the wire = number shown − the number from which the unit counts",
            source=PROGRAM_CHANGE.source,
        ),
        _time(f"{name}.wire", unit) if octets else None,
        span,
    )


def _on_wire(unit: str, shown: int, channel: Channel | None, span: Span) -> Traced:
    if channel is None:
        return mentioned("a channel", "none")
    if channel.first is None:
        return unstated(f"the number from which {unit} counts")
    if not exists(shown, channel.first):
        return mentioned(f"a program {shown} of {unit}", f"there is none: it counts from {channel.first}", channel.span)
    counts = at_place(f"{unit} counts from", channel.first, channel.span)
    sent: Traced = at_place(f"program of {unit}", shown, span) - counts
    return sent


def _octets(channel: int | None, sent: int | None) -> tuple[int, ...]:
    return () if channel is None or sent is None else (round(PROGRAM_CHANGE.value) + channel - 1, sent)


def _hexadecimal(octets: tuple[int, ...]) -> str:
    return " ".join(f"{octet:02X}" for octet in octets)


def _time(name: str, unit: str) -> Figure:
    return known_figure(
        name,
        wire_ms(ours(PROGRAM_CHANGE_BYTES), ours(BYTE_US)),
        MILLISECONDS_WIRE,
        rule="bytes × time of a byte",
        source=BYTE_US.source,
        label=unit,
    )


def preset_time(preset: int, changes: Iterable[ProgramChange]) -> Figure | None:
    """How long the messages take on the wire one after the other, in ms; None where the preset sends none.

    What is the same for two units is sent once; what is not known is left out.
    """
    sent = {change.octets or (change.unit,): change for change in changes if change.channel is not None}
    if not sent:
        return None
    return known_figure(
        f"preset-{preset}.wire",
        total_known(change.number if change.wire is None else change.wire for change in sent.values()),
        MILLISECONDS_WIRE,
        rule="all messages of the preset, one after the other; what is the same for two units is sent once",
        source=BYTE_US.source,
    )


def exists(shown: int, first: int | None) -> bool | None:
    """Whether a unit that counts from `first` has that program; None where that hangs on where it counts from."""
    highest = round(HIGHEST_PROGRAM.value)
    if first is None:
        return True if 1 <= shown <= highest else None if shown in (0, highest + 1) else False
    return 0 <= shown - first <= highest


def wire_ms(octets: T, byte_us: T) -> T:
    """How long so many bytes take one after the other, in ms. Of terms a term."""
    time: T = octets * byte_us / 1000
    return time
