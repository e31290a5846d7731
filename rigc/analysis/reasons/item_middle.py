"""Where the parts and decks of a board balance: `plumb.x`, `.y`, `.z`; `board.balance.mass`, `.x`, `.y`, `.z`."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.mass import Balance, Mass, MassItem
from rigc.analysis.computations.placement import Outline, Placement
from rigc.analysis.reasons.inputs import derived, stands, stated
from rigc.analysis.reasons.operands import operands
from rigc.diagnostics.decimals import fixed
from rigc.diagnostics.figures import kilograms, plain, signed_tenth
from rigc.model.deck import Deck
from rigc.model.rig import Rig
from rigc.traced.reason import NOT_KNOWN, Input, Reason

_MIDDLE = "a body balances in its middle; of a thing that stands askew, that of the rectangle around it"
_TAKEN = "common practice, no source: tilt the board to verify"
_MOMENTS = "the masses' moments about the deck's front-left corner / their sum: bare deck, units, supplies"
_PHYSICS = "physics: centre of gravity"


def item_middle(rig: Rig, mass: Mass, placement: Placement) -> Iterator[Reason]:
    """Three reasons for each part that has a middle, four for each deck that things stand on."""
    for item in mass.items:
        body = placement.outline(item.name)
        if body is not None:
            yield from _of_body(rig, item, body)
        elif item.name in rig.decks and item.x_mm is not None:
            yield from _of_deck(item, rig.decks[item.name])
    for balance in mass.balances:
        yield from _balance(mass, balance)


def _of_body(rig: Rig, item: MassItem, body: Outline) -> Iterator[Reason]:
    thing, place = rig.things[item.name], rig.places[item.name]
    width, depth, height = (stated(f"{item.name} {each}", getattr(thing, f"{each}_mm")) for each in _SIDES)
    turned = (width, depth) if place.turned in (0, 180) and not place.skew_deg else (width, depth, depth, width)
    for field, start, size, middle, parts in (
        ("x", body.x_mm, body.width_mm, item.x_mm, (turned[0], *turned[2:3])),
        ("y", body.y_mm, body.depth_mm, item.y_mm, (turned[1], *turned[3:])),
    ):
        value = signed_tenth(middle or 0.0)
        formula = f"{plain(round(start, 3))} + {plain(round(size, 3))} / 2 = {value}"
        yield Reason(f"{item.name}.{field}", value, "mm", formula, (stands(place), *parts), _MIDDLE, _TAKEN)
    deck = rig.decks.get(body.deck or "")
    inputs = (
        stands(place),
        height,
        *((stated(f"{deck.name} thickness", deck.thickness_mm),) if body.under and deck else ()),
    )
    yield _high(item, inputs, _body_height(deck, body))


_SIDES = ("width", "depth", "height")


def _body_height(deck: Deck | None, body: Outline) -> str:
    """The sum that leads to the height of a body's middle; empty where a fact is missing."""
    if body.height_mm is None:
        return ""
    if not body.under:
        return f"{plain(body.raised_mm)} + {plain(body.height_mm)} / 2"
    if deck is None or deck.thickness_mm is None:
        return ""
    return f"0 − {plain(deck.thickness_mm.value)} − {plain(body.height_mm)} / 2"


def _of_deck(item: MassItem, deck: Deck) -> Iterator[Reason]:
    for field, fact, middle in (("x", deck.width_mm, item.x_mm), ("y", deck.depth_mm, item.y_mm)):
        side = stated(f"{deck.name} {'width' if field == 'x' else 'depth'}", fact)
        size = 0.0 if fact is None else fact.value
        value = signed_tenth(middle or 0.0)
        yield Reason(f"{item.name}.{field}", value, "mm", f"{plain(size)} / 2 = {value}", (side,), _MIDDLE, _TAKEN)
    thickness = stated(f"{deck.name} thickness", deck.thickness_mm)
    yield _high(item, (thickness,), "" if deck.thickness_mm is None else f"0 − {plain(deck.thickness_mm.value)} / 2")


def _high(item: MassItem, inputs: tuple[Input, ...], terms: str) -> Reason:
    name = f"{item.name}.z"
    if item.z_mm is None:
        return Reason(name, NOT_KNOWN, "mm", "for want of a height or thickness", inputs, _MIDDLE, _TAKEN)
    value = signed_tenth(item.z_mm)
    return Reason(name, value, "mm", f"{terms} = {value}, from the deck's top", inputs, _MIDDLE, _TAKEN)


def _balance(mass: Mass, balance: Balance) -> Iterator[Reason]:
    parts = [item for item in mass.items if item.deck == balance.deck]
    name = f"{balance.deck}.balance"
    weights = tuple(
        derived(item.name, NOT_KNOWN if item.kg is None else kilograms(item.kg), "kg", f"{item.name}.mass")
        for item in parts
    )
    if balance.kg is None:
        why = f"for want of {', '.join(balance.missing)}"
        for field, unit in (("mass", "kg"), ("x", "mm"), ("y", "mm"), ("z", "mm")):
            yield Reason(f"{name}.{field}", NOT_KNOWN, unit, why, weights, _MOMENTS, _PHYSICS)
        return
    total = kilograms(balance.kg)
    terms = [each.value for each in weights]
    if kilograms(sum(map(float, terms))) != total:
        terms = [plain(round(item.kg or 0, 6)) for item in parts]
    formula = f"{' + '.join(terms)} = {total}"
    yield Reason(f"{name}.mass", total, "kg", formula, weights, "bare deck, units and supplies together", _PHYSICS)
    for field, middle in (("x", balance.x_mm), ("y", balance.y_mm), ("z", balance.z_mm)):
        if middle is None:
            why = f"for want of the height of {', '.join(balance.no_height)}"
            yield Reason(f"{name}.{field}", NOT_KNOWN, "mm", why, weights, _MOMENTS, _PHYSICS)
            continue
        at = {item.name: getattr(item, f"{field}_mm") or 0.0 for item in parts}
        spots = tuple(derived(f"middle of {each}", signed_tenth(at[each]), "mm", f"{each}.{field}") for each in at)
        moments = " + ".join(f"{plain(item.kg or 0)} × {plain(round(at[item.name], 3))}" for item in parts)
        value = fixed(middle)
        formula = f"({moments}) / {divisor(middle, balance.kg)} = {value}"
        yield Reason(f"{name}.{field}", value, "mm", formula, (*weights, *spots), _MOMENTS, _PHYSICS)


def divisor(middle_mm: float, kg: float) -> str:
    """The masses' sum, with as many digits as the middle can be reckoned from by hand."""
    told = kilograms(kg)
    if fixed(middle_mm * kg / float(told)) == fixed(middle_mm):
        return told
    return operands(lambda each: fixed(middle_mm * kg / each), kg, least=3)[0]


REASONS = item_middle
