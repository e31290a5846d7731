"""Sums over the whole board: what it weighs, what each supply gives, how much cable of each signal."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.leads.lengths.cable_lengths import CableLengths
from rigc.analysis.power.supply_totals import SupplyTotals
from rigc.analysis.revision.compared.aspect import COMPUTED, Aspect
from rigc.analysis.weight.case_loads import CaseLoads
from rigc.analysis.weight.mass import Mass
from rigc.diagnostics.figures import metres_cut, plain, watts


def sums(mass: Mass, loads: CaseLoads, supplies: SupplyTotals, lengths: CableLengths) -> Iterator[Aspect]:
    """Figures only; nobody has to do anything for them. Boards are weighed to ten grams."""
    weight, cased = mass.total_kg, mass.with_case_kg
    for field, mass_kg in (("mass", weight), ("mass with its case", cased)):
        yield _figure("board", field, None if mass_kg is None else f"{mass_kg:.2f} kg", mass_kg)
    for load in loads.all if len(loads.all) > 1 else ():
        each = load.mass.with_case_kg
        yield _figure(load.name, "mass", None if each is None else f"{each:.2f} kg", each)
    for balance in mass.balances:
        known = None if balance.x_mm is None or balance.y_mm is None else f"{balance.x_mm:.0f}, {balance.y_mm:.0f} mm"
        yield _figure(f"deck {balance.deck}", "balance point", known, (balance.x_mm, balance.y_mm))
    for supply in supplies.all:
        sign = "at least " if supply.unknown else ""
        ceiling = "" if supply.ceiling is None else f" of {plain(supply.ceiling)}"
        amount = watts(supply.taken) if supply.unit == "W" else plain(supply.taken)
        yield _figure(
            f"supply {supply.supply}", "gives", f"{sign}{amount}{ceiling} {supply.unit}", (supply.taken, supply.ceiling)
        )
    for signal, total in lengths.totals.items():
        yield _figure(f"{signal} cable", "finished", f"{metres_cut(round(total.finished))} m", total.finished)


def _figure(name: str, field: str, text: str | None, value: object) -> Aspect:
    return Aspect(
        "sum", name, field, text or "not known", value, COMPUTED, detail=field in ("balance point", "finished")
    )


ASPECTS = sums
