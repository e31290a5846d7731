"""More than six units with true bypass follow each other without a buffer.

Why it matters: with all of them off the source drives every lead and plug between them, and treble goes; each relay and
switch is one more contact that can fail.
What to do: put one buffer into the row, about in its middle, but not before a unit that wants the pickup.
Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.signal.sound_ways import SoundWays
from rigc.analysis.signal.true_bypass_rows import Row, true_bypass_rows, unsure_bypass
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.diagnostics.wording import listed_few
from rigc.facts.paths import ROW_OF_TRUE_BYPASS
from rigc.model.rig import Rig

KIND = Kind(
    "long-true-bypass-row",
    Level.WARNING,
    __doc__,
    f"at most {ROW_OF_TRUE_BYPASS} with true bypass in a row without a buffer",
    "common practice, no source",
)


def long_true_bypass_row(rig: Rig, ways: SoundWays) -> Iterator[Diagnostic]:
    """One finding for each row; can't-check for each unit of unknown bypass that would make one."""
    found: dict[Row, None] = {}
    unsure: dict[str, int] = {}
    for hookup in ways.hookups:
        longest = [
            row for row in true_bypass_rows(rig, hookup, with_unsure=True) if len(row) > ROW_OF_TRUE_BYPASS.value
        ]
        sure = true_bypass_rows(rig, hookup, with_unsure=False) if longest else []
        found.update(dict.fromkeys(row for row in sure if len(row) > ROW_OF_TRUE_BYPASS.value))
        unsure.update(
            {name: len(row) for row in longest if row not in found for name in row if unsure_bypass(rig, name)}
        )
    for row in found:
        yield _told(rig, row)
    for name, count in unsure.items():
        yield KIND.cant_check(
            rig.units[name].declared,
            f"'{name}' {_says(rig, name)}; with true bypass it would stand in a row of {count} without a buffer",
            subject=(name,),
            help=f"find out and write `bypass true` or `bypass buffered` in '{name}'",
        )


def _says(rig: Rig, name: str) -> str:
    return "does not say how it is bypassed" if rig.units[name].bypass is None else "says `bypass unknown`"


def _told(rig: Rig, row: Row) -> Diagnostic:
    middle = next((name for name in row[len(row) // 2 :] if "wants pickup" not in rig.units[name].flags), row[-1])
    return KIND.at(
        rig.units[row[0]].declared,
        f"{len(row)} units with true bypass follow each other without a buffer: {listed_few(row)}",
        subject=row,
        label="the row begins here",
        also=(Label(rig.units[row[-1]].declared, "and ends here"),),
        numbers=(Number("units", len(row), ""), Number("limit", ROW_OF_TRUE_BYPASS.value, "")),
        help=f"put a buffer before '{middle}'",
    )


CHECK = long_true_bypass_row
