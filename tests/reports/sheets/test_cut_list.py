"""The cut list of the two worked boards (figures worked by hand on paper), reels, heat-shrink, and made or bought."""

from __future__ import annotations

import pytest
from written import changed, written

from rigc.analysis.results import Results
from rigc.analysis.stores.made_or_bought import MadeOrBought
from rigc.reports.content import Cell, Paragraph, Sheet, Table
from rigc.reports.sheets.bench.cut_list import cut_list

HOME, TOURING = "examples/back-bedroom/board.rig", "examples/long-haul/board.rig"


def sheet(results: Results) -> Sheet:
    made: Sheet = results.call(cut_list)
    return made


def table(results: Results, name: str) -> Table:
    found = sheet(results).block(name)
    assert isinstance(found, Table)
    return found


def rows(results: Results, name: str) -> dict[str, tuple[Cell, ...]]:
    return {row.cells[0].text: row.cells[1:] for row in table(results, name).rows}


def texts(results: Results, name: str) -> dict[str, list[str]]:
    return {first: [cell.text for cell in cells] for first, cells in rows(results, name).items()}


def test_it_goes_from_long_to_short() -> None:
    cuts = [(row.cells[1].text, row.cells[2].text) for row in table(changed(HOME), "cut-list").rows]
    assert cuts == [("744", "A4"), ("176", "A5"), ("176", "A6"), ("114", "A2"), ("114", "A3")]
    assert table(changed(HOME), "cut-list").tick


def test_a_row_tells_how_both_ends_are_stripped() -> None:
    first = table(changed(HOME), "cut-list").rows[1]
    assert [cell.text for cell in first.cells] == [
        "mini-coax", "176", "A5", "flat-angle", "barrel-angle", "12, 8, 4", "not stated",
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("path", "totals"),
    [
        # 1.324 m x 1.05 = 1.3902 -> 1.40 m; ends 2 x 14 mm (barrel-angle) = 28 mm -> 3 cm
        (HOME, {"mini-coax": ["5", "1.324", "1.40", "28", "1.43"]}),
        # 18.264 m x 1.05 = 19.1772 -> 19.18 m, and 3 cm; 0.728 x 1.05 = 0.7644 -> 0.77, and 3 cm
        (
            TOURING,
            {
                "mini-coax": ["28", "18.264", "19.18", "28", "19.21"],
                "control-3": ["1", "0.728", "0.77", "28", "0.80"],
            },
        ),
    ],
)
def test_what_each_cable_takes(path: str, totals: dict[str, list[str]]) -> None:
    assert texts(changed(path), "cut-totals") == totals


def test_reels() -> None:
    # one reel of 100 m holds all: 100 - 19.18 - 0.03 = 80.79 m are left
    assert texts(changed(TOURING), "reels")["mini-coax"] == ["1", "1", "28 pieces, 18.264 m", "80.79"]


LONG = """
unit a {
  body 60 x 100 x 50 mm
  output o1..o30 ts left 5..92 mm up 20 mm
}
unit b {
  body 60 x 100 x 50 mm
  input i1..i30 ts right 5..92 mm up 20 mm
}
deck board {
  size 5000 x 300 mm
}
place {
  a at 4800, 20 mm
  b at 200, 20 mm
}
leads {
  audio plug straight
}
"""


def test_more_than_one_reel() -> None:
    """Thirty leads of 4.914 m: a reel of 100 m, less 2 x 22 mm and 5 % waste, holds 95.196 m, which are 19 of them."""
    results = written(LONG + "".join(f"chain c{each}: a.o{each} -> b.i{each}\n" for each in range(1, 31)))
    # 4800 - 260 - 2 x 60 = 4420; a tenth is 442; 4862 -> 4870, and 2 x 22 for the plugs: 4914
    assert [row.cells[1].text for row in table(results, "cut-list").rows] == ["4914"] * 30
    (cells,) = texts(results, "reels").values()
    # the last: 11 x 4.914 = 54.054; x 1.05 = 56.7567 -> 56.76, and 0.044 -> 0.05: 43.19 are left
    assert cells == ["2", "2", "19 pieces, 93.366 m; 11 pieces, 54.054 m", "43.19"]


def test_heat_shrink_grips_the_jacket() -> None:
    # 5 mm jacket: below 0.8 x 5 = 4 mm when shrunk, so below 8 mm as 2:1 comes; 28 leads x 2 ends x 35 mm = 1.96 m
    assert texts(changed(TOURING), "heat-shrink")["mini-coax"] == [
        "5", "4", "over 5, below 8", "56", "25 to 35", "1.96",
    ]  # fmt: skip


def test_plugs_by_kind() -> None:
    found = {kind: cells[0].text for kind, cells in rows(changed(HOME), "plugs").items()}
    assert found == {"flat-angle": "8", "barrel-angle": "2", "dc-angle": "0"}
    # 28 leads of which two end at the panel: 56 - 2
    assert rows(changed(TOURING), "plugs")["barrel-angle"][0].text == "54"


def test_made_beside_bought() -> None:
    found = rows(changed(HOME), "made-or-bought")
    assert [cell.text for cell in found["A4"]] == ["audio", "720", "744", "750", "30"]
    assert "parts to make it" not in [column.head for column in table(changed(HOME), "made-or-bought").columns]
    touring = rows(changed(TOURING), "made-or-bought")
    # A25: route 891 -> at most 1.1 x 891 + 150 = 1130: a bought lead of 1200 mm is a coil
    assert (touring["A25"][3].text, touring["A25"][4].mark) == ("1200", "coil")
    assert touring["A01"][4].text == "−60"  # 1200 bought, 1260 made: 1142 + 30 is enough, 10 % more is better
    assert touring["A27"][3].text == "none"  # soldered at the panel


def test_parts_have_a_price_only_where_all_are_stated() -> None:
    priced = (
        'use "../bench/stock.rig"\n'
        "cable dear like mini-coax {\n  price 2 EUR\n}\nplug dear-flat like flat-angle {\n  price 4 EUR\n}"
    )
    results = changed(
        HOME,
        ('use "../bench/stock.rig"', priced),
        ("audio cable mini-coax", "audio cable dear"),
        ("A2 plumb.out -> hedge.in flat-angle to flat-angle", "A2 plumb.out -> hedge.in dear-flat to dear-flat"),
    )
    found = rows(results, "made-or-bought")
    # 0.114 m x 2 + 2 x 4
    assert (found["A2"][-1].text, found["A4"][-1].text) == ("8.23 EUR", "")
    (parts,) = (offer.parts for offer in results.get(MadeOrBought).all if offer.length.mark == "A2")
    assert parts is not None and parts.formula() == "114 / 1000 × 2 + 4 + 4 = 8.23"


def test_a_bought_lead_has_a_price_where_one_is_stated() -> None:
    # A4 takes 750 mm, the second length, so 7 EUR; the list of d.c. leads states no prices
    results = changed(
        HOME,
        ('use "../bench/stock.rig"', 'use "../bench/stock.rig"\npremade audio 100, 750, 1000 mm price 4, 7, 9 EUR'),
    )
    assert table(results, "made-or-bought").columns[-1].head == "bought costs"
    found = rows(results, "made-or-bought")
    assert (found["A4"][3].text, found["A4"][-1].text) == ("750", "7.00 EUR")
    assert [found[mark][-1].text for mark in ("D1", "D3")] == ["", ""]


def test_a_lead_without_a_length_is_named() -> None:
    results = written("unit a {\n  output out ts\n}\nunit b {\n  input in ts\n}\nchain a -> b\n")  # no deck
    left_out = sheet(results).block("left-out")
    assert isinstance(left_out, Paragraph)
    assert left_out.lines[0].startswith("Not in this list, for want of a length: A1.")
    assert "left-out" not in [block.name for block in sheet(changed(HOME)).blocks]


def test_a_lead_that_exists_is_not_cut() -> None:
    results = changed(
        HOME, ("A4 marl.out -> millpond.in flat-angle to flat-angle", "A4 marl.out -> millpond.in made 700 mm")
    )
    assert "A4" not in [row.cells[2].text for row in table(results, "cut-list").rows]


def test_no_leads_at_all() -> None:
    results = written("")
    assert [table(results, name).rows for name in ("cut-list", "cut-totals", "plugs", "heat-shrink")] == [()] * 4


def test_it_bears_the_cautions() -> None:
    care = sheet(changed(HOME)).block("care")
    assert isinstance(care, Paragraph)
    assert care.kind == "caution"
    assert "protect your eyes" in care.lines[0]
