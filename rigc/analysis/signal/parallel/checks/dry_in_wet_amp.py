"""A wet amp is fed by a delay or reverb that is not set, by its dry-kill, to give wet sound only.

Why it matters: the dry sound that it lets through meets that of the dry amp a little later, and combs with it.
What to do: set the unit to wet only by its dry-kill and write `set wet`. Without a dry-kill its mix knob does it until it is
knocked: use a unit that has one, or see to it that the knob stays.
Source: common practice, no source; the comb is physics.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.signal.parallel.parallel import AMPS
from rigc.analysis.signal.parallel.parallel_paths import ParallelPaths
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.diagnostics.mend import AddTo, Mend
from rigc.diagnostics.wording import listed
from rigc.model.rig import Rig

KIND = Kind(
    "dry-in-wet-amp",
    Level.WARNING,
    __doc__,
    "delays and reverbs before a wet amp give wet sound only",
    "common practice, no source",
)


def dry_in_wet_amp(rig: Rig, paths: ParallelPaths) -> Iterator[Diagnostic]:
    """One finding for each unit that wet amps hear and a dry one does not."""
    found: dict[str, dict[str, None]] = {}
    for each in (each for each in paths.all if each.kind == AMPS):
        dry = [one for one in each.legs if not one.wet]
        for wet in (one for one in each.legs if one.wet and dry):
            for name in (*wet.dry_left, *(each for each in wet.wet_only if "dry-kill" not in rig.units[each].flags)):
                if any(name not in one.things for one in dry):
                    found.setdefault(name, {})[wet.label] = None
    for name, amps in found.items():
        yield _told(rig, name, tuple(amps))


def _told(rig: Rig, name: str, amps: tuple[str, ...]) -> Diagnostic:
    unit = rig.units[name]
    can = "dry-kill" in unit.flags
    why = "is not set to wet only" if can else "has no dry-kill: a turn of its mix knob brings the dry sound back"
    if not can and "set wet" not in unit.flags:
        why = "has no dry-kill"
    return KIND.at(
        unit.declared,
        f"'{name}' feeds {listed(amps)}, which {'is' if len(amps) == 1 else 'are'} wet, and {why}",
        subject=(name, *amps),
        label="lets dry sound through",
        also=tuple(Label(rig.units[amp].declared, "a wet amp") for amp in amps),
        mends=(Mend(f"set its dry-kill and write `set wet` in '{name}'", (AddTo("unit", name, "set wet"),)),)
        if can
        else (),
        help="" if can else f"write `dry-kill` in '{name}' if it has one, or use a unit there that has",
    )


CHECK = dry_in_wet_amp
