"""What a scenario's mains do to the supplies: `london.takes-va`, `.takes-a`; `london.weir8.least-va`, `.flux`, `.flux-percent`, `.secondary`."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.mains_loads import MainsLoads
from rigc.analysis.computations.primaries import Primaries
from rigc.analysis.power.primary import Primary
from rigc.analysis.reasons.inputs import derived, ours, placed, stated
from rigc.analysis.reasons.operands import operands
from rigc.analysis.reasons.reason import NOT_KNOWN, Input, Reason
from rigc.diagnostics.decimals import decimals, fixed
from rigc.diagnostics.figures import plain
from rigc.facts.mains import STEP_MORE, STEP_SIZE_VA
from rigc.model.rig import Rig, Scenario

_APPARENT = "physics: apparent power"
_FLUX = "physics: the flux of a core goes with volts per turn over hertz"


def scenario_mains(rig: Rig, loads: MainsLoads, primaries: Primaries) -> Iterator[Reason]:
    """Two reasons for each scenario, and up to four for each supply in it."""
    total = NOT_KNOWN if loads.volt_amperes is None else decimals(loads.volt_amperes, 2)
    for scenario in rig.scenarios.values():
        takes = derived("all supplies", total, "VA", "rig.takes-va")
        formula = "for want of what one supply takes" if loads.volt_amperes is None else f"{total}, in every scenario"
        rule = "all supplies in use together; amps and desks are not counted"
        yield Reason(f"{scenario.name}.takes-va", total, "VA", formula, (takes,), rule, _APPARENT)
        yield _current(scenario, loads, takes)
        for each in primaries.in_scenario(scenario.name):
            yield from _supply(rig, scenario, each)


def _current(scenario: Scenario, loads: MainsLoads, takes: Input) -> Reason:
    name, rule = f"{scenario.name}.takes-a", "current = volt-amperes / the lowest voltage of the scenario"
    mains, volt_amperes, highest = scenario.mains, loads.volt_amperes, loads.highest_amperes(scenario)
    if highest is None or volt_amperes is None or mains is None:
        why = "for want of its mains" if volt_amperes is not None else "for want of what one supply takes"
        return Reason(name, NOT_KNOWN, "A", why, (takes,), rule, _APPARENT)
    low = mains.low_v
    value = fixed(highest, 3)
    inputs = (takes, placed("mains", mains.typed, mains.span))
    (taken,) = operands(lambda taken: fixed(taken / low, 3), volt_amperes)
    return Reason(name, value, "A", f"{taken} / {plain(low)} = {value}", inputs, rule, _APPARENT)


def _supply(rig: Rig, scenario: Scenario, each: Primary) -> Iterator[Reason]:
    supply = rig.supplies[each.supply]
    here = () if scenario.mains is None else (placed("mains", scenario.mains.typed, scenario.mains.span),)
    made = () if each.place is None else (placed(f"{each.supply} is made for", each.place.typed, each.place.span),)
    core = (stated(f"core of {each.supply}", supply.core_hz),)
    if each.step is not None or each.in_voltage is False:
        yield from _step(each)
    yield from _core(each, (*here, *made, *core))
    if each.secondary_pct is not None and each.design_v:
        value = decimals(each.secondary_pct, 0)
        formula = f"{plain(round(each.volts[0], 4))} / {plain(round(each.design_v, 4))} × 100 = {value}"
        rule = "lowest voltage / the middle of the range that the windings are laid out for"
        name = f"{each.scenario}.{each.supply}.secondary"
        yield Reason(name, value, "%", formula, (*here, *made), rule, "physics: a transformer's ratio")


def _step(each: Primary) -> Iterator[Reason]:
    """How large a step transformer must be; nothing where the load is not known."""
    if each.needed_va is None or each.load_va is None:
        return
    name, value, load = f"{each.scenario}.{each.supply}.least-va", f"{each.needed_va:g}", decimals(each.load_va, 2)
    takes = derived("takes", load, "VA", f"{each.supply}.takes-va")
    product = decimals(each.load_va * STEP_MORE.value, 3)
    (exact,) = operands(lambda load: decimals(load * STEP_MORE.value, 3), each.load_va)
    formula = f"{exact} × {plain(STEP_MORE.value)} = {product} → {value}, a size that is made"
    rule, inputs = "a step transformer is rated for more than its load", (takes, ours(STEP_MORE), ours(STEP_SIZE_VA))
    yield Reason(name, value, "VA", formula, inputs, rule, STEP_MORE.source)


def _core(each: Primary, inputs: tuple[Input, ...]) -> Iterator[Reason]:
    """The flux of a winding, and its share of what the core is made for; nothing where no transformer is at the mains."""
    if each.flux is None or each.hertz is None:
        return
    name, flux, turns = f"{each.scenario}.{each.supply}", fixed(each.flux, 3), plain(each.windings)
    formula = f"{plain(round(each.volts[1], 4))} / {turns} / {plain(each.hertz[0])} = {flux}"
    rule = "highest voltage / windings in series / lowest frequency"
    yield Reason(f"{name}.flux", flux, "V/Hz", formula, inputs, rule, _FLUX)
    if each.flux_pct is not None and each.design_flux and each.design_v is not None and each.core_hz is not None:
        design = f"{plain(round(each.design_v, 4))} / {turns} / {plain(each.core_hz)}"
        value = decimals(each.flux_pct, 0)
        made_for = each.design_flux
        (exact,) = operands(lambda flux: decimals(flux / made_for * 100, 0), each.flux, least=3)
        formula = f"{exact} / ({design}) × 100 = {value}"
        rule = "flux / that at the middle of the range it is made for, at the core's own frequency"
        yield Reason(f"{name}.flux-percent", value, "%", formula, inputs, rule, _FLUX)


REASONS = scenario_mains
