"""A path from an instrument to an output holds units that pass nothing without power, and no bypass plan goes round them.

Why it matters: one dead supply or one cut mains lead ends the show, although a single lead could carry on.
What to do: say which lead goes round the board when everything fails (`bypass guitar -> combo "lead in the lid"`), or use
units that pass without power.
Source: common practice, no source. Looked at with all units off and all loops out; where there is a way past a unit, that
way is taken.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.silent_paths import SilentPath, SilentPaths
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.diagnostics.wording import listed
from rigc.model.rig import Rig

KIND = Kind(
    "S22",
    "silent-without-power",
    Level.WARNING,
    __doc__,
    "a bypass plan goes round all units of a path that pass nothing without power",
    "common practice, no source",
)


def silent_without_power(rig: Rig, paths: SilentPaths) -> Iterator[Diagnostic]:
    """One finding for each path without a plan; can't-check for each unit that does not say what it does."""
    for path in paths.all:
        if not path.planned:
            yield _told(rig, path)
    for name in paths.unsure:
        yield KIND.cant_check(
            rig.units[name].declared,
            f"'{name}' does not say whether it passes sound without power",
            subject=(name,),
            help=f"pull its plug and listen; write `unpowered passes` or `unpowered mutes` in '{name}'",
        )


def _told(rig: Rig, path: SilentPath) -> Diagnostic:
    instrument = rig.instruments[path.instrument]
    places = [(name, rig.units[name].unpowered) for name in path.units]
    does = "passes" if len(path.units) == 1 else "pass"
    return KIND.at(
        instrument.declared,
        f"without power nothing goes from '{path.instrument}' to {listed(path.ends)}: {listed(path.units)} {does} nothing, "
        f"and no bypass plan goes round {'it' if len(path.units) == 1 else 'them'}",
        subject=(path.instrument, *path.units),
        label="is silent without power",
        also=tuple(Label(said.span, f"'{name}' passes nothing") for name, said in places if said is not None),
        help=f'state the lead that goes round: `bypass {path.instrument} -> {path.ends[0]} "..."`',
    )


CHECK = silent_without_power
