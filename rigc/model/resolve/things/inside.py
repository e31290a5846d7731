"""outside-body: every jack, switch, knob and part of the base of a thing lies within the body that it belongs to."""

from __future__ import annotations

from itertools import permutations
from typing import Any

from rigc.diagnostics.diagnostic import Diagnostic, Label
from rigc.diagnostics.mend import Mend, Replace
from rigc.model.resolve.context import Context
from rigc.model.slips.interchanged import interchanged
from rigc.model.slips.outside_body import OUTSIDE_BODY
from rigc.source import Span

_FEW = 3


def check_inside(context: Context, thing: Any) -> None:
    """Reports what lies outside; nothing is judged where the body is not fully stated."""
    if thing.width_mm is None or thing.depth_mm is None or thing.height_mm is None:
        return
    if _sizes_interchanged(context, thing):
        return
    for jack in _jacks(thing):
        _along(context, thing, jack)
    _too_high(context, thing)
    for spot in (*thing.switches, *thing.knobs):
        _spot(context, thing, spot)
    for area in thing.no_tape:
        _area(context, thing, area)


def _sizes_interchanged(context: Context, thing: Any) -> bool:
    """A finding, one for all, where much lies outside of the body as it is and nothing if its sizes stand in another order."""
    stated = (thing.width_mm, thing.depth_mm, thing.height_mm)
    sizes = tuple(each.value for each in stated)
    jacks = sum(_jack_outside(jack, *sizes) for jack in _jacks(thing))
    if _outside(thing, *sizes) < _FEW - 1 or not jacks:
        return False
    fitting = [order for order in dict.fromkeys(permutations(sizes)) if _outside(thing, *order) == 0]
    if not fitting or not all(each.span.source is stated[0].span.source for each in stated):
        return False
    rights = [f"{' x '.join(f'{each:g}' for each in order)} mm" for order in fitting[:_FEW]]
    whole = Span(stated[0].span.source, stated[0].span.start, stated[2].span.end)
    _report(
        context,
        OUTSIDE_BODY.at(
            stated[0].span,
            f"{_outside(thing, *sizes)} jacks, switches or parts of '{thing.name}' lie outside its body of "
            f"{' × '.join(f'{each:g}' for each in sizes)} mm, and none where its sizes stand in another order",
            subject=(thing.name,),
            label="width x depth x height",
            mends=tuple(Mend(f"write {right}", (Replace(whole, right),)) for right in rights),
            help="measure its body again, and where they lie",
        ),
    )
    return True


def _outside(thing: Any, width: float, depth: float, height: float) -> int:
    """How many jacks, switches, knobs and parts of its base lie outside a body of these sizes."""
    count = sum(_jack_outside(jack, width, depth, height) for jack in _jacks(thing))
    for spot in (*thing.switches, *thing.knobs):
        count += not (0 < spot.x_mm < width and 0 < spot.y_mm < depth)
    for area in thing.no_tape:
        across, along = area.x_mm + area.width_mm, area.y_mm + area.depth_mm
        count += not (area.x_mm >= 0 and across <= width and area.y_mm >= 0 and along <= depth)
    return count


def _jacks(thing: Any) -> tuple[Any, ...]:
    return (*thing.jacks, *getattr(thing, "outlets", ()))


def _jack_outside(jack: Any, width: float, depth: float, height: float) -> bool:
    side = depth if jack.side in ("left", "right") else width
    along = jack.offset_mm is None or 0 < jack.offset_mm.value < side
    return not (along and (jack.height_mm is None or 0 < jack.height_mm.value < height))


def _along(context: Context, thing: Any, jack: Any) -> None:
    side = thing.depth_mm if jack.side in ("left", "right") else thing.width_mm
    offset = jack.offset_mm
    if offset is None or 0 < offset.value < side.value:
        return
    beyond = offset.value - side.value if offset.value > side.value else -offset.value
    _report(
        context,
        OUTSIDE_BODY.at(
            offset.span,
            f"'{thing.name}.{jack.name}' lies {offset.value:g} mm along a {jack.side} side of {side.value:g} mm",
            subject=(f"{thing.name}.{jack.name}", thing.name),
            label=f"{beyond:g} mm beyond the end of the side" if beyond else "its middle lies on the edge",
            also=(Label(side.span, f"this side is {side.value:g} mm"),),
            help="measure the offset again, from the front edge on the left and right sides, from the left edge on the others",
        ),
    )


def _too_high(context: Context, thing: Any) -> None:
    """One finding where all jacks whose heights are stated lie beyond the body: then its height is the likelier slip."""
    jacks = [jack for jack in (*thing.jacks, *getattr(thing, "outlets", ())) if jack.height_mm is not None]
    body = thing.height_mm
    if len(jacks) < 2 or any(jack.height_mm.value < body.value for jack in jacks):
        for jack in jacks:
            _up(context, thing, jack)
        return
    lowest = min(jack.height_mm.value for jack in jacks)
    _report(
        context,
        OUTSIDE_BODY.at(
            body.span,
            f"'{thing.name}' is {body.typed} high, and all {len(jacks)} jacks whose heights are stated lie higher, the lowest at {lowest:g} mm",
            subject=(thing.name,),
            label="the height of the body",
            also=tuple(Label(jack.height_mm.span, f"'{jack.name}'") for jack in jacks[:_FEW]),
            help="measure the height of the body again, with knobs, without feet",
        ),
    )


def _up(context: Context, thing: Any, jack: Any) -> None:
    height, body = jack.height_mm, thing.height_mm
    if height is None or 0 < height.value < body.value:
        return
    _report(
        context,
        OUTSIDE_BODY.at(
            height.span,
            f"'{thing.name}.{jack.name}' lies {height.value:g} mm up a body of {body.value:g} mm",
            subject=(f"{thing.name}.{jack.name}", thing.name),
            label="outside the body",
            also=(Label(body.span, f"the body is {body.value:g} mm high"),),
            help="measure the jack's height from the base without feet",
        ),
    )


def _spot(context: Context, thing: Any, spot: Any) -> None:
    width, depth = thing.width_mm.value, thing.depth_mm.value
    if 0 < spot.x_mm < width and 0 < spot.y_mm < depth:
        return
    where = f"at {spot.x_mm:g}, {spot.y_mm:g} mm"
    _report(
        context,
        OUTSIDE_BODY.at(
            spot.span,
            f"a switch or knob of '{thing.name}' {where} lies outside its body of {width:g} × {depth:g} mm",
            subject=(thing.name,),
            label="outside the body",
            mends=interchanged(spot.span) if 0 < spot.y_mm < width and 0 < spot.x_mm < depth else (),
            help="measure it from the front-left corner",
        ),
    )


def _area(context: Context, thing: Any, area: Any) -> None:
    width, depth = thing.width_mm.value, thing.depth_mm.value
    across = area.x_mm >= 0 and area.x_mm + area.width_mm <= width
    if across and area.y_mm >= 0 and area.y_mm + area.depth_mm <= depth:
        return
    _report(
        context,
        OUTSIDE_BODY.at(
            area.span,
            f"the {area.what} of '{thing.name}' reaches outside its base of {width:g} × {depth:g} mm",
            subject=(thing.name,),
            label="outside the base",
            mends=interchanged(area.span)
            if min(area.x_mm, area.y_mm) >= 0
            and area.y_mm + area.width_mm <= width
            and area.x_mm + area.depth_mm <= depth
            else (),
            help="measure it from the front-left corner, as seen from above",
        ),
    )


def _report(context: Context, finding: Diagnostic) -> None:
    """Reports it once: a unit that is like another bears the same line of the source."""
    if not any(each.kind is OUTSIDE_BODY and each.span is finding.span for each in context.findings):
        context.report(finding)
