"""Two things bear one serial number.

Why it matters: at a border, and with an insurer, each item is known by its number; a block that was copied with its number names one item twice
and the other not at all.
What to do: read it again on both; where two makers did use one number, accept it.
Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.diagnostics.wording import listed_few
from rigc.model.fact import Choice
from rigc.model.rig import Rig

KIND = Kind(
    "shared-serial",
    Level.REMARK,
    __doc__,
    "each serial number is of one thing",
    "common practice, no source",
)


def shared_serial(rig: Rig) -> Iterator[Diagnostic]:
    """One finding for each number that several things bear."""
    bearers: dict[str, list[tuple[str, Choice]]] = {}
    things = {**rig.things, **rig.decks, **rig.cases}
    for name, thing in things.items():
        serial = thing.papers.serial
        if serial is not None:
            bearers.setdefault(serial.value.strip().casefold(), []).append((name, serial))
    for borne in bearers.values():
        if len(borne) == 1:
            continue
        names = [name for name, _ in borne]
        yield KIND.at(
            borne[1][1].span,
            f'{listed_few(names)} bear the serial number "{borne[0][1].value}"',
            subject=tuple(names),
            label=f"of '{names[1]}'",
            also=tuple(Label(serial.span, f"of '{name}'") for name, serial in borne if name != names[1]),
            help=f"read it again on {listed_few(names)}, and correct it",
        )


CHECK = shared_serial
