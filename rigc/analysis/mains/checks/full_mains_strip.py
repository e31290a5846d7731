"""More is plugged into a mains strip than it has sockets.

Why it matters: the last plug is found to have no place at set-up, and a second strip is hung on the first: a chain of strips
that no local code likes.
What to do: use a strip with more sockets, or move plugs to another socket of the venue.
Source: arithmetic on stated counts. rigc lists what is plugged where; it designs no mains wiring.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.diagnostics.wording import listed
from rigc.model.rig import Rig

KIND = Kind(
    "full-mains-strip",
    Level.ERROR,
    __doc__,
    "no more plugs in a mains strip than it has sockets",
    "arithmetic on stated counts",
)


def full_mains_strip(rig: Rig) -> Iterator[Diagnostic]:
    """One finding for each strip; can't-check where it does not say how many sockets it has."""
    for strip in rig.mains_strips.values():
        plugged = [(name, span) for name, into, span in rig.power.plugged if into == strip.name]
        if not plugged:
            continue
        names = [name for name, _ in plugged]
        if strip.sockets is None:
            yield KIND.cant_check(
                strip.declared,
                f"'{strip.name}' does not say how many sockets it has; whether {listed(names)} find one can't be checked",
                subject=(strip.name,),
                help=f"count them, and write in '{strip.name}': `sockets ___`",
            )
        elif len(names) > strip.sockets:
            yield KIND.at(
                plugged[strip.sockets][1],
                f"{len(names)} plugs go into '{strip.name}', which has {strip.sockets} sockets: {listed(names)}",
                subject=(strip.name, *names),
                label="no socket left for this one",
                also=(Label(strip.declared, "declared here"),),
                numbers=(Number("plugs", len(names), ""), Number("sockets", strip.sockets, "")),
                help="use a strip with more sockets, or plug one of them in elsewhere; hang no strip on another",
            )


CHECK = full_mains_strip
