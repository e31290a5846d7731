"""Lengths against boards that were worked by hand on paper, and each rule alone (common practice, no source).

All figures here are tenths of a millimetre. The arithmetic of the rule: slack is the greater of 30 mm (audio) or 40 mm
(others) and a tenth of the route; the sum is rounded up to 10 mm, never below 90 mm.
"""

from __future__ import annotations

from fractions import Fraction
from math import ceil

import back_bedroom
import long_haul
import pytest
from boards_by_hand import STOCK, board, deck, fact, lead, one_length, panel, reckoned, stand
from hypothesis import given
from hypothesis import strategies as st
from worked_rows import Row, worked_rows

from rigc.analysis.leads.lengths.cable_lengths import Total, finished_length, longest_length, rule_slack
from rigc.facts.leads import LEAST_SLACK_MM, LONGEST_MORE_MM, LONGEST_SHARE, SLACK_SHARE
from rigc.model.rig import Rig
from rigc.model.stock import Stock
from rigc.model.wishes import LeadWishes

BACK = worked_rows(back_bedroom.ROWS)
LONG = worked_rows(long_haul.ROWS)


@pytest.mark.parametrize(
    ("rig", "row"),
    [*((back_bedroom.BOARD, row) for row in BACK), *((long_haul.BOARD, row) for row in LONG)],
    ids=lambda value: value.lead.mark if isinstance(value, Row) else "",
)
def test_worked_board(rig: Rig, row: Row) -> None:
    length = one_length(rig, row.lead)
    route = sum(row.horizontal) + sum(row.vertical)
    assert (length.route, round(length.slack)) == (route, row.slack)
    assert row.finished == max(ceil(Fraction(route + row.slack, 100)) * 100, 900)
    assert (length.finished, length.cut, length.premade) == (row.finished, row.cut, row.premade)


def texts(total: Total) -> tuple[str, str, str]:
    """What a total says of the finished, cut and premade length of its class, in mm."""
    return total.finished.text, total.cut.text, total.premade.text


def test_totals_of_the_home_board() -> None:
    totals = reckoned(back_bedroom.BOARD, *(row.lead for row in BACK)).totals
    # 90 + 90 + 720 + 150 + 150 = 1200; 114 + 114 + 744 + 176 + 176 = 1324; 100 + 100 + 750 + 150 + 150 = 1250
    audio = totals["audio"]
    assert (audio.leads.text, *texts(audio)) == ("5", "1200", "1324", "1250")
    # 240 + 300 + 360 + 290 + 370 + 420 = 1980; 300 + 300 + 450 + 300 + 450 + 450 = 2250
    dc = totals["dc"]
    assert (dc.leads.text, *texts(dc)) == ("6", "1980", "none", "2250")


def test_totals_of_the_touring_board() -> None:
    totals = reckoned(long_haul.BOARD, *(row.lead for row in LONG)).totals
    sums = {each.signal: texts(each) for each in totals.values()}
    # cut: 17480 + 26 leads x 28 + 2 leads x (14 + 14) = 18264
    # MIDI: 340 + 360 + 540 + 720 = 1960 and 600 + 600 + 600 + 900 = 2700
    assert sums == {
        "audio": ("17480", "18264", "18200"),
        "control": ("700", "728", "750"),
        "midi": ("1960", "none", "2700"),
        "dc": ("7960", "none", "9300"),
    }


def ruled(route: int, signal: str = "audio") -> float:
    """The slack by the rule, in tenths of a millimetre, as a search reckons it."""
    return rule_slack(route, 10 * LEAST_SLACK_MM[signal].value, SLACK_SHARE.value, 0)


@pytest.mark.parametrize(
    ("signal", "route", "slack"),
    [
        ("audio", 460, 300),
        ("audio", 3000, 300),  # a tenth is just as much
        ("audio", 3010, 301),
        ("audio", 4003, 401),  # 40.03 mm counts as 40.1
        ("dc", 3010, 400),
        ("midi", 3010, 400),
        ("control", 3010, 400),
        ("control", 6360, 636),
    ],
)
def test_slack(signal: str, route: int, slack: int) -> None:
    assert ruled(route, signal) == slack


@pytest.mark.parametrize(("together", "finished"), [(760, 900), (900, 900), (901, 1000), (4400, 4400), (4401, 4500)])
def test_rounding_and_floor(together: int, finished: int) -> None:
    assert finished_length(together) == finished


def test_400_and_its_tenth_stay_440() -> None:
    # in binary floats 1.1 x 400 is a hair above 440 and would give 450
    assert 1.1 * 400 > 440
    assert finished_length(4000 + ruled(4000)) == 4400


@given(st.integers(0, 10**6))
def test_whole_tenths_lose_nothing(route: int) -> None:
    exact = route + max(Fraction(300), Fraction(route, 10))
    assert finished_length(route + ruled(route)) == max(ceil(exact / 100) * 100, 900)


@pytest.mark.parametrize(
    ("route", "least", "most"),
    [
        (7060, 7360, 9266),
        (6180, 6480, 8298),
    ],  # 706: 736 .. 926.6; 618: 648 .. 829.8, two rows of a change worked by hand
)
def test_window_of_a_lead_that_exists(route: int, least: int, most: int) -> None:
    assert (route + 300, longest_length(route, LONGEST_SHARE.value, 10 * LONGEST_MORE_MM.value)) == (least, most)


PLATE = deck(2000, 400, 10, 150)
RIGHT = stand("right", 300, 20, "60 100 50", "out:L50/20")
LEFT = stand("left", 200, 20, "60 100 50", "in:R50/20")
REAR = panel("rear", l=(500, 390))
NEAR = board(PLATE, RIGHT, LEFT, panels=(REAR,))


def test_stated_slack_comes_on_top() -> None:
    # 24 + 30 + 60 = 114 -> 120; the shortest that will do is the same 114, so 150 premade; 1.1 x 24 + 150 + 60 = 236.4
    length = one_length(NEAR, lead("A1", "right.out", "left.in", "flat flat", slack_mm=fact(60)))
    assert (round(length.slack), length.finished, length.least, length.premade) == (900, 1200, 1140, 1500)
    assert length.most == 2364


def test_slack_beyond_the_least_does_not_lengthen_a_premade_lead() -> None:
    # 687 - 260 - 16 = 411; made: 411 + 41.1 = 452.1 -> 460; premade: 411 + 30 = 441 -> 450
    far = stand("far", 687, 20, "60 100 50", "out:L50/20")
    length = one_length(board(PLATE, far, LEFT), lead("A1", "far.out", "left.in", "flat flat"))
    assert (length.route, length.finished, length.premade) == (4110, 4600, 4500)


def test_no_premade_lead_is_long_enough() -> None:
    far = stand("far", 1700, 20, "60 100 50", "out:L50/20")
    length = one_length(board(PLATE, far, LEFT), lead("A1", "far.out", "left.in", "flat flat"))
    assert length.route == 14240  # 1700 - 260 - 16
    assert (length.premade, length.premade_listed) == (None, True)


def test_a_soldered_end_has_no_premade_lead() -> None:
    length = one_length(NEAR, lead("A1", "right.out", "rear.l", "angle panel"))
    assert (length.premade, length.cut) == (None, length.finished + 280)


def test_a_captive_lead_is_neither_cut_nor_bought() -> None:
    one = lead("D1", "right.out", "left.in", "dc dc")
    length = one_length(NEAR, one.replace(ends=("dc", None), captive=one.end, captive_mm=fact(300)))
    assert (length.cut, length.premade) == (None, None)


def test_leads_bought_ready_are_not_cut() -> None:
    rig = board(PLATE, RIGHT, LEFT, lead_wishes=LeadWishes(cutting=(("audio", "premade"),)))
    assert one_length(rig, lead("A1", "right.out", "left.in", "flat flat")).cut is None
    assert one_length(NEAR, lead("A1", "right.out", "left.in", "flat flat", premade=True)).cut is None


def test_control_leads_take_the_audio_list_unless_they_have_their_own() -> None:
    own = Stock(STOCK.cables, STOCK.plugs, {}, {**STOCK.premade_mm, "control": (500,)})
    one = lead("C1", "right.out", "left.in", "flat flat")
    assert one_length(NEAR, one).premade == 1000  # 24 + 40 = 64 -> 100
    assert one_length(board(PLATE, RIGHT, LEFT, stock=own), one).premade == 5000


def test_a_stock_without_premade_lengths() -> None:
    bare = Stock(STOCK.cables, STOCK.plugs, {}, {})
    length = one_length(board(PLATE, RIGHT, LEFT, stock=bare), lead("A1", "right.out", "left.in", "flat flat"))
    assert (length.premade, length.premade_listed) == (None, False)


def test_a_lead_without_a_way_is_named_in_the_total() -> None:
    rig = board(PLATE, RIGHT, LEFT, stand("lost", 0, 0, "60 100 50", ""), places={"right": RIGHT[1], "left": LEFT[1]})
    lengths = reckoned(
        rig, lead("A1", "right.out", "left.in", "flat flat"), lead("A2", "left.in", "lost.in", "flat flat")
    )
    assert "A2" not in lengths.lengths
    assert (lengths.totals["audio"].leads.text, lengths.totals["audio"].unrouted) == ("2", ("A2",))


def test_sizes_in_inches_come_out_in_whole_tenths() -> None:
    # 2.76 in = 70.104 mm: the right edge at 270.104, and 8 of the plug: 278.1; 292 - 278.1 = 13.9
    left = stand("left", 200, 20, "70.104 100 50", "in:R50/20")
    assert one_length(board(PLATE, RIGHT, left), lead("A1", "right.out", "left.in", "flat flat")).route == 139
