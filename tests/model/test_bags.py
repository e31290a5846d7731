"""Bags of spares whose names differ in capitals only are told; others are two bags."""

from __future__ import annotations

import pytest
from written import compiled_written


@pytest.mark.parametrize(
    ("bag", "told"),
    [
        ("Lid pocket", ['the bags "lid pocket" and "Lid pocket" differ in capitals only']),
        ("lid pocket", []),
        ("lid", []),
    ],
)
def test_capitals(bag: str, told: list[str]) -> None:
    spares = f'spares {{\n  2 of "9 V block" in "lid pocket"\n  1 of "spring" in "{bag}"\n}}\n'
    found = compiled_written(spares).findings
    assert [each.message for each in found if each.message.startswith("the bags")] == told
