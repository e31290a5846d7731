"""A microphone or a DI that needs phantom power is at an input that gives none, or less.

Why it matters: a condenser microphone or an active DI without its supply is silent, or thin and distorted.
What to do: switch the phantom power of that input on, take another input, or put a phantom supply between them.
Source: arithmetic on stated values; 48 V through two feeds of 6.8 kΩ: IEC 61938 (P48), from memory.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.signal.phantom_ways import PhantomWay, PhantomWays
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.model.fact import Quantity

KIND = Kind(
    "missing-phantom",
    Level.ERROR,
    __doc__,
    "an output that needs phantom power is at an input that gives as much",
    "arithmetic on stated values",
)


def missing_phantom(ways: PhantomWays) -> Iterator[Diagnostic]:
    """One finding for each way; can't-check where a balanced input does not say whether it gives any."""
    for way in ways.all:
        if way.wants is None or way.wants.how != "needs" or way.wants.volts is None:
            continue
        if way.gives is None and way.fits:
            yield _unknown(way, way.wants.volts)
        elif way.gives is None:
            continue
        elif way.gives.volts is None or way.gives.volts.value < way.wants.volts.value:
            yield _told(way, way.wants.volts)


def _told(way: PhantomWay, needs: Quantity) -> Diagnostic:
    gives = way.gives
    has = "none" if gives is None or gives.volts is None else gives.volts.typed
    return KIND.at(
        way.span,
        f"'{way.output}' needs phantom power of {needs.typed}, and '{way.input}' gives {has}",
        subject=(str(way.output), str(way.input)),
        label="this way",
        also=(Label(needs.span, "needed here"), *((Label(gives.span, "said here"),) if gives is not None else ())),
        numbers=(Number("needed", needs.value, "V"),),
        help="take an input that gives it, or put a phantom supply between them",
    )


def _unknown(way: PhantomWay, needs: Quantity) -> Diagnostic:
    if way.input is None:
        said, help = "what it is plugged into is not said", "declare the desk, and go on to it in the chain"
    else:
        said = f"'{way.input}' does not say whether it gives any"
        block = way.input.thing
        help = (
            f"look, and write in '{block}': `phantom {way.input.jack} gives ___ V` or `phantom {way.input.jack} none`"
        )
    return KIND.cant_check(
        way.span,
        f"'{way.output}' needs phantom power of {needs.typed}, and {said}",
        subject=(str(way.output), *((str(way.input),) if way.input is not None else ())),
        help=help,
    )


CHECK = missing_phantom
