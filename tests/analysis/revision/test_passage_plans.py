"""Holes for leads that the old board has, and those that the new one needs, made by hand: what is drilled, what is cut wider."""

from __future__ import annotations

import pytest

from rigc.analysis.revision.plan.passage_plans import passage_plans
from rigc.analysis.routes.deck_holes import PASSAGE, STATED, DeckHole, DeckHoles, Through
from rigc.analysis.routes.hole_sizes import round_size, slot_size
from rigc.traced.figure import known_figure
from rigc.traced.given import at_place
from rigc.traced.units import MILLIMETRES


def hole(number: str, *through: tuple[float, str, float], kind: str = PASSAGE, open_: bool = False) -> DeckHole:
    """At y 150 mm; of each lead where it goes through, its number, and the diameter that its plug needs."""
    value = at_place("hole", max(d for _, _, d in through), None)
    wide = known_figure(f"plank.{number}.diameter", value, MILLIMETRES, rule="given", source="")
    first, last = through[0][0], through[-1][0]
    size = round_size(wide) if first == last else slot_size(wide, first, last)
    leads = tuple(Through(x, (lead,), needs) for x, lead, needs in through)
    return DeckHole(number, first, 150.0, None if first == last else last, size, open_, kind, "leads", leads)


def told(old: list[DeckHole], new: list[DeckHole], fresh: bool = False) -> list[tuple[str, str, str]]:
    plans = passage_plans(
        DeckHoles({"plank": tuple(old)}), DeckHoles({"plank": tuple(new)}), frozenset({"plank"} if fresh else ())
    )
    return [(plan.name, plan.before, plan.after) for plan in plans]


A32 = hole("H1", (100.0, "A1", 32.0))


@pytest.mark.parametrize(
    ("x", "needs", "drilled"),
    [
        (100.0, 32.0, False),
        # a lead goes 15 mm beside its way, and a plug that needs 16 mm as far as (32 − 16)/2 = 8 mm beside the middle of 32 mm
        (114.9, 32.0, False),
        (115.0, 32.0, False),
        (115.1, 32.0, True),
        (122.9, 16.0, False),
        (123.0, 16.0, False),
        (123.1, 16.0, True),
        (77.0, 16.0, False),
        (76.9, 16.0, True),
        (100.0, 40.0, True),
    ],
)
def test_a_hole_that_is_there_serves_what_fits_through_it(x: float, needs: float, drilled: bool) -> None:
    assert bool(told([A32], [hole("H1", (x, "A2", needs))])) is drilled


def test_what_stands_apart_is_drilled_and_what_meets_a_hole_is_cut_from_it() -> None:
    """Between a hole of 32 and one of 16 mm a web of 5 mm stands where the middles are 16 + 8 + 5 = 29 mm apart."""
    assert told([A32], [hole("H2", (129.0, "A2", 16.0))]) == [("H2 for A2", "", "129, 150 mm, diameter 16 mm")]
    assert told([A32], [hole("H2", (128.9, "A2", 16.0))]) == [
        ("H2 for A2", "100, 150 mm", "128.9, 150 mm, diameter 16 mm")
    ]


def test_a_slot_names_the_leads_alone_that_it_is_cut_for() -> None:
    slot = hole("H1", (100.0, "A1", 32.0), (122.0, "A2", 20.0))
    assert told([A32], [slot]) == [("H1 for A2", "100, 150 mm", "100 to 122, 150 mm, slot over all 32 × 54 mm")]
    assert told([slot], [A32]) == []


def test_a_gap_between_rails_and_a_stated_hole_need_no_drill() -> None:
    assert told([], [hole("H1", (100.0, "A1", 32.0), open_=True)]) == []
    assert told([hole("H1", (100.0, "", 40.0), kind=STATED)], [hole("H2", (102.0, "A1", 32.0))]) == []


def test_on_a_deck_that_comes_all_are_drilled() -> None:
    assert told([A32], [A32], fresh=True) == [("H1 for A1", "", "100, 150 mm, diameter 32 mm")]
