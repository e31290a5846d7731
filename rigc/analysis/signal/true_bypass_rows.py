"""A hookup -> the rows of units that are nothing but cable when they are off."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from rigc.analysis.signal.side_by_side import in_order
from rigc.analysis.signal.sound_ways import Hookup
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.wishes import LoopUse

Row = tuple[str, ...]


def true_bypass_rows(rig: Rig, hookup: Hookup, *, with_unsure: bool) -> list[Row]:
    """The longest row that ends at each place, in the order of the sound, shorter parts of a longer row left out.

    Passive units and panel jacks are wire: they are not counted and end no row. Nor does what a switcher's loop holds, which the loop
    takes out: that is a row of its own. Units of unknown bypass count only if asked.
    """
    loops = _switched(rig)
    looped = {stop.thing for use in loops for stop in use.stops}
    rows: dict[Port, Row] = dict.fromkeys(hookup.sources, ())
    for port in in_order(hookup.onward, hookup.sources):
        row = rows.get(port, ())
        for after in hookup.onward.get(port, ()):
            stays = after.thing == port.thing or after.thing in looped
            longer = row if stays else _entered(rig, row, after.thing, with_unsure)
            if after not in rows or len(longer) > len(rows[after]):
                rows[after] = longer
    found = list(dict.fromkeys((*rows.values(), *(row for use in loops for row in _within(rig, use, with_unsure)))))
    parts = {
        row for row, following in pairwise(sorted(found)) if following[: len(row)] == row
    }  # the longer ones sort behind it
    return [row for row in found if row not in parts]


def _switched(rig: Rig) -> list[LoopUse]:
    """The loops of switchers."""
    return [use for use in rig.loops if use.switcher in rig.units and rig.units[use.switcher].kind == "unit"]


def _within(rig: Rig, use: LoopUse, with_unsure: bool) -> Iterator[Row]:
    """The rows inside of a loop."""
    row: Row = ()
    for stop in use.stops:
        row = _entered(rig, row, stop.thing, with_unsure)
        yield row


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
