"""Callouts: labels in rows, none over another and none on another's leader."""

from __future__ import annotations

from rigc.reports.drawings.deck.callouts import ROW, Callout, callouts, depth, rows
from rigc.reports.drawings.shapes import Label, Line


def test_rows() -> None:
    """From right to left: c alone, b runs into c, a into b; d is clear of them all."""
    wanted = (Callout("rotunda", (0, 9)), Callout("lant", (5, 9)), Callout("marl", (10, 9)), Callout("plumb", (60, 9)))
    assert {call.text: row for call, row in rows(wanted)} == {"rotunda": 2, "lant": 1, "marl": 0, "plumb": 0}
    assert depth(wanted) == 3 * ROW
    assert depth(()) == 0


def test_a_column_of_points_comes_to_an_end() -> None:
    wanted = tuple(Callout(name, (5, 9)) for name in ("marl", "lant", "plumb"))
    assert sorted(row for _, row in rows(wanted)) == [0, 1, 2]


def test_above_and_below() -> None:
    (above,) = [shape for shape in callouts((Callout("marl", (5, 9)),), 3) if isinstance(shape, Label)]
    (below,) = [shape for shape in callouts((Callout("marl", (5, 9)),), 20, below=True) if isinstance(shape, Label)]
    assert (above.y, above.level, below.y, below.level) == (3, "baseline", 20, "top")


def test_no_leader_meets_a_label() -> None:
    """Two points 0.3 mm apart: the farther label stands above the nearer one, its leader left of that label."""
    wanted = (Callout("signalbox", (5.0, 9)), Callout("lapwing", (5.3, 9)))
    shapes = callouts(wanted, 3)
    near = next(shape for shape in shapes if isinstance(shape, Label) and shape.text == "lapwing")
    leaders = [shape.x1 for shape in shapes if isinstance(shape, Line)]
    assert len(leaders) == 2
    assert all(x < near.x for x in leaders)
