"""What an expected reading makes of the limit of each test, worked by hand; and which voltage stands where."""

from __future__ import annotations

from types import SimpleNamespace
from typing import Any

import pytest
from power_rigs import SPAN, fact, feed, outlets, rig, supply, unit
from small_rigs import block, results_of

from rigc.analysis.deck.placement import placement
from rigc.analysis.feeds.load_limits import load_limits
from rigc.analysis.feeds.power_assignment import PowerAssignment, power_assignment
from rigc.analysis.leads.leads import Leads
from rigc.analysis.tests.limit import expected_limit, in_decibels
from rigc.analysis.tests.nominal import Nominal, nominal_at
from rigc.model.records import Expected

NINE: Any = Nominal(9, "dc", supply("s", outlets("o", 1, 1, (9, 100))))


@pytest.mark.parametrize(
    ("test", "value", "unit", "words"),
    [
        (1, 0.2, "ohm", "at most 0.2 Ω"),
        (2, 2e6, "ohm", "at least 2 MΩ"),
        (3, 0.4, "ohm", "at most 0.4 Ω"),
        (4, 3e7, "ohm", "at least 30 MΩ"),
        # 9 V lie in 8.7 to 9.9 V: 9.2 x 8.7/9 = 8.893, 9.2 x 9.9/9 = 10.12
        (5, 9.2, "V", "8.893 to 10.12 V"),
        # 95 % of it
        (6, 9.2, "V", "at least 8.74 V"),
        (6, -9.2, "V", "at most −8.74 V"),
        (7, 0.01, "V", "at most 10 mV"),
        (8, 2e6, "ohm", "at least 2 MΩ"),
        # half a decibel either way; what is read in dBu is told against the tone of -20 dBu that is sent
        (9, -1, "dB", "−1.5 to −0.5 dB"),
        (9, -21, "dBu", "−1.5 to −0.5 dB"),
        # so far down, typed with its sign or without
        (10, -1, "dB", "at most 1 dB"),
        (10, 1, "dB", "at most 1 dB"),
        (11, 3, "dB", "2.5 to 3.5 dB"),
        (11, -17, "dBu", "2.5 to 3.5 dB"),
        (12, 2, "dB", "at most 2 dB"),
        (13, -95, "dBu", "at most −75 dB"),
        (14, 80, "dB", "at least 80 dB"),
        (14, -80, "dB", "at least 80 dB"),
        (15, 9, "ms", "at most 9 ms"),
        # 5 % either way: 120 - 6, 120 + 6
        (16, 120, "", "114 to 126"),
        (17, 120, "", "114 to 126"),
        (18, 120, "", "114 to 126"),
        (19, 45, "°C", "at most 45 °C"),
        (20, 120, "", "114 to 126"),
        (42, -7, "mA", "−7.35 to −6.65 mA"),
    ],
)
def test_an_expected_reading_makes_a_limit(test: int, value: float, unit: str, words: str) -> None:
    reading: Any = fact(value)
    limit = expected_limit(Expected(test, "marl", reading, unit, SPAN), NINE)
    assert limit.words == f"{words}, expected {value}"
    assert limit.either_way == (test in (10, 14))
    assert not limit.strict
    assert limit.passes(*in_decibels(value, unit, test)), "what is read just as expected keeps to it"


@pytest.mark.parametrize(
    ("volts", "words"),
    [
        # no band is known around 15 V: 5 % of 9.2 V is 0.46 V
        (15, "8.74 to 9.66 V"),
        (9, "8.893 to 10.12 V"),
    ],
)
def test_a_plug_without_load_keeps_to_the_band_of_its_voltage(volts: float, words: str) -> None:
    reading: Any = fact(9.2)
    assert (
        expected_limit(Expected(5, "marl", reading, "V", SPAN), NINE.replace(volts=volts)).words
        == f"{words}, expected 9.2"
    )


def test_the_voltage_of_an_outlet_is_that_at_which_it_stands_or_its_only_one() -> None:
    """s.o1 feeds 'marl' at 9 V. t.p1 feeds nothing and has 18 V alone; u.q1 feeds nothing and has two settings. v has no outlet r9."""
    made = rig(
        (unit("marl", 20),),
        (
            supply("s", outlets("o", 1, 1, (12, 100), (9, 100))),
            supply("t", outlets("p", 1, 1, (18, 100), current="ac")),
            supply("u", outlets("q", 1, 1, (9, 100), (12, 100))),
        ),
        feed("marl", "s.o1"),
    )
    power = power_assignment(made, load_limits(made), placement(made))
    leads: Any = SimpleNamespace(of=lambda _: None)
    found = {
        point: nominal_at(made, power, leads, point) for point in ("s.o1", "t.p1", "u.q1", "u.q9", "marl", "marl.dc")
    }
    assert {point: each and (each.volts, each.current, each.supply.name) for point, each in found.items()} == {
        "s.o1": (9, "dc", "s"),
        "t.p1": (18, "ac", "t"),
        "u.q1": None,
        "u.q9": None,
        "marl": (9, "dc", "s"),
        "marl.dc": (9, "dc", "s"),
    }


def test_the_voltage_at_a_lead_is_that_of_its_ends() -> None:
    made = results_of(
        block("supply", "mill", "outlet o1 9 V dc 100 mA isolated")
        + block(
            "unit",
            "marl",
            "input in ts",
            "output out ts",
            "inlet dc barrel 5.5 x 2.1 mm",
            "needs 9 V dc",
            "draws 20 mA",
        )
        + block("unit", "lant", "input in ts", "output out ts", "passive")
        + "power {\n  marl from mill.o1\n}\nchain marl -> lant\n"
    )
    at = {mark: nominal_at(made.rig, made.get(PowerAssignment), made.get(Leads), mark) for mark in ("D1", "A1")}
    assert {mark: each and each.volts for mark, each in at.items()} == {"D1": 9, "A1": None}
