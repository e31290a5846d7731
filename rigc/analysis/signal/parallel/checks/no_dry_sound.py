"""A unit is set to wet sound only, and no other way carries the dry sound to an amp or a desk.

Why it matters: while it is on, nothing of what is played is heard but its echo or reverb.
What to do: set its mix so that the dry sound passes, and delete `set wet`; or put it into a parallel loop or before a wet amp.
Source: common practice, no source; arithmetic on the stated chains.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.signal.audio_graph import AudioGraph
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Level
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.things import Unit
from rigc.model.ways.reached import reached

KIND = Kind(
    "no-dry-sound",
    Level.WARNING,
    __doc__,
    "beside what is set to wet only, another way carries the dry sound",
    "common practice, no source; arithmetic on the stated chains",
)


def no_dry_sound(rig: Rig, graph: AudioGraph) -> Iterator[Diagnostic]:
    """One finding for each such unit that is heard."""
    wet = [unit for unit in rig.units.values() if "set wet" in unit.flags and not unit.ends]
    if not wet:
        return
    plays = [Port(each.name, jack.name) for each in rig.instruments.values() for jack in each.jacks]
    ends = frozenset(port for unit in rig.units.values() if unit.ends for port in _ports(unit))
    heard = graph.after(plays)
    for unit in wet:
        mine = _ports(unit)
        beside = {port: [each for each in then if each not in mine] for port, then in graph.onward.items()}
        if graph.after(mine & heard) & ends and not reached(beside, plays) & ends:
            yield KIND.at(
                unit.declared,
                f"'{unit.name}' is set to wet only, and all that is played goes through it: no dry sound is heard while it is on",
                subject=(unit.name,),
                label="wet sound only",
                help="set its mix so that the dry sound passes, and delete `set wet`; or put it into a parallel loop or before a wet amp",
            )


def _ports(unit: Unit) -> frozenset[Port]:
    return frozenset(Port(unit.name, jack.name) for jack in unit.jacks if jack.audio)


CHECK = no_dry_sound
