"""A cable's conductor -> what a metre of it resists, and by which table or rule."""

from __future__ import annotations

from rigc.facts.conductors import (
    COPPER_OHM_MM2_PER_M,
    COPPER_PER_KELVIN,
    FLEXIBLE,
    SOLID,
    TABLE_CELSIUS,
    TINNED,
)
from rigc.facts.fact import Fact
from rigc.model.stock import Cable
from rigc.record import Record


class Conductor(Record):
    """One conductor: `ohm_per_m` at 20 °C, by which `source`, as the cable's block has it `typed`."""

    ohm_per_m: float
    source: str
    typed: str


def conductor(cable: Cable) -> Conductor | None:
    """The conductor of a cable; None where its block does not state one.

    An area that a table has is taken from it: the column for solid wire where the block says `solid`, for tinned wire
    where it says `tinned`, else that for flexible wire. Wire gauges and other areas are reckoned as plain solid copper.
    """
    if cable.area_mm2 is None:
        return None
    area, typed = cable.area_mm2.value, cable.area_mm2.typed
    listed = None if is_gauge(typed) else _listed(cable.strand, area)
    if listed is not None:
        return Conductor(listed.value / 1000, listed.source, typed)
    rule = "ASTM B258 diameter" if is_gauge(typed) else "not in the tables: area"
    return Conductor(COPPER_OHM_MM2_PER_M.value / area, f"{rule}, {COPPER_OHM_MM2_PER_M.source}", typed)


def is_gauge(typed: str) -> bool:
    """Whether a conductor was stated as a wire gauge."""
    return typed.lower().endswith("awg")


def warmed(
    ohm: float, celsius: float, per_kelvin: float = COPPER_PER_KELVIN.value, at: float = TABLE_CELSIUS.value
) -> float:
    """A resistance at one temperature (`at`, 20 °C) -> the same at another; `per_kelvin` is the coefficient at the first."""
    return ohm * (1 + per_kelvin * (celsius - at))


def _listed(strand: str | None, area_mm2: float) -> Fact | None:
    table = {"solid": SOLID, "tinned": TINNED}.get(strand or "", FLEXIBLE)
    return next((fact for area, fact in table.items() if abs(area - area_mm2) < 1e-6), None)
