"""What stores hand out of an item: `pull.flat-angle.quantity`, `.spare`, `.total`; an item's words are joined with `-`."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.cables.heat_shrink import shrink_cm, shrink_pieces
from rigc.analysis.cables.reel_use import ReelUse, reel_uses
from rigc.analysis.computations.cable_lengths import CableLengths
from rigc.analysis.computations.labels import Labels
from rigc.analysis.computations.leads import Leads
from rigc.analysis.computations.plug_uses import PlugUses
from rigc.analysis.computations.special_leads import SpecialLeads
from rigc.analysis.computations.strip_order import StripOrder
from rigc.analysis.pulling.all_pulled import all_pulled
from rigc.analysis.pulling.pulled import Pulled, figure
from rigc.analysis.reasons.inputs import derived, follows, placed
from rigc.diagnostics.figures import metres_cut, metres_with_waste
from rigc.model.rig import Rig
from rigc.traced.reason import ARITHMETIC, Input, Reason

_COUNTED = "what the sheets and the source ask for, counted"


def pull_figure(
    rig: Rig,
    leads: Leads,
    lengths: CableLengths,
    order: StripOrder,
    special: SpecialLeads,
    labels: Labels,
    plugs: PlugUses,
) -> Iterator[Reason]:
    """Up to three reasons for each row of the pull list; none for what there is none of."""
    behind = {**_of_cables(reel_uses(rig, leads, lengths)), **_of_strips(order)}
    for pulled in all_pulled(rig, leads, lengths, order, special, labels, plugs):
        name = f"pull.{pulled.item.replace(' ', '-')}"
        known, known_total = behind.get((pulled.kind, pulled.item), ((), ()))
        parts = []
        if pulled.quantity:
            parts.append(_quantity(name, pulled, known or _counted(labels, special, pulled)))
        if pulled.spare:
            parts.append(_spare(name, pulled, (*known, *known_total) or _carried(rig, pulled)))
        yield from parts
        value = figure(pulled.quantity + pulled.spare)
        if value:
            formula = f"{' + '.join(part.value for part in parts)} = {value}"
            inputs = tuple(follows(part.name.rsplit(".", 1)[1], part) for part in parts)
            yield Reason(f"{name}.total", value, _unit(pulled), formula, inputs, "quantity and spare", ARITHMETIC)


_Behind = dict[tuple[str, str], tuple[tuple[Input, ...], tuple[Input, ...]]]


def _of_cables(uses: tuple[ReelUse, ...]) -> _Behind:
    """What each cable and its heat-shrink rest on: the quantity, and what is taken in all."""
    found: _Behind = {}
    for use in uses:
        if use.cable is not None:
            cut = derived("cut", metres_cut(use.cut), "m", f"{use.cable}.cut")
            take = derived("take", metres_with_waste(use.taken_cm), "m", f"{use.cable}.take")
            found["cable", use.cable] = ((cut,), (take,))
            shrink = metres_with_waste(shrink_cm(shrink_pieces(use)))
            one = derived("heat-shrink", shrink, "m", f"{use.cable}.shrink")
            found["heat-shrink", f"heat-shrink for {use.cable}"] = ((one,), ())
    return found


def _of_strips(order: StripOrder) -> _Behind:
    """Of strips and tape: what is laid, and what is ordered."""
    return {
        ("strip", kind.name): (
            (kind.laid_mm.as_input(),),
            (kind.order.as_input(),),
        )
        for kind in order.kinds
    }


def _unit(pulled: Pulled) -> str:
    return pulled.unit if pulled.unit == "m" else ""


def _quantity(name: str, pulled: Pulled, inputs: tuple[Input, ...]) -> Reason:
    value = figure(pulled.quantity)
    formula = f"{' + '.join(f'{each.value} {each.unit}'.strip() for each in inputs)} = {value}" if inputs else value
    return Reason(f"{name}.quantity", value, _unit(pulled), formula, inputs, _COUNTED, ARITHMETIC)


def _spare(name: str, pulled: Pulled, inputs: tuple[Input, ...]) -> Reason:
    value = figure(pulled.spare)
    formula = f"{' + '.join(each.value for each in inputs) or value} = {value}"
    rule = "spares that the source says are carried"
    if pulled.unit == "m" and len(inputs) == 2:
        whole = f"{inputs[1].value} − {figure(pulled.quantity)}"
        formula, rule = f"{whole} = {value}", "what is taken or ordered, less what is used"
    return Reason(f"{name}.spare", value, _unit(pulled), formula, inputs, rule, ARITHMETIC)


def _counted(labels: Labels, special: SpecialLeads, pulled: Pulled) -> tuple[Input, ...]:
    if pulled.kind == "plug":
        return (derived("to fit", figure(pulled.quantity), "", f"{pulled.item}.to-fit"),)
    if pulled.kind == "label":
        of_specials = (each.markers for each in special.all if each.markers is not None)
        return tuple(each.as_input() for each in (*labels.markers.values(), *of_specials))
    return ()


def _carried(rig: Rig, pulled: Pulled) -> tuple[Input, ...]:
    """The statements of spares that name the item: a plug by its kind, a lead by signal and length, a thing by its words."""
    return tuple(
        placed(f"carried in {spare.bag or 'no bag'}", str(spare.count), spare.span)
        for spare in rig.spares
        if pulled.item in (spare.what, spare.what.removeprefix("plug "))
        or (spare.length_mm is not None and pulled.item == f"{spare.what} {spare.length_mm.value:g} mm")
    )


REASONS = pull_figure
