"""One output feeds more than two inputs with nothing active between.

Why it matters: the inputs load the output together, every lead adds its capacitance, and a fault of one unit is heard in all.
What to do: put a buffered splitter where the sound parts.
Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.signal.sound_ways import Hookup, SoundWays
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.diagnostics.wording import listed
from rigc.facts.paths import PASSIVE_SPLIT
from rigc.model.jacks import Port
from rigc.model.rig import Rig

KIND = Kind(
    "passive-split",
    Level.WARNING,
    __doc__,
    f"one output feeds at most {PASSIVE_SPLIT} with nothing active between",
    "common practice, no source",
)


def passive_split(rig: Rig, ways: SoundWays) -> Iterator[Diagnostic]:
    """One finding for each output that drives sound, passive units and panel jacks behind it counted as wire."""
    told: set[Port] = set()
    for hookup in ways.hookups:
        for port in dict.fromkeys(lead.start for lead in hookup.leads):
            fed = () if port in told or _is_wire(rig, port) else _fed(rig, hookup, port)
            if len(fed) > PASSIVE_SPLIT.value:
                told.add(port)
                yield _told(rig, hookup, port, fed)


def _is_wire(rig: Rig, port: Port) -> bool:
    unit = rig.units.get(port.thing)
    return port.thing in rig.panels or (unit is not None and unit.kind == "unit" and "passive" in unit.flags)


def _fed(rig: Rig, hookup: Hookup, port: Port) -> tuple[Port, ...]:
    found: dict[Port, None] = {}
    todo, seen = [port], {port}
    for here in todo:
        for after in hookup.onward.get(here, ()):
            if after not in seen:
                seen.add(after)
                if _is_wire(rig, after):
                    todo.append(after)
                else:
                    found[after] = None
    return tuple(found)


def _told(rig: Rig, hookup: Hookup, port: Port, fed: tuple[Port, ...]) -> Diagnostic:
    lead = next(each for each in hookup.leads if each.start == port)
    jack = rig.jack(port)
    return KIND.at(
        lead.span,
        f"'{port}' feeds {len(fed)} inputs with nothing active between: {listed(fed)}",
        subject=(port.thing, *map(str, fed)),
        label="from here on",
        also=(Label(jack.span, "the output that drives them"),) if jack is not None else (),
        numbers=(Number("inputs", len(fed), ""), Number("limit", PASSIVE_SPLIT.value, "")),
        help=f"put a buffered splitter behind '{port}'",
    )


CHECK = passive_split
