"""A cable's conductor -> what a metre of it resists, and by which table or rule: `twin.conductor`."""

from __future__ import annotations

from typing import TypeVar

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
from rigc.traced.figure import Figure, known_figure
from rigc.traced.given import choice, ours, stated
from rigc.traced.term import Traced
from rigc.traced.units import OHM_PER_KM

N = TypeVar("N", float, Traced)


class Conductor(Record):
    """One conductor: what a kilometre of it resists at 20 °C, in Ω, which is as many mΩ a metre; as the cable's block has it
    `typed`."""

    ohm_per_km: Figure
    typed: str

    @property
    def ohm_per_m(self) -> float:
        """What a metre of it resists at 20 °C."""
        return float(self.ohm_per_km) / 1000

    @property
    def source(self) -> str:
        """The table or rule."""
        return self.ohm_per_km.source


def conductor(cable: Cable) -> Conductor | None:
    """The conductor of a cable; None where its block does not state one.

    An area that a table has is taken from it: the column for solid wire where the block says `solid`, for tinned wire
    where it says `tinned`, else that for flexible wire. Wire gauges and other areas are reckoned as plain solid copper.
    """
    area = cable.area_mm2
    if area is None:
        return None
    name = f"{cable.name}.conductor"
    listed = None if is_gauge(area.typed) else _listed(cable.strand, area.value)
    if listed is not None:
        metre = known_figure(
            name,
            ours(listed),
            OHM_PER_KM,
            choice(f"the conductor of {cable.name}", area),
            rule="as the table has it for its area and strand",
            source=listed.source,
        )
        return Conductor(metre, area.typed)
    by = "ASTM B258 diameter" if is_gauge(area.typed) else "not in the tables: area"
    metre = known_figure(
        name,
        ours(COPPER_OHM_MM2_PER_M) / stated(f"the conductor of {cable.name}", area) * 1000,
        OHM_PER_KM,
        rule="resistivity / area, as plain solid copper",
        source=f"{by}, {COPPER_OHM_MM2_PER_M.source}",
    )
    return Conductor(metre, area.typed)


def is_gauge(typed: str) -> bool:
    """Whether a conductor was stated as a wire gauge."""
    return typed.lower().endswith("awg")


def warmed(cold: N, celsius: float, per_kelvin: float = COPPER_PER_KELVIN.value, at: float = TABLE_CELSIUS.value) -> N:
    """A resistance at one temperature (`at`, 20 °C) -> the same at another; `per_kelvin` is the coefficient at the first.

    What it loses of a voltage grows alike. Of terms a term.
    """
    warm: N = cold * (1 + per_kelvin * (celsius - at))
    return warm


def _listed(strand: str | None, area_mm2: float) -> Fact | None:
    table = {"solid": SOLID, "tinned": TINNED}.get(strand or "", FLEXIBLE)
    return next((fact for area, fact in table.items() if abs(area - area_mm2) < 1e-6), None)
