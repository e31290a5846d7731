"""What a supply gives in all: `mill5.load`, `.watts`, `.ceiling`, `.share`, `.spare`."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.power_assignment import PowerAssignment
from rigc.analysis.computations.supply_totals import SupplyTotal, SupplyTotals
from rigc.analysis.power.outlet_loads import OutletLoad
from rigc.analysis.reasons.as_stated import as_stated
from rigc.analysis.reasons.inputs import derived, placed
from rigc.analysis.reasons.reason import ARITHMETIC, NOT_KNOWN, Input, Reason
from rigc.diagnostics.figures import plain, share, watts
from rigc.model.rig import Rig


def supply_load(rig: Rig, power: PowerAssignment, totals: SupplyTotals) -> Iterator[Reason]:
    """Five reasons for each supply in use."""
    for total in totals.all:
        loads = [load for port, load in power.loads.items() if port.thing == total.supply]
        supply = rig.supplies[total.supply]
        yield _load(total, loads)
        yield _watts(total, loads)
        fact = supply.ceiling_w or supply.ceiling_ma
        shown = None if fact is None else f"{plain(fact.value)} {total.unit}"
        yield as_stated(f"{total.supply}.ceiling", f"the ceiling of {total.supply}", fact, "", shown)
        yield _share(total)
        yield _spare(rig, total)


def _load(total: SupplyTotal, loads: list[OutletLoad]) -> Reason:
    used = [load for load in loads if load.units]
    value = plain(total.drawn_ma)
    formula = f"{' + '.join(plain(load.known_ma) for load in used) or '0'} = {value}{_without(total)}"
    rule = "the loads of its outlets; a current that is not known is left out and named"
    return Reason(f"{total.supply}.load", value, "mA", formula, _loads(used), rule, ARITHMETIC)


def _watts(total: SupplyTotal, loads: list[OutletLoad]) -> Reason:
    used = [load for load in loads if load.units]
    volts = dict.fromkeys(load.volts for load in used)
    sums = {each: [plain(load.known_ma) for load in used if load.volts == each] for each in volts}
    terms = [
        f"({' + '.join(loads)}) × {plain(each)}" if len(loads) > 1 else f"{loads[0]} × {plain(each)}"
        for each, loads in sums.items()
    ]
    value = watts(total.drawn_w)
    formula = f"({' + '.join(terms) or '0'}) / 1000 = {value}{_without(total)}"
    settings = tuple(derived(f"{load.outlet} set to", plain(load.volts), "V", f"{load.outlet}.volts") for load in used)
    rule = "load × voltage, outlet by outlet; volt-amperes of an AC outlet count as W"
    return Reason(f"{total.supply}.watts", value, "W", formula, (*_loads(used), *settings), rule, ARITHMETIC)


def _loads(used: list[OutletLoad]) -> tuple[Input, ...]:
    return tuple(
        derived(
            f"load of {load.outlet}", NOT_KNOWN if load.unknown else plain(load.known_ma), "mA", f"{load.outlet}.load"
        )
        for load in used
    )


def _without(total: SupplyTotal) -> str:
    return f", without {', '.join(total.unknown)}" if total.unknown else ""


def _share(total: SupplyTotal) -> Reason:
    name, rule = f"{total.supply}.share", "load / ceiling × 100, in the ceiling's unit"
    in_ma = total.unit == "mA"
    taken = plain(total.drawn_ma) if in_ma else watts(total.drawn_w)
    load = derived("load", taken, total.unit, f"{total.supply}.{'load' if in_ma else 'watts'}")
    if not total.ceiling:
        ceiling = derived("ceiling", NOT_KNOWN, "", f"{total.supply}.ceiling")
        return Reason(name, NOT_KNOWN, "%", "the source states no ceiling", (load, ceiling), rule, ARITHMETIC)
    value = share(total.known_pct)
    ceiling = derived("ceiling", f"{plain(total.ceiling)} {total.unit}", "", f"{total.supply}.ceiling")
    formula = f"{taken} / {plain(total.ceiling)} × 100 = {value}{_without(total)}"
    return Reason(name, value, "%", formula, (load, ceiling), rule, ARITHMETIC)


def _spare(rig: Rig, total: SupplyTotal) -> Reason:
    value = str(total.spare)
    inputs = (placed(total.supply, f"{total.outlets} outlets", rig.supplies[total.supply].declared),)
    formula = f"{total.outlets} − {total.in_use} in use − {total.kept} reserved = {value}"
    rule = "outlets that feed nothing and are not kept for later"
    return Reason(f"{total.supply}.spare", value, "", formula, inputs, rule, ARITHMETIC)


REASONS = supply_load
