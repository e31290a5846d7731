"""The cable list of the two worked boards (figures worked by hand on paper), and what it says where something is missing."""

from __future__ import annotations

import pytest
from written import changed, written

from rigc.analysis.reasoning import Reasoning
from rigc.analysis.results import Results
from rigc.reports.content import Cell, Sheet, Table
from rigc.reports.sheets.bench.cable_list import cable_list

HOME, TOURING = "examples/back-bedroom/board.rig", "examples/long-haul/board.rig"
PAIR = """
unit a {
  body 60 x 100 x 50 mm
  output out ts left 50 mm up 20 mm
}
unit b {
  body 60 x 100 x 50 mm
  input in ts right 50 mm up 20 mm
}
chain a -> b
"""
PLACED = "deck board {\n  size 900 x 300 mm\n}\nplace {\n  a at 700, 20 mm\n  b at 200, 20 mm\n}\n"


def table(results: Results, name: str) -> Table:
    sheet: Sheet = results.call(cable_list)
    found = sheet.block(name)
    assert isinstance(found, Table)
    return found


def rows(results: Results, name: str) -> dict[str, dict[str, Cell]]:
    """The rows by their first cell, each by its headings."""
    found = table(results, name)
    heads = [column.head for column in found.columns]
    return {row.cells[0].text: dict(zip(heads, row.cells, strict=True)) for row in found.rows}


def texts(row: dict[str, Cell], *heads: str) -> list[str]:
    return [row[head].text for head in heads]


def test_a_row_of_the_master_table() -> None:
    # 336 + 25 + 155 + 22 + 55 + 55 = 648; a tenth is 64.8; 712.8 -> 720; 720 + 12 + 12 = 744; 648 + 30 = 678 -> 750
    row = rows(changed(HOME), "leads")["A4"]
    assert {head: cell.text for head, cell in row.items()} == {
        "id": "A4",
        "class": "audio",
        "from": "marl.out",
        "to": "millpond.in",
        "plug A": "flat-angle",
        "plug B": "flat-angle",
        "stock": "mini-coax",
        "route": "648",
        "slack": "64.8",
        "finished": "720",
        "cut": "744",
        "next premade": "750",
        "colour": "BU",
        "label A": "A4 marl.out / far millpond.in",
        "label B": "A4 millpond.in / far marl.out",
        "status": "make",
    }


@pytest.mark.parametrize(
    ("path", "totals"),
    [
        # Y lead D2 has three plugs: 5 x 2 and 4 x 2 + 3
        (HOME, {"audio": "5 1200 1324 1250 10", "dc": "6 1980  2250 11"}),
        # two ends are soldered at the panel: 28 x 2 - 2
        (
            TOURING,
            {
                "audio": "28 17480 18264 18200 54",
                "control": "1 700 728 750 2",
                "midi": "4 1960  2700 8",
                "dc": "15 7960  9300 30",
            },
        ),
    ],
)
def test_totals(path: str, totals: dict[str, str]) -> None:
    found = rows(changed(path), "totals")
    heads = ("leads", "finished", "cut", "next premade", "plugs")
    assert {signal: " ".join(texts(row, *heads)) for signal, row in found.items()} == totals


def test_stage_leads_are_listed_but_not_routed() -> None:
    results = changed(HOME)
    stage = rows(results, "stage-leads")
    assert {mark: texts(row, "stock", "length") for mark, row in stage.items()} == {
        "A1": ["stage-coax", "6000"],
        "A7": ["stage-coax", "6000"],
    }
    assert not stage.keys() & rows(results, "leads").keys()


def test_a_lead_that_exists_is_kept() -> None:
    results = changed(
        HOME, ("A4 marl.out -> millpond.in flat-angle to flat-angle", "A4 marl.out -> millpond.in made 700 mm")
    )
    assert rows(results, "leads")["A4"]["status"].text == "keep, 700 mm"


def test_a_lead_without_a_place_keeps_its_row_and_says_why() -> None:
    # a deck of unknown size: nothing can be placed on it
    results = changed(HOME, ("  lant at 165, 162 mm\n", ""), ("  size 420 x 320 mm\n", ""))
    leads = rows(results, "leads")
    for mark in ("A5", "A6", "D4"):
        assert leads[mark]["route"] == Cell("", mark="no length")
        assert texts(leads[mark], "finished", "cut", "next premade") == ["", "", ""]
    reasons = {mark: row["reason"].text for mark, row in rows(results, "without-length").items()}
    assert reasons == dict.fromkeys(("A5", "A6", "D4"), "for want of the place of 'lant'")
    # 1200 - 150 - 150
    assert rows(results, "totals")["audio"]["finished"] == Cell("900", mark="without A5, A6")


def test_an_assumed_height_marks_the_length() -> None:
    results = written(PAIR.replace("left 50 mm up 20 mm", "left 50 mm up 20 mm assumed") + PLACED)
    row = rows(results, "leads")["A1"]
    assert [row[head].mark for head in ("route", "finished", "cut")] == ["assumed"] * 3
    assert rows(written(PAIR + PLACED), "leads")["A1"]["route"].mark == ""


def test_without_a_deck_every_lead_is_still_there() -> None:
    results = written(PAIR)
    assert list(rows(results, "leads")) == list(rows(results, "without-length")) == ["A1"]


def test_no_leads_at_all() -> None:
    results = written("")
    assert [table(results, name).rows for name in ("leads", "totals")] == [()] * 2


def test_an_adaptor_is_listed_with_what_it_stands_between() -> None:
    results = changed(
        TOURING, ("  D08 mill8.a8 -> stepladder.dc\n", "  D08 mill8.a8 -> stepladder.dc\n  Y1 size for stepladder\n")
    )
    assert {head: cell.text for head, cell in rows(results, "adaptors")["Y1"].items()} == {
        "id": "Y1",
        "kind": "size",
        "from": "mill8.a8",
        "for": "stepladder",
    }


def test_bought_leads_have_price_and_mass_and_those_of_a_y_lead_are_not_taken_for_nothing() -> None:
    # D1 and D3 are bought as 300 mm, D4 and D5 as 450 mm: 5 + 5 + 6 + 6 = 22 EUR, 18 + 18 + 21 + 21 = 78 g; the legs of the
    # Y lead D2 are none of the list, and leads that are made here have no such figures
    prices = "premade dc 300, 450, 600 mm price 5, 6, 7.50 EUR mass 18, 21, 25 g"
    results = changed(HOME, ('use "../bench/stock.rig"', f'use "../bench/stock.rig"\n{prices}'))
    found = rows(results, "leads")
    heads = ("bought: price", "bought: mass")
    assert [texts(found[mark], *heads) for mark in ("A2", "D1", "D4")] == [
        ["", ""],
        ["5.00 EUR", "18"],
        ["6.00 EUR", "21"],
    ]
    assert [found["D2a"][head].mark for head in heads] == ["not stated"] * 2
    totals = rows(results, "totals")
    assert texts(totals["dc"], *heads) == ["22.00 EUR", "78"]
    assert [totals["dc"][head].mark for head in heads] == ["at least"] * 2
    assert texts(totals["audio"], *heads) == ["", ""]
    reasoning = Reasoning(results)
    for name, formula in (
        ("D1.price", "5 EUR, as stated"),
        ("D1.mass", "18 g, as stated"),
        ("dc.bought-price", "5.00 + 5.00 + 6.00 + 6.00 = 22.00, without D2a, D2b"),
        ("dc.bought-mass", "18 + 18 + 21 + 21 = 78, without D2a, D2b"),
    ):
        (reason,) = reasoning.of(name)
        assert reason.formula == formula


def test_prices_in_two_currencies_are_not_added_up() -> None:
    # D1 and D3 at 5 EUR, D4 and D5 at 6 USD
    prices = "premade dc 300, 450, 600 mm price 5 EUR, 6 USD, 7 EUR"
    results = changed(HOME, ('use "../bench/stock.rig"', f'use "../bench/stock.rig"\n{prices}'))
    assert texts(rows(results, "totals")["dc"], "bought: price") == ["10.00 EUR, 12.00 USD"]
    (reason,) = Reasoning(results).of("dc.bought-price")
    assert (
        reason.formula == "in EUR: 5.00 + 5.00 = 10.00, without D2a, D2b; in USD: 6.00 + 6.00 = 12.00, without D2a, D2b"
    )


def test_no_column_of_prices_where_none_is_stated() -> None:
    assert "bought: price" not in [column.head for column in table(changed(HOME), "leads").columns]


def test_a_mains_lead_is_bought_and_never_made() -> None:
    text = (
        "deck board {\n  size 600 x 320 mm\n}\npanel rear-panel {\n  inlet mains C14 at 560, 310 mm\n}\n"
        "supply mill5 {\n  inlet mains C8 left 30 mm up 20 mm\n}\nleads {\n  N1 rear-panel.mains -> mill5.mains made 400 mm\n}\n"
    )
    row = rows(written(text), "leads")["N1"]
    assert texts(row, "plug A", "plug B", "stock", "status") == [
        "as bought",
        "as bought",
        "certified lead set",
        "keep, 400 mm",
    ]
    row = rows(written(text.replace(" made 400 mm", "")), "leads")["N1"]
    assert row["status"].text == "buy"
