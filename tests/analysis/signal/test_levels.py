"""Levels on leads, worked by hand. Rigs are invented; levels in dBu, gains in dB: sums."""

from __future__ import annotations

import pytest
from cases import ROOT, results
from small_rigs import block, results_of, unit

from rigc.analysis.signal.levels.levels import NO_LEAD, LevelEdge, Levels
from rigc.traced.figure import assumed

GUITAR = block("instrument", "guitar", "level out -20 dBu peak 4 dBu")
COMBO = block("amp", "combo", "input in ts", "level in max 11 dBu")


def edges(*parts: str) -> dict[str, LevelEdge]:
    return {str(edge.end): edge for edge in results_of("".join(parts)).get(Levels).edges}


def triple(edge: LevelEdge) -> tuple[float | None, float | None, float | None]:
    return edge.high_dbu, edge.low_dbu, edge.peak_dbu


def test_the_home_rig_has_seven_decibels_everywhere() -> None:
    # Peak +4 into +11 dBu.
    found = results(ROOT / "examples/back-bedroom/board.rig").get(Levels).edges
    assert [(edge.mark, edge.margin_db) for edge in found] == [(f"A{k}", 7) for k in range(1, 8)]


def test_the_touring_rig_has_seven_and_thirteen_at_eighteen_volts() -> None:
    # Peak +4 into +11 dBu leaves 7 dB; into +17 dBu at 18 V 13 dB. Panel jacks take whatever comes.
    found = results(ROOT / "examples/long-haul/board.rig").get(Levels).edges
    margins = {str(edge.end): edge.margin_db for edge in found}
    assert margins.pop("lapwing.in") == 13
    assert {margins.pop(f"rear-panel.{side}") for side in "lr"} == {None}
    assert set(margins.values()) == {7}
    assert found[0].mark == NO_LEAD and str(found[0].end) == "heron.air"


def test_gain_is_added_where_no_level_is_stated() -> None:
    # -20 + 12 and 4 + 12; off, the guitar's own level passes.
    found = edges(GUITAR, unit("marl", "gain 12 dB", "bypass true"), COMBO, "chain guitar -> marl -> combo\n")
    assert triple(found["combo.in"]) == (-8, -20, 16)
    assert found["combo.in"].margin_db == -5
    assert found["combo.in"].pad_db == 8


def test_a_level_that_hangs_on_a_switch_is_told_from_the_lowest_to_the_highest() -> None:
    # On -20 + 12 = -8 and 4 + 12 = 16 dBu, off -20 and 4 dBu; 11 - 16 = -5 dB are left.
    found = edges(GUITAR, unit("marl", "gain 12 dB", "bypass true"), COMBO, "chain guitar -> marl -> combo\n")
    edge = found["combo.in"]
    assert (edge.nominal.name, edge.nominal.text) == ("A2.level.nominal", "−20 to −8")
    assert edge.high.formula() == "the highest of −20 + 12, −20 = −8"
    assert edge.low.formula() == "the least of −20 + 12, −20 = −20"
    assert edge.margin is not None and edge.margin.formula() == "11 − 16 = −5"


def test_a_stated_level_stands_before_a_gain() -> None:
    marl = unit("marl", "gain 12 dB", "level out -10 dBu peak 6 dBu", "bypass always-on")
    found = edges(GUITAR, marl, COMBO, "chain guitar -> marl -> combo\n")
    assert triple(found["combo.in"]) == (-10, -10, 6)


def test_a_peak_that_is_not_stated_is_reckoned() -> None:
    marl = unit("marl", "gain 12 dB", "level out -10 dBu", "bypass always-on")
    found = edges(GUITAR, marl, COMBO, "chain guitar -> marl -> combo\n")
    assert triple(found["combo.in"]) == (-10, -10, 16)


def test_a_pad_takes_away() -> None:
    found = edges(GUITAR, unit("spit", "passive", "gain -14 dB"), COMBO, "chain guitar -> spit -> combo\n")
    assert triple(found["combo.in"]) == (-34, -34, -10)


def test_a_straight_path_is_wire() -> None:
    found = edges(GUITAR, unit("fork", "passive", "path in -> out straight"), COMBO, "chain guitar -> fork -> combo\n")
    assert triple(found["combo.in"]) == (-20, -20, 4)


def test_the_thru_of_a_di_passes_the_level_unchanged() -> None:
    # 20 dB are lost in the transformer: -20 - 20 = -40 and 4 - 20 = -16 dBu; by wire -20 and 4 dBu go on.
    ferry = block(
        "unit", "ferry", "passive", "input in ts", "output thru ts", "output di xlr", "gain -20 dB",
        "path in -> thru straight", "path in -> di transformer",
    )  # fmt: skip
    desk = block("desk", "hall", "input ch xlr")
    found = edges(
        GUITAR, ferry, COMBO, desk, "chain guitar -> ferry\nchain ferry.thru -> combo\nchain ferry.di -> hall\n"
    )
    assert triple(found["combo.in"]) == (-20, -20, 4)
    assert triple(found["hall.ch"]) == (-40, -40, -16)


def test_where_all_outputs_are_wire_the_gain_is_that_of_all() -> None:
    found = edges(
        GUITAR,
        unit("spit", "passive", "gain -14 dB", "path in -> out straight"),
        COMBO,
        "chain guitar -> spit -> combo\n",
    )
    assert triple(found["combo.in"]) == (-34, -34, -10)


def test_unknown_is_not_zero() -> None:
    found = edges(GUITAR, unit("marl"), unit("lant", "gain 0 dB"), COMBO, "chain guitar -> marl -> lant -> combo\n")
    assert triple(found["combo.in"]) == (None, None, None)
    assert found["combo.in"].lacking == ("marl",)
    assert found["combo.in"].margin_db is None and found["combo.in"].pad_db == 0


def test_shares_of_a_blend_are_added_as_voltages() -> None:
    # Dry 50 % of -20 dBu and wet 50 % of -8 dBu: 0.5 x 0.0774597 + 0.5 x 0.308374 V = 0.192917 V = -12.0744 dBu.
    shingle = unit(
        "shingle", "output s1 ts", "input r1 ts", "loop 1 send s1 return r1", "gain 0 dB", "bypass always-on"
    )
    hum = unit("hum", "gain 12 dB", "bypass always-on")
    blend = "blend shingle {\n  dry 50 %\n  wet 50 % through hum\n}\n"
    found = edges(GUITAR, shingle, hum, COMBO, blend, "chain guitar -> shingle -> combo\n")
    assert found["combo.in"].high_dbu == pytest.approx(-12.0744, abs=1e-3)
    assert triple(found["hum.in"]) == (-20, -20, 4)


def test_loops_that_are_out_pass_what_comes_in() -> None:
    box = unit("box", "output s1 ts", "input r1 ts", "loop 1 send s1 return r1", "gain 0 dB", "bypass buffered")
    marl = unit("marl", "gain 12 dB", "bypass always-on")
    found = edges(GUITAR, box, marl, COMBO, "loop 1 of box holds marl\nchain guitar -> box -> combo\n")
    assert triple(found["combo.in"]) == (-8, -20, 16)


def test_a_nominal_level_alone_can_be_too_high() -> None:
    # +12 dBu nominal into +11: no peak is needed to see it.
    found = edges(
        GUITAR, unit("marl", "level out 12 dBu", "bypass always-on"), COMBO, "chain guitar -> marl -> combo\n"
    )
    assert (found["combo.in"].peak_dbu, found["combo.in"].margin_db) == (None, -1)
    quiet = edges(GUITAR, unit("marl", "level out 2 dBu", "bypass always-on"), COMBO, "chain guitar -> marl -> combo\n")
    assert quiet["combo.in"].margin_db is None


def test_scenarios_that_differ_are_told_apart() -> None:
    places = block("scenario", "van") + block("scenario", "hall")
    marl = unit("marl", "gain 12 dB", "bypass always-on")
    chains = "chain for van: guitar -> marl -> lant\nchain for hall: guitar -> lant\nchain lant -> combo\n"
    found = results_of(places + GUITAR + marl + unit("lant", "gain 0 dB") + COMBO + chains).get(Levels).edges
    last = [(edge.scenarios, edge.peak_dbu) for edge in found if str(edge.end) == "combo.in"]
    assert last == [(("van",), 16), (("hall",), 4)]


def test_an_assumed_level_marks_what_leans_on_it() -> None:
    guitar = block("instrument", "guitar", "level out -20 dBu peak 4 dBu assumed")
    found = edges(guitar, unit("marl", "gain 0 dB"), COMBO, "chain guitar -> marl -> combo\n")
    edge = found["combo.in"]
    assert assumed(edge.nominal) and assumed(edge.peak) and assumed(edge.margin)
    assert edge.most is not None and not assumed(edge.most)


def test_short_of_a_line_return() -> None:
    # Wants +4, gets -20; 12 dB below +4 would do, so 12 dB are short.
    combo = block(
        "amp", "combo", "input in ts", "output send ts", "input back ts", "loop 1 send send return back series",
        "level send 4 dBu peak 18 dBu", "level back max 24 dBu sensitivity 4 dBu",
    )  # fmt: skip
    lant = unit("lant", "level out -20 dBu peak 4 dBu", "bypass always-on")
    found = edges(GUITAR, combo, lant, "chain guitar -> combo\nloop 1 of combo holds lant\n")
    assert found["combo.back"].wants_line and found["combo.back"].short_db == 12
    assert not found["lant.in"].wants_line and triple(found["lant.in"]) == (4, 4, 18)


def test_a_lead_is_one_row_where_another_instrument_leaves_its_unit_silent() -> None:
    # With the second instrument nothing comes to hum: that is no other level of the lead behind it.
    parts = (
        block("instrument", "guitar", "level out -20 dBu peak 4 dBu"),
        block("instrument", "second", "level out -20 dBu peak 4 dBu"),
        unit("hum", "gain 12 dB"),
        block("amp", "one", "input in ts") + block("amp", "two", "input in ts"),
        "chain guitar -> hum -> one\nchain second -> two\n",
    )
    edges = results_of("".join(parts)).get(Levels).edges
    assert [(str(edge.start), edge.peak_dbu) for edge in edges] == [
        ("guitar.out", 4),
        ("hum.out", 16),
        ("second.out", 4),
    ]
