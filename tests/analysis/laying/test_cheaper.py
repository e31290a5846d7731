"""What else is chosen with places where there is room, if it costs less: the other side of the deck. Plugs: `test_eased.py`."""

from __future__ import annotations

import pytest
from small_rigs import block

from laying.test_eased import STOCK, clean, deck, laid, pedal
from rigc.analysis.laying.objective import objective
from rigc.analysis.leads.leads import Leads
from rigc.analysis.results import Results

BUFFER = (
    "body 60 x 60 x 30 mm",
    "bypass always-on",
    "input in ts right 30 mm up 15 mm",
    "output out ts left 30 mm up 15 mm",
)
ROOM = deck(400, 300, "clearance 60 mm", "drop 150 mm")


@pytest.mark.parametrize(("weight", "under"), [(200, True), (0, False)])
def test_an_untouched_unit_hangs_where_that_costs_less(weight: int, under: bool) -> None:
    """On top it costs twice its width and depth, 240 mm; its two leads are longer by less than that if it hangs."""
    text = STOCK + pedal("marl") + block("unit", "fen", *BUFFER) + pedal("hedge") + ROOM
    rig, told = laid(
        text + f"chain marl -> fen -> hedge\nplace {{\n  weigh on deck {weight} %\n  weigh behind 0 %\n}}\n"
    )
    assert told == () and rig.places["fen"].under is under and clean(rig)
    found = objective(rig, Results(rig).get(Leads))
    assert found is not None
    terms = {term.name: (term.counted, term.cost) for term in found.terms}
    assert terms["on deck"] == (0 if under else 1200, 0)


def test_what_a_lead_of_the_stage_is_plugged_into_stays_on_top() -> None:
    stage = block("instrument", "guitar", "resistance 10 kohm")
    text = STOCK + stage + block("unit", "fen", *BUFFER) + pedal("hedge") + ROOM
    rig, _ = laid(text + "chain guitar -> fen -> hedge\n")
    assert not rig.places["fen"].under
