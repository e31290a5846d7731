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

KIND = Kind(
    "unwanted-phantom",
    Level.ERROR,
    __doc__,
    "no phantom power reaches an output that says `never`",
    "arithmetic on stated ways; the harm is common practice, no source",
)


def unwanted_phantom(ways: PhantomWays) -> Iterator[Diagnostic]:
    """One finding for each way; can't-check for each output that does not say whether it bears it."""
    for way in ways.all:
        if way.gives is None or way.gives.how != "gives" or way.gives.volts is None:
            continue
        if way.wants is None:
            yield _unknown(way, way.gives.volts.typed)
        elif way.wants.how == "never":
            yield KIND.at(
                way.span,
                f"'{way.input}' gives phantom power of {way.gives.volts.typed} to '{way.output}', which must never get it",
                subject=(str(way.input), str(way.output)),
                label="this way",
                also=(Label(way.wants.span, "said here"), Label(way.gives.span, "given here")),
                help="switch it off at that input, or put a transformer between them",
            )


def _unknown(way: PhantomWay, volts: str) -> Diagnostic:
    thing, jack = way.output.thing, way.output.jack
    return KIND.cant_check(
        way.span,
        f"'{way.input}' gives phantom power of {volts}, and '{way.output}' does not say whether it bears that",
        subject=(str(way.input), str(way.output)),
        help=f"read its leaflet, and write in '{thing}': `phantom {jack} bears` or `phantom {jack} never`",
    )


CHECK = unwanted_phantom
