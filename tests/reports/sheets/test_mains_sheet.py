"""The mains sheet: both tables where they differ, what is not known, what the crew must set."""

from __future__ import annotations

import pytest
from cases import ROOT, results
from small_rigs import block, results_of, unit
from written import changed

from rigc.analysis.results import Results
from rigc.reports.content import NoSheet, Sheet, Table
from rigc.reports.sheets.power.mains_sheet import mains_sheet

TOURING = "examples/long-haul/board.rig"


def rows(made: Results, name: str) -> list[list[str]]:
    """The texts of a table of the sheet."""
    table = sheet(made).block(name)
    assert isinstance(table, Table)
    return [[cell.text for cell in row.cells] for row in table.rows]


def sheet(made: Results) -> Sheet:
    found = made.call(mains_sheet)
    assert isinstance(found, Sheet)
    return found


def test_places() -> None:
    """Volt-amperes over volts; Japan's two rows both printed, and marked."""
    made = results(ROOT / TOURING)
    told = {row[0]: row[1:] for row in rows(made, "places")}
    assert told["uk"] == [
        "GB",
        "230 V 50 Hz",
        "G",
        "230 V 50 Hz, plug G",
        "the same",
        "48.49",
        "0.211",
        "ask the venue",
        "United Kingdom",
    ]
    assert told["jp-west"][3:5] == ["100 V 50 Hz, plug A B", "100 V 50 or 60 Hz, plug A B"]
    assert told["eu"][2:5] == ["?", "not listed", "not listed"]
    assert told["us"][6] == "0.404"
    places = sheet(made).block("places")
    assert isinstance(places, Table)
    marks = {row.cells[0].text: row.cells[3].mark for row in places.rows}
    assert marks == {"eu": "", "uk": "", "us": "", "jp-east": "tables differ", "jp-west": "tables differ"}


def test_a_country_of_the_second_table_only() -> None:
    """HK has no row in the first; South Africa's plug letters differ: both are printed."""
    made = changed(TOURING, ("  country GB\n", "  country HK\n"), ("  country US\n", "  country ZA\n"))
    told = {row[0]: row for row in rows(made, "places")}
    assert told["uk"][3:6] == ["D G", "not listed", "220 V 50 Hz, plug D G"]
    assert told["us"][3] == "C F M N / C D M N"
    assert told["us"][8] == "the scenario states other mains than the tables; ask the venue"


def test_settings() -> None:
    """Selector, what arrives, what stands before it."""
    told = {(row[0], row[1]): row[2:] for row in rows(results(ROOT / TOURING), "settings")}
    assert told["us", "mill8"] == ["115 V", "120 V 60 Hz", "103.5 to 126.5", "none", "", "2.000", "87", "104", "ok"]
    assert told["jp-west", "mill8"][3:] == ["100 to 115 V, 50 VA", "25", "1.917", "83", "100", "ok"]
    assert told["eu", "weir8"] == ["none", "230 V 50 Hz", "100 to 240", "none", "", "", "", "", "ok"]


def test_supplies() -> None:
    """Per supply and in all: W, VA, mA at 100, 120 and 230 V, heat; what is not stated is a question mark."""
    told = {row[0]: row for row in rows(results(ROOT / TOURING), "supplies")}
    assert told["mill8"][2:9] == ["3.897", "9.74", "13.92", "139.2", "116", "60.5", "5.85"]
    assert told["all"][2:9] == ["19.107", "28.755", "48.49", "484.9", "404.1", "210.8", "9.65"]
    assert told["mill8"][11:] == ["2 positions", "?"]


def test_currents_at_mains_that_a_supply_meets() -> None:
    """A figure at mains that it is neither made for nor played on would read as leave to plug it in. 4.5 W at 90 % and 0.5 are 10 VA:
    43.5 mA at 230 V, 83.3 at 120, 100 at 100; the sum of both only where both may be."""
    facts = ("switch-mode", "efficiency 90 %", "power factor 0.5", "outlet o1 9 V dc 500 mA isolated")
    here = block("supply", "here", *facts, "mains 230 V within 10 % 50 Hz")
    wide = block("supply", "wide", *facts, "mains 100..240 V 50..60 Hz")
    units = "".join(
        block("unit", name, "inlet dc barrel 5.5 x 2.1 mm", "needs 9 V dc", "draws 500 mA")
        for name in ("marl", "hedge")
    )
    feeds = block("power", "", "marl from here.o1", "hedge from wide.o1")
    told = rows(results_of(here + wide + units + feeds), "supplies")
    assert [row[5:8] for row in told] == [["", "", "43.5"], ["100", "83.3", "43.5"], ["", "", "87"]]
    tour = block("scenario", "us", "mains 120 V 60 Hz")
    assert rows(results_of(here + wide + units + feeds + tour), "supplies")[0][5:8] == ["", "83.3", "43.5"]


def test_a_fuse_that_is_not_stated_is_told_of_amps_too() -> None:
    amp = block("amp", "combo", "earthed", "input in ts", "mains 230 V 50 Hz", "takes 60 VA")
    other = block("amp", "stack", "earthed", "input in ts", "mains 230 V 50 Hz", "takes 90 VA", "fuse T 1 A")
    chain = "instrument guitar {\n}\nchain guitar -> combo\nchain guitar -> stack\n"
    words = " ".join(
        line for each in sheet(results_of(amp + other + chain)).blocks for line in getattr(each, "lines", ())
    )
    assert "Fuse of combo: not stated; as marked on it." in words


def test_the_inlet_has_its_rating() -> None:
    """C14: 10 A (IEC 60320); salt-pan's linear supply has one."""
    told = {row[0]: row for row in rows(results(ROOT / "tests/rigs/salt-pan.rig"), "supplies")}
    assert told["brine"][12] == "C14, 10 A"


def test_unknown_efficiency_makes_no_total() -> None:
    """A winding has no usual efficiency: its W and VA, and the sums, are question marks."""
    supply = block("supply", "brick", "winding", "outlet w 9 V ac 500 mA isolated")
    unit = block("unit", "marl", "inlet ac barrel 5.5 x 2.1 mm", "needs 9 V ac", "draws 100 mA")
    made = results_of(supply + unit + "power {\n  marl from brick.w\n}\nscenario home {\n  mains 230 V 50 Hz\n}\n")
    (row,) = rows(made, "supplies")
    assert row[2:9] == ["0.900", "?", "?", "", "", "?", "?"]
    assert rows(made, "places")[0][6:8] == ["?", "?"]
    assert rows(made, "settings")[0][-1] == "its range is not stated"


def test_it_only_totals() -> None:
    """The cautions: ask the venue, no wiring, never the protective earth."""
    text = " ".join(line for each in sheet(results(ROOT / TOURING)).blocks for line in getattr(each, "lines", ()))
    for words in (
        "Ask the venue",
        "designs and approves no mains wiring",
        "tape a protective earth",
    ):
        assert words in text


def test_notes() -> None:
    """The board's inlet with its load: 48.49 VA / 100 V = 0.485 A of 10; the highest DC voltage beside SELV's ceiling."""
    lines: tuple[str, ...] = getattr(sheet(results(ROOT / TOURING)).block("reading"), "lines", ())
    assert lines[0] == "Inlet of the board: rear-panel.mains, C14, 10 A (IEC 60320); all supplies take 0.485 A at most."
    assert any(
        line.startswith("Highest DC voltage on the board: 18 V; safety extra-low voltage ends at 120 V")
        for line in lines
    )


PEDAL = unit("drive", 'battery "9 V"', "draws 5 mA") + block("instrument", "guitar")
CHAIN = "chain guitar -> drive -> combo\n"


@pytest.mark.parametrize(
    ("listener", "more", "there"),
    [
        (block("amp", "combo", 'battery "6 AA" only', "input in ts"), "", False),
        (block("listener", "combo", "input in trs", "headphones"), "", False),
        (block("amp", "combo", "input in ts"), "", True),  # it has its own mains lead
        (block("amp", "combo", 'battery "6 AA" only', "input in ts"), block("mains-strip", "bar", "sockets 4"), True),
        (
            block("amp", "combo", 'battery "6 AA" only', "input in ts", "inlet mains C14 left 30 mm up 20 mm"),
            "",
            True,
        ),
    ],
)
def test_a_rig_that_takes_no_mains_has_no_such_sheet(listener: str, more: str, there: bool) -> None:
    found = results_of(PEDAL + listener + more + CHAIN).call(mains_sheet)
    assert isinstance(found, Sheet if there else NoSheet)
