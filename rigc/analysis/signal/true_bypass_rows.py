"""A hookup -> the rows of units that are nothing but cable when they are off."""

from __future__ import annotations

from itertools import pairwise

from rigc.analysis.signal.side_by_side import in_order
from rigc.analysis.signal.sound_ways import Hookup
from rigc.model.jacks import Port
from rigc.model.rig import Rig

Row = tuple[str, ...]


def true_bypass_rows(rig: Rig, hookup: Hookup, *, with_unsure: bool) -> list[Row]:
    """The longest row that ends at each place, in the order of the sound, shorter parts of a longer row left out.

    Passive units and panel jacks are wire: they are not counted and end no row. Units of unknown bypass count only if asked.
    """
    rows: dict[Port, Row] = dict.fromkeys(hookup.sources, ())
    for port in in_order(hookup.onward, hookup.sources):
        row = rows.get(port, ())
        for after in hookup.onward.get(port, ()):
            longer = row if after.thing == port.thing else _entered(rig, row, after.thing, with_unsure)
            if after not in rows or len(longer) > len(rows[after]):
                rows[after] = longer
    found = list(dict.fromkeys(rows.values()))
    parts = {
        row for row, following in pairwise(sorted(found)) if following[: len(row)] == row
    }  # the longer ones sort behind it
    return [row for row in found if row not in parts]


def unsure_bypass(rig: Rig, name: str) -> bool:
    """Whether a unit does not say how it is bypassed."""
    unit = rig.units[name]
    return (
        unit.kind == "unit" and "passive" not in unit.flags and (unit.bypass is None or unit.bypass.value == "unknown")
    )


def _entered(rig: Rig, row: Row, name: str, with_unsure: bool) -> Row:
    unit = rig.units.get(name)
    if unit is None:
        return row
    if unit.kind == "unit" and "passive" in unit.flags:
        return () if any("transformer" in path.how for path in unit.paths) else row
    true = unit.bypass is not None and unit.bypass.value == "true"
    if unit.kind == "unit" and (true or (with_unsure and unsure_bypass(rig, name))):
        return row if name in row else (*row, name)
    return ()
