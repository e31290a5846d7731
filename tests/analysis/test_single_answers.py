"""What single functions of the analysis answer, worked by hand: edges that no rule's case stands on."""

from __future__ import annotations

from types import SimpleNamespace
from typing import Any

import pytest
from cases import worked
from small_rigs import block, results_of, unit
from written import written

from rigc.analysis.deck.air_gaps import taken_w, vent_gap
from rigc.analysis.deck.placement import Placement
from rigc.analysis.deck.spot_on_thing import skewed
from rigc.analysis.faults.hearing import Hearings, Patch
from rigc.analysis.faults.repairs import _alone, _reach
from rigc.analysis.faults.single_breaks import SingleBreaks
from rigc.analysis.feeds.choice.open_outlets import outlet_settings, reservations
from rigc.analysis.feeds.load_limits import percent_of
from rigc.analysis.feeds.outlet_fit import assumed_polarity
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.ground.ground_conductors import leads_in_use, through_panels
from rigc.analysis.ground.ring_words import in_scenarios
from rigc.analysis.leads.leads import Leads
from rigc.analysis.leads.lengths.below_deck import lane_way, straight
from rigc.analysis.leads.lengths.cable_lengths import CableLengths
from rigc.analysis.leads.lengths.cable_routes import CableRoutes
from rigc.analysis.leads.plugs.plug_bodies import PlugBodies
from rigc.analysis.leads.special_leads import SpecialLeads
from rigc.analysis.mains.primary import _size
from rigc.analysis.mounting.laid_pieces import shared_mm2
from rigc.analysis.mounting.mounting_strip import _tapes_met
from rigc.analysis.power.mends.other_ways import other_ways
from rigc.analysis.power.power_network import PowerNetwork
from rigc.analysis.power.unit_powers import UnitPowers
from rigc.analysis.revision.compared.facts import knowledge
from rigc.analysis.revision.compared.stated import _WIRED, _joined
from rigc.analysis.revision.plan.fitting_plans import _holes
from rigc.analysis.routes.deck_holes import DeckHoles
from rigc.analysis.routes.joint_savings import JointSavings
from rigc.analysis.routes.lead_ways import _halved, _past
from rigc.analysis.signal.loading.section_figures import _at
from rigc.analysis.signal.parallel.comb_words import notes_taken
from rigc.analysis.stores.bought_leads import BoughtLeads
from rigc.analysis.stores.head_count import HeadCount
from rigc.analysis.stores.pulled import pulled
from rigc.analysis.stores.pulled_leads import special
from rigc.analysis.stores.reel_uses import up_to_centimetre
from rigc.analysis.tests.nominal import nominal_at
from rigc.analysis.weight.case_loads import CaseLoads
from rigc.model.geometry.rectangle import Rectangle
from rigc.model.jacks import Port
from rigc.model.ways.ground_link import GroundLink, Pole
from rigc.traced.term import number


def test_a_point_of_what_stands_straight_lies_where_it_is_measured() -> None:
    """Of 60 x 100 mm, the point at 10, 20 mm lies 20 left of and 30 before the middle at 30, 50 mm: 5 + 30 - 20, 7 + 50 - 30."""
    place: Any = SimpleNamespace(skew_deg=0, x_mm=5, y_mm=7)
    assert skewed(60, 100, 0).at((10, 20), place) == (15, 27)


def test_a_point_of_what_stands_askew_turns_about_the_middle() -> None:
    """By a quarter, the rectangle around is 100 x 60 mm, and what lay 20 left and 30 before the middle lies 30 right and 20 before it."""
    place: Any = SimpleNamespace(skew_deg=90, x_mm=0, y_mm=0)
    x, y = skewed(60, 100, 90).at((10, 20), place)
    assert (round(x, 6), round(y, 6)) == (50 + 30, 30 - 20)


@pytest.mark.parametrize(
    ("current", "assumed", "leans"), [("dc", True, True), ("dc", False, False), ("ac", True, False)]
)
def test_a_polarity_that_is_assumed_counts_for_dc_alone(current: str, assumed: bool, leans: bool) -> None:
    unit: Any = SimpleNamespace(inlet=None, current=current, polarity=SimpleNamespace(assumed=assumed))
    tap: Any = SimpleNamespace(current="dc")
    assert assumed_polarity(unit, tap) is leans


def test_scenarios_are_named_where_there_are_several() -> None:
    rig = worked("tests/reach/board.rig").rig
    assert in_scenarios(rig, ["bay"]) == ", in scenario 'bay'"
    assert in_scenarios(rig, ["club", "bay"]) == ", in every scenario"
    three: Any = SimpleNamespace(scenarios=dict.fromkeys("abc"))
    assert in_scenarios(three, ["a", "c"]) == ", in scenarios 'a' and 'c'"


def test_a_note_that_is_stated_is_not_taken() -> None:
    notes = [SimpleNamespace(instrument=name, stated=stated) for name, stated in (("lute", True), ("guitar", False))]
    paths: Any = SimpleNamespace(notes=notes)
    assert notes_taken(paths) == "'guitar' states no `lowest note`"


def test_a_whole_centimetre_stays() -> None:
    length: Any = 1.1
    assert up_to_centimetre(length) is length


def test_what_is_fed_has_the_voltage_of_its_outlet_at_its_inlet_alone() -> None:
    """'heron' is fed from mere.o5 at 12 V; its audio output bears none of it."""
    results = worked("tests/reach/board.rig")
    rig, power, leads = results.rig, results.get(PowerAssignment), results.get(Leads)
    found = {point: nominal_at(rig, power, leads, point) for point in ("heron", "heron.dc", "heron.out")}
    assert {point: each and each.volts for point, each in found.items()} == {
        "heron": 12,
        "heron.dc": 12,
        "heron.out": None,
    }


def test_what_is_bought_is_priced_by_its_list_and_what_is_cut_is_not() -> None:
    """DC leads are bought: two of 600 mm for 6 EUR and 30 g, two of 900 mm for 8 EUR and 40 g; a Y lead stands in no list. Audio is cut."""
    classes = worked("tests/reach/board.rig").get(BoughtLeads).classes
    dc = classes["dc"]
    assert {mark: price and float(price) for mark, price in dc.prices.items()} == {
        "D1": 6, "D2": 6, "D4a": None, "D4b": None, "D5": 8, "D6": 8,
    }  # fmt: skip
    assert dc.price == 6 + 6 + 8 + 8
    assert dc.mass == pytest.approx(0.03 + 0.03 + 0.04 + 0.04)
    assert classes["audio"].prices == {}


FED = block("supply", "mill", "outlet o1..o2 9 V dc 100 mA isolated") + unit("marl", "needs 9 V dc", "draws 150 mA")
FED += "power {\n  marl from mill.o1\n}\n"


def test_a_place_turned_by_a_quarter_tells_that_width_and_depth_change() -> None:
    made = results_of(
        unit("marl", "body 60 x 100 x 50 mm")
        + "deck board {\n  size 600 x 300 mm\n}\nplace {\n  marl at 10, 20 mm turned 270 deg\n}\n"
    )
    told = made.get(Placement).outlines["marl"].told
    assert told is not None
    assert told.formula() == "100 × 60 at 10, 20, turned by 270°: width and depth change places"


def test_an_amp_without_mains_is_silent() -> None:
    made = results_of(
        block("instrument", "guitar")
        + block("amp", "combo", "input in ts")
        + "mains-strip bar {\n  sockets 4\n}\npower {\n  combo plug into bar\n}\nchain guitar -> combo\n"
    )
    (strip,) = (each for each in made.get(SingleBreaks).all if each.key == "bar")
    assert strip.gone == {("thing", "combo")}


def test_jacks_are_as_far_apart_as_a_lead_goes_in_x_and_in_y() -> None:
    """From 10, 50 to 40, 10 mm: 30 + 40. A jack without a place is no way off."""
    one, other = Port("a", "out"), Port("b", "in")
    places: Any = SimpleNamespace(
        points={one: SimpleNamespace(x_mm=10, y_mm=50), other: SimpleNamespace(x_mm=40, y_mm=10)}
    )
    assert _reach(places, Patch(one, other)) == 30 + 40
    assert _reach(places, Patch(one, Port("c", "in"))) == 0


def test_a_feed_of_which_one_outlet_is_there_sets_none() -> None:
    rig = results_of(FED).rig
    (feed,) = rig.power.feeds
    half = feed.replace(outlets=(Port("mill", "o1"), Port("mill", "o9")))
    assert list(outlet_settings(rig)) == [Port("mill", "o1")]
    assert outlet_settings(rig.replace(power=rig.power.replace(feeds=(half,)))) == {}


def test_a_free_outlet_helps_beside_the_own_one() -> None:
    made = results_of(FED)
    power, free = made.get(PowerAssignment), (Port("mill", "o2"),)
    found = list(other_ways(made.rig, power, "marl", free, lambda _, way: len(way.outlets) == 2))
    assert [[(name, way.how, way.outlets) for name, way in each] for each in found] == [
        [("marl", "parallel", (Port("mill", "o1"), Port("mill", "o2")))]
    ]


def test_what_a_unit_draws_at_power_up_is_told_where_it_is_stated() -> None:
    starts = {each.unit.name: each.starts for each in worked("tests/reach/board.rig").get(UnitPowers).all}
    assert starts["heron"] == 150
    assert starts["marl"] is None


def test_each_lead_keeps_to_the_lane_of_its_signal() -> None:
    """Lanes are stated at 150 mm for audio and at 250 mm for DC, in tenths of a millimetre here; none for MIDI."""
    routes = worked("tests/reach/board.rig").get(CableRoutes).routes
    assert [routes[mark].lane for mark in ("A2", "D1", "M1")] == [1500, 2500, None]


def test_a_saving_by_both_lines_is_found() -> None:
    """From y = 80 through 50, on to 300, back to 250: 30 + 250 + 50 = 330 mm; through 150 at both ends 70 + 100: 160 mm less."""
    made = written(
        unit("marl", "body 60 x 100 x 50 mm", "output send ts left 50 mm up 20 mm")
        + unit("lant", "body 60 x 100 x 50 mm", "input back ts right 50 mm up 20 mm")
        + "chain marl.send -> lant.back\n"
        + "deck board {\n  size 600 x 400 mm\n  thickness 10 mm\n  drop 50, 150, 300 mm\n}\n"
        + "place {\n  marl at 300, 30 mm\n  lant at 100, 200 mm\n}\n"
        + "leads {\n  A1 marl.send -> lant.back flat-angle to flat-angle\n}\n"
    )
    found = made.get(JointSavings).all
    assert {mark: (each.lines, float(each.saves)) for mark, each in found.items()} == {"A1": ((1500, 1500), 1600)}


def test_lanes_half_way_are_whole_millimetres() -> None:
    """Of lines at 0, 100 and 410 tenths: 50, and 255 down to 250. The edge at 500 lies beyond the lead's own."""
    assert _halved({0, 410}, {100, 500}) == [0, 100, 410, 50, 250]


def test_where_no_way_past_is_as_short_the_known_one_stays() -> None:
    """Of 0 tenths there is none; with no known way the plain one, in x at the first end's y and then in y."""
    here, there = (0, 0), (100, 50)
    known = (here, (0, 25), (100, 25), there)
    assert _past(here, there, known, 0, ()) == (known,)
    assert _past(here, there, (), 0, ()) == (lane_way(here, there, 0),)


def test_leads_that_no_chain_tells_of_are_plugged_in_always() -> None:
    """At the club, where amp and desk play: the DC leads as well as A1; A16 from the lute is for the bay alone."""
    made = worked("tests/reach/board.rig")
    club = leads_in_use(made.rig, made.get(Leads), made.rig.scenarios["club"])
    assert {"D1", "A1"} <= {lead.mark for lead in club}
    assert "A16" not in {lead.mark for lead in club}


def test_a_transformer_is_the_next_larger_that_is_made() -> None:
    """In steps of 25 VA; a hair of binary arithmetic above one is that one."""
    assert [_size(each) for each in (1, 25, 25 * (1 + 1e-12), 25.1, 75)] == [25, 25, 25, 50, 75]


def test_half_of_a_small_piece_askew_is_shared() -> None:
    """A square of 1 mm turned by an eighth is a diamond; the ground covers its right half: 0.5 mm²."""
    assert shared_mm2(Rectangle(0, 0, 1, 1), 45, Rectangle(0.5, -5, 10, 10)) == pytest.approx(0.5)


@pytest.mark.parametrize(("hertz", "name"), [(999, "at-999hz"), (1000, "at-1khz"), (5000, "at-5khz")])
def test_kilohertz_are_named_from_a_thousand(hertz: float, name: str) -> None:
    assert _at(hertz) == name


def test_a_tape_is_met_by_the_least_part_of_a_strip() -> None:
    """Half a square millimetre of the strip lies on the first tape, nothing on the second."""
    tapes = Rectangle(0, 9.5, 100, 10), Rectangle(0, 30, 100, 10)
    assert _tapes_met((Rectangle(0, 0, 1, 10),), 0, tapes) == 1


def test_adaptors_are_pulled_one_by_one_and_a_y_lead_by_its_legs() -> None:
    made = worked("tests/reach/board.rig")
    rows = special(made.rig, made.get(Leads), made.get(CableLengths), made.get(SpecialLeads))
    assert [(row.item, row.kind) for row in rows if row.item[:2] in ("D4", "Y1")] == [
        ("D4: dc Y lead, legs of 900 mm and 600 mm", "premade lead"),
        ("Y1: series lead for groyne", "adaptor"),
    ]


def test_what_is_taken_is_what_is_used_and_what_is_more() -> None:
    """7 m are used of 9 m that are taken: 2 m more, 9 in all."""
    row = pulled("thin", "cable", number(7.0), taken=number(9.0), unit="m")
    assert [each and float(each) for each in (row.quantity, row.spare, row.total)] == [7, 2, 9]


def test_a_panel_travels_with_its_deck_and_else_with_the_first() -> None:
    """Trunk: case 9 + panel 2 = 11 kg. Box: case 5 + panel 1 = 6 kg. Nothing stands on the decks."""
    made = results_of(
        block("deck", "board", "size 600 x 300 mm")
        + block("deck", "side", "size 600 x 300 mm")
        + block("panel", "rear", "mass 2 kg")
        + block("panel", "flank on side", "mass 1 kg")
        + block("case", "trunk", "mass 9 kg", "holds board")
        + block("case", "box", "mass 5 kg", "holds side")
    )
    assert {load.name: load.mass.known_kg for load in made.get(CaseLoads).all} == {"trunk": 11, "box": 6}


@pytest.mark.parametrize(
    ("side", "left", "front", "gap"),
    [("left", 50, 100, 20), ("front", 100, 40, 30), ("right", 175, 100, 15), ("rear", 100, 210, 10)],
)
def test_air_before_vents_is_measured_from_each_side(side: str, left: int, front: int, gap: int) -> None:
    """A body of 30 x 30 mm beside one of 60 x 100 mm at 100, 100: to its left 100 - 80, before it 100 - 70, then 175 - 160, 210 - 200."""
    thing: Any = SimpleNamespace(width_mm=SimpleNamespace(value=60), depth_mm=SimpleNamespace(value=100))
    place: Any = SimpleNamespace(x_mm=100, y_mm=100, turned=0, skew_deg=0)
    other: Any = SimpleNamespace(corners=Rectangle(left, front, 30, 30).corners)
    assert vent_gap(thing, place, side, other) == gap


def test_watts_are_volts_by_amperes() -> None:
    """12 V x 0.5 A."""
    unit: Any = SimpleNamespace(volts=SimpleNamespace(value=12), draws_ma=SimpleNamespace(value=500))
    assert taken_w(unit) == 6


def test_a_patch_into_one_side_leaves_the_other_empty() -> None:
    """Round 'lant', whose left outputs alone are wired, into the right side of 'ferry': its left side has to be empty. Sound goes on
    through 'hum' behind it."""
    sides = ("input inl ts", "input inr ts", "pair inl, inr")
    made = results_of(
        block("instrument", "guitar")
        + block("unit", "lant", *sides, "output outl ts", "output outr ts", "pair outl, outr")
        + block("unit", "ferry", *sides, "output out ts")
        + unit("hum")
        + block("amp", "combo", "input in ts")
        + "chain guitar -> lant -> ferry -> hum -> combo\n"
    )
    (hearing,) = made.get(Hearings).all
    start, left, right = Port("guitar", "out"), Port("ferry", "inl"), Port("ferry", "inr")
    assert list(_alone(hearing, Patch(start, right))) == [Patch(start, right, left)]
    assert list(_alone(hearing, Patch(start, left))) == []
    gone = frozenset({("thing", "lant")})
    assert hearing.heard(gone, None, (Patch(start, right, left),)) == {Port("combo", "in")}
    assert hearing.heard(gone) == frozenset()


def test_a_jack_that_no_walk_comes_to_is_reached_from_nowhere() -> None:
    made = results_of(
        block("instrument", "guitar")
        + unit("lant")
        + block("amp", "combo", "input in ts")
        + "chain guitar -> lant -> combo\n"
    )
    (hearing,) = made.get(Hearings).all
    known = (Port("guitar", "out"), Port("lant", "in"), Port("lant", "out"), Port("combo", "in"))
    assert sorted(map(hearing.number, known)) == [0, 1, 2, 3]
    assert hearing.number(Port("tern", "in")) == -1
    reached = hearing.after(hearing.sources, frozenset())
    assert {port for port in (*known, Port("tern", "in")) if port in reached} == {*known}


NEAR, FAR, SLEEVE = ("a", "ground"), ("b", "ground"), ("rear", "jack l")


@pytest.mark.parametrize(
    ("one", "two", "marks"),
    [
        ((NEAR, SLEEVE), (SLEEVE, FAR), "A1 A2 A3 A4"),
        ((SLEEVE, FAR), (NEAR, SLEEVE), "A3 A4 A1 A2"),
        ((NEAR, SLEEVE), (FAR, SLEEVE), "A1 A2 A4 A3"),
        ((SLEEVE, NEAR), (SLEEVE, FAR), "A2 A1 A3 A4"),
    ],
)
def test_a_run_through_a_panel_jack_is_told_in_its_order(
    one: tuple[Pole, Pole], two: tuple[Pole, Pole], marks: str
) -> None:
    """A1 and A2 lie from end to end of the one, A3 and A4 of the other; the run goes from 'a' to 'b'."""
    shields = [GroundLink(one, "audio", ("A1", "A2")), GroundLink(two, "audio", ("A3", "A4"))]
    (run,), _ = through_panels(shields, {Port("rear", "l"): 2})
    assert (run.ends, " ".join(run.marks)) == ((NEAR, FAR), marks)


def test_a_unit_of_the_other_polarity_has_its_volts_the_wrong_way_round() -> None:
    dc = "inlet dc barrel 5.5 x 2.1 mm"
    made = results_of(
        block(
            "supply",
            "mill",
            "connector barrel 5.5 x 2.1 mm",
            "polarity centre-negative",
            "outlet o1..o2 9 V dc 100 mA isolated",
        )
        + unit("marl", dc, "needs 9 V dc", "draws 50 mA", "polarity centre-positive", "ground negative")
        + unit("hum", dc, "needs 9 V dc", "draws 50 mA", "polarity centre-negative", "ground negative")
        + "power {\n  marl from mill.o1\n  hum from mill.o2\n}\n"
    )
    volts = {name: made.get(PowerNetwork).of(name) for name in ("marl", "hum")}
    assert {name: each and round(float(each.most_v), 6) for name, each in volts.items()} == {"marl": -9, "hum": 9}


def test_a_lead_that_is_made_has_plugs_like_any_other() -> None:
    """A1 is made, 900 mm long; only the connectors of a mains lead whose length is stated are taken as laid."""
    bodies = worked("tests/reach/board.rig").get(PlugBodies)
    assert {Port("heron", "out"), Port("box", "in")} <= {each.port for each in bodies.all}


def test_a_change_of_wiring_concerns_what_was_joined_and_what_is() -> None:
    wired = SimpleNamespace(field=next(iter(_WIRED)), before="marl.out -> hum.in", now="marl.out -> haw.in")
    mass = SimpleNamespace(field="mass", before="400 g", now="410 g")
    thing: Any = SimpleNamespace(differences=(wired, mass))
    assert _joined(thing) == {"hum", "haw"}


def test_holes_that_are_there_are_not_drilled_again() -> None:
    """The deck 'board' keeps its hole; 'side' comes with one."""
    hole = "hole 25 mm at 60, 150 mm"
    old, new = (
        results_of("".join(block("deck", name, "size 600 x 300 mm", hole) for name in names)).rig
        for names in (("board",), ("board", "side"))
    )
    assert [(plan.before, plan.on) for plan in _holes(old, new, set())] == [("", "side")]


def test_heads_are_counted_by_their_kind() -> None:
    """To the stage and beside it go A4, A5, A16 from the lute to the amp, and C2."""
    count = worked("tests/reach/board.rig").get(HeadCount)
    assert (count.stage_leads.formula(), float(count.stage_leads)) == ("3 audio + 1 control = 4", 4)
    assert [(each.name, each.value) for each in count.stage_leads.inputs()] == [("counted", "A4, A5, A16, C2")]
    nothing = results_of("").get(HeadCount).units
    assert (nothing.formula(), [each.value for each in nothing.inputs()]) == ("0 = 0", ["none"])


def test_how_facts_are_known_is_a_detail_of_a_comparison() -> None:
    known = knowledge("unit", worked("tests/reach/board.rig").rig.units["marl"])
    assert (known.text, known.detail) == ("assumed", True)


def test_the_holes_of_a_panel_are_drilled() -> None:
    """None of its three jacks sits in a gap between rails."""
    holes = worked("tests/reach/board.rig").get(DeckHoles).of("plank")
    assert [hole.open for hole in holes if hole.purpose.startswith("rear-panel.")] == [False, False, False]


@pytest.mark.parametrize(("whole", "percent"), [(None, None), (-1, None), (0, None), (0.5, 1000), (10, 50)])
def test_a_share_of_nothing_is_not_known(whole: float | None, percent: float | None) -> None:
    assert percent_of(5, whole) == percent


def test_outlets_kept_for_the_same_are_told_apart_by_numbers() -> None:
    kept = "".join(f'  reserve 9 V dc 100 mA "{text}"\n' for text in ("pitch", "echo", "pitch", "pitch"))
    made = results_of(block("supply", "mill", "outlet o1..o4 9 V dc 100 mA isolated") + f"power {{\n{kept}}}\n")
    assert [each.name for each in reservations(made.rig)] == [
        "reserve: pitch (1)",
        "reserve: echo",
        "reserve: pitch (2)",
        "reserve: pitch (3)",
    ]


@pytest.mark.parametrize(
    ("points", "left"),
    [
        # the last three of a staircase lie in one line, whatever stands before them
        ([(0, 0), (10, 0), (10, 10), (20, 10), (30, 10)], ((0, 0), (10, 0), (10, 10), (30, 10))),
        ([(0, 0), (10, 0), (10, 10), (10, 20), (0, 20)], ((0, 0), (10, 0), (10, 20), (0, 20))),
        # the same point again, once only where it stands twice in a row
        ([(0, 0), (0, 0), (10, 0), (10, 0), (10, 5)], ((0, 0), (10, 0), (10, 5))),
        ([(0, 0)], ((0, 0),)),
    ],
)
def test_a_way_without_points_that_say_nothing(
    points: list[tuple[int, int]], left: tuple[tuple[int, int], ...]
) -> None:
    assert straight(points) == left
