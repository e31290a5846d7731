"""`fit` tries every deck that the rig reads, those of the generic stock among them. Rigs are invented."""

from __future__ import annotations

from small_rigs import block, results_of, unit
from written import changed

from rigc.reports.content import Paragraph, Sheet, Table
from rigc.reports.views.fit import fit

UNITS = unit("marl", "body 70 x 120 x 55 mm") + unit("plumb", "body 70 x 120 x 55 mm")
CHAIN = (
    block("instrument", "guitar") + block("amp", "combo", "input in ts") + "chain guitar -> marl -> plumb -> combo\n"
)


def tried(sheet: Sheet) -> list[str]:
    table = sheet.block("decks")
    assert isinstance(table, Table)
    return [row.cells[0].text for row in table.rows]


def told(sheet: Sheet) -> str:
    paragraph = sheet.block("counted")
    assert isinstance(paragraph, Paragraph)
    return " ".join(paragraph.lines)


def test_decks_of_the_stock_are_tried_without_being_built_upon() -> None:
    bench = 'use "../bench/stock.rig"'
    sheet: Sheet = changed("examples/back-bedroom/board.rig", (bench, f'{bench}\nuse "stock/decks.rig"')).call(fit)
    assert tried(sheet) == ["rails-40", "rails-60", "plate-60", "plate-90", "board"]
    assert "stock/decks.rig" not in told(sheet)


def test_without_them_it_says_how_to_try_them() -> None:
    decks = block("deck", "small", "size 200 x 150 mm") + block("deck", "large", "size 400 x 300 mm")
    sheet: Sheet = results_of(UNITS + CHAIN + decks).call(fit)
    assert tried(sheet) == ["small", "large"]
    assert 'use "stock/decks.rig"' in told(sheet)
