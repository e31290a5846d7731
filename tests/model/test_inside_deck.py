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
