"""Which tests are due where, by hand from the rigs' own statements, and what their limits are."""

from __future__ import annotations

from records_board import TOURING, board
from written import changed, written

from rigc.analysis.results import Results
from rigc.analysis.tests.due_tests import Due, DueTests

HOME = "examples/back-bedroom/board.rig"


def due(results: Results, test: int) -> dict[str, Due]:
    return {f"{each.point} {each.beside}".strip(): each for each in results.get(DueTests).all if each.test == test}


def at(results: Results, test: int, point: str) -> Due:
    (found,) = (each for each in results.get(DueTests).all if (each.test, each.point) == (test, point))
    return found


def test_points_of_the_touring_board() -> None:
    results = changed(TOURING)
    # one panel inlet and two supplies whose inlets are not stated
    assert list(due(results, 1)) == ["rear-panel.mains C14", "mill8 inlet not stated", "weir8 inlet not stated"]
    # 28 leads on the board, 2 to the amps; the guitar's goes to its body-pack by radio
    assert len(due(results, 3)) == len(due(results, 4)) == 30
    # 15 outlets feed 15 units
    assert [len(due(results, test)) for test in (5, 6, 7, 8)] == [15, 15, 15, 15]
    outputs = ["rear-panel.l A30 to left-amp", "rear-panel.r A31 to right-amp"]
    assert list(due(results, 10)) == list(due(results, 12)) == outputs
    assert list(due(results, 13)) == [*outputs, "canaltwo its lift, if it has one, to and fro"]
    assert due(results, 14) == {}
    assert list(due(results, 15)) == ["weathervane every preset", "lantxl every preset", "rotundaxl every preset"]
    assert list(due(results, 16)) == ["lever heel, lantxl.exp", "lever toe, lantxl.exp"]
    assert list(due(results, 19)) == ["mill8 its case", "weir8 its case", "long-haul the warmest unit"]


def test_a_rig_without_midi_and_expression_has_no_such_tests() -> None:
    results = changed(HOME)
    assert due(results, 15) == due(results, 16) == {}
    # hedge, marl, millpond, lant, rotunda and plumb are bypassed; the board's output is rotunda's
    assert next(iter(due(results, 9))) == "rotunda.out A7 to combo"
    assert len(due(results, 9)) == 7
    # two units on o2, one test at its plug each: five outlets are used
    assert len(due(results, 5)) == 5
    assert len(due(results, 6)) == 6


def test_limits_at_points() -> None:
    results = board()
    assert at(results, 5, "weir8.b1").limit.words == "8.7 to 9.9 V"
    # expected 18.0 V: 18 x 17.4/18 and 18 x 19.5/18
    assert at(results, 5, "weir8.b6").limit.words == "17.4 to 19.5 V, expected 18.0 V"
    # 95 % of 12 V
    assert at(results, 6, "heron").limit.short == "≥ 11.4 V"
    assert at(results, 7, "mill8.a1").limit.short == "≤ 10 mV"
    assert at(results, 7, "weir8.b1").limit.short == "≤ 30 mV"
    assert at(results, 8, "weir8.b7").limit.words == "more than 1 MΩ, but to b8: one common"
    # A01 is 1260 mm by design, 780 mm as built: not over a metre; A30 is 6 m
    assert at(results, 3, "A01").limit.short == "< 0.3 Ω"
    assert at(changed(TOURING), 3, "A01").limit.short == "≤ 0.5 Ω"
    assert at(results, 3, "A30").limit.short == "≤ 0.5 Ω"
    assert at(results, 11, "heron").limit.words == "noted, inverters too"
    assert at(results, 21, "long-haul").limit.words == "no limit is stated"


def test_the_last_reading_counts_and_the_one_before_is_kept() -> None:
    results = board()
    lead = at(results, 3, "A18")
    assert lead.last is not None
    assert lead.before is not None
    assert (lead.last.reading.value, lead.before.reading.value, lead.passed) == (0.41, 0.12, False)
    plug = at(results, 5, "weir8.b5")
    assert plug.passed is True
    # -20.1 dBu of a tone at -20 dBu is -0.1 dB; ±0.5 dB
    assert at(results, 9, "rear-panel.l").passed is True
    # heron's inlet is read as heron
    assert at(results, 6, "heron").passed is True
    assert at(results, 21, "long-haul").passed is None
    assert [each.last is None for each in due(results, 16).values()] == [True, False]


def test_what_has_no_limit_says_why() -> None:
    results = written(
        "unit a {\n  inlet dc barrel 5.5 x 2.1 mm\n  needs 15 V dc\n}\n"
        "unit b {\n  inlet dc barrel 5.5 x 2.1 mm\n  needs 9 V ac\n}\n"
        "supply mill {\n  connector barrel 5.5 x 2.1 mm\n  outlet o1 15 V dc 100 mA isolated\n  outlet o2 9 V ac 100 mA isolated\n"
        "  outlet o3 9 V dc 100 mA or 12 V dc 100 mA isolated\n}\n"
        "power {\n  a from mill.o1\n  b from mill.o2\n}\n"
        'tests {\n  2026-03-02 test 5 at mill.o3 reads 9 V by "T.O."\n}\n'
    )
    assert at(results, 5, "mill.o1").limit.words == "no limit is known for 15 V"
    assert at(results, 5, "mill.o2").limit.words == "no limit is known for AC"
    assert at(results, 5, "mill.o3").limit.words == "its voltage is not known"
    assert at(results, 7, "mill.o1").limit.words == "the kind of 'mill' is not stated"


def test_a_microphone_that_goes_straight_to_the_desk_is_no_output_of_the_board() -> None:
    results = changed("examples/harbour-keys/board.rig")
    assert list(due(results, 10)) == ["twin-di.outl A11 to front-desk", "twin-di.outr A12 to front-desk"]
    # its lead is tested all the same
    assert "A13 voice.out to front-desk.in3" in due(results, 3)


def test_a_mains_strip_is_tested_socket_by_socket() -> None:
    results = changed("examples/harbour-keys/board.rig")
    assert list(due(results, 1)) == ["bar mains strip: the earth of each socket"]
    assert list(due(results, 2)) == ["mill5.mains C8", "brick.mains C8", "bar mains strip"]


_ON_MAINS = """
instrument guitar {
  inductance 4 H
}
amp stack {
  earthed
  input in ts
}
unit tone-engine {
  earthed
  mains 230 V 50 Hz
  input in ts
  output out ts
  inlet mains C14
}
unit chamber like tone-engine {
  double-insulated
}
unit cellar like tone-engine {
  inlet mains C8
  double-insulated
}
chain guitar -> tone-engine -> chamber -> cellar -> stack
"""


def test_units_with_a_mains_lead_of_their_own_are_tested_as_supplies_are() -> None:
    """The earth bond where there is one: not of what is double-insulated. The insulation of all."""
    due = written(_ON_MAINS).get(DueTests).all
    assert [each.point for each in due if each.test == 1] == ["tone-engine.mains"]
    assert [each.point for each in due if each.test == 2] == ["tone-engine.mains", "chamber.mains", "cellar.mains"]
