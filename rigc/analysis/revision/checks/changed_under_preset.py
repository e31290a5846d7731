"""A preset was not touched since the revision before, but a loop that it switches holds other units now.

Why it matters: on that number the rig makes another sound than the player rehearsed, and the preset sheet does not
say so.
What to do: try the preset with the new unit, and set it anew, or accept the finding when it was tried.
Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from rigc.analysis.previous import Previous
from rigc.analysis.results import Results
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.model.rig import Rig
from rigc.model.ways.preset_loops import preset_loops
from rigc.model.wishes import Preset

if TYPE_CHECKING:
    from rigc.analysis.revision.rework import Rework

KIND = Kind(
    "changed-under-preset",
    Level.WARNING,
    __doc__,
    "a preset is looked at again when its loops hold other units",
    "common practice, no source",
)


def changed_under_preset(rig: Rig, previous: Previous, results: Results) -> Iterator[Diagnostic]:
    """One finding for each preset; songs that use it are pointed at, too. The rework is only planned where a loop
    changed."""
    if previous.results is None:
        return
    from rigc.analysis.revision.plan.program_plans import changed_loops  # most rigs follow none

    changed = changed_loops(previous.results.rig, rig)
    if not changed or not rig.presets:
        return
    from rigc.analysis.revision.rework import Rework

    rework = results.get(Rework)
    for plan in rework.programs:
        preset = rig.presets.get(plan.number or -1) if plan.number is not None else None
        if preset is not None and plan.about and plan.before == plan.after:
            yield _found(rig, rework, preset, changed)


def _found(
    rig: Rig,
    rework: Rework,
    preset: Preset,
    changed: dict[tuple[str, int], tuple[tuple[str, ...], tuple[str, ...]]],
) -> Diagnostic:
    loops = [(switcher, number) for switcher, number, _ in preset_loops(rig, preset) if (switcher, number) in changed]
    switcher, number = loops[0]
    before, after = changed[(switcher or "", number)]
    place = next(span for _, loop, span in preset.loops if loop == number)
    others = f", and {len(loops) - 1} more of its loops changed" if len(loops) > 1 else ""
    return KIND.at(
        place,
        f"preset {preset.number} is as it was in revision {rework.before}, but loop {number} of '{switcher}' holds "
        f"{_named(after)} now, not {_named(before)}{others}",
        subject=(f"preset {preset.number}", *after),
        label="switched here",
        also=tuple(Label(song.span, "and played here") for song in rig.songs if song.preset == preset.number),
        help=f"try preset {preset.number} and set it anew, or accept this finding",
    )


def _named(units: tuple[str, ...]) -> str:
    return " and ".join(f"'{unit}'" for unit in units) or "nothing"


CHECK = changed_under_preset
