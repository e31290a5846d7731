"""A chain goes through a jack that carries no audio (power, MIDI, control).

Why it matters: sound cannot go that way, and an audio lead in a power jack can short a supply.
What to do: name an audio jack of the unit; power, MIDI and control leads have blocks of their own.
Source: arithmetic on the declared jacks.
"""

from __future__ import annotations

from collections.abc import Container, Iterator

from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.diagnostics.mend import AddTo, Delete, Mend
from rigc.diagnostics.wording import listed
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.wishes import Chain, Stop
from rigc.source import Span

KIND = Kind(
    "jack-without-audio",
    Level.ERROR,
    __doc__,
    "a chain goes through audio jacks only",
    "arithmetic on the declared jacks",
)


def jack_without_audio(rig: Rig) -> Iterator[Diagnostic]:
    """One finding for each thing that a chain, loop or blend enters or leaves by such a jack."""
    wrong: dict[str, list[Stop]] = {}
    elsewhere = {chain.span: block for chain in rig.chains if (block := _block(rig, chain))}
    for chain in rig.chains:
        if chain.span in elsewhere:
            yield _in_its_block(chain, elsewhere[chain.span])
    for stop in _stops(rig, elsewhere):
        if not _audio(rig, stop):
            wrong.setdefault(stop.thing, []).append(stop)
    for thing, stops in wrong.items():
        yield _told(rig, thing, stops)


def _block(rig: Rig, chain: Chain) -> str:
    """The block into which a chain of two jacks belongs that carry control or MIDI, and no sound; else nothing."""
    if len(chain.stops) != 2 or any(stop.jack is None or stop.thing not in rig.things for stop in chain.stops):
        return ""
    roles = [jack.role for stop in chain.stops if (jack := rig.jack(Port(stop.thing, stop.jack or "")))]
    if len(roles) < 2 or any(role.split()[0] not in ("midi", "control", "expression", "usb") for role in roles):
        return ""
    return "midi" if all(role.startswith("midi") for role in roles) else "control"


def _in_its_block(chain: Chain, block: str) -> Diagnostic:
    ends = [f"{stop.thing}.{stop.jack}" for stop in chain.stops]
    line = " -> ".join(ends)
    return KIND.at(
        chain.span,
        f"a chain joins {listed(ends)}, which carry no audio",
        subject=(*(stop.thing for stop in chain.stops), *ends),
        label="no sound goes here",
        mends=(
            Mend(f"write `{line}` into the {block} block instead", (Delete(chain.span), AddTo(block, "", line))),
            Mend("delete the chain", (Delete(chain.span),)),
        ),
        otherwise=f"it belongs into the {block} block: `{line}`",
    )


def _stops(rig: Rig, elsewhere: Container[Span]) -> Iterator[Stop]:
    for chain in rig.chains:
        if chain.span not in elsewhere:
            yield from chain.stops
    for use in rig.loops:
        yield from use.stops
    for blend in rig.blends:
        for path in blend.paths:
            yield from path.stops


def _audio(rig: Rig, stop: Stop) -> bool:
    if stop.thing in rig.supplies:
        return False
    jack = rig.jack(Port(stop.thing, stop.jack)) if stop.jack is not None and stop.thing in rig.things else None
    return jack is None or jack.audio


def _told(rig: Rig, thing: str, stops: list[Stop]) -> Diagnostic:
    ports = dict.fromkeys(f"{thing}.{stop.jack}" if stop.jack else thing for stop in stops)
    own = [jack.name for jack in rig.things[thing].jacks if jack.audio]
    return KIND.at(
        stops[0].span,
        f"a chain goes through {listed(ports)}, {_what(rig, stops[0])}, which carries no audio",
        subject=(thing, *(port for port in ports if port != thing)),
        label="no sound goes through here",
        also=tuple(Label(stop.span, "nor here") for stop in stops[1:]),
        help=f"name an audio jack of '{thing}': {', '.join(own)}"
        if own
        else f"leave '{thing}' out: it has no audio jack",
    )


def _what(rig: Rig, stop: Stop) -> str:
    jack = rig.jack(Port(stop.thing, stop.jack or ""))
    if jack is None:
        return "a supply"
    role = {"inlet": "a power inlet", "usb": "a USB jack"}.get(jack.role)
    return role or f"a jack for {jack.role.replace('midi', 'MIDI')}"


CHECK = jack_without_audio
