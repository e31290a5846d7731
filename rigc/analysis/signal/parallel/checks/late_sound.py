"""The sound itself comes to an amp, a desk or headphones by more than {paths.LATENCY_PLAYED_MS} late, the units on the way together.

Why it matters: the player hears himself behind the others, and drags. As much again comes from the air, 3 ms a metre.
What to do: measure again: `latency` is what the dry sound takes through a unit, no time between echoes. Where it is so, use a unit whose dry sound stays
analogue (`dry analogue`), or fewer that convert.
Of units that can be stepped off by true or buffered bypass the slowest counts. What is not known counts as nothing here.
Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from rigc.analysis.signal.amp_ends import amp_ends
from rigc.analysis.signal.parallel.leg import latency_ms
from rigc.analysis.signal.side_by_side import first_way
from rigc.analysis.signal.sound_ways import Hookup, SoundWays
from rigc.diagnostics.decimals import decimals
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.diagnostics.wording import joined
from rigc.facts.paths import LATENCY_PLAYED_MS
from rigc.model.rig import Rig
from rigc.model.things import Unit

KIND = Kind(
    "late-sound",
    Level.WARNING,
    __doc__,
    f"latency of the sound itself from an instrument to where it is heard ≤ {LATENCY_PLAYED_MS}",
    "common practice, no source",
)


def late_sound(rig: Rig, ways: SoundWays) -> Iterator[Diagnostic]:
    """One finding for each set of units that makes some way so late, at that which takes most; it names one instrument and one end."""
    found: dict[tuple[str, ...], tuple[str, str]] = {}
    for hookup in ways.hookups:
        for source, end, units in _late_ways(rig, hookup):
            found.setdefault(units, (source, end))
    for units, (source, end) in found.items():
        yield _told(rig, units, source, end)


def _late_ways(rig: Rig, hookup: Hookup) -> Iterator[tuple[str, str, tuple[str, ...]]]:
    for source in hookup.sources:
        for unit in rig.units.values():
            for port in amp_ends(unit, hookup.wired) if unit.ends else ():
                way = first_way(hookup.onward, source, port)
                names = dict.fromkeys(each.thing for each in way or () if each.thing in rig.units)
                slow = _together([rig.units[name] for name in names if latency_ms(rig.units[name])])
                if sum(latency_ms(rig.units[name]) or 0.0 for name in slow) > LATENCY_PLAYED_MS.value + 1e-9:
                    yield source.thing, unit.name, slow


def _together(slow: Sequence[Unit]) -> tuple[str, ...]:
    """Those through which sound goes at all times, and of those that can be stepped off, past their converters, the slowest: nobody has all on."""
    off = [unit for unit in slow if unit.bypass is not None and unit.bypass.value in ("true", "buffered")]
    slowest = max(off, key=lambda unit: latency_ms(unit) or 0.0, default=None)
    return tuple(unit.name for unit in slow if unit not in off or unit is slowest)


def _told(rig: Rig, units: tuple[str, ...], source: str, end: str) -> Diagnostic:
    each = {name: latency_ms(rig.units[name]) or 0.0 for name in units}
    whole = sum(each.values())
    parts = joined(f"'{name}' ({decimals(value, 2)} ms)" for name, value in each.items())
    most = max(each, key=lambda name: each[name])
    fact = rig.units[most].latency_ms
    return KIND.at(
        rig.units[most].declared if fact is None else fact.span,
        f"'{source}' comes to '{end}' {decimals(whole, 2)} ms late through {parts}: more than {LATENCY_PLAYED_MS.value:g} ms",
        subject=(*units, source, end),
        label="takes most",
        also=tuple(Label(rig.units[name].declared, "on the way, too") for name in units if name != most),
        numbers=(Number("late", whole, "ms"), Number("limit", LATENCY_PLAYED_MS.value, "ms")),
        help=f"measure '{most}' again: `latency` is what the dry sound takes, no time of an echo; if it is so, use a unit whose dry sound stays analogue",
    )


CHECK = late_sound
