"""A supply, or an amp or a keyboard that states its mains, is not made for those of a scenario: their voltage lies outside its range (error), or their frequency does,
its transformer would be saturated, or the step transformer before it is too small (warnings); or a selector is set that it has not (remark).

Why it matters: too much voltage or too few hertz drive a transformer's core into saturation: it overheats. Too little
voltage lets the regulators drop out: hum and resets. A transformer's flux goes with V/Hz, so both count.
What to do: set the selector, put a step transformer (earthed, isolating, at least {mains.STEP_MORE} times the load) before the supply and
declare it, or use another supply there. A plug adaptor converts no voltage. Ask the venue what its sockets give.
Source: arithmetic on stated values; physics: flux is proportional to V/f. The factor {mains.STEP_MORE} is common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.mains.country_mains import given_there, other_hertz
from rigc.analysis.mains.mains_loads import MainsLoads
from rigc.analysis.mains.own_intakes import used_there
from rigc.analysis.mains.primaries import Primaries
from rigc.analysis.mains.primary import Primary, Taker
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.diagnostics.mend import AddTo, Delete, Mend, Replace
from rigc.diagnostics.wording import listed
from rigc.facts.mains import SHOWN_V, STEP_MORE, WIDE_RANGE
from rigc.model.fact import Quantity
from rigc.model.rig import Rig, Scenario
from rigc.model.things import Instrument, MainsRange, Supply, Unit
from rigc.source import Span

KIND = Kind(
    "unfit-mains",
    Level.ERROR,
    __doc__,
    "primary range contains each scenario's mains voltage; warning where only frequency or V/f lies outside",
    "arithmetic on stated values; physics: flux is proportional to V/f",
)


def unfit_mains(rig: Rig, loads: MainsLoads, primaries: Primaries) -> Iterator[Diagnostic]:
    """One finding for each supply and scenario; can't-check once for each supply that states no range or no frequency, for each amp or
    keyboard that states none and goes where the mains are others, and for each scenario that states no mains."""
    for scenario in rig.scenarios.values():
        if scenario.mains is None and loads.all:
            yield _no_mains(scenario, tuple(loads.all))
    silent: dict[tuple[str, str], Primary] = {}
    for each in primaries.all:
        if each.in_voltage is False:
            yield _wrong_voltage(rig, each)
        elif each.in_voltage is None:
            silent.setdefault((each.supply, "mains"), each)
        elif each.in_frequency is False or each.over_flux:
            if not _suits_country(rig.scenarios[each.scenario], each):
                yield _wrong_frequency(rig, each)
        elif each.in_frequency is None:
            whose = each.scenario if each.hertz is None else each.supply
            silent.setdefault((whose, "frequency"), each)
        if each.in_voltage and each.step_too_small:
            yield _small_step(rig, each)
    for (name, what), each in silent.items():
        yield _unknown(rig, name, what, each)
    yield from _travels(rig)
    for scenario in rig.scenarios.values():
        for name, volts in scenario.selectors:
            if _nothing_to_set(_taker(rig, name), volts.value):
                yield _no_selector(scenario, name, volts)


def _suits_country(scenario: Scenario, each: Primary) -> bool:
    """Whether it is made for the frequency of the scenario's country, and the stated one is another: that is told of the scenario, once."""
    place = each.place
    if place is None or place.hertz_low is None or place.hertz_high is None:
        return False
    return any(place.hertz_low <= hertz <= place.hertz_high for hertz in other_hertz(scenario))


def _travels(rig: Rig) -> Iterator[Diagnostic]:
    """Amps and keyboards that do not say what mains they take, and are used in scenarios of which no range could hold all. A desk is most
    often the venue's."""
    used: dict[str, tuple[Unit | Instrument, list[Scenario]]] = {}
    for scenario in rig.scenarios.values():
        for each in used_there(rig, scenario):
            used.setdefault(each.name, (each, []))[1].append(scenario)
    for name, (thing, scenarios) in used.items():
        first = scenarios[0]
        other = next((each for each in scenarios if _other_mains(first, each)), None)
        if other is None or thing.mains or not (thing.kind == "amp" or "keyboard" in thing.flags):
            continue
        if thing.on_battery or (isinstance(thing, Unit) and thing.volts is not None):
            continue
        lent = "; where each venue lends its own, declare one for each and name it there: amps ..."
        yield KIND.cant_check(
            thing.declared,
            f"'{name}' does not say what mains it takes, and is used in '{first.name}' and '{other.name}', whose mains differ",
            subject=(name,),
            help=f"read it off its plate and write it in '{name}', for example mains 100..240 V 50..60 Hz"
            + (lent if thing.kind == "amp" else ""),
        )


def _other_mains(one: Scenario, other: Scenario) -> bool:
    """Whether two venues' mains are of other volts; those that share a voltage suit the same things."""
    if one.mains is None or other.mains is None:
        return False
    return one.mains.high_v < other.mains.low_v or other.mains.high_v < one.mains.low_v


def _taker(rig: Rig, name: str) -> Taker:
    """The supply of that name, or what else has a mains lead of its own."""
    return rig.supplies.get(name) or rig.units.get(name) or rig.instruments[name]


def _nothing_to_set(supply: Taker, volts: float) -> bool:
    """Whether it takes this voltage in its only range, or no mains at all; another voltage is told as wrong."""
    one = len(supply.mains) == 1 and supply.mains[0].low_v <= volts <= supply.mains[0].high_v
    return one or (not supply.takes_mains if isinstance(supply, Supply) else not supply.mains)


def _kind(thing: Taker) -> str:
    """What it is, in a word."""
    return next((flag for flag in thing.flags if thing.kind == "source"), thing.kind)


def _no_selector(scenario: Scenario, name: str, volts: Quantity) -> Diagnostic:
    line = f"selector {name} {volts.value:g} V"
    return KIND.at(
        volts.span,
        f"'{name}' has no selector that '{scenario.name}' could set: nothing is switched there",
        subject=(name, scenario.name),
        label="set to this",
        mends=(Mend(f"delete `{line}`", (Delete(volts.span),)),),
        otherwise=f"write one `mains` line in '{name}' for each position of its selector",
        level=Level.REMARK,
    )


def _wrong_voltage(rig: Rig, each: Primary) -> Diagnostic:
    supply, place = _taker(rig, each.supply), each.place
    if place is None:
        said = f"'{each.supply}' has no selector position {each.selected:g} V, which '{each.scenario}' states"
    else:
        bounds = f"{_range((place.low_v, place.high_v))} V{' only' if place.low_v == place.high_v else ''}"
        said = f"'{each.supply}' takes {bounds}{_position(each)}, and {_arriving(each)}{_result(each)}"
    return KIND.at(
        _span(rig, each),
        said,
        subject=(each.supply, each.scenario),
        label="this mains",
        also=(Label((place or supply.mains[0]).span, "made for this"),),
        numbers=(Number("mains", each.volts[0], "V"),),
        note=_not_of_the_country(rig.scenarios[each.scenario]),
        mends=_mends(rig, supply, each),
        otherwise=_otherwise(each, _kind(supply)),
    )


def _not_of_the_country(scenario: Scenario) -> str:
    """That the mains, or the country, may be the slip: homes there have others."""
    given = given_there(scenario)
    return f"{scenario.country} has {given}: see whether the mains or the country is wrong" if given else ""


def _arriving(each: Primary) -> str:
    whose = f"the step transformer of '{each.scenario}'" if each.step is not None else f"'{each.scenario}'"
    return f"{whose} gives {_range(each.volts)} V"


def _position(each: Primary) -> str:
    if each.selected is None:
        return ""
    return f" with its selector at {each.selected:g} V"


def _result(each: Primary) -> str:
    if each.secondary_pct is None or each.place is None or each.volts[0] >= each.place.low_v:
        return ""
    return f": its secondary gives {each.secondary_pct:.0f} % of design, so what it feeds drops out or hums"


def _mends(rig: Rig, supply: Taker, each: Primary) -> tuple[Mend, ...]:
    """The selector set, or its statement or that of a step transformer taken away or put right, or such a transformer put before the supply."""
    scenario = rig.scenarios[each.scenario]
    stated = next((volts for name, volts in scenario.selectors if name == supply.name), None)
    fit = [place for place in supply.mains if place.low_v <= each.volts[0] and each.volts[1] <= place.high_v]
    if fit and stated is not None and len(supply.mains) < 2:
        words = f"'{supply.name}' has no selector: delete `selector {supply.name} {stated.value:g} V`"
        return (Mend(words, (Delete(stated.span),)),)
    if fit and stated is not None:
        middle = f"{fit[0].middle_v:g} V"
        words = f"set the selector of '{supply.name}' to {middle} there: write `selector {supply.name} {middle}`"
        return (Mend(words, (Replace(stated.span, middle),)),)
    step = next((it for it in scenario.transformers if it[0] == supply.name), None)
    if step is not None:
        words = f"take the step transformer before '{supply.name}' away there: delete its line"
        away = Mend(words, (Delete(step[1].span),))
        if (
            scenario.mains is None
            or each.place is None
            or each.place.low_v <= scenario.mains.low_v <= each.place.high_v
        ):
            return (away,)
        first, second = f"{scenario.mains.low_v:g} V", f"{_secondary(each.place):g} V"
        words = f"take one there that steps from the mains to what '{supply.name}' takes: write `transformer {first} to {second}`"
        return (away, Mend(words, (Replace(step[1].span, first), Replace(step[2].span, second))))
    if each.place is None or each.needed_va is None or each.in_frequency is False:
        return ()
    line = f"transformer {each.volts[0]:g} V to {_secondary(each.place):g} V {each.needed_va:g} VA before {supply.name}"
    words = (
        f"put an earthed, isolating step transformer of {each.needed_va:g} VA or more before '{supply.name}' there, to be verified by "
        f"measurement: write `{line}`"
    )
    return (Mend(words, (AddTo("scenario", scenario.name, line),)),)


def _otherwise(each: Primary, kind: str) -> str:
    other = f"use another {kind} there, one that is made for this mains"
    if each.in_frequency is False:
        return f"{other}: a step transformer would give it its volts, but not its hertz"
    if each.needed_va is None and kind != "supply" and each.place is not None:
        line = f"transformer {each.volts[0]:g} V to {_secondary(each.place):g} V ___ VA before {each.supply}"
        return f"{other}; or an earthed, isolating step transformer of {STEP_MORE} times the volt-amperes on its plate: `{line}`"
    if each.needed_va is None:
        return f"{other}; or a step transformer of {STEP_MORE} times its volt-amperes, which can't be reckoned yet"
    return other


def _secondary(place: MainsRange) -> float:
    """What a step transformer should give, in V: the middle of the range; of a wide one a nominal voltage that lies in it."""
    if place.high_v <= WIDE_RANGE.value * place.low_v:
        return place.middle_v
    nominal = (fact.value for fact in reversed(SHOWN_V.values()))
    return next((volts for volts in nominal if place.low_v <= volts <= place.high_v), place.middle_v)


def _wrong_frequency(rig: Rig, each: Primary) -> Diagnostic:
    place = each.place
    hertz = "" if each.hertz is None else _range(each.hertz)
    if each.over_flux and each.flux is not None and each.flux_pct is not None:
        said = (
            f"{_range(each.volts)} V {hertz} Hz in '{each.scenario}' drives the core of '{each.supply}' at {each.flux:.3g} V/Hz, "
            f"{each.flux_pct:.0f} % of the {each.design_flux:.3g} V/Hz that it is laid out for"
        )
    else:
        said = f"{hertz} Hz in '{each.scenario}' is not in the {_made_for(each)} Hz of '{each.supply}'{_share(each)}"
    return KIND.at(
        _span(rig, each),
        said,
        subject=(each.supply, each.scenario),
        label="this mains",
        also=(Label(place.span, "made for this"),) if place is not None else (),
        numbers=(Number("flux", each.flux, "V/Hz"),) if each.flux is not None else (),
        help="ask its maker whether it may run so"
        + ("; watch its temperature" if _warmer(each) else "")
        + f", or use another {_kind(_taker(rig, each.supply))} there",
        level=Level.WARNING,
    )


def _warmer(each: Primary) -> bool:
    """Whether its core is driven harder than it is laid out for, or that can't be told; more hertz drive it less."""
    return each.flux is None or each.design_flux is None or each.flux > each.design_flux * (1 + 1e-9)


def _share(each: Primary) -> str:
    if each.flux is None or each.flux_pct is None:
        return ""
    return f": {each.flux:.3g} V/Hz, {each.flux_pct:.0f} % of design"


def _made_for(each: Primary) -> str:
    place = each.place
    if place is None or place.hertz_low is None or place.hertz_high is None:
        return "?"
    return _range((place.hertz_low, place.hertz_high))


def _small_step(rig: Rig, each: Primary) -> Diagnostic:
    return KIND.at(
        _span(rig, each),
        f"the step transformer of {each.step_va:g} VA before '{each.supply}' in '{each.scenario}' is less than {STEP_MORE} times "
        f"the {each.load_va:.1f} VA behind it",
        subject=(each.supply, each.scenario),
        label="in this scenario",
        mends=_larger_step(rig, each),
        level=Level.WARNING,
    )


def _larger_step(rig: Rig, each: Primary) -> tuple[Mend, ...]:
    step = next(it for it in rig.scenarios[each.scenario].transformers if it[0] == each.supply)
    size = f"{each.needed_va:g} VA"
    return (Mend(f"use one of {size} or more, and write `{size}`", (Replace(step[3].span, size),)),)


def _no_mains(scenario: Scenario, supplies: tuple[str, ...]) -> Diagnostic:
    suit = "suits" if len(supplies) == 1 else "suit"
    return KIND.cant_check(
        scenario.declared,
        f"'{scenario.name}' states no mains; whether {listed(supplies)} {suit} it can't be checked",
        subject=(scenario.name, *supplies),
        help=f"write in '{scenario.name}' what the venue's sockets give, for example mains 230 V 50 Hz",
    )


def _unknown(rig: Rig, name: str, what: str, each: Primary) -> Diagnostic:
    if name in rig.scenarios and name == each.scenario:
        return KIND.cant_check(
            rig.scenarios[name].declared,
            f"'{name}' states no mains frequency; whether it suits '{each.supply}' can't be checked",
            subject=(name,),
            help="write it behind the voltage, for example mains 230 V 50 Hz",
        )
    said = "states no mains range" if what == "mains" else "states no mains frequency"
    return KIND.cant_check(
        _taker(rig, name).declared,
        f"'{name}' {said}; whether the mains of '{each.scenario}' suit it can't be checked",
        subject=(name,),
        help=f"read it off its plate and write it in '{name}', for example mains 100..240 V 50..60 Hz",
    )


def _span(rig: Rig, each: Primary) -> Span:
    scenario = rig.scenarios[each.scenario]
    return scenario.declared if scenario.mains is None else scenario.mains.span


def _range(ends: tuple[float, float]) -> str:
    low, high = (f"{end:.4g}" for end in ends)
    return low if low == high else f"{low} to {high}"


CHECK = unfit_mains
