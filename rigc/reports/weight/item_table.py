"""Mass -> the table of all items with their middles, the sums, and where each deck balances."""

from __future__ import annotations

from rigc.analysis.computations.mass import Balance, Mass, MassItem
from rigc.diagnostics.decimals import fixed
from rigc.diagnostics.figures import kilograms, signed_tenth
from rigc.model.rig import Rig
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.deck.chosen_places import place_cell

_ITEMS = (
    Column("item"),
    Column("mass", "kg", number=True, key="mass"),
    Column("x", "mm", number=True),
    Column("y", "mm", number=True),
    Column("z", "mm", number=True),
)
_BALANCES = (
    Column("deck"),
    Column("mass", "kg", number=True, key="mass"),
    Column("x", "mm", number=True),
    Column("y", "mm", number=True),
    Column("z", "mm", number=True),
    Column("between the feet"),
)


def item_table(rig: Rig, mass: Mass) -> Table:
    """A row for each item, then the sum of the board, the cases, and the sum with them; middles at chosen places are marked."""
    rows = [*(_item(rig, item) for item in mass.items), _sum("sum", mass.total_kg, mass.known_kg - _cases(mass))]
    if mass.cases:
        rows += [
            *(_item(rig, case) for case in mass.cases),
            _sum(
                "sum with the case" if len(mass.cases) == 1 else "sum with all cases", mass.with_case_kg, mass.known_kg
            ),
        ]
    return Table("items", "What it weighs", _ITEMS, tuple(rows))


def balance_table(rig: Rig, mass: Mass) -> Table:
    """The centre of gravity of each deck with its units and supplies, and whether it lies between the deck's feet."""
    caption = "Centre of gravity: bare deck, units and supplies"
    rows = tuple(_balance(rig, balance) for balance in mass.balances)
    return Table("balance", caption, _BALANCES, rows, empty="nothing stands on a deck")


def _item(rig: Rig, item: MassItem) -> Row:
    weighed = Cell("", mark="missing") if item.kg is None else Cell(kilograms(item.kg))
    x, y, z = ("" if each is None else signed_tenth(each) for each in (item.x_mm, item.y_mm, item.z_mm))
    place = rig.places.get(item.name)
    return Row((Cell(item.name), weighed, place_cell(x, place), place_cell(y, place), Cell(z)))


def _sum(name: str, kg: float | None, known: float) -> Row:
    """A sum that is not known is at least what is."""
    cell = Cell(kilograms(known), mark="at least") if kg is None else Cell(kilograms(kg), strong=True)
    return Row((Cell(name, strong=True), cell, Cell(""), Cell(""), Cell("")), total=True)


def _cases(mass: Mass) -> float:
    return sum(case.kg or 0.0 for case in mass.cases)


def _balance(rig: Rig, balance: Balance) -> Row:
    if balance.kg is None or balance.x_mm is None or balance.y_mm is None:
        unknown = f"not known, for want of {', '.join(balance.missing)}"
        return Row((Cell(balance.deck), Cell(""), Cell(""), Cell(""), Cell(""), Cell(unknown)))
    z = Cell(fixed(balance.z_mm)) if balance.z_mm is not None else Cell("", mark="missing")
    middle = (Cell(fixed(balance.x_mm)), Cell(fixed(balance.y_mm)), z)
    return Row((Cell(balance.deck), Cell(kilograms(balance.kg)), *middle, _feet(rig, balance)))


def _feet(rig: Rig, balance: Balance) -> Cell:
    """Whether the rectangle of the feet has the centre of gravity inside; its edges count as inside."""
    deck = rig.decks[balance.deck]
    if deck.feet_inset_mm is None or deck.width_mm is None or deck.depth_mm is None:
        return Cell("feet not stated")
    assert balance.x_mm is not None and balance.y_mm is not None
    inset = deck.feet_inset_mm.value
    across = min(balance.x_mm, deck.width_mm.value - balance.x_mm) - inset
    along = min(balance.y_mm, deck.depth_mm.value - balance.y_mm) - inset
    least = min(across, along)
    if least < 0:
        return Cell(f"no: {fixed(-least)} mm outside", mark="FAIL")
    return Cell(f"yes: {fixed(least)} mm from the nearest edge of the feet")
