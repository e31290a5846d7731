"""What a joint choice of both drop lines would save: never by a line that is not there."""

from __future__ import annotations

from rigc.analysis.leads.lengths.cable_routes import Route
from rigc.analysis.leads.lengths.deck_boxes import Box, DeckBoxes
from rigc.analysis.routes.joint_savings import joint_saving

ROUTE = Route("A1", "under", ((1000, 800), (5000, 2500)), (500, 3000))


def test_one_line_for_both_is_shorter() -> None:
    """From y = 80 to 50, on to 300 and back to 250: 30 + 250 + 50 = 330; by the line at 150 alone 70 + 100 = 170: 160 are saved."""
    assert joint_saving(ROUTE, DeckBoxes((), (500, 1500, 3000))) == (1500, 1500)


def test_no_line_is_free_at_an_end() -> None:
    """A wall stands before the first end, from x = 90 to 110 and y = 0 to 400: no line can be reached there."""
    wall = Box("wall", 900, 0, 1100, 4000, False)
    assert joint_saving(ROUTE, DeckBoxes((wall,), (500, 1500, 3000))) is None


def test_no_lines_at_all() -> None:
    assert joint_saving(ROUTE, DeckBoxes((), ())) is None


def test_what_hangs_in_the_other_way_leaves_the_saving_untold() -> None:
    """A supply hangs across the line at 150, from x = 200 to 300."""
    supply = Box("mill", 2000, 1400, 3000, 1700, True)
    assert joint_saving(ROUTE, DeckBoxes((supply,), (1500,))) is None
