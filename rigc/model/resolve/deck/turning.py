"""`turned 98 deg` -> quarter turns and what is left; only a treadle may stand askew."""

from __future__ import annotations

from rigc.model.resolve.context import Context
from rigc.model.resolve.things.things import inherited
from rigc.model.slips.wrong_quantity import WRONG_QUANTITY
from rigc.model.units.measures import ANGLE
from rigc.syntax import nodes

MOST_SKEW_DEG = 30


def turning(context: Context, node: nodes.Turned | None, thing: str) -> tuple[int, float]:
    """The quarter turn (0, 90, 180 or 270) and the skew in degrees, both counter-clockwise; zeros after a finding."""
    angle = None if node is None else context.chosen(node.angle, ANGLE)
    if node is None or angle is None:
        return 0, 0.0
    quarter = round(angle.value / 90) * 90
    skew = angle.value - quarter
    if not skew or (abs(skew) <= MOST_SKEW_DEG and _has_treadle(context, thing)):
        return quarter % 360, skew
    if _has_treadle(context, thing):
        said, do = f"'{angle.typed}' is too much of a skew", f"stay within {MOST_SKEW_DEG} deg of a quarter turn"
    else:
        said, do = (
            f"'{angle.typed}' is no quarter turn",
            "write 90, 180 or 270 deg; only a unit with a `treadle` stands askew",
        )
    label = "counter-clockwise, seen from above"
    context.report(WRONG_QUANTITY.at(node.span, said, label=label, help=do))
    return 0, 0.0


def _has_treadle(context: Context, thing: str) -> bool:
    """Whether the unit or one that it is like has a treadle; what is wrong with its block is told elsewhere."""
    quiet = Context(context.statements, frozenset(), context.end)
    blocks = {block.name.text: block for block in context.of(nodes.Unit)}
    block = blocks.get(thing)
    facts = inherited(quiet, block, blocks) if block is not None else []
    return any(isinstance(item.fact, nodes.Treadle) for item in facts)
