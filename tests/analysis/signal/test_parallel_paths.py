"""Ways side by side: what is on each, polarity in every on/off state, latency. Rigs are invented."""

from __future__ import annotations

import pytest
from cases import ROOT, results
from small_rigs import block, results_of, unit

from rigc.analysis.signal.parallel.parallel import AMP_LOOP, AMPS, DESK, JOIN, Parallel
from rigc.analysis.signal.parallel.parallel_paths import ParallelPaths

GUITAR, COMBO = block("instrument", "guitar"), block("amp", "combo", "input in ts")
FORK = block("unit", "fork", "analogue", "input in ts", "output a ts", "output b ts")
SHINGLE = unit("shingle", "analogue", "output s1..s2 ts", "input r1..r2 ts", "loop 1..2 send s1..s2 return r1..r2")
INVERTS = ("analogue", "inverts")


def paths(*parts: str) -> tuple[Parallel, ...]:
    return results_of("".join(parts)).get(ParallelPaths).all


def blend(*lines: str) -> str:
    return block("blend", "shingle", *lines) + "chain guitar -> shingle -> combo\n"


def test_a_plain_chain_has_none() -> None:
    assert results(ROOT / "examples/back-bedroom/board.rig").get(ParallelPaths).all == ()


def test_the_touring_rig_has_two_amps_that_agree() -> None:
    # What inverts (claypit) lies before the stereo split: the same for both.
    (amps,) = results(ROOT / "examples/long-haul/board.rig").get(ParallelPaths).all
    assert amps.kind == AMPS and amps.at == "left-amp, right-amp"
    assert [each.things for each in amps.legs] == [("left-amp",), ("right-amp",)]
    assert not amps.turned and amps.apart_ms == 0


def test_a_blend_is_told_by_its_ways() -> None:
    wet = "wet 30 % inverted through hum -> haw"
    found = paths(
        GUITAR, SHINGLE, unit("hum", "analogue"), unit("haw", "digital", "latency 3 ms"), COMBO, blend("dry 70 %", wet)
    )
    (both,) = found
    assert (both.kind, both.at, both.scenarios) == (JOIN, "shingle", ())
    told: list[tuple[object, ...]] = [
        (each.label, each.things, each.share, each.wet, each.flipped, each.latency_ms) for each in both.legs
    ]
    assert told == [
        ("dry", (), 70, False, False, 0),
        ("wet through hum, haw", ("hum", "haw"), 30, True, True, 3),
    ]
    assert both.turned and both.turning == ()
    assert both.apart_ms == 3
    # Turned over: k / 3 ms.
    assert [each.hertz for each in both.notches] == pytest.approx((333.333, 666.667, 1000), rel=1e-5)


@pytest.mark.parametrize(
    ("hum", "flip", "off", "on"),
    [
        (("analogue",), "", False, False),
        (("analogue",), "inverted ", True, True),
        (INVERTS, "", False, True),
        (INVERTS, "inverted ", True, False),
        ((*INVERTS, "bypass always-on"), "", True, True),
        ((*INVERTS, "bypass always-on"), "inverted ", False, False),
        ((*INVERTS, "passive"), "inverted ", False, False),
    ],
)
def test_polarity_in_both_states(hum: tuple[str, ...], flip: str, off: bool, on: bool) -> None:
    (both,) = paths(GUITAR, SHINGLE, unit("hum", *hum), COMBO, blend("dry 50 %", f"wet 50 % {flip}through hum"))
    assert (bool(both.against(())), bool(both.against(("hum",)))) == (off, on)
    assert both.turned == (off or on)


def test_two_wet_ways_and_the_dry_one() -> None:
    parts = (unit("hum", "analogue"), unit("haw", "digital", "latency 2 ms"))
    lines = ("dry 40 %", "wet 30 % through hum", "wet 30 % through haw")
    (three,) = paths(GUITAR, SHINGLE, *parts, COMBO, blend(*lines))
    assert [each.label for each in three.legs] == ["dry", "wet through hum", "wet through haw"]
    assert (three.late.label, three.early.label, three.apart_ms) == ("wet through haw", "dry", 2)
    (figures,) = results_of("".join((GUITAR, SHINGLE, *parts, COMBO, blend(*lines)))).get(ParallelPaths).figures
    assert [each.text for each in figures.late] == ["0", "0", "2"]
    assert figures.apart.formula() == "(the highest of 0, 0, 2) − (the least of 0, 0, 2) = 2"


def test_latency_unknown_is_not_zero() -> None:
    (both,) = paths(GUITAR, SHINGLE, unit("hum", "digital"), COMBO, blend("dry 50 %", "wet 50 % through hum"))
    assert (both.apart_ms, both.untimed, both.notches, both.worst_low_loss) == (None, ("hum",), (), None)


def test_a_unit_that_says_nothing_of_its_kind_is_not_known_to_be_in_time() -> None:
    (both,) = paths(GUITAR, SHINGLE, unit("hum"), COMBO, blend("dry 50 %", "wet 50 % through hum"))
    assert both.untimed == ("hum",)


@pytest.mark.parametrize(("flags", "late"), [((), 3), (("dry analogue",), 0), (("dry analogue", "set wet"), 3)])
def test_dry_sound_that_stays_analogue_is_in_time(flags: tuple[str, ...], late: float) -> None:
    hum = unit("hum", "digital", "latency 3 ms", *flags)
    (both,) = paths(GUITAR, SHINGLE, hum, COMBO, blend("dry 50 %", "wet 50 % through hum"))
    assert both.apart_ms == late


def test_a_splitter_and_a_mixer() -> None:
    weir = block("unit", "weir", "analogue", "input a ts", "input b ts", "output out ts")
    chains = "chain guitar -> fork.a -> hum -> weir.a\nchain fork.b -> haw -> weir.b\nchain weir -> combo\n"
    (both,) = paths(GUITAR, FORK, unit("hum", "analogue"), unit("haw", "analogue"), weir, COMBO, chains)
    assert (both.at, [each.label for each in both.legs]) == ("weir", ["through hum", "through haw"])
    assert not both.shared_out


def test_stereo_keeps_left_from_right() -> None:
    # Left and right pass the same units and are summed at the end: nothing differs.
    chorus = block("unit", "chorus", "input in ts", "output l ts", "output r ts", "pair l, r")
    echo = block("unit", "echo", "input l ts", "input r ts", "output x ts", "output y ts", "pair l, r", "pair x, y")
    weir = block("unit", "weir", "input a ts", "input b ts", "output out ts", "pair a, b")
    assert paths(GUITAR, chorus, echo, weir, COMBO, "chain guitar -> chorus => echo => weir -> combo\n") == ()


def test_one_side_with_a_unit_more() -> None:
    chorus = block("unit", "chorus", "input in ts", "output l ts", "output r ts", "pair l, r")
    weir = block("unit", "weir", "input a ts", "input b ts", "output out ts")
    chains = "chain guitar -> chorus.l -> weir.a\nchain chorus.r -> hum -> weir.b\nchain weir -> combo\n"
    (both,) = paths(GUITAR, chorus, unit("hum", "digital", "latency 1 ms"), weir, COMBO, chains)
    assert [each.things for each in both.legs] == [(), ("hum",)] and both.apart_ms == 1


@pytest.mark.parametrize(("mix", "legs"), [("series", 1), ("parallel", 2), ("", 2)])
def test_an_amps_own_loop(mix: str, legs: int) -> None:
    combo = block("amp", "combo", "input in ts", "output s ts", "input r ts", f"loop 1 send s return r {mix}")
    (loop,) = paths(
        GUITAR, combo, unit("lant", "digital", "latency 1.5 ms"), "chain guitar -> combo\nloop 1 of combo holds lant\n"
    )
    assert (loop.kind, loop.at, len(loop.legs), loop.mix) == (AMP_LOOP, "combo", legs, mix or None)
    assert loop.legs[-1].latency_ms == 1.5


def test_dry_amp_first_and_what_wet_amps_hear() -> None:
    amps = block("amp", "left", "input in ts", "wet") + block("amp", "mid", "input in ts", "dry")
    chains = "chain guitar -> fork.a -> lant -> left\nchain fork.b -> mid\n"
    (found,) = paths(GUITAR, FORK, unit("lant", "delay", "tails", "digital"), amps, chains)
    assert found.at == "mid, left"
    assert (found.legs[1].wet, found.legs[1].dry_left, found.legs[1].tails) == (True, ("lant",), ("lant",))


def test_a_unit_before_two_of_three_amps_turns_both() -> None:
    # hum lies before b and c, not before a: b and c agree with each other and not with a while it is on.
    fork3 = block("unit", "fork", "input in ts", "output a ts", "output b ts")
    part = block("unit", "part", "input in ts", "output a ts", "output b ts")
    amps = "".join(block("amp", name, "input in ts") for name in ("a", "b", "c"))
    chains = "chain guitar -> fork.a -> a\nchain fork.b -> hum -> part.a -> b\nchain part.b -> c\n"
    (found,) = paths(GUITAR, fork3, part, unit("hum", "inverts"), amps, chains)
    assert [each.label for each in found.against(("hum",))] == ["b", "c"] and found.against(()) == ()


def test_the_return_of_a_series_loop_is_where_an_amp_is_reached() -> None:
    combo = block("amp", "one", "input in ts", "output s ts", "input r ts", "loop 1 send s return r series")
    chains = "chain guitar -> fork.a -> one\nchain fork.b -> two\nloop 1 of one holds hum\n"
    found = paths(GUITAR, FORK, combo, block("amp", "two", "input in ts"), unit("hum", "inverts"), chains)
    amps = next(each for each in found if each.kind == AMPS)
    assert amps.turning == ("hum",)


def test_only_amps_of_one_scenario_together() -> None:
    places = block("scenario", "home", "amps one") + block("scenario", "hall")
    amps = block("amp", "one", "input in ts") + block("amp", "two", "input in ts")
    (found,) = paths(places, GUITAR, FORK, amps, "chain guitar -> fork.a -> one\nchain fork.b -> two\n")
    assert found.scenarios == ("hall",)


def test_two_sides_in_a_desk() -> None:
    chorus = block("unit", "chorus", "input in ts", "output l ts", "output r ts", "pair l, r")
    desk = block("desk", "front", "input a ts", "input b ts")
    chains = "chain guitar -> chorus.l -> front.a\nchain chorus.r -> hum -> front.b\n"
    (found,) = paths(GUITAR, chorus, unit("hum", "digital", "inverts", "latency 1 ms"), desk, chains)
    assert (found.kind, found.at, found.turning, found.apart_ms) == (DESK, "front.a, front.b", ("hum",), 1)


def test_a_wet_amp_with_a_loop_of_its_own_is_wet() -> None:
    wet = block("amp", "one", "input in ts", "output s ts", "input r ts", "loop 1 send s return r series", "wet")
    chains = "chain guitar -> fork.a -> one\nchain fork.b -> two\nloop 1 of one holds lant\n"
    lant = unit("lant", "delay", "digital", "latency 0 ms")
    found = paths(GUITAR, FORK, wet, block("amp", "two", "input in ts", "dry"), lant, chains)
    amps = next(each for each in found if each.kind == AMPS)
    assert [(each.label, each.wet, each.dry_left) for each in amps.legs] == [
        ("two", False, ()),
        ("one", True, ("lant",)),
    ]
