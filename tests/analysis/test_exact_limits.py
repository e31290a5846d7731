"""Figures exactly at their limits, and unlike halves of a pair: what a small slip in the arithmetic would change."""

from __future__ import annotations

import pytest
from cases import READER
from small_rigs import block, results_of, unit

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.feeds.power_tap import Tap, tap
from rigc.analysis.ground.ring_hum import RingHum
from rigc.analysis.leads.lengths.cable_lengths import longest_length
from rigc.analysis.mains.checks.unfit_mains import _result
from rigc.analysis.mains.primary import Primary, primary
from rigc.analysis.results import Results
from rigc.analysis.routes.crossings import BESIDE, FINE, _verdict
from rigc.analysis.signal.levels.levels import Levels
from rigc.analysis.stores.reel_uses import with_waste
from rigc.analysis.weight.mass import Mass
from rigc.compile import compile_rig
from rigc.diagnostics.diagnostic import Diagnostic
from rigc.model.fact import Fact
from rigc.model.jacks import Port
from rigc.model.rig import Scenario
from rigc.model.things import MainsRange, Rating, Supply
from rigc.source import Source, Span
from rigc.traced.figure import figure
from rigc.traced.term import number
from rigc.traced.units import VOLT_AMPERES

SPAN = Span(Source("x.rig", "x"), 0, 1)
HEAD = "language 1\nrig sample {\n  revision A 2026-03-02\n}\n"


def findings(text: str) -> tuple[Diagnostic, ...]:
    return compile_rig(lambda name: Source(name, HEAD + text), "x.rig", READER).findings


def results(text: str) -> Results:
    made = compile_rig(lambda name: Source(name, HEAD + text), "x.rig", READER).results
    assert made is not None
    return made


def volt(value: float) -> Fact[float]:
    return Fact(value, f"{value:g}", SPAN)


@pytest.mark.parametrize(
    ("metres", "taken"),
    [
        (1, 1.05),  # 1 m and 5 % are 1.05 m, whole centimetres: not one more
        (1.0001, 1.06),
        (2, 2.10),
        (0, 0),
    ],
)
def test_a_cut_whose_waste_is_whole_centimetres(metres: float, taken: float) -> None:
    assert with_waste(number(metres)) == taken


def test_the_longest_lead_leaves_part_tenths_off() -> None:
    """1.1 × 100.1 mm are 110.11 mm, and 150 more 260.11: 2601 tenths, not 2602."""
    assert longest_length(1001, 1.1, 1500) == 2601
    assert longest_length(1000, 1.1, 1500) == 2600


def two_outlets(how: str) -> Tap:
    """9 V 100 mA and 12 V 300 mA."""
    made = results("supply brook {\n  outlet o1 9 V dc 100 mA isolated\n  outlet o2 12 V dc 300 mA isolated\n}\n").rig
    supply = made.supplies["brook"]
    settings: tuple[Rating, ...] = tuple(outlet.ratings[0] for outlet in supply.outlets)
    return tap(made, (Port("brook", "o1"), Port("brook", "o2")), how, settings)


def test_unlike_outlets_in_parallel_give_the_lower_voltage_and_share_by_their_ratings() -> None:
    """The lower of 9 and 12 V; nine tenths of 400 mA are 360; 100 of 400 are a quarter, 300 of 400 three quarters."""
    made = two_outlets("parallel")
    assert (made.volts, made.limit_ma) == (9, 360)
    assert [made.share(port) for port in made.outlets] == [0.25, 0.75]


def test_unlike_outlets_in_series_add_their_voltages_and_give_the_smaller_current() -> None:
    made = two_outlets("series")
    assert (made.volts, made.limit_ma) == (21, 100)
    assert [made.share(port) for port in made.outlets] == [1, 1]


def test_unlike_outlets_in_parallel_bear_a_unit_by_their_ratings() -> None:
    """200 mA on outlets of 100 and 300 mA: a quarter and three quarters, 50 and 150 mA."""
    made = results(
        "unit marl {\n  inlet dc barrel 5.5 x 2.1 mm\n  needs 9 V dc\n  draws 200 mA\n}\n"
        "supply brook {\n  outlet o1 9 V dc 100 mA isolated\n  outlet o2 9 V dc 300 mA isolated\n}\n"
        "power {\n  marl from brook.o1, brook.o2 parallel\n}\n"
    )
    assert [load.load_ma for load in made.get(PowerAssignment).loads.values()] == [50, 150]


def test_the_lowest_voltage_that_a_supply_takes_is_not_too_low() -> None:
    """At 200 V of 200 to 240 V nothing is said of the secondary; at 199 V it gives 199 / 220 = 90 %."""
    assert _result(winding(200)) == ""
    assert _result(winding(199)).startswith(": its secondary gives 90 % of design")


def winding(volts: float, load_va: float = 10.0, highest: float | None = None) -> Primary:
    """A transformer for 200 to 240 V whose core is laid out for 50 Hz."""
    place = MainsRange(200, 240, 50, 60, "200..240 V 50..60 Hz", SPAN)
    brook = Supply("supply", "brook", "", SPAN, mains=(place,), core_hz=volt(50))
    mains = MainsRange(volts, volts if highest is None else highest, 50, 50, f"{volts:g} V 50 Hz", SPAN)
    load = figure("brook.takes-va", number(load_va), VOLT_AMPERES, rule="", source="")
    return primary(Scenario("home", "", SPAN, mains, None, (), (), (), None, ()), mains, brook, load)


@pytest.mark.parametrize(
    ("low", "high", "taken"), [(200, 240, True), (199.9, 240, False), (200, 240.1, False), (199.9, 240.1, False)]
)
def test_the_ends_of_a_range_are_taken(low: float, high: float, taken: bool) -> None:
    """200 to 240 V."""
    assert winding(low, highest=high).in_voltage is taken


@pytest.mark.parametrize(("hertz", "taken"), [((50, 60), True), ((49.9, 60), False), ((50, 60.1), False), (None, None)])
def test_the_ends_of_a_range_of_frequencies_are_taken(hertz: tuple[float, float] | None, taken: bool | None) -> None:
    """50 to 60 Hz."""
    assert winding(220).replace(hertz=hertz).in_frequency is taken


@pytest.mark.parametrize(("load", "small"), [(99.9, False), (100.0, False), (100.1, True)])
def test_a_step_transformer_of_just_its_load(load: float, small: bool) -> None:
    """150 VA bear 1.5 times 100 VA."""
    assert winding(300, load).replace(step_va=150.0).step_too_small is small


def test_the_flux_at_the_upper_end_of_the_range_is_not_too_much() -> None:
    """240 V at 50 Hz are 4.8 V/Hz, what the core bears at the range's end; a volt more is over it."""
    assert not winding(240).over_flux
    assert winding(241).over_flux


def test_the_secondary_goes_by_the_lowest_voltage_of_the_mains() -> None:
    """The windings are laid out for 220 V, the middle; at 200 to 240 V the lowest counts: 200 / 220 = 90.9 %."""
    mains = winding(200, highest=240)
    assert mains.secondary_pct == pytest.approx(90.909, abs=0.001)


@pytest.mark.parametrize(("load", "size"), [(0.0, 25), (16.666, 25), (16.667, 50), (33.333, 50)])
def test_a_step_transformer_has_the_least_size_that_is_made(load: float, size: float) -> None:
    """1.5 × 16.667 = 25.0005 VA is more than 25; a load of nothing takes the smallest."""
    assert winding(300, load).needed_va == size


@pytest.mark.parametrize(("nominal", "margin"), [(7.9, None), (8.0, None), (8.1, 2.9)])
def test_a_nominal_level_with_three_decibels_left_tells_no_margin(nominal: float, margin: float | None) -> None:
    """No peak is known; 11 − 8 = 3 dB are enough, 11 − 8.1 = 2.9 are not."""
    marl = unit("marl", f"level out {nominal} dBu", "bypass always-on")
    combo = block("amp", "combo", "input in ts", "level in max 11 dBu")
    (edge,) = results_of(f"{marl}{combo}chain marl -> combo\n").get(Levels).edges
    assert edge.margin_db == (None if margin is None else pytest.approx(margin))


@pytest.mark.parametrize(("beside_mm", "verdict"), [(199.9, FINE), (200.0, FINE), (200.1, BESIDE)])
def test_a_lead_exactly_200_mm_beside_a_dc_lead_is_fine(beside_mm: float, verdict: str) -> None:
    assert _verdict("dc", beside_mm, ()) == verdict


def test_who_shares_an_outlet_alone_is_told() -> None:
    text = (
        "unit marl {\n  inlet dc barrel 5.5 x 2.1 mm\n}\nsupply brook {\n  outlet o1 9 V dc 100 mA isolated\n}\n"
        "power {\n  marl from brook.o1 shared\n}\n"
    )
    assert "'marl' alone can't share brook.o1" in [each.message for each in findings(text)]


def test_a_digital_load_can_be_limited_by_the_rig() -> None:
    made = results("").rig
    assert made.limit("digital load") is None
    text = HEAD.replace("2026-03-02\n", "2026-03-02\n  limit digital load 50 %\n")
    limited = compile_rig(lambda name: Source(name, text), "x.rig", READER)
    assert limited.results is not None and not [each for each in limited.findings if each.kind.name == "wrong-quantity"]
    own = limited.results.rig.limit("digital load")
    assert own is not None and own.amount.value == 50


def test_the_middle_of_a_thing_on_a_tier_is_as_much_higher() -> None:
    """50 mm tall on a tier raised by 40 mm: 40 + 25 = 65 mm above the deck's top."""
    made = results(
        "unit marl {\n  body 70 x 120 x 50 mm\n  mass 400 g\n}\n"
        "deck plank {\n  size 400 x 300 mm\n  tier back 150..300 mm raised 40 mm\n}\n"
        "place {\n  marl at 20, 160 mm on back\n}\n"
    )
    (item,) = [each for each in made.get(Mass).items if each.name == "marl"]
    assert item.z == 65


def test_a_ring_of_two_countries_hums_at_the_higher_frequency() -> None:
    """Two earthed amps make a ring that is the same at 50 Hz and at 60 Hz: 60 induces more."""
    amps = "".join(
        f"amp {name} {{\n  earthed\n  input in ts 1 Mohm\n  non-inverting\n}}\n" for name in ("combo", "stack")
    )
    made = results(
        "scenario home {\n  mains 230 V 50 Hz\n}\nscenario away {\n  mains 120 V 60 Hz\n}\n"
        "instrument guitar {\n}\n"
        "unit fork {\n  input in ts 1 Mohm\n  output a ts 1 kohm\n  output b ts 1 kohm\n}\n"
        f"{amps}chain guitar -> fork.in\nchain left: fork.a -> combo\nchain right: fork.b -> stack\n"
    )
    hums = [hum.hertz for state in made.get(RingHum).states for hum in state]
    assert hums and set(hums) == {60}
