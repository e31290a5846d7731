"""What a supply takes from the mains: `mill5.takes`, `.takes-va`, `.heat`, `.at-230v`; `rig.takes-va` for all supplies."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.mains_loads import MainsLoad, MainsLoads
from rigc.analysis.reasons.inputs import derived, known, ours, placed
from rigc.analysis.reasons.operands import operands
from rigc.analysis.reasons.reason import NOT_KNOWN, Input, Reason, told
from rigc.diagnostics.decimals import decimals
from rigc.diagnostics.figures import plain, watts
from rigc.facts.mains import EFFICIENCY_PCT, POWER_FACTOR, SHOWN_V
from rigc.model.rig import Rig
from rigc.model.things import Supply

_POWER = "physics: conservation of energy"
_APPARENT = "physics: apparent power"


def mains_load(rig: Rig, loads: MainsLoads) -> Iterator[Reason]:
    """Six reasons for each supply in use, and six for all of them."""
    for name, load in loads.all.items():
        supply = rig.supplies[name]
        takes, apparent = _takes(supply, load), _apparent(supply, load)
        yield from (takes, apparent, _heat(load, takes))
        for volts in SHOWN_V:
            yield _current(name, load, volts)
    for field, unit, places, total in (
        ("takes", "W", 3, loads.watts),
        ("takes-va", "VA", 2, loads.volt_amperes),
        ("heat", "W", 2, loads.heat_w),
    ):
        yield _sum(loads, field, unit, places, total)
    for volts in SHOWN_V:
        yield _current("rig", loads, volts)


def _takes(supply: Supply, load: MainsLoad) -> Reason:
    given = derived("gives", watts(load.given_w), "W", f"{supply.name}.watts")
    kind = EFFICIENCY_PCT.get(supply.technology or "")
    part = known(f"efficiency of {supply.name}", supply.efficiency) or (() if kind is None else (ours(kind),))
    value, rule = told(load.watts, 2), "taken = given / efficiency"
    formula = f"for want of the efficiency of {supply.name}"
    if load.watts is not None and load.efficiency_pct is not None:
        formula = f"{given.value} / {plain(load.efficiency_pct)} % = {value}"
    return Reason(f"{supply.name}.takes", value, "W", formula, (given, *part), rule, _POWER)


def _apparent(supply: Supply, load: MainsLoad) -> Reason:
    takes = derived("takes", told(load.watts, 2), "W", f"{supply.name}.takes")
    kind = POWER_FACTOR.get(supply.technology or "")
    own = (
        ()
        if supply.power_factor is None
        else (placed(f"power factor of {supply.name}", plain(supply.power_factor), supply.declared),)
    )
    part: tuple[Input, ...] = own or (() if kind is None else (ours(kind),))
    value, rule = told(load.volt_amperes, 2), "volt-amperes = W / power factor"
    formula = f"for want of the efficiency or the power factor of {supply.name}"
    if load.volt_amperes is not None and load.power_factor is not None:
        factor = load.power_factor
        (watt,) = operands(lambda watt: decimals(watt / factor, 2), load.watts or 0.0)
        formula = f"{watt} / {plain(factor)} = {value}"
    return Reason(f"{supply.name}.takes-va", value, "VA", formula, (takes, *part), rule, _APPARENT)


def _heat(load: MainsLoad, takes: Reason) -> Reason:
    given = derived("gives", watts(load.given_w), "W", f"{load.supply}.watts")
    inputs = (derived("takes", takes.value, "W", takes.name), given)
    value = NOT_KNOWN if load.heat_w is None else decimals(load.heat_w, 2)
    formula = "for want of what it takes"
    if load.watts is not None:
        taken, gave = operands(lambda taken, gave: decimals(taken - gave, 2), load.watts, load.given_w)
        formula = f"{taken} − {gave} = {value}"
    return Reason(
        f"{load.supply}.heat", value, "W", formula, inputs, "what it takes and does not give turns to heat", _POWER
    )


def _current(name: str, load: MainsLoad | MainsLoads, volts: int) -> Reason:
    fact, volt_amperes = SHOWN_V[volts], load.volt_amperes
    takes, value = told(volt_amperes, 2), told(load.milliamps(fact.value), 1)
    formula = "for want of its volt-amperes"
    if volt_amperes is not None:
        (taken,) = operands(lambda taken: decimals(taken / fact.value * 1000, 1), volt_amperes)
        formula = f"{taken} / {plain(fact.value)} × 1000 = {value}"
    inputs = (derived("takes", takes, "VA", f"{name}.takes-va"), ours(fact))
    rule = "current = volt-amperes / voltage"
    return Reason(f"{name}.at-{volts}v", value, "mA", formula, inputs, rule, _APPARENT)


def _sum(loads: MainsLoads, field: str, unit: str, places: int, total: float | None) -> Reason:
    each = {
        name: {"takes": load.watts, "takes-va": load.volt_amperes, "heat": load.heat_w}[field]
        for name, load in loads.all.items()
    }
    inputs = tuple(derived(name, told(value, 2), unit, f"{name}.{field}") for name, value in each.items())
    shown = told(total, places)
    formula = "for want of one of them"
    if total is not None:
        parts = operands(lambda *parts: decimals(sum(parts), places), *(value or 0.0 for value in each.values()))
        formula = f"{' + '.join(parts) or '0'} = {shown}"
    return Reason(
        f"rig.{field}",
        shown,
        unit,
        formula,
        inputs,
        "all supplies in use together; amps and desks are not counted",
        _POWER,
    )


REASONS = mains_load
