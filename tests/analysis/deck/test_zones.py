"""Zones of a deck by hand: 800 x 300 mm are columns of 100 mm and rows of 50 mm, A at the rear. Rigs are invented."""

from __future__ import annotations

import pytest
from small_rigs import block, results_of

from rigc.analysis.deck.zones import Zones, zone
from rigc.model.jacks import Port

DECK = block("deck", "plate", "size 800 x 300 mm")
TERN = block(
    "unit", "tern", "body 80 x 100 x 50 mm", "input in ts right 60 mm up 20 mm", "output out ts left 60 mm up 20 mm"
)
PLACED = block("place", "", "tern at 310, 10 mm")


@pytest.mark.parametrize(
    ("x_mm", "y_mm", "told"),
    [
        (0, 0, "F1"),
        (99.9, 49.9, "F1"),
        (100, 50.1, "E2"),
        (100, 50, "F2"),
        (799, 299, "A8"),
        (800, 300, "A8"),
        (-5, 310, "A1"),
    ],
)
def test_a_point_of_a_deck(x_mm: float, y_mm: float, told: str) -> None:
    """What lies on a line belongs to the zone right of it or in front of it, what lies beyond an edge to the one beside it."""
    assert zone(results_of(DECK).rig.deck, x_mm, y_mm) == told


def test_a_thing_by_its_middle_a_jack_by_its_own_place() -> None:
    """Middle at (350, 60): column 4, 240 / 50 = 4.8, the fifth row; in at (390, 70), out at (310, 70)."""
    found = results_of(DECK + TERN + PLACED).get(Zones)
    assert (found.thing("tern"), found.jack(Port("tern", "in")), found.named("tern.out")) == ("E4", "E4", "E4")
    assert found.ends(Port("tern", "in"), Port("combo", "in")) == "E4"


def test_a_jack_without_a_place_is_looked_for_at_its_thing() -> None:
    found = results_of(DECK + TERN.replace(" right 60 mm up 20 mm", "") + PLACED).get(Zones)
    assert found.jack(Port("tern", "in")) == "E4"


def test_a_panel_by_its_jacks() -> None:
    """(790, 290) and (20, 290), rear left and rear right."""
    panel = block("panel", "rear", "jack l ts at 790, 290 mm", "jack r ts at 20, 290 mm")
    found = results_of(DECK + panel).get(Zones)
    assert found.thing("rear") == "A8, A1"
    assert found.all(("rear.l", "rear.r", "rear.l")) == "A1, A8"
    assert found.ends(Port("rear", "l"), Port("rear", "r")) == "A8 → A1"


def test_of_two_decks_in_use_the_name_is_told() -> None:
    upper = block("deck", "upper", "size 400 x 300 mm") + block("unit", "fen", "body 80 x 100 x 50 mm")
    places = block("place", "on plate", "tern at 310, 10 mm") + block("place", "on upper", "fen at 10, 10 mm")
    found = results_of(DECK + upper + TERN + places).get(Zones)
    assert (found.thing("tern"), found.thing("fen")) == ("plate E4", "upper E2")


def test_no_zone_without_a_size_or_a_place() -> None:
    found = results_of("deck plate {\n}\n" + TERN + PLACED).get(Zones)
    assert (found.thing("tern"), found.jack(Port("tern", "in")), found.thing("combo")) == ("", "", "")
