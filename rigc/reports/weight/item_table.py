"""Mass -> the table of all items with their middles, the sums, and where each deck balances."""

from __future__ import annotations

from rigc.analysis.weight.mass import Balance, Mass, MassItem
from rigc.model.rig import Rig
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.deck.chosen_places import marked
from rigc.reports.figure_cell import figure_cell, mark
from rigc.reports.weight.limit_table import at_least
from rigc.traced.figure import AnyFigure, Figure, Lacking

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
    rows = [*(_item(rig, item) for item in mass.items), _sum("sum", mass.board_known)]
    if mass.cases:
        rows += [
            *(_item(rig, case) for case in mass.cases),
            _sum("sum with the case" if len(mass.cases) == 1 else "sum with all cases", mass.whole_known),
        ]
    return Table("items", "What it weighs", _ITEMS, tuple(rows))


def balance_table(mass: Mass) -> Table:
    """The centre of gravity of each deck with its units and supplies, and whether it lies between the deck's feet."""
    caption = "Centre of gravity: bare deck, units and supplies"
    rows = tuple(_balance(balance) for balance in mass.balances)
    return Table("balance", caption, _BALANCES, rows, empty="nothing stands on a deck")


def _item(rig: Rig, item: MassItem) -> Row:
    place = rig.places.get(item.name)
    x, y, z = (figure_cell(each, lacking="") for each in (item.x_mm, item.y_mm, item.z))
    return Row((Cell(item.name), _known(item.mass), marked(x, place), marked(y, place), z))


def _known(figure: AnyFigure) -> Cell:
    return Cell("", mark="missing") if isinstance(figure, Lacking) else figure_cell(figure)


def _sum(name: str, known: Figure) -> Row:
    return Row((Cell(name, strong=True), at_least(known, strong=True), Cell(""), Cell(""), Cell("")), total=True)


def _balance(balance: Balance) -> Row:
    if balance.missing:
        unknown = f"not known, for want of {', '.join(balance.missing)}"
        return Row((Cell(balance.deck), Cell(""), Cell(""), Cell(""), Cell(""), Cell(unknown)))
    middle = (figure_cell(balance.x), figure_cell(balance.y), _known(balance.z))
    return Row((Cell(balance.deck), figure_cell(balance.mass), *middle, _feet(balance)))


def _feet(balance: Balance) -> Cell:
    """Whether the rectangle of the feet has the centre of gravity inside; its edges count as inside."""
    inside = balance.inside
    if inside is None or isinstance(inside, Lacking):
        return Cell("feet not stated")
    if inside < 0:
        return Cell(f"no: {inside.shown.text(-inside)} mm outside", mark="FAIL")
    return Cell(f"yes: {inside.text} mm from the nearest edge of the feet", mark=mark(inside))
