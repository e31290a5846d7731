"""A unit whose sound rings on sits in a switcher's loop, and the source does not say that its tail is not wanted.

Why it matters: switching the loop out cuts the echo or the reverb off at once, and the player hears it on stage first.
What to do: take the unit out of the loop and switch it by itself, or say that the cut is meant (`tails unwanted`).
Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.signal.parallel.leg import TIME
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.diagnostics.mend import AddTo, Mend
from rigc.diagnostics.wording import listed
from rigc.model.rig import Rig
from rigc.model.wishes import LoopUse
from rigc.source import Span

KIND = Kind(
    "cut-tails",
    Level.REMARK,
    __doc__,
    "delays, reverbs and units with tails sit outside switcher loops, or their tails are not wanted",
    "common practice, no source",
)


def cut_tails(rig: Rig) -> Iterator[Diagnostic]:
    """One finding for each such unit; an amp's own loop is not switched."""
    unwanted = {intent.unit for intent in rig.intents if (intent.kind, intent.word) == ("mute", "tails stop")}
    found: dict[str, dict[LoopUse, Span]] = {}
    for use in rig.loops:
        host = rig.units.get(use.switcher)
        for stop in use.stops if host is not None and host.kind == "unit" else ():
            unit = rig.units.get(stop.thing)
            if unit is None or "tails unwanted" in unit.flags or unit.name in unwanted:
                continue
            if unit.flags & (TIME | {"tails", "tails wanted"}):
                found.setdefault(unit.name, {})[use] = stop.span
    for name, uses in found.items():
        yield _told(rig, name, uses)


def _told(rig: Rig, name: str, uses: dict[LoopUse, Span]) -> Diagnostic:
    first = next(iter(uses))
    loops = [f"loop {use.number} of '{use.switcher}'" for use in uses]
    unit = rig.units[name]
    what = listed(sorted(unit.flags & (TIME | {"tails"}))).replace("'", "")
    rings = f" ({what})" if what else ""
    return KIND.at(
        uses[first],
        f"'{name}'{rings} sits in {' and '.join(loops)}: when the loop goes out, its tail is cut",
        subject=(name, first.switcher, f"loop {first.number}"),
        label="its tail is cut",
        also=(Label(unit.declared, "declared here"),),
        mends=(
            Mend(f"say that the cut is meant: `tails unwanted` in '{name}'", (AddTo("unit", name, "tails unwanted"),)),
        ),
        help="take it out of the loop, and switch it by itself",
    )


CHECK = cut_tails
