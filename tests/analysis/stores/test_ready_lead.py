"""What a lead that is bought weighs and costs: of the list of its signal, by its length, and only for a straight lead."""

from __future__ import annotations

from types import SimpleNamespace
from typing import Any

import pytest

from rigc.analysis.stores.ready_lead import next_mass, next_price, ready_mass, ready_price

LISTED: Any = SimpleNamespace(
    stock=SimpleNamespace(
        premade_list=lambda signal: signal,
        premade_kg={"dc": {600.0: 0.030, 900.0: 0.040}},
        premade_price={"dc": {600.0: 6, 900.0: 8}},
    )
)


def lead(leg_of: str | None = None, turned: bool = False, signal: str = "dc") -> Any:
    return SimpleNamespace(mark="D1", signal=signal, leg_of=leg_of, make=SimpleNamespace(turned=turned))


@pytest.mark.parametrize(
    ("own", "premade", "kg", "price"),
    [
        (lead(), 6000, 0.030, 6),  # in tenths of a millimetre
        (lead(), 9000, 0.040, 8),
        (lead(), 7000, None, None),  # in no list
        (lead(), None, None, None),  # longer than any
        (lead(leg_of="D1"), 6000, None, None),
        (lead(turned=True), 6000, None, None),
        (lead(leg_of="D1"), None, None, None),
        (lead(signal="audio"), 6000, None, None),
    ],
)
def test_the_next_length_that_there_is(own: Any, premade: int | None, kg: float | None, price: int | None) -> None:
    length: Any = SimpleNamespace(premade=premade)
    assert (next_mass(LISTED, own, length), next_price(LISTED, own, length)) == (kg, price)


@pytest.mark.parametrize(
    ("own", "status", "supplied", "kg", "price"),
    [
        (lead(), "buy", 600.0, 0.030, 6),
        (lead(), "buy", None, None, None),
        (lead(), "make", 600.0, None, None),
        (lead(), "buy", 700.0, None, None),
        (lead(leg_of="D1"), "buy", 600.0, None, None),
        (lead(turned=True), "buy", 600.0, 0.030, None),  # it weighs as much, and is another lead in the shop
    ],
)
def test_a_length_that_is_bought(
    monkeypatch: pytest.MonkeyPatch, own: Any, status: str, supplied: float | None, kg: float | None, price: int | None
) -> None:
    monkeypatch.setattr("rigc.analysis.stores.ready_lead.status", lambda _, __: status)
    assert (ready_mass(LISTED, own, supplied), ready_price(LISTED, own, supplied)) == (kg, price)
