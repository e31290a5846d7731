"""Hookups: which leads hold together, and where sound goes on inside units. Rigs are invented."""

from __future__ import annotations

from small_rigs import block, results_of, unit

from rigc.analysis.signal.sound_ways import Hookup, SoundWays
from rigc.model.jacks import Port

GUITAR, COMBO = block("instrument", "guitar"), block("amp", "combo", "input in ts")
VAN, HALL = block("scenario", "van"), block("scenario", "hall")


def hookups(*parts: str) -> tuple[Hookup, ...]:
    return results_of("".join(parts)).get(SoundWays).hookups


def test_scenarios_that_change_nothing_are_one() -> None:
    (only,) = hookups(VAN, HALL, GUITAR, unit("marl"), COMBO, "chain guitar -> marl -> combo\n")
    assert (only.scenarios, only.instruments, len(only.leads)) == (("van", "hall"), ("guitar",), 2)


def test_scenarios_that_differ_are_two() -> None:
    chains = "chain for van: guitar -> combo\nchain for hall: guitar -> marl -> combo\n"
    assert [(each.scenarios, len(each.leads)) for each in hookups(VAN, HALL, GUITAR, unit("marl"), COMBO, chains)] == [
        (("van",), 1),
        (("hall",), 2),
    ]


def test_each_instrument_alone() -> None:
    other = block("instrument", "piezo")
    fork = block("unit", "desk-box", "input a ts", "input b ts", "output out ts")
    found = hookups(
        GUITAR, other, fork, COMBO, "chain guitar -> desk-box.a\nchain piezo -> desk-box.b\nchain desk-box -> combo\n"
    )
    assert [(each.instruments, each.sources) for each in found] == [
        (("guitar",), (Port("guitar", "out"),)),
        (("piezo",), (Port("piezo", "out"),)),
    ]


def test_an_amp_that_stays_at_home() -> None:
    places = VAN + block("scenario", "home", "amps combo")
    fork = block("unit", "fork", "input in ts", "output a ts", "output b ts")
    stage = block("amp", "stage", "input in ts")
    found = hookups(places, GUITAR, fork, COMBO, stage, "chain guitar -> fork.a -> combo\nchain fork.b -> stage\n")
    assert [(each.scenarios, len(each.leads)) for each in found] == [(("van",), 3), (("home",), 2)]


def test_left_stays_left_where_both_sides_are_wired() -> None:
    chorus = block("unit", "chorus", "input in ts", "output l ts", "output r ts", "pair l, r")
    echo = block("unit", "echo", "input l ts", "input r ts", "output x ts", "output y ts", "pair l, r", "pair x, y")
    amps = block("amp", "one", "input in ts") + block("amp", "two", "input in ts")
    (found,) = hookups(
        GUITAR, chorus, echo, amps, "chain guitar -> chorus => echo\nchain echo.x -> one\nchain echo.y -> two\n"
    )
    assert found.onward[Port("echo", "l")] == (Port("echo", "x"),)
    assert found.onward[Port("echo", "r")] == (Port("echo", "y"),)
    assert found.onward[Port("chorus", "in")] == (Port("chorus", "l"), Port("chorus", "r"))


def test_one_side_of_a_pair_feeds_both() -> None:
    echo = block("unit", "echo", "input l ts", "input r ts", "output x ts", "output y ts", "pair l, r", "pair x, y")
    (found,) = hookups(GUITAR, echo, COMBO, "chain guitar -> echo -> combo\n")
    assert found.onward[Port("echo", "l")] == (Port("echo", "x"), Port("echo", "y"))
