"""What lies on a deck's very edges belongs to it; a millimetre further is told."""

from __future__ import annotations

import pytest
from written import compiled_written

DECK = "deck board {{\n  size 420 x 320 mm\n  {}\n}}\n"
ON_IT = (
    "drop 0, 320 mm",
    "hole 25 mm at 420, 320 mm",
    'keep-out 420 x 40 mm at 0, 280 mm "handle"',  # 280 + 40 = 320
    "tier back 200..320 mm raised 50 mm",
)
BEYOND = (
    "drop 0, 321 mm",
    "hole 25 mm at 421, 320 mm",
    'keep-out 420 x 41 mm at 0, 280 mm "handle"',
    "tier back 200..321 mm raised 50 mm",
)


@pytest.mark.parametrize("line", ON_IT)
def test_on_the_edge(line: str) -> None:
    assert not [each for each in compiled_written(DECK.format(line)).findings if each.kind.name == "outside-body"]


@pytest.mark.parametrize("line", BEYOND)
def test_beyond_it(line: str) -> None:
    (told,) = [each for each in compiled_written(DECK.format(line)).findings if each.kind.name == "outside-body"]
    assert "320 mm" in told.message and told.span is not None


PANEL = "panel rear on board {{\n  jack l ts insulated at {}\n  jack r ts insulated at {}\n}}\n"


@pytest.mark.parametrize(
    ("places", "message"),
    [
        (("520, 310 mm", "490, 420 mm"), None),  # 420 + 100 and 320 + 100 mm: a panel may hang over an edge
        (
            ("521, 310 mm", "490, 310 mm"),
            "'rear.l' lies at 521, 310 mm, more than 100 mm beyond an edge, on a deck of 420 × 320 mm",
        ),
        (
            ("400, 310 mm", "360, 421 mm"),
            "'rear.r' lies at 360, 421 mm, more than 100 mm beyond an edge, on a deck of 420 × 320 mm",
        ),
        (("400, 310 mm up 20 mm", "400, 310 mm up 45 mm"), None),  # one above the other
        (("400, 310 mm", "400, 310 mm"), "'rear.r' lies at 400, 310 mm, and so does 'rear.l'"),
    ],
)
def test_where_jacks_of_a_panel_lie(places: tuple[str, str], message: str | None) -> None:
    found = compiled_written(DECK.format("thickness 20 mm") + PANEL.format(*places)).findings
    told = [each.message for each in found if each.kind.name == "outside-body"]
    assert told == ([] if message is None else [message])
