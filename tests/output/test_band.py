"""The band on each page's head: no text of it over another, whatever a rig and its sheets are called."""

from __future__ import annotations

from itertools import product

from rigc.output.paper.band import LEFT, MIDDLE, RIGHT, band, cut
from rigc.output.paper.setting import width

NUMBER = "page 888 of 888"
NAMES = ("", "Tide Line", "A board with a name that a tour gave it", "W" * 10000)
WIDE, DEEP = 277.0, 183.0  # mm: a page of A4 lying across, and upright


def test_no_text_stands_over_another() -> None:
    for left, right, warning, name, (wide, large) in product(
        NAMES, NAMES, ("", "DRAFT: not to build from"), NAMES, ((WIDE, False), (DEEP, False), (DEEP, True))
    ):
        told = band(left, right, warning, (name, "code"), NUMBER, wide, wide == WIDE, large)
        middle = width(f"{told.middle} · {NUMBER}" if told.middle else NUMBER, MIDDLE)
        assert warning in told.middle
        assert width(told.left, RIGHT if large else LEFT) < told.left_mm
        assert width(told.right, RIGHT) < told.right_mm
        at = (wide + told.lean_mm) / 2  # the middle of the middle text
        assert told.left_mm <= at - middle / 2 + 0.1
        assert at + middle / 2 <= wide - told.right_mm + 0.1


def test_a_filed_page_that_lies_across_is_bare_where_it_is_punched() -> None:
    """Holes of 6 mm, 80 mm apart, in the middle of the edge: 5 mm on each side of their middles stay bare."""
    for left, right, name in product(NAMES, repeat=3):
        told = band(left, right, "", (name, "code"), NUMBER, WIDE, punched=True)
        assert told.lean_mm == 0
        assert width(f"{told.middle} · {NUMBER}", MIDDLE) <= 80 - 2 * 5
        assert max(width(told.left, LEFT), width(told.right, RIGHT)) <= WIDE / 2 - 40 - 5


def test_names_give_way_before_the_warning_does() -> None:
    told = band(
        "R2  Missing and assumed facts", "revision A", "DRAFT: not to build from", (NAMES[2], "x"), NUMBER, DEEP, False
    )
    assert told.middle == "DRAFT: not to build from · x"
    assert (
        band("S1", "revision A", "", ("Tide Line", "tide-line"), NUMBER, DEEP, False).middle == "Tide Line · tide-line"
    )
    assert band("S1", "revision A", "", ("W" * 40, "x"), NUMBER, DEEP, False).middle.endswith("W…")


def test_what_is_cut_has_its_dots_within_the_room() -> None:
    assert cut("Tide Line", MIDDLE, 100.0) == "Tide Line"
    short = cut("W" * 100, MIDDLE, 20.0)
    assert short.endswith("…")
    assert width(short, MIDDLE) <= 20.0
    assert cut("W" * 100, MIDDLE, 1.0) == "…"
