"""The power table of the two worked boards (figures worked by hand on paper), and how it marks what is not known."""

from __future__ import annotations

import pytest
from cases import ROOT, results
from small_rigs import block, results_of, unit

from rigc.analysis.results import Results
from rigc.reports.content import Paragraph, Sheet, Table
from rigc.reports.sheets.power.power_table import power_table

SUPPLY = block(
    "supply",
    "mill",
    "ceiling 6 W",
    "connector barrel 5.5 x 2.1 mm",
    "polarity centre-negative",
    "outlet o1..o2 9 V dc 100 mA isolated",
    "outlet o3..o4 9 V dc 100 mA or 12 V dc 80 mA common pair",
)


def power(*lines: str) -> str:
    return "power {\n" + "".join(f"  {line}\n" for line in lines) + "}\n"


FACTS = ("inlet dc barrel 5.5 x 2.1 mm", "needs 9 V dc", "polarity centre-negative", "ground negative")


def rows(of: Results, name: str) -> list[dict[str, str]]:
    """The rows of a table by their headings, marks in brackets behind the text."""
    sheet: Sheet = of.call(power_table)
    table = sheet.block(name)
    assert isinstance(table, Table)
    heads = [column.key or column.head for column in table.columns]
    texts = [[f"{cell.text} [{cell.mark}]" if cell.mark else cell.text for cell in row.cells] for row in table.rows]
    return [dict(zip(heads, row, strict=True)) for row in texts]


def test_long_haul() -> None:
    """15.210 W of 22.5 = 67.6 %; the receiver at 12 V with 300/375 = 80 %; the switch position is told; b8 is spare."""
    made = results(ROOT / "examples" / "long-haul" / "board.rig")
    outlets = {row["outlet"]: row for row in rows(made, "by_outlet")}
    assert len(outlets) == 16
    heron = outlets["b5"]
    assert (heron["set to"], heron["rating"], heron["load"], heron["load_percent"]) == ("12", "375", "300", "80")
    assert heron["switch"] == "9/12/18 V: set to 12 V"
    assert (outlets["b8"]["unit"], outlets["b8"]["spare"]) == ("", "spare")
    assert outlets["b7"]["isolation"] == "common last-two"
    totals = [(row["load"], row["load_w"], row["load of ceiling"]) for row in rows(made, "by_supply")]
    assert totals == [("433", "3.897", "39.4"), ("1565", "15.210", "67.6")]


def test_back_bedroom_by_unit() -> None:
    """Six units; the shared outlet and the positive ground are told."""
    made = results(ROOT / "examples" / "back-bedroom" / "board.rig")
    units = {row["unit"]: row for row in rows(made, "by_unit")}
    assert len(units) == 6
    assert units["hedge"]["ground"] == "positive"
    assert (units["marl"]["outlet"], units["marl"]["lead"]) == ("mill5.o2 (shared)", "D2a")


def test_what_is_not_known_or_assumed_is_marked() -> None:
    """An assumed current marks its load, its share and the supply's total; an unknown one is `?`; an unfed unit is told."""
    made = results_of(
        SUPPLY
        + unit("marl", *FACTS, "draws 30 mA assumed")
        + unit("lant", *FACTS)
        + unit("hum", *FACTS, "draws 5 mA")
        + power("marl from mill.o1", "lant from mill.o2", "hum alone")
    )
    first, second, *_ = rows(made, "by_outlet")
    assert (first["load"], first["load_percent"]) == ("30 [assumed]", "30 [assumed]")
    assert (second["load"], second["load_percent"]) == ("?", "?")
    (total,) = rows(made, "by_supply")
    assert total["load"] == "30 [incomplete]"
    assert rows(made, "by_unit")[0]["outlet"] == "none [UNFED]"


def test_joined_and_reversed_are_told() -> None:
    """A series pair, a reversing lead and a switch away from its maker's setting each get a line before plugging in."""
    made = results_of(
        SUPPLY
        + unit("lapwing", "inlet dc barrel 5.5 x 2.1 mm", "needs 18 V dc", "polarity centre-negative", "draws 25 mA")
        + unit("hum", "inlet dc barrel 5.5 x 2.1 mm", "needs 12 V dc", "polarity centre-positive", "draws 25 mA")
        + power("lapwing from mill.o1, mill.o2 series", "hum from mill.o3 reversed")
    )
    sheet: Sheet = made.call(power_table)
    notes = sheet.block("settings")
    assert isinstance(notes, Paragraph)
    assert notes.lines == (
        "hum: reversing lead; mark both of its ends.",
        "lapwing: series lead; only as the supply's maker allows, labelled as such.",
        "mill.o3: leaves its maker at 9 V; set it to 12 V and tape the switch.",
    )
    assert rows(made, "by_outlet")[0]["unit"] == "lapwing (in series with mill.o2)"


@pytest.mark.parametrize("word", ["meter", "local code", "protective earth"])
def test_cautions(word: str) -> None:
    """The cautions that belong on a sheet about power stand on it, whatever the rig."""
    sheet: Sheet = results_of("").call(power_table)
    cautions = [block for block in sheet.blocks if isinstance(block, Paragraph) and block.kind == "caution"]
    assert any(word in line for caution in cautions for line in caution.lines)
