"""The mass-and-balance sheet of the two worked boards, and what it says where a mass is missing."""

from __future__ import annotations

from written import changed, written

from rigc.analysis.results import Results
from rigc.reports.content import Cell, Paragraph, Sheet, Table
from rigc.reports.sheets.deck.mass_and_balance import mass_and_balance

HOME, TOURING = "examples/back-bedroom/board.rig", "examples/long-haul/board.rig"


def rows(results: Results, name: str) -> dict[str, tuple[Cell, ...]]:
    sheet: Sheet = results.call(mass_and_balance)
    table = sheet.block(name)
    assert isinstance(table, Table)
    return {row.cells[0].text: row.cells[1:] for row in table.rows}


def texts(results: Results, name: str) -> dict[str, list[str]]:
    return {first: [cell.text for cell in cells] for first, cells in rows(results, name).items()}


def test_the_items_of_the_home_board() -> None:
    found = texts(changed(HOME), "items")
    # plumb at 265, 10, 46 x 94 x 50: its middle
    assert found["plumb"] == ["0.190", "288", "57", "25"]
    # the supply hangs below a deck of 20 mm and is 45 mm high: -20 - 22.5
    assert found["mill5"] == ["1.100", "215", "255", "−42.5"]
    assert found["board"] == ["2.100", "210", "160", "−10"]
    assert found["audio leads"] == ["0.192", "", "", ""]
    assert found["sum"][0] == "5.801"
    assert "sum with the case" not in found


def test_the_sums_of_the_touring_board() -> None:
    found = texts(changed(TOURING), "items")
    assert (found["sum"][0], found["trunk"][0], found["sum with the case"][0]) == ("21.820", "11.500", "33.320")


def test_the_home_board_balances_between_its_feet() -> None:
    # x, y: tests/analysis/weight/test_mass.py. z, in kg·mm: plumb .19·25 + hedge .35·24 + marl and millpond .80·27.5
    # + lant .42·29 + rotunda .43·29 = 59.8; supply −1.1·42.5 = −46.75; deck −2.1·10 = −21; −7.95 / 5.39 = −1.475
    # feet 20 mm in: y 177.4 is 142.6 − 20 = 122.6 from the rear feet, nearer than x
    assert texts(changed(HOME), "balance")["board"] == [
        "5.390", "199.3", "177.4", "−1.5", "yes: 122.6 mm from the nearest edge of the feet",
    ]  # fmt: skip


def test_outside_the_feet() -> None:
    found = rows(changed(HOME, ("feet 20 mm in", "feet 150 mm in")), "balance")["board"]
    # the feet stand on y 150 to 170: 956.455 / 5.390 = 177.4499 is 7.4 beyond them
    assert found[-1] == Cell("no: 7.4 mm outside", mark="FAIL")


def test_the_limits() -> None:
    found = rows(changed(TOURING), "limits")
    # 23 − 33.258 and 32 − 33.258
    assert found["one lifter"][2] == Cell("−10.320", mark="FAIL")
    assert found["one airline piece"][2] == Cell("−1.320", mark="FAIL")
    assert found["one airline piece"][3].text == "heaviest piece, stated by the crew"
    home = rows(changed(HOME), "limits")
    assert list(home) == ["one lifter"]
    assert [cell.text for cell in home["one lifter"]] == ["23", "5.801", "17.199", "NIOSH publication 94-110"]


SMALL = """
unit marl {
  body 70 x 120 x 55 mm
  mass 400 g
}
unit hedge {
  body 75 x 115 mm
}
deck board {
  size 420 x 320 mm
  mass 2 kg
}
place {
  marl at 10, 10 mm
  hedge at 100, 10 mm
}
mounting {
  marl, hedge bolted
}
"""


def test_a_missing_mass_is_told_and_the_sum_is_a_least() -> None:
    results = written(SMALL.replace("75 x 115 mm", "75 x 115 x 48 mm"))
    items = rows(results, "items")
    assert items["hedge"][0] == Cell("", mark="missing")
    assert items["sum"][0] == Cell("2.400", mark="at least")
    assert rows(results, "balance")["board"][-1].text == "not known, for want of the mass of 'hedge'"
    assert rows(results, "limits")["one lifter"][2] == Cell("20.600", mark="at most")
    sheet: Sheet = results.call(mass_and_balance)
    missing, cautions = sheet.block("not-weighed"), sheet.block("cautions")
    assert isinstance(missing, Paragraph) and isinstance(cautions, Paragraph)
    assert missing.lines == ("Not weighed, and not in the sums: the mass of 'hedge'.",)
    assert cautions.kind == "caution"
    assert any("Two people lift" in line for line in cautions.lines)


def test_a_deck_without_thickness_has_no_height() -> None:
    results = written(SMALL.replace("75 x 115 mm", "75 x 115 x 48 mm\n  mass 350 g"))
    # 2.000 · 210 + 0.400 · 45 + 0.350 · 137.5 = 486.125; / 2.750 = 176.8
    cells = rows(results, "balance")["board"]
    assert (cells[1].text, cells[3]) == ("176.8", Cell("", mark="missing"))
    assert cells[-1].text == "feet not stated"
