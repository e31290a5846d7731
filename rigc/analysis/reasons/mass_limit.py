"""How far a case is from what may be lifted or flown: `rig.lift.most`, `.weighs`, `.left`; `rig.airline`, `rig.case` likewise; of
several cases `trunk.lift.most` and so on."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.case_loads import CaseLoad, CaseLoads, MassLimit
from rigc.analysis.reasons.inputs import limit, placed
from rigc.analysis.reasons.operands import operands
from rigc.diagnostics.figures import kilograms, plain
from rigc.facts.weight import ONE_LIFTER_KG
from rigc.model.rig import Rig
from rigc.traced.reason import ARITHMETIC, STATED, Reason


def mass_limit(rig: Rig, loads: CaseLoads) -> Iterator[Reason]:
    """For each case three reasons for the limit of one lifter, and for each other one that the source states."""
    for load in loads.all:
        for each in loads.limits:
            yield from _limit(rig, load, each, "rig" if len(loads.all) == 1 else load.name)


def _limit(rig: Rig, load: CaseLoad, each: MassLimit, what: str) -> Iterator[Reason]:
    name, mass, most, own = each.name, load.mass, each.most_kg, each.stated
    fact, shown, source = limit(rig, name, ONE_LIFTER_KG), plain(most), ONE_LIFTER_KG.source if own is None else STATED
    told = "a limit of the rig" if own is not None else "what one person lifts"
    yield Reason(f"{what}.{name}.most", shown, "kg", shown, (fact,), told, source)
    parts = tuple(
        placed(item.name, f"{kilograms(item.kg)} kg" if item.kg is not None else "not known", None)
        for item in (*mass.items, *mass.cases)
    )
    weighs = kilograms(mass.known_kg)
    terms = " + ".join(plain(round(item.kg, 6)) for item in (*mass.items, *mass.cases) if item.kg is not None)
    least = f", at least: {', '.join(mass.missing)} not counted" if mass.missing else ""
    rule = "all that is known of the board and its case"
    yield Reason(f"{what}.{name}.weighs", weighs, "kg", f"{terms or '0'} = {weighs}{least}", parts, rule, ARITHMETIC)
    value = kilograms(load.left_kg(each))
    (exact,) = operands(lambda weighs: kilograms(most - weighs), mass.known_kg, least=3)
    formula = f"{shown} − {exact} = {value}{least}"
    yield Reason(f"{what}.{name}.left", value, "kg", formula, (fact, *parts), "limit − mass with the case", ARITHMETIC)


REASONS = mass_limit
