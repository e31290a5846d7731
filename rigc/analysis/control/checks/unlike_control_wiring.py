"""The two ends of a MIDI lead with TRS plugs are of different types, or an expression treadle does not suit its jack.

Why it matters: with tip and ring exchanged the current loop is reversed and nothing is heard; a treadle wired the other way
round, or with another track, works over part of its travel, jumps, or stands still.
What to do: use a crossover lead (tip to ring, ring to tip) and mark it at both ends; take a treadle of the right track.
Source: MIDI Association RP-054 (type A; the others are trade descriptions); physics: a divider's wiper is one certain contact.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.control.control_map import ControlMap
from rigc.analysis.control.control_wiring import ControlLink, control_links, crossed, uncrossed, unsaid_taper
from rigc.analysis.control.midi_way import MidiLink
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.model.jacks import Jack, Port
from rigc.model.rig import Rig
from rigc.model.ways.conductors import THREE

KIND = Kind(
    "unlike-control-wiring",
    Level.WARNING,
    __doc__,
    "TRS MIDI jacks joined by a lead are of one type; a treadle's wiper, track and taper are those of its jack",
    "MIDI Association RP-054 (type A); physics: a divider's wiper is one certain contact",
)


def unlike_control_wiring(rig: Rig, control: ControlMap) -> Iterator[Diagnostic]:
    """One finding for each MIDI lead and each control lead whose ends differ; one for each unit whose TRS type is unknown."""
    unknown: dict[str, dict[Port, Jack]] = {}
    for link in control.links:
        ends = {port: jack for port in (link.start, link.end) if (jack := _trs(rig, port)) is not None}
        forms = [jack.midi_form for jack in ends.values()]
        if None in forms:
            for port, jack in ends.items():
                if jack.midi_form is None:
                    unknown.setdefault(port.thing, {})[port] = jack
        elif len(set(forms)) > 1 and not (link.crossover and "tip" not in forms):
            yield _midi(link, ends)
        elif link.crossover and len(set(forms)) < 2:
            yield _crossed(link, ends)
    for name, jacks in unknown.items():
        yield _unknown(name, jacks)
    for each in control_links(rig):
        if each.differences:
            yield _control(each)
        elif (silent := unsaid_taper(each)) is not None:
            yield _taper(each, silent)


def _trs(rig: Rig, port: Port) -> Jack | None:
    jack = rig.jack(port)
    return jack if jack is not None and jack.connector.kind in THREE else None


def _midi(link: MidiLink, ends: dict[Port, Jack]) -> Diagnostic:
    spoken = [f"'{port}' is {told_form(jack)}" for port, jack in ends.items()]
    tip = any(jack.midi_form == "tip" for jack in ends.values())
    return KIND.at(
        link.span,
        f"TRS MIDI differs at the two ends{f' of {link.lead}' if link.lead else ''}: {' and '.join(spoken)}",
        subject=(link.lead or str(link.end), *map(str, ends)),
        label="joined here",
        also=tuple(Label(jack.span, told_form(jack)) for jack in ends.values()),
        mends=() if tip else (crossed(link.span),),
        help="use an adaptor lead made for these two, marked at both ends" if tip else "",
    )


def _crossed(link: MidiLink, ends: dict[Port, Jack]) -> Diagnostic:
    """A crossover lead where the current loop would be right without."""
    forms = [told_form(jack) for jack in ends.values()]
    why = f"both its ends are {forms[0]}" if len(forms) > 1 else "only a lead with two TRS ends can be crossed"
    return KIND.at(
        link.span,
        f"{link.lead or 'this lead'} is a crossover lead, but {why}",
        subject=(link.lead or str(link.end), *map(str, ends)),
        label="joined here",
        mends=(uncrossed(link.span),),
    )


def told_form(jack: Jack) -> str:
    """The type of a TRS MIDI jack in words."""
    return "wired tip only" if jack.midi_form == "tip" else f"type {jack.midi_form}"


def _unknown(name: str, jacks: dict[Port, Jack]) -> Diagnostic:
    spoken = ", ".join(f"'{port}'" for port in jacks)
    return KIND.cant_check(
        next(iter(jacks.values())).span,
        f"whether the MIDI leads of '{name}' are wired alike at both ends is not known: the type of {spoken} is not stated",
        subject=(name, *map(str, jacks)),
        help="write `type a`, `type b` or `type tip` behind the jack",
    )


def _control(link: ControlLink) -> Diagnostic:
    numbers = [
        Number(f"track at {port}", jack.track_ohm.value, "ohm")
        for port, jack in ((link.start, link.here), (link.end, link.there))
        if jack.track_ohm is not None
    ]
    return KIND.at(
        link.span,
        f"'{link.start}' does not suit '{link.end}': {'; '.join(link.differences)}",
        subject=(str(link.start), str(link.end)),
        label="joined here",
        also=(Label(link.here.span, "one end"), Label(link.there.span, "the other end")),
        numbers=tuple(numbers),
        mends=link.mends,
        help=link.remedy,
    )


def _taper(link: ControlLink, port: Port) -> Diagnostic:
    other = link.there if port == link.start else link.here
    return KIND.cant_check(
        link.span,
        f"'{port}' does not say the taper of its track; whether it is {other.taper}, as at the other end, can't be checked",
        subject=(str(port), str(link.start), str(link.end)),
        help=f"find it out and write `linear`, `log` or `reverse-log` behind the track of '{port}'",
    )


CHECK = unlike_control_wiring
