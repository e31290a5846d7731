"""The pull list of the two worked boards: plugs, cable, ready leads, strips and spares."""

from __future__ import annotations

from small_rigs import results_of
from written import changed, written

from rigc.analysis.results import Results
from rigc.reports.content import Sheet, Table
from rigc.reports.sheets.bench.pull_list import pull_list

HOME, TOURING = "examples/back-bedroom/board.rig", "examples/long-haul/board.rig"


def pulled(results: Results) -> dict[str, list[str]]:
    sheet: Sheet = results.call(pull_list)
    table = sheet.block("pull-list")
    assert isinstance(table, Table)
    assert table.tick
    kept = [at for at, column in enumerate(table.columns) if at and column.head != "zone"]
    return {row.cells[0].text: [row.cells[at].text for at in kept] for row in table.rows}


def test_the_touring_board() -> None:
    found = pulled(changed(TOURING))
    assert found["barrel-angle"] == ["plug", "pieces", "54", "", "54", ""]
    # 18.264 m; with waste and ends 19.21 m are taken
    assert found["mini-coax"] == ["cable", "m", "18.264", "0.946", "19.21", ""]
    # M04 is bought as 900 mm, and the spare is one more of it
    assert found["midi lead 900 mm"] == ["premade lead", "pieces", "1", "1", "2", ""]
    assert found["audio lead 1300 mm"] == ["spare lead", "pieces", "", "2", "2", ""]
    assert found["plain 6 m stage lead"] == ["spare", "pieces", "", "1", "1", ""]
    # strips: 9.556 m laid, 10.6 m ordered
    assert found["mushroom"] == ["strip", "m", "9.556", "1.044", "10.6", ""]
    assert found["brackets"] == ["fixing", "sets", "4", "", "4", ""]
    # 28 audio + 2 stage + 1 control + 4 MIDI + 15 DC = 50 leads, two markers each
    assert found["markers"][1:] == ["pieces", "100", "", "100", ""]
    dc = {item: int(cells[2]) for item, cells in found.items() if item.startswith("dc lead") and cells[2]}
    assert dc == {
        "dc lead 300 mm": 1,
        "dc lead 450 mm": 6,
        "dc lead 600 mm": 4,
        "dc lead 900 mm": 3,
        "dc lead 1200 mm": 1,
    }


def test_the_home_board_buys_its_y_lead_in_one() -> None:
    found = pulled(changed(HOME))
    assert found["D2: dc Y lead, legs of 300 mm and 450 mm"] == ["premade lead", "pieces", "1", "", "1", ""]
    assert found["flat-angle"] == ["plug", "pieces", "8", "", "8", ""]
    # 5 leads x 2 ends x 35 mm
    assert found["heat-shrink for mini-coax"][2] == "0.35"


def test_spare_plugs_adaptors_and_plates() -> None:
    results = changed(
        TOURING,
        ("  2 audio lead 1300 mm", "  4 plug flat-angle\n  2 plug barrel-angle\n  2 audio lead 1300 mm"),
        ("  D08 mill8.a8 -> stepladder.dc\n", "  D08 mill8.a8 -> stepladder.dc\n  Y1 size for stepladder\n"),
        ("  all with mushroom\n", '  all with mushroom\n  plumb bridged "plate 60 x 120 mm"\n'),
    )
    found = pulled(results)
    assert found["flat-angle"] == ["plug", "pieces", "", "4", "4", ""]
    assert found["barrel-angle"] == ["plug", "pieces", "54", "2", "56", ""]
    assert found["Y1: size adaptor for stepladder"][2] == "1"
    assert found["plate 60 x 120 mm"] == ["bridge plate", "pieces", "1", "", "1", ""]


def test_a_lead_to_be_bought_without_a_length_says_so() -> None:
    found = pulled(
        written(
            "unit a {\n  inlet dc barrel 5.5 x 2.1 mm\n  needs 9 V dc\n}\n"
            "supply mill {\n  connector barrel 5.5 x 2.1 mm\n  outlet o1 9 V dc 100 mA isolated\n}\n"
            "power {\n  a from mill.o1\n}\n"  # and no deck
        )
    )
    assert found["dc lead of unknown length"][2] == "1"


def test_heat_shrink_for_a_cable_that_is_not_stated() -> None:
    text = """
plug barrel-angle "barrel right-angle" {
  fits ts
  stands out 19 mm
  bend 0 mm
  leaves at 10 mm
  wide 16 mm
  tall 16 mm
  cut-in 14 mm
  poles 2
  mass 15 g
}
instrument guitar {
}
unit tern {
  body 80 x 120 x 55 mm
  input in ts right 60 mm up 20 mm
  output out ts left 60 mm up 20 mm
}
unit fen {
  body 80 x 120 x 55 mm
  input in ts right 60 mm up 20 mm
  output out ts left 60 mm up 20 mm
}
amp combo {
  input in ts
}
chain guitar -> tern -> fen -> combo
deck plank {
  size 600 x 300 mm
}
place {
  tern at 300, 20 mm
  fen at 100, 20 mm
}
leads {
  audio plug barrel-angle
}
"""
    found = pulled(results_of(text))
    assert "cable not stated" in found
    assert "heat-shrink for cable not stated" in found


def test_nothing_at_all() -> None:
    assert pulled(written("")) == {}
