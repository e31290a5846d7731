"""Plugs and statements -> how wide a hole of a deck is drilled, and how it came to that: `flat-angle.drilled`, `plate.H4.size`."""

from __future__ import annotations

from collections.abc import Iterable
from math import hypot

from rigc.facts.bench import DRILLED_MM, GROMMET_WALL_MM
from rigc.model.deck import Hole
from rigc.model.rig import Rig
from rigc.traced.figure import Figure, Several, known_figure
from rigc.traced.given import at_place, ours, stated
from rigc.traced.means import becomes, highest, worked
from rigc.traced.reason import AS_STATED, PRACTICE, STATED
from rigc.traced.term import Term
from rigc.traced.units import MILLIMETRES

_WIDEST = "the widest that one of its leads needs"
_OVER_ALL = "from the first lead to the last, and half a diameter beyond each"


def drilled(rig: Rig, kind: str | None) -> Figure | None:
    """The hole for a grommet through which a plug of that kind goes lengthwise; None where its size is not stated, or no drill is
    that large.

    A plug of equal width and height is taken for round.
    """
    plug = rig.stock.plugs.get(kind or "")
    if plug is None or plug.stand_out_mm is None or plug.width_mm is None or plug.height_mm is None:
        return None
    facts = {"stands out": plug.stand_out_mm, "width": plug.width_mm, "height": plug.height_mm}
    one, other, _ = sorted(stated(f"{plug.name} {what}", fact, MILLIMETRES) for what, fact in facts.items())
    round_ = plug.width_mm.value == plug.height_mm.value
    across = highest(one, other) if round_ else worked("√({}² + {}²)", hypot, one, other, moves="++")
    needed = across + 2 * ours(GROMMET_WALL_MM)
    if needed > max(size.value for size in DRILLED_MM):
        return None
    return known_figure(
        f"{plug.name}.drilled",
        becomes(needed, lambda least: next(float(size.value) for size in DRILLED_MM if size.value >= least)),
        MILLIMETRES,
        rule="the plug goes through lengthwise, in a grommet; of the diameters for which drills are sold the next",
        source=PRACTICE,
    )


def stated_size(name: str, hole: Hole) -> Several:
    """Of a hole that the source states."""
    value = at_place("hole", hole.diameter_mm, hole.span, shown=MILLIMETRES)
    return round_size(known_figure(f"{name}.diameter", value, MILLIMETRES, rule=AS_STATED, source=STATED))


def diameter(name: str, plugs: Iterable[Figure]) -> Figure:
    """Of a hole for leads, the width of a slot: what the plugs that go through need, each kind once."""
    kinds = {each.name: each for each in plugs}
    return known_figure(f"{name}.diameter", highest(*kinds.values()), MILLIMETRES, rule=_WIDEST, source=PRACTICE)


def round_size(width: Figure) -> Several:
    """As the hole schedule tells it."""
    return _size((width,), "diameter {}", "{}", width.rule, width.source)


def slot_size(width: Figure, first_mm: float, last_mm: float) -> Several:
    """The same of a slot between two centres."""
    stretch: Term = at_place("x of its last lead", last_mm, None) - at_place("x of its first lead", first_mm, None)
    name = width.name.rpartition(".")[0]
    length = known_figure(f"{name}.length", stretch + width, MILLIMETRES, rule=_OVER_ALL, source=PRACTICE)
    return _size((width, length), "slot over all {} × {}", "{}; {} long", f"{_WIDEST}; {_OVER_ALL}", PRACTICE)


def _size(of: tuple[Figure, ...], written: str, formulas: str, rule: str, source: str) -> Several:
    name = f"{of[0].name.rpartition('.')[0]}.size"
    return Several(name, of, written=written, formulas=formulas, rule=rule, source=source)
