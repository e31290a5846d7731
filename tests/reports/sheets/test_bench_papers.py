"""Build traveller, unit data sheets, de-rig list, intake sheet, quote: their cells."""

from __future__ import annotations

from functools import cache
from itertools import pairwise

from cases import ROOT, compiled

from rigc.analysis.reasoning import Reasoning
from rigc.compile import Compiled
from rigc.reports.content import Drawing, Paragraph, Sheet, Table
from rigc.reports.drawings.shapes import Label

D, HOME, BOARD = "examples/long-haul-d/board.rig", "examples/back-bedroom/board.rig", "tests/reach/board.rig"


@cache
def made(rig: str) -> Compiled:
    return compiled(ROOT / rig)


def sheet(rig: str, name: str) -> Sheet:
    (found,) = made(rig).sheets((name,))
    return found


def rows(sheet: Sheet, name: str) -> list[list[str]]:
    block = sheet.block(name)
    assert isinstance(block, Table)
    return [[cell.text for cell in row.cells] for row in block.rows]


def test_a_traveller_goes_from_step_to_step() -> None:
    """29 leads at 20 min are 580; 49 of the board at 4 are 196; two of their 98 ends are soldered, 96 at ½ are 48."""
    told = {row[1].partition(" (")[0]: row for row in rows(sheet(D, "build-traveller"), "steps")}
    assert told["make leads"][2:6] == ["A01 to A28, C01", "29", "580", ""]
    assert told["lay and tie leads"][3:5] == ["49", "196"]
    assert told["plug in"][3:5] == ["96", "48"]
    assert told["voltage, polarity, isolation"][5] == "no plug goes into a unit before it was read"
    assert told["earth bond and insulation"][5] == "by a competent person; until then the mains lead stays out"


def test_the_time_in_all_has_its_reason() -> None:
    results = made(D).results
    assert results is not None
    (why,) = Reasoning(results).of("rig.build")
    last = rows(sheet(D, "build-traveller"), "steps")[-1]
    assert (last[1], last[4]) == ("in all", why.value.partition(" ")[0])


def test_unit_data() -> None:
    """As the touring example states them: out at 25 mm, inlet at 80 mm of the rear, both 20 mm up."""
    data = sheet(D, "unit-data-sheets")
    assert rows(data, "jacks-heron") == [
        ["air", "input, wireless", "", "", "", "", "", "1 Mohm, max 11 dBu"],
        ["out", "output, ts", "", "rear", "25", "20", "insulated", "1 kohm, −20 dBu, peak 4 dBu"],
        ["dc", "inlet, barrel 5.5 × 2.1", "", "rear", "80", "20", "", ""],
    ]
    assert [row[:2] for row in rows(data, "jacks")] == [
        ["guitar", "out"], ["left-amp", "in"], ["right-amp", "in"], ["rear-panel", "l"], ["rear-panel", "r"], ["rear-panel", "mains"],
    ]  # fmt: skip
    plan = data.block("plan-heron")
    assert isinstance(plan, Drawing)
    labels = [shape.text for shape in plan.shapes if isinstance(shape, Label)]
    assert labels == ["out 25", "dc 80", "front; 105 × 95 mm, from the dot; 1:4"]


def test_no_two_names_of_a_unit_stand_on_one_another() -> None:
    """Names on one side are a letter's height and two fifths apart: 2.5 × 1.4 = 3.5 mm."""
    plan = sheet(D, "unit-data-sheets").block("plan-signalbox")
    assert isinstance(plan, Drawing)
    across = sorted(shape.x for shape in plan.shapes if isinstance(shape, Label) and shape.rotation)
    assert len(across) == 20
    assert min(b - a for a, b in pairwise(across)) >= 3.5 - 1e-9


def test_what_goes_back_to_whom() -> None:
    """The second supply has two outlets that left their maker at 9 V."""
    told = {row[0]: row for row in rows(sheet(D, "de-rig-list"), "things")}
    assert told["weir8"][1:6] == ["switch-mode, eight outlets", "W8-0150", "", "b5: 9 V; b6: 9 V", "player B"]
    assert told["heron"][3] == "back on, from the bag"


def test_what_the_client_was_asked() -> None:
    told = {row[0]: row[1:3] for row in rows(sheet(D, "intake-sheet"), "asked")}
    assert told["Who plays it?"] == ["player B", "yes"]
    assert told["How many units?"] == ["18", "yes"]
    assert told["In which countries?"] == ["EU, GB, US, JP", "yes"]
    assert told["How heavy may it be for who lifts it?"] == ["23 kg", "yes"]
    assert told["If everything fails, which way round?"] == ["", "yes"]


def test_what_is_asked_of_each_unit() -> None:
    """In the words of the list that a client fills in; whom it is not stated of."""
    told = {row[0]: row[1:] for row in rows(sheet(HOME, "intake-sheet"), "asked-of-units")}
    assert told["Width, Depth, Height"] == ["body ___ x ___ x ___ mm", "yes", ""]
    assert told["Level in, Most it takes"][1:] == ["yes", ""]
    assert told["Firmware"][1:] == ["", "all"]


def test_no_audio_jack_is_asked_of_a_treadle_and_no_place_of_what_comes_through_the_air() -> None:
    """A tuner that states no output is asked for it: it may have been forgotten. The guitar states its pickup and none of its papers."""
    told = {row[0].split(",")[0]: row[3] for row in rows(sheet(D, "intake-sheet"), "asked-of-units")}
    assert (told["Input jack"], told["Output jack"], told["Bypass"]) == ("", "plumb", "")
    guitar = {row[0]: row[1:] for row in rows(sheet(D, "intake-sheet"), "asked-of-instruments")}
    assert guitar["inductance ___ H"] == ["yes", ""]
    assert guitar['serial "___"'] == ["", "guitar"]


def test_a_quote_adds_up_what_has_a_price_and_no_owner() -> None:
    """Of the small board: 90 + 95.87 + 28 = 213.87 EUR. A unit that is somebody's is not sold to him."""
    offer = sheet(BOARD, "quote")
    told = rows(offer, "items")
    assert [row[:1] + row[2:5] for row in told] == [
        ["plank", "1", "90.00", "EUR"],
        ["audio leads", "10", "95.87", "EUR"],
        ["dc leads", "4", "28.00", "EUR"],
        ["material in all", "", "213.87", "EUR"],
    ]
    results = made(BOARD).results
    assert results is not None
    assert Reasoning(results).of("rig.price-eur")[0].value.startswith("213.87")


def test_without_a_price_there_is_no_quote() -> None:
    why = sheet(HOME, "quote").block("reason")
    assert isinstance(why, Paragraph)
    assert why.lines == ("No price is stated of anything that is not somebody's already.",)
