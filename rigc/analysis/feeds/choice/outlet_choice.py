"""Units without a stated feed -> the best outlet for each, whether that is proved, and who is left over and why."""

from __future__ import annotations

from typing import TYPE_CHECKING

from rigc.analysis.feeds.choice.conflict_set import conflict_set
from rigc.analysis.feeds.choice.order_of_merit import Levels, Scale
from rigc.analysis.feeds.choice.outlet_bars import of_several
from rigc.analysis.feeds.choice.outlet_problem import RESERVE, OutletProblem
from rigc.analysis.feeds.choice.problem_in_numbers import cheapest_placing
from rigc.analysis.feeds.choice.unfed import Unfed
from rigc.analysis.feeds.load_limits import HARD, LoadLimits
from rigc.analysis.feeds.power_tap import Tap
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.record import Record

if TYPE_CHECKING:
    from rigc.solvers.assignment.problem import Placed


class OutletChoice(Record):
    """The tap chosen for each unit, in the units' order; outlets kept for a reservation; units left over.

    `objective` is what the choice comes to and `bound` what any choice comes to at least: they are equal where it is `proved`
    that there is none better.
    """

    taps: dict[str, Tap] = {}  # noqa: RUF012
    reserved: dict[Port, str] = {}  # noqa: RUF012
    unfed: tuple[Unfed, ...] = ()
    steps: int = 0
    proved: bool = True
    objective: Levels = Levels()
    bound: Levels = Levels()


def chosen(rig: Rig, limits: LoadLimits, problem: OutletProblem) -> OutletChoice:
    """The best choice for the units of the problem. Where there is none, the tightest set of units in each other's way is left
    over, until there is one for the rest."""
    from rigc.solvers.assignment.search import Search  # where every outlet is stated nothing is sought

    left: list[Unfed] = []
    steps = 0
    while True:
        found = Search(cheapest_placing(problem, limits)).run()
        steps += found.steps
        if found.options is not None:
            return _choice(problem, found, steps).replace(unfed=_by_cause(left))  # type: ignore[no-any-return]
        if not found.proved:
            names = tuple(unit.name for unit in problem.units)
            left.append(Unfed("undecided", names, (), rig.power.others_span or rig.end))
            return OutletChoice(unfed=_by_cause(left), steps=steps, proved=False)
        left.append(conflict_set(rig, problem, HARD))
        problem = problem.replace(units=tuple(unit for unit in problem.units if unit.name not in left[-1].units))


def _by_cause(left: list[Unfed]) -> tuple[Unfed, ...]:
    """Units that are barred by one and the same polarity are left over together."""
    told: list[Unfed] = []
    first: dict[str, int] = {}
    for each in left:
        at = first.setdefault(each.bars, len(told)) if each.turned else len(told)
        if at < len(told):
            told[at] = told[at].replace(units=(*told[at].units, *each.units))
        else:
            told.append(each)
    return tuple(
        each.replace(bars=of_several(each.bars)) if each.turned and len(each.units) > 1 else each for each in told
    )


def _choice(problem: OutletProblem, found: Placed, steps: int) -> OutletChoice:
    taps: dict[str, Tap] = {}
    for group, option in (found.options or {}).items():
        for unit in group:
            taps[problem.units[unit].name] = problem.sites[option[0]].taps[option[3]]
    order = [unit.name for unit in problem.units]
    scale = Scale(problem)
    return OutletChoice(
        {name: taps[name] for name in order if not name.startswith(RESERVE)},
        {taps[name].outlets[0]: name.removeprefix(RESERVE) for name in order if name.startswith(RESERVE)},
        steps=steps,
        proved=found.proved,
        objective=scale.unpack(found.cost),
        bound=scale.unpack(found.bound),
    )
