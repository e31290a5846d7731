"""OutletProblem -> an outlet for every unit, or the certainty that there is none: exact backtracking that counts its steps.

It tries the hardest unit first, never two interchangeable outlets in turn, and never the same dead end twice. Tight
ceilings can still make a problem too hard; then it ends undecided after so many steps, on every machine the same.
"""

from __future__ import annotations

from rigc.analysis.computations.load_limits import LoadLimits
from rigc.analysis.computations.outlet_fit import window_v
from rigc.analysis.computations.outlet_matching import match
from rigc.analysis.computations.outlet_options import Options
from rigc.analysis.computations.outlet_problem import OutletProblem, drawn_ma
from rigc.analysis.computations.outlet_standing import Standing
from rigc.analysis.computations.power_tap import Tap
from rigc.record import Record

MOST_STEPS = 50_000


class Found(Record):
    """The tap chosen for each unit (None if there is no way, or if it is not `decided`), after so many steps."""

    taps: dict[str, Tap] | None
    steps: int
    decided: bool = True


def search(problem: OutletProblem, limits: LoadLimits, shares: int) -> Found:
    """An outlet for each unit within `limits`, where at most so many units join others on an outlet."""
    options = Options(problem, limits)
    claims = [options.looks(unit) for unit in problem.units]
    if match(claims, options.room).placed < len(claims) - shares or _beyond_ceilings(problem, limits):
        return Found(None, 0)
    return _descend(Standing(problem, limits, options, shares))


def _descend(state: Standing) -> Found:
    units, steps = state.problem.units, 0
    dead: set[tuple[object, ...]] = set()
    open_choices = [state.choices(units[0])] if units else []
    while open_choices:
        depth = len(open_choices)
        choice = next(open_choices[-1], None)
        if choice is None:
            open_choices.pop()
            dead.add(state.key(depth - 1))
            if open_choices:
                state.take_back()
            continue
        if steps == MOST_STEPS:
            return Found(None, steps, decided=False)
        steps += 1
        state.put(units[depth - 1], choice)
        if depth == len(units):
            return Found(state.answer(), steps)
        if dead and state.key(depth) in dead:
            state.take_back()
        else:
            open_choices.append(state.choices(units[depth]))
    return Found(None if units else {}, steps)


def _beyond_ceilings(problem: OutletProblem, limits: LoadLimits) -> bool:
    """Whether the units take more at least than all ceilings together leave: then no way needs to be tried."""
    supplies = {site.outlet.thing for site in problem.sites}
    budgets = [problem.budgets[name] for name in supplies if name in problem.budgets]
    if len(budgets) < len(supplies) or not all(budget.watts for budget in budgets):
        return False
    left = sum(budget.ceiling * limits.total_pct / 100 - budget.taken for budget in budgets)
    least = sum(drawn_ma(unit) * (window_v(unit) or (0.0,))[0] / 1000 for unit in problem.units)
    return least > left + 1e-9
