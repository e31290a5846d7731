"""The third worked rig against the figures of its worked.md, and what it says when one of its cures is taken away."""

from __future__ import annotations

from math import log10, pi, sin, sqrt

import pytest
from cases import ROOT, compiled, results, told
from written import compiled_with

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.signal.levels.levels import Levels
from rigc.analysis.signal.loading.first_section import FirstSection
from rigc.analysis.signal.parallel.parallel_paths import ParallelPaths
from rigc.analysis.signal.silent_paths import SilentPaths

PATH = "examples/tide-line/board.rig"
BOARD = ROOT / PATH


def codes(*changes: tuple[str, str]) -> list[str]:
    return [finding.kind.name for finding in compiled_with(PATH, *changes).findings]


def test_reports_exactly_what_is_worked() -> None:
    findings = compiled(BOARD).findings
    assert [finding.kind.name for finding in findings] == [
        "lost-side",
        "too-weak",
        "paths-cancel",
        "paths-late",
        "battery-only",
    ], told(findings)


# Lowest and highest nominal level, highest peak, margin: the table of worked.md.
LEVELS = {
    "A1": (-20, -20, 4, 7),
    "A2": (-20, -17, 7, 10),
    "A3": (-20, -17, 7, 4),
    "A4": (-20, -17, 7, 4),
    "A5": (-20, -17, 7, 10),
    "A6": (-20, -17, 7, 4),
    "A7": (-20, -17, 7, 10),
    "A8": (-20, -17, 7, 4),
    "A9": (-40, -40, -13, 23),
    "A10": (4, 4, 18, 12),
    "A11": (-10, -10, 4, 7),
    "A12": (-10, -10, 4, 20),
}


def test_levels() -> None:
    edges = {edge.mark: edge for edge in results(BOARD).get(Levels).edges}
    assert list(edges) == list(LEVELS)
    for mark, expected in LEVELS.items():
        edge = edges[mark]
        assert (edge.low_dbu, edge.high_dbu, edge.peak_dbu, edge.margin_db) == pytest.approx(expected), mark
    assert edges["A12"].short_db == pytest.approx(4 - 12 - -10)


def test_the_pad_is_what_its_resistors_give() -> None:
    # 8 kohm in line, 2 kohm across: 20 log10(10 / 2) = 13.98 dB, stated as 14 dB.
    assert 20 * log10((8 + 2) / 2) == pytest.approx(14, abs=0.03)


def test_without_the_pad_the_send_is_too_hot() -> None:
    found = compiled_with(PATH, ("gain -14 dB", "gain 0 dB"))
    (hot,) = [finding for finding in found.findings if finding.kind.name == "too-hot"]
    assert hot.subject[0] == "ebb"
    # 18 dBu into 11 dBu.
    assert {number.name: number.value for number in hot.numbers} == {
        "peak": 18,
        "input takes": 11,
        "margin": -7,
        "wanted": 3,
    }


def test_the_blend() -> None:
    blend = next(each for each in results(BOARD).get(ParallelPaths).all if each.at == "shingle")
    assert blend.apart_ms == 3
    assert [each.hertz for each in blend.notches] == pytest.approx((166.667, 500, 833.333), rel=1e-5)
    assert (bool(blend.against(())), bool(blend.against(("groyne",)))) == (True, False)
    # sin(phi / 2), phi = 2 pi x 82.4069 Hz x 3 ms.
    assert blend.worst_low_loss is not None and blend.worst_low_loss.on == ()
    assert blend.worst_low_loss.db == pytest.approx(20 * log10(sin(pi * 82.4069 * 0.003)), abs=1e-3)
    assert blend.worst_low_loss.db == pytest.approx(-3.09, abs=0.005)


def test_the_amps_own_loop() -> None:
    loop = next(each for each in results(BOARD).get(ParallelPaths).all if each.at == "cabin")
    assert (loop.mix, loop.legs[0].things, loop.legs[0].latency_ms) == ("series", ("spit", "ebb"), 1.5)
    assert loop.scenarios == ("kitchen", "hall")


def test_first_section() -> None:
    (section,) = results(BOARD).get(FirstSection).sections
    told = section.passive
    assert told is not None
    assert [lead.mark for lead in told.leads] == ["A1", "A2"] and section.until == ("shingle",)
    assert told.cable == pytest.approx(4 * 105 + 0.09 * 105)
    assert told.resonance == pytest.approx(1 / (2 * pi * sqrt(3.6 * 539.45e-12)), rel=1e-6)
    assert told.resonance == pytest.approx(3612, abs=1)


def test_without_power() -> None:
    found = results(BOARD).get(SilentPaths)
    assert [(path.units, path.planned) for path in found.all] == [(("shingle", "estuary"), True)]
    assert found.unsure == ()


def test_power() -> None:
    loads = results(BOARD).get(PowerAssignment).loads.values()
    assert sum(load.load_ma or 0 for load in loads) == 360


@pytest.mark.parametrize(
    ("changes", "gone"),
    [
        (
            [("chain baritone -> knot -> shingle -> estuary -> ferry", "chain baritone -> knot -> shingle -> ferry")],
            "lost-side",
        ),
        ([("sensitivity 4 dBu", "sensitivity 2 dBu")], "too-weak"),  # -10 is just 12 dB below 2
        ([("wet 50 % inverted", "wet 50 %"), ("  inverts\n", "  non-inverting\n")], "paths-cancel"),
        ([("latency 3 ms", "latency 0.5 ms")], "paths-late"),
    ],
)
def test_what_cures_each(changes: list[tuple[str, str]], gone: str) -> None:
    assert gone in codes() and gone not in codes(*changes)


def test_without_its_plan_it_falls_silent() -> None:
    plan = 'bypass baritone -> ferry "lead in the lid, from the guitar into the DI"\n'
    (found,) = [each for each in compiled_with(PATH, (plan, "")).findings if each.kind.name == "silent-without-power"]
    assert found.subject == ("baritone", "estuary", "shingle")


@pytest.mark.parametrize(
    ("change", "rule"),
    [
        (("lift ferry.di open ", "lift ferry.di closed "), "two-mains-earths"),  # in the hall: two earths joined
        (("lift ferry.di closed ", "lift ferry.di open "), "wrong-ground-lift"),  # on the quay: no earth at all
    ],
)
def test_a_lift_in_the_wrong_position_is_told_once(change: tuple[str, str], rule: str) -> None:
    assert {*codes(change)} - {*codes()} == {rule}
