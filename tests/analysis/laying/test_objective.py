"""What a layout costs, term by term: the sum that the search makes least, with weights as usual and as a rig sets them."""

from __future__ import annotations

import pytest
from small_rigs import block, results_of

from laying.rigs_to_place import board_and_rig, by_hand
from rigc.analysis.laying.objective import objective, terms
from rigc.analysis.laying.place_costs import PlaceCosts
from rigc.analysis.laying.search.layout import Layout
from rigc.analysis.laying.use import switches_presets
from rigc.analysis.leads.leads import Leads
from rigc.analysis.leads.lengths.cable_lengths import CableLengths
from rigc.analysis.results import Results

DECK = block("deck", "plank", "size 400 x 300 mm", "thickness 12 mm", "drop 150 mm")
BODY = "body 70 x 110 x 50 mm"


def pedal(name: str, *lines: str) -> str:
    return block("unit", name, BODY, "input in ts right 80 mm up 25 mm", "output out ts left 80 mm up 25 mm", *lines)


PLUGS = "fits ts", "stands out 19 mm", "leaves at 10 mm", "wide 16 mm", "tall 16 mm"
ANGLE = block("plug", "angle", *PLUGS) + "leads {\n  audio plug angle\n}\n"
ROW = (
    pedal("marl", "bypass true")
    + pedal("hedge", "bypass true")
    + pedal("lant", "worked by hand")
    + DECK
    + ANGLE
    + "chain marl -> hedge -> lant\n"
)


@pytest.mark.parametrize("name", ["back-bedroom", "long-haul"])
def test_the_terms_are_what_the_search_makes_least(name: str) -> None:
    board, rig, _ = board_and_rig(name)
    at = by_hand(name)
    assert sum(term.cost for term in terms(rig, board, at)) == Layout(board, at).cost


def test_each_term_of_a_row() -> None:
    """marl 30 mm from the front and hedge 40 mm from it; lant ends 300 - 110 - 110 = 80 mm before the rear edge; three fronts, and so no
    line with gaps. marl plays into hedge, which is to its right by 100 mm, and hedge into lant, to its left."""
    place = "place {\n  marl at 100, 30 mm\n  hedge at 200, 40 mm\n  lant at 10, 110 mm\n"
    made = results_of(ROW + place + "  weigh bare deck 50 %\n}\n")
    found = objective(made.rig, made.get(Leads))
    assert found is not None
    told = {term.name: (term.counted, term.share, term.cost) for term in found.terms}
    assert told["onward"] == (1000, 2, 2000)
    assert told["bare deck"] == (700, 50, 35_000)
    assert told["behind"] == (800, 350, 280_000)
    assert told["front lines"] == (3, 2500, 75_000)
    assert told["gaps"] == (0, 2, 0)
    assert told["audio leads"][0] * 100 == told["audio leads"][2] > 0


def test_leads_are_told_in_money() -> None:
    """hedge stands to the left of marl, their jacks 80 mm apart at one height: 80 less twice the 10 mm at which a cable leaves its plug is
    60 mm, and 30 mm of slack. At 2 EUR a metre these 90 mm are 0.18 EUR."""
    text = ROW.replace("chain marl -> hedge -> lant", "chain marl -> hedge").replace(
        "audio plug angle", "audio plug angle\n  audio cable thin"
    )
    cable = block("cable", "thin", "carries audio", "price 2 EUR")
    made = results_of(text + cable + "place {\n  marl at 200, 30 mm\n  hedge at 50, 30 mm\n  lant at 10, 180 mm\n}\n")
    found = objective(made.rig, made.get(Leads))
    assert found is not None
    (audio,) = (term for term in found.terms if term.name == "audio leads")
    assert audio.counted == 900 and audio.money == (0.18, "EUR")


def test_what_switches_the_presets_stands_in_front() -> None:
    """The switcher of the touring rig, by whose loops its presets are made, and its treadles: each no further back than a hand reaches from
    the front edge, 60 mm (the rig states no room for a heel), and nothing before it."""
    board, rig, _ = board_and_rig("long-haul")
    assert switches_presets(rig) == {"signalbox"}
    in_front = ["signalbox", "teeter", "slipway", "lever"]
    assert [(item.name, item.foremost) for item in board.items if item.foremost is not None] == [
        (name, 600) for name in in_front
    ]
    wished = [
        board.items[wish.items[0]].name for wish in board.wishes if (wish.kind, wish.word) == ("near_edge", "front")
    ]
    assert wished == in_front


def test_gaps_of_one_line_differ() -> None:
    """At 0, 100 and 220 mm, 70 mm wide: gaps of 30 and 50 mm; the middle of the line is at 145 mm, that of the deck at 200 mm."""
    made = results_of(ROW + "place {\n  marl at 0, 10 mm\n  hedge at 100, 10 mm\n  lant at 220, 10 mm\n}\n")
    found = objective(made.rig, made.get(Leads))
    assert found is not None
    told = {term.name: term.counted for term in found.terms}
    assert (told["front lines"], told["gaps"], told["centring"]) == (1, 200, 550)
    assert found.cost == sum(term.cost for term in found.terms)


@pytest.mark.parametrize(
    ("beside", "lacks"),
    [
        ("marl at 224, 10 mm", 10),  # its switch at 259 mm, 59 mm from the side at 200 mm
        ("marl at 225, 10 mm", 0),  # 60 mm
        (
            "marl at 10, 200 mm",
            50,
        ),  # its switch at 45 mm, 55 mm from the side at 100 mm; at 225 mm it is beside the treadle
        ("marl at 10, 236 mm", 0),  # at 261 mm it is behind the rear edge, at 260 mm
        ("marl at 10, 235 mm", 50),
        ("lant at 205, 10 mm", 0),  # worked by hand
        (
            "rock at 205, 10 mm",
            200,
        ),  # 205 − 150 = 55 mm from the middle of the one to the other's side, 245 − 200 = 45 mm back: 5 + 15 mm
        ("rock at 220, 10 mm", 0),  # 70 mm and 60 mm
        ("rock at 219, 10 mm", 10),
        ("rock under at 205, 10 mm", 0),
    ],
)
def test_a_foot_beside_a_treadle(beside: str, lacks: int) -> None:
    """A treadle from 100 to 200 mm across, and from 10 to 260 mm along; half a shoe is 60 mm."""
    made = results_of(
        block("unit", "swell", "body 100 x 250 x 80 mm", "treadle 60..80 mm")
        + block("unit", "rock", "body 80 x 200 x 70 mm", "treadle 50..70 mm")
        + pedal("marl", "switch at 35, 25 mm latching")
        + pedal("lant", "switch at 35, 25 mm latching", "worked by hand")
        + block("deck", "plank", "size 500 x 400 mm", "clearance 80 mm")
        + f"place {{\n  swell at 100, 10 mm\n  {beside}\n}}\n"
    )
    found = objective(made.rig, made.get(Leads))
    assert found is not None
    told = {term.name: (term.counted, term.share, term.cost) for term in found.terms}
    assert told["beside treadle"] == (lacks, 4000, 4000 * lacks)


def test_what_a_hand_must_come_to() -> None:
    """marl's input, for the guitar, is at 170, 110 mm: 170 mm from the left edge, the nearest that counts, and 110 mm further than a hand
    reaches, which counts a third. No foot works lant: its output, for the amp, is at 10, 190 mm, 300 - 190 - 60 = 50 mm further from the rear
    edge than a hand reaches."""
    stage = block("instrument", "guitar", "resistance 10 kohm") + block("amp", "stack", "input in ts 1 Mohm")
    place = "place {\n  marl at 100, 30 mm\n  hedge at 200, 40 mm\n  lant at 10, 110 mm\n}\n"
    text = stage + ROW.replace("chain marl -> hedge -> lant", "chain guitar -> marl -> hedge -> lant -> stack") + place
    made = results_of(text)
    found = objective(made.rig, made.get(Leads))
    assert found is not None
    told = {term.name: (term.counted, term.share, term.cost) for term in found.terms}
    assert told["at hand"] == (1600, None, 260_000)
    chosen = {name: each.replace(chosen=True) for name, each in made.rig.places.items()}
    laid = Results(made.rig.replace(places=chosen))
    costs = {figure.name: float(figure) for figure in laid.get(PlaceCosts).all}
    lengths = {mark: length.finished / 10 for mark, length in laid.get(CableLengths).lengths.items()}
    leads = {str(lead.start): lengths[lead.mark] for lead in laid.get(Leads).all if lead.mark in lengths}
    assert costs["marl.place"] == pytest.approx(leads["marl.out"] + 100 * 0.02 + 30 * 3.5 + 110 * 1.0)
    assert costs["lant.place"] == pytest.approx(leads["hedge.out"] + 80 * 3.5 + 50 * 3)


def test_a_lead_weighs_what_its_cable_costs_beside_the_audio_cable() -> None:
    """0.60 for a metre beside 2.40: a quarter; of an audio metre so much money as it costs."""
    fed = "inlet dc barrel 5.5 x 2.1 mm rear 35 mm up 25 mm", "needs 9 V dc", "draws 10 mA"
    supply = block("supply", "brook", "body 120 x 60 x 40 mm", "outlet o1 9 V dc 500 mA isolated front 20 mm up 20 mm")
    cables = block("plug", "barrel", "fits barrel 5.5 x 2.1 mm", *PLUGS[1:]) + "leads {\n  dc plug barrel\n}\n"
    cables += block("cable", "thin", "carries audio", "price 2.40 EUR")
    cables += block("cable", "pair", "carries dc", "price 0.60 EUR")
    rest = "power {\n  marl from brook.o1\n}\nleads {\n  audio cable thin\n  dc cable pair\n}\nchain marl -> hedge\n"
    places = "place {\n  marl at 0, 10 mm\n  hedge at 100, 10 mm\n  brook at 200, 200 mm\n"
    text = pedal("marl", *fed) + pedal("hedge") + supply + DECK + ANGLE + cables + rest + places
    made = results_of(text + "}\n")
    found = objective(made.rig, made.get(Leads))
    assert found is not None
    told = {term.name: term for term in found.terms}
    assert told["dc leads"].share == 25
    assert told["dc leads"].cost == 25 * told["dc leads"].counted
    assert told["audio leads"].money == (told["audio leads"].counted / 10_000 * 2.4, "EUR")
    stated = results_of(text + "  weigh other leads 7 %\n}\n")
    own = objective(stated.rig, stated.get(Leads))
    assert own is not None
    assert [term.share for term in own.terms if term.name == "dc leads"] == [7]


def test_what_a_chosen_place_costs() -> None:
    """marl 30 mm from the front; its one lead goes on to hedge, which is to its right by 100 mm. lant ends 80 mm before the rear edge."""
    made = results_of(ROW + "place {\n  marl at 100, 30 mm\n  hedge at 200, 40 mm\n  lant at 10, 110 mm\n}\n")
    chosen = {name: place.replace(chosen=True) for name, place in made.rig.places.items()}
    laid = Results(made.rig.replace(places=chosen))
    costs = {figure.name: float(figure) for figure in laid.get(PlaceCosts).all}
    lengths = {mark: length.finished / 10 for mark, length in laid.get(CableLengths).lengths.items()}
    assert costs["marl.place"] == pytest.approx(lengths["A1"] + 100 * 0.02 + 30 * 3.5)
    assert costs["hedge.place"] == pytest.approx(lengths["A1"] + lengths["A2"] + 100 * 0.02 + 40 * 3.5)
    assert costs["lant.place"] == pytest.approx(lengths["A2"] + 80 * 3.5)
    assert made.get(PlaceCosts).all == ()


def test_what_stands_in_a_loop_counts_a_fifth() -> None:
    """hub at the front edge; marl in its loop, 150 mm from the front: a fifth of 350 is 70 hundredths of each tenth, 1500 of which cost 105_000."""
    jacks = "input in ts front 20 mm", "output out ts front 40 mm", "output s1 ts rear 20 mm", "input r1 ts rear 40 mm"
    hub = block("unit", "hub", "body 120 x 80 x 50 mm", *jacks, "loop 1 send s1 return r1")
    text = ROW.replace("chain marl -> hedge -> lant\n", "") + hub + "chain hub -> lant\nloop 1 of hub holds marl\n"
    place = "place {\n  hub at 0, 0 mm\n  marl at 200, 150 mm\n  hedge at 300, 0 mm\n  lant at 10, 180 mm\n}\n"
    made = results_of(text + place)
    found = objective(made.rig, made.get(Leads))
    assert found is not None
    told = {term.name: (term.counted, term.share, term.cost) for term in found.terms}
    assert told["bare deck"] == (1500, None, 105_000)
