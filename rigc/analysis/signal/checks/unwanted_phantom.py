"""Phantom power comes back into an output that must not get it.

Why it matters: 48 V on the output of a keyboard, a player or an unbalanced box can destroy its last stage, and a ribbon
microphone too, if the lead makes contact on one side first.
What to do: switch the phantom power of that input off, or put a transformer between them: it keeps direct voltage back.
Source: arithmetic on stated ways; that phantom power harms such outputs: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.signal.phantom_ways import PhantomWay, PhantomWays
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.diagnostics.wording import listed

KIND = Kind(
    "unwanted-phantom",
    Level.ERROR,
    __doc__,
    "no phantom power reaches an output that says `never`",
    "arithmetic on stated ways; the harm is common practice, no source",
)


def unwanted_phantom(ways: PhantomWays) -> Iterator[Diagnostic]:
    """One finding for all ways between two things; can't-check for the balanced outputs of a thing that do not say whether they bear it."""
    never: dict[tuple[str, str, str], list[PhantomWay]] = {}
    silent: dict[tuple[str, str, str], list[PhantomWay]] = {}
    for way in ways.all:
        if way.gives is None or way.gives.how != "gives" or way.gives.volts is None or way.input is None:
            continue
        between = way.output.thing, way.input.thing, way.gives.volts.typed
        if way.wants is None and way.fits:
            silent.setdefault(between, []).append(way)
        elif way.wants is not None and way.wants.how == "never":
            never.setdefault(between, []).append(way)
    for (_, _, volts), found in never.items():
        yield _told(found, volts)
    for (thing, _, volts), found in silent.items():
        yield _unknown(thing, found, volts)


def _told(ways: list[PhantomWay], volts: str) -> Diagnostic:
    inputs, outputs = _ends(ways)
    first = ways[0]
    assert first.wants is not None and first.gives is not None
    one = len(inputs) == 1
    return KIND.at(
        first.span,
        f"{listed(inputs)} {'gives' if one else 'give'} phantom power of {volts} to {listed(outputs)}, which must never get it",
        subject=(*inputs, *outputs),
        label="this way",
        also=(Label(first.wants.span, "said here"), Label(first.gives.span, "given here")),
        help=f"switch it off at {'that input' if one else 'those inputs'}, or put a transformer between them",
    )


def _unknown(thing: str, ways: list[PhantomWay], volts: str) -> Diagnostic:
    inputs, outputs = _ends(ways)
    jacks = list(dict.fromkeys(way.output.jack for way in ways))
    bears, never = (" and ".join(f"`phantom {jack} {word}`" for jack in jacks) for word in ("bears", "never"))
    return KIND.cant_check(
        ways[0].span,
        f"{listed(inputs)} {'gives' if len(inputs) == 1 else 'give'} phantom power of {volts}, and {listed(outputs)} "
        f"{'does' if len(outputs) == 1 else 'do'} not say whether {'it bears' if len(outputs) == 1 else 'they bear'} that",
        subject=(*inputs, *outputs),
        help=f"read its leaflet, and write in '{thing}': {bears}, or {never}",
    )


def _ends(ways: list[PhantomWay]) -> tuple[list[str], list[str]]:
    """The inputs and the outputs, each once."""
    return list(dict.fromkeys(str(way.input) for way in ways)), list(dict.fromkeys(str(way.output) for way in ways))


CHECK = unwanted_phantom
