"""Inlet ratings and the ceilings of low voltage against the standards that they name."""

from __future__ import annotations

import pytest

from rigc.facts.mains import INLET_A, LOW_AC_V, LOW_DC_V, LOWER_DC_V

# IEC 60320 as listed in AS/NZS 60320.1:2004: a connector's number, its current and class. An inlet's number is one more.
CONNECTORS = {5: (2.5, "class I"), 7: (2.5, "class II"), 13: (10, "class I"), 15: (10, "class I"), 19: (16, "class I")}


@pytest.mark.parametrize("number", CONNECTORS)
def test_inlets(number: int) -> None:
    amperes, kind = CONNECTORS[number]
    fact = INLET_A[f"C{number + 1}"]
    assert fact.value == amperes
    assert kind in fact.says.replace("(earthed)", "").rstrip().split(", ")[-1].strip()


def test_no_inlet_but_those() -> None:
    assert len(INLET_A) == len(CONNECTORS)


def test_low_voltage() -> None:
    """SELV: 50 V AC r.m.s., 120 V ripple-free DC (IEV, from IEC 61558-1 and IEC 61140); ES1: 60 V DC (IEC 62368-1 table 4,
    from memory, which the fact must say)."""
    assert (LOW_AC_V.value, LOW_DC_V.value, LOWER_DC_V.value) == (50, 120, 60)
    assert "memory" in LOWER_DC_V.source
    assert "61140" in LOW_AC_V.source
