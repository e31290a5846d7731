"""Limits that decide beside those of the rules: just under, exactly on and just over each, the figures worked by hand."""

from __future__ import annotations

from itertools import pairwise
from types import SimpleNamespace
from typing import Any

import pytest
from small_rigs import block, results_of, unit

from rigc.analysis.control.program_change import exists
from rigc.analysis.ground.ring_ways import Ways, beside
from rigc.analysis.leads.checks.plugs_collide import _jacks
from rigc.analysis.leads.lead_plugs import _within
from rigc.analysis.leads.lengths.cable_lengths import _bought
from rigc.analysis.leads.plugs.tier_fronts import on_tier
from rigc.analysis.mains.country_mains import agrees
from rigc.analysis.mains.primary import _place
from rigc.analysis.mounting.mounting_strip import strip_count
from rigc.analysis.revision.compared.changed import Difference
from rigc.analysis.revision.compared.held_back import _is_other as _is_told
from rigc.analysis.revision.plan.fitting_plans import _is_other
from rigc.analysis.routes.deck_holes import _one
from rigc.analysis.routes.hole_sizes import drilled
from rigc.analysis.routes.stretches import Side, askew_crossings
from rigc.analysis.signal.least_silent_way import least_silent_ways
from rigc.analysis.signal.levels.levels import Levels
from rigc.analysis.signal.loading.shorter_leads import of_better_cable, shorter
from rigc.analysis.tests.due_tests import _key
from rigc.analysis.tests.limit import _shown
from rigc.model.jacks import Port
from rigc.traced.figure import figure
from rigc.traced.given import mentioned
from rigc.traced.term import number
from rigc.traced.units import TENTHS


def fact(value: float) -> Any:
    return SimpleNamespace(value=value, typed=f"{value:g}", span=None)


@pytest.mark.parametrize(
    ("width", "kg", "strips"),
    [(49.9, 0.999, 1), (50, 0.999, 2), (119.9, 1.0, 3), (120, 1.0, 4), (199.9, 0.5, 3), (200, 1.0, 5)],
)
def test_strips_by_width_and_mass(width: float, kg: float, strips: int) -> None:
    """One, one more at 50, at 120 and at 200 mm, and one more at 1 kg."""
    assert strip_count(width, kg).strips == strips


@pytest.mark.parametrize(("shown", "first", "there"), [
    (0, 0, True), (127, 0, True), (128, 0, False), (0, 1, False), (1, 1, True), (128, 1, True), (129, 1, False),
    (0, None, None), (1, None, True), (127, None, True), (128, None, None), (129, None, False), (-1, 0, False),
])  # fmt: skip
def test_programs_from_nought_or_one(shown: int, first: int | None, there: bool | None) -> None:
    """128 programs are on the wire, 0 to 127: shown as 0 to 127, or as 1 to 128."""
    assert exists(shown, first) is there


@pytest.mark.parametrize(
    ("long", "apart", "counts"), [(200, 25, False), (200.1, 25, True), (300, 25.1, False), (300, 0, True)]
)
def test_a_lead_beside_a_ring(long: float, apart: float, counts: bool) -> None:
    """More than 200 mm long, at most 25 mm away; along x as along y."""
    ring: Ways = {"A1": ((0.0, 0.0), (400.0, 0.0))}
    found = beside(ring, {"D1": ((50.0, apart), (50.0 + long, apart))})
    turned = beside({"A1": ((0.0, 0.0), (0.0, 400.0))}, {"D1": ((apart, 50.0), (apart, 50.0 + long))})
    for each in (found, turned):
        assert (each is not None) is counts
        assert each is None or (each.mark, round(each.long_mm, 6), each.near_mm) == ("D1", long, apart)


@pytest.mark.parametrize(("apart", "meet"), [(14.9, True), (15.0, False), (15.1, False)])
def test_bodies_of_plugs_that_touch_do_not_overlap(apart: float, meet: bool) -> None:
    """Of 18 and 12 mm the halves are 9 + 6 = 15 mm."""
    assert _within(fact(10), fact(10 + apart), fact(18), fact(12)) is meet
    assert _within(fact(10 + apart), fact(10), fact(18), fact(12)) is meet


@pytest.mark.parametrize(("y", "over"), [(150, False), (150.1, True), (299.9, True), (300, False)])
def test_a_jack_on_the_edge_of_a_tier_is_not_over_it(y: float, over: bool) -> None:
    body: Any = SimpleNamespace(thing="tier back", y_mm=150, depth_mm=150)
    plug: Any = SimpleNamespace(point=SimpleNamespace(y_mm=y))
    assert on_tier(plug, body) is over


@pytest.mark.parametrize(
    ("low", "high", "hertz", "agree"),
    [(230, 230, 50, True), (230, 240, 50, True), (220, 230, 50.4, True), (231, 240, 50, False), (220, 229, 50, False),
     (230, 230, 50.5, False), (230, 230, 49.5, False), (230, 230, None, True)],
)  # fmt: skip
def test_mains_of_a_country(low: float, high: float, hertz: float | None, agree: bool) -> None:
    """A country of 230 V and 50 Hz; half a hertz off is another."""
    scenario: Any = SimpleNamespace(mains=SimpleNamespace(low_v=low, high_v=high, hertz_low=hertz))
    listed: Any = SimpleNamespace(volts=(230,), hertz=(50,))
    assert agrees(scenario, listed) is agree


@pytest.mark.parametrize(
    ("selected", "low"), [(103.5, 103.5), (126.5, 103.5), (126.6, None), (207, 207), (253, 207), (103.4, None)]
)
def test_the_position_of_a_selector(selected: float, low: float | None) -> None:
    """115 V within 10 % are 103.5 to 126.5 V, 230 V within 10 % are 207 to 253 V."""
    ranges = tuple(SimpleNamespace(low_v=low, high_v=high) for low, high in ((103.5, 126.5), (207, 253)))
    supply: Any = SimpleNamespace(mains=ranges)
    place = _place(supply, selected, (230, 230))
    assert (place and place.low_v) == low


@pytest.mark.parametrize(
    ("volts", "low"), [((103.5, 126.5), 103.5), ((207, 253), 207), ((126.5, 127), 103.5), ((253, 254), 207)]
)
def test_the_range_of_a_supply_without_a_selector(volts: tuple[float, float], low: float) -> None:
    """The one that takes all of the mains; else that of which the middle, 115 or 230 V, is nearest: 126.5 - 115 = 11.5, 253 - 230 = 23."""
    ranges = tuple(
        SimpleNamespace(low_v=low, high_v=high, middle_v=(low + high) / 2) for low, high in ((103.5, 126.5), (207, 253))
    )
    supply: Any = SimpleNamespace(mains=ranges)
    place = _place(supply, None, volts)
    assert place is not None and place.low_v == low


@pytest.mark.parametrize(("width", "other"), [(605, False), (605.1, True), (595, False), (594.9, True)])
def test_a_deck_of_another_size(width: float, other: bool) -> None:
    """5 mm more or less is the same deck, measured again; so of its depth."""

    def deck(width: float, depth: float) -> Any:
        return SimpleNamespace(width_mm=fact(width), depth_mm=fact(depth), rails=(), tiers=(), bare_metal=False)

    assert _is_other(deck(600, 300), deck(width, 300)) is other
    assert _is_other(deck(300, 600), deck(300, width)) is other


@pytest.mark.parametrize(("now", "other"), [(605.0, False), (605.1, True), (594.9, True)])
def test_a_size_that_is_told_as_another_deck(now: float, other: bool) -> None:
    """5 mm more or less is the same deck here, too; of what is no size, never."""
    differs = ("600 mm", f"{now:g} mm")
    assert _is_told(Difference("width", *differs, 600.0, now, (), "", None)) is other
    assert not _is_told(Difference("thickness", *differs, 600.0, now, (), "", None))


@pytest.mark.parametrize(("route", "bought"), [(5970, "600"), (8970, "900"), (8971, "none")])
def test_the_longest_premade_lead(route: int, bought: str) -> None:
    """In tenths of a millimetre: with 3 mm of slack 600 and 900 mm are just long enough, and 0.1 mm more is longer than any."""
    lead: Any = SimpleNamespace(mark="D1", captive=None)
    offer = ((6000, 9000), mentioned("in stock", "600, 900 mm"))
    shortest: Any = figure("D1.shortest", number(route) + 30, TENTHS, rule="", source="")
    made = _bought(lead, shortest, "dc", (None, None), offer)
    assert made.text == bought


@pytest.mark.parametrize(("further", "joined"), [(122.9, True), (123.0, False), (123.1, False), (100.0, True)])
def test_a_web_between_two_holes(further: float, joined: bool) -> None:
    """Of 20 and 16 mm at 100 mm: (20 + 16) / 2 + 5 = 23 mm further the web is just thick enough."""
    first: Any = SimpleNamespace(x_mm=100.0, plug=number(20.0))
    second: Any = SimpleNamespace(x_mm=further, plug=number(16.0))
    assert _one([first], second) is joined


@pytest.mark.parametrize(("across", "drill"), [(16, 20), (16.1, 25), (59, 63), (59.1, None)])
def test_the_next_drill(across: float, drill: float | None) -> None:
    """A round plug and twice 2 mm of grommet: 16 + 4 = 20 mm; 63 mm is the largest drill."""
    made = results_of(block("plug", "fat", "stands out 80 mm", f"wide {across} mm", f"tall {across} mm"))
    size = drilled(made.rig, "fat")
    assert (size and float(size)) == drill


@pytest.mark.parametrize(("most", "words"), [
    (199, ""), (200, "shorten A1 to 100 mm at most"), (1099, "shorten A1 to 990 mm at most"), (1100, "shorten A1 to 1 m at most"),
    (1215, "shorten A1 to 1.1 m at most"),
])  # fmt: skip
def test_how_short_a_lead_has_to_be(most: float, words: str) -> None:
    """100 pF of others, and 1000 pF/m: 100 pF are left for 100 mm, of less no lead is made; from 1 m on whole decimetres are told."""
    section: Any = SimpleNamespace(known_pf=number(100.0 + 2000.0))
    lead: Any = SimpleNamespace(mark="A1", pf=number(2000.0), pf_per_m=number(1000.0), length=number(2000.0))
    assert shorter(section, lead, most) == words


@pytest.mark.parametrize(
    ("most", "words"),
    [(199, ""), (200, "make it of cable of at most 50 pF/m"), (302, "make it of cable of at most 101 pF/m")],
)
def test_of_which_cable_a_lead_has_to_be(most: float, words: str) -> None:
    """100 pF of others, and 2 m: 100 pF are left for 50 pF/m, less than which no cable has."""
    section: Any = SimpleNamespace(known_pf=number(100.0 + 2000.0))
    lead: Any = SimpleNamespace(mark="A1", pf=number(2000.0), pf_per_m=number(1000.0), length=number(2000.0))
    assert of_better_cable(section, lead, most) == words


@pytest.mark.parametrize(("reading", "place"), [(0, "heel"), (63, "heel"), (63.5, "heel"), (64, "toe"), (127, "toe")])
def test_heel_and_toe(reading: float, place: str) -> None:
    """The toe sends 127; what is more than half of that is told of the toe."""
    rig: Any = SimpleNamespace(units={})
    read: Any = SimpleNamespace(test=16, point="lever.out", reading=fact(reading))
    assert _key(rig, read) == (16, "lever", place)


@pytest.mark.parametrize(
    ("value", "unit", "shown"),
    [(0.499, "V", "mV"), (0.5, "V", "V"), (0, "V", "V"), (-0.4, "V", "mV"), (999, "ohm", "Ω"), (1000, "ohm", "kΩ"),
     (1e6, "ohm", "MΩ"), (3, "dB", "dB")],
)  # fmt: skip
def test_in_which_unit_a_limit_is_told(value: float, unit: str, shown: str) -> None:
    """Less than half a volt in millivolts; resistance by thousands."""
    assert _shown(value, unit)[1] == shown


@pytest.mark.parametrize(("nominal", "peak", "counts"), [(4, 4, 4), (3.9, 4, 4)])
def test_the_highest_level_that_comes(nominal: float, peak: float, counts: float) -> None:
    """The peak, also where the nominal level is just as high; the margin is 11 less that."""
    marl = unit("marl", f"level out {nominal} dBu peak {peak} dBu", "bypass always-on")
    combo = block("amp", "combo", "input in ts", "level in max 11 dBu")
    (edge,) = results_of(f"{marl}{combo}chain marl -> combo\n").get(Levels).edges
    assert edge.by_peak and edge.highest_dbu == counts
    assert edge.margin_db == pytest.approx(11 - counts)


@pytest.mark.parametrize("end", [(0.0, 0.0), (100.0, 0.0), (50.0, 0.0)])
@pytest.mark.parametrize("swapped", [False, True])
def test_leads_that_touch_cross_at_that_angle(end: tuple[float, float], swapped: bool) -> None:
    """A lead along x from 0 to 100 and one that ends on it, or begins there, at 45 degrees; just short of it they don't meet."""
    for stretch in ((end, (end[0] + 50, 50.0)), ((end[0] + 50, 50.0), end)):
        ways = [Side(((0.0, 0.0, 100.0),), (), ()), Side((), (), (stretch,))]
        assert [round(each, 6) for each in askew_crossings(*(ways[::-1] if swapped else ways))] == [45]
    short = Side((), (), (((end[0] + 0.01, 0.01), (end[0] + 50, 50.0)),))
    assert not [*askew_crossings(Side(((0.0, 0.0, 100.0),), (), ()), short)]


def test_three_jacks_are_named_and_four_are_counted() -> None:
    ports = [Port("box", name) for name in ("r1", "r2", "r3", "r4")]
    assert (_jacks(ports[:3]), _jacks(ports)) == ("'r1', 'r2' and 'r3'", "these 4 jacks")


def test_the_way_on_which_the_fewest_units_stop_the_sound() -> None:
    """Past 'mute' it is 4 jacks long and stops the sound; past 'one' and 'other', which pass it, 6; past 'mum', which does not say, 4."""
    said = {"mute": "mutes", "one": "passes", "other": "passes"}
    units = {
        name: SimpleNamespace(
            unpowered=fact_of(said.get(name)), inlet=1, volts=None, battery=None, kind="unit", loops=()
        )
        for name in ("split", "mute", "one", "other", "mum", "sum")
    }
    units["split"].unpowered = units["sum"].unpowered = fact_of("passes")

    def ways(*names: str) -> tuple[list[Any], list[tuple[Port, Port]]]:
        leads = [
            SimpleNamespace(start=Port(before, f"to-{after}"), end=Port(after, f"from-{before}"))
            for before, after in pairwise(names)
        ]
        inner = [(one.end, other.start) for one, other in pairwise(leads)]
        return leads, [(Port("split", "in"), leads[0].start), *inner, (leads[-1].end, Port("sum", "out"))]

    def through(*others: tuple[str, ...]) -> list[str]:
        parts = [ways("split", *names, "sum") for names in others]
        hookup: Any = SimpleNamespace(
            leads=[lead for leads, _ in parts for lead in leads], inner=[way for _, inner in parts for way in inner]
        )
        rig: Any = SimpleNamespace(units=units)
        (way,) = least_silent_ways(rig, hookup, Port("split", "in"), [Port("sum", "out")]).values()
        return list(dict.fromkeys(port.thing for port in way[2:-2]))

    assert through(("mute",), ("one", "other")) == ["one", "other"]
    assert through(("mum",), ("mute",)) == ["mum"]
    assert through(("mum",), ("one", "other")) == ["one", "other"]
    assert through(("one", "other"), ("one",)) == ["one"]


def fact_of(word: str | None) -> Any:
    return None if word is None else SimpleNamespace(value=word)
