"""What the board and its parts weigh, and where it balances: `rig.mass`, `rig.with-case`, `plumb.mass`, `rig.balance`."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.mass import Balance, Mass, MassItem
from rigc.analysis.computations.strip_order import StripOrder
from rigc.analysis.reasons.as_stated import as_stated
from rigc.analysis.reasons.inputs import derived, placed, stated
from rigc.analysis.reasons.item_middle import divisor
from rigc.diagnostics.decimals import fixed
from rigc.diagnostics.figures import kilograms, plain
from rigc.model.fact import Quantity
from rigc.model.rig import Rig
from rigc.traced.reason import ARITHMETIC, NOT_KNOWN, Input, Reason

_BALANCE = "the masses' moments about the deck's front-left corner / their sum: bare deck, units, supplies"


def rig_mass(rig: Rig, mass: Mass, order: StripOrder) -> Iterator[Reason]:
    """The sums, each stated mass, the strips, and the centre of gravity of each deck."""
    facts = _facts(rig)
    for item in (*mass.items, *mass.cases):
        if item.name in facts:
            fact = facts[item.name]
            shown = None if fact is None else kilograms(fact.value)
            yield as_stated(f"{item.name}.mass", f"the mass of {item.name}", fact, "kg", shown)
    yield from _strips(rig, mass, order)
    yield _total(rig, "rig.mass", mass.items, mass.total_kg)
    if mass.cases:
        yield _total(rig, "rig.with-case", (*mass.items, *mass.cases), mass.with_case_kg)
    first = rig.deck.name if rig.deck is not None else ""
    for balance in mass.balances:
        yield _balance(mass, balance, f"{balance.deck}.balance")
        if balance.deck == first:
            yield _balance(mass, balance, "rig.balance")


def _facts(rig: Rig) -> dict[str, Quantity | None]:
    parts = (rig.units, rig.supplies, rig.mains_strips, rig.decks, rig.panels, rig.cases)
    return {name: part.mass_kg for each in parts for name, part in each.items()}


def _key(item: MassItem) -> str:
    return f"{item.name.removesuffix(' leads').replace(' ', '-')}.mass"


def _strips(rig: Rig, mass: Mass, order: StripOrder) -> Iterator[Reason]:
    items = {item.name: item for item in mass.items}
    for kind in order.kinds:
        item, stock = items[kind.name], rig.stock.strips.get(kind.strip or "")
        name, rule = _key(item), "all that is laid × mass per metre"
        laid = kind.laid_mm.as_input()
        inputs = (laid, stated(f"{kind.name} weighs", None if stock is None else stock.mass_g_per_m))
        if item.kg is None or stock is None or stock.mass_g_per_m is None:
            yield Reason(name, NOT_KNOWN, "kg", f"for want of {item.missing}", inputs, rule, ARITHMETIC)
        else:
            value = kilograms(item.kg)
            formula = f"{laid.value} / 1000 × {plain(stock.mass_g_per_m.value)} / 1000 = {value}"
            yield Reason(name, value, "kg", formula, inputs, rule, ARITHMETIC)


def _total(rig: Rig, name: str, items: tuple[MassItem, ...], kg: float | None) -> Reason:
    rule = "units, supplies, panels and decks in use, leads that stay on the board, strips as laid; stage leads are not counted"
    inputs = tuple(_weighs(rig, item) for item in items)
    missing = [item.missing for item in items if item.kg is None]
    if kg is None:
        return Reason(name, NOT_KNOWN, "kg", f"for want of {', '.join(missing)}", inputs, rule, ARITHMETIC)
    value = kilograms(kg)
    formula = f"{' + '.join(plain(round(item.kg or 0, 6)) for item in items)} = {value}"
    return Reason(name, value, "kg", formula, inputs, rule, ARITHMETIC)


def _weighs(rig: Rig, item: MassItem) -> Input:
    if item.name.startswith("strips of "):
        return placed(item.name, NOT_KNOWN, rig.places[item.name.removeprefix("strips of ")].span)
    return derived(item.name, NOT_KNOWN if item.kg is None else kilograms(item.kg), "kg", _key(item))


def _balance(mass: Mass, balance: Balance, name: str) -> Reason:
    parts = [item for item in mass.items if item.x_mm is not None and item.deck == balance.deck]
    inputs = []
    for item in parts:
        middle = f"{plain(item.x_mm or 0)}, {plain(item.y_mm or 0)}"
        weight = NOT_KNOWN if item.kg is None else kilograms(item.kg)
        inputs.append(derived(f"{item.name}, its middle at {middle}", weight, "kg", f"{item.name}.mass"))
    if balance.kg is None or balance.x_mm is None or balance.y_mm is None:
        why = f"for want of {', '.join(balance.missing)}"
        return Reason(name, NOT_KNOWN, "mm", why, tuple(inputs), _BALANCE, "physics: centre of gravity")
    across = " + ".join(f"{plain(item.kg or 0)} × {plain(item.x_mm or 0)}" for item in parts)
    along = " + ".join(f"{plain(item.kg or 0)} × {plain(item.y_mm or 0)}" for item in parts)
    x, y = fixed(balance.x_mm), fixed(balance.y_mm)
    by_x, by_y = divisor(balance.x_mm, balance.kg), divisor(balance.y_mm, balance.kg)
    formula = f"x = ({across}) / {by_x} = {x}; y = ({along}) / {by_y} = {y}"
    return Reason(name, f"{x}, {y}", "mm", formula, tuple(inputs), _BALANCE, "physics: centre of gravity")


REASONS = rig_mass
