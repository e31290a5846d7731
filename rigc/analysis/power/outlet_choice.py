"""Units without a stated feed -> an outlet for each by the search, and who is left over."""

from __future__ import annotations

from rigc.analysis.computations.load_limits import HARD, LoadLimits
from rigc.analysis.computations.outlet_fit import window_v
from rigc.analysis.computations.outlet_matching import match
from rigc.analysis.computations.outlet_options import Options
from rigc.analysis.computations.outlet_problem import OutletProblem
from rigc.analysis.computations.outlet_search import search
from rigc.analysis.computations.outlet_sites import RESERVE, outlet_problem, reservations
from rigc.analysis.computations.power_tap import Tap
from rigc.analysis.computations.unfed import Unfed
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.things import Unit
from rigc.record import Record
from rigc.source import Span


class OutletChoice(Record):
    """The tap chosen for each unit, in the units' order; outlets kept for a reservation; units left over; steps taken."""

    taps: dict[str, Tap]
    reserved: dict[Port, str]
    unfed: tuple[Unfed, ...]
    steps: int


def chosen(rig: Rig, limits: LoadLimits, units: tuple[Unit, ...], stated: dict[str, Tap]) -> OutletChoice:
    """Chooses from the supplies of `others from`, beside the stated taps.

    It prefers loads within `limits` to loads within the bare ratings, and outlets of one's own to shared ones.
    """
    unknown = tuple(unit for unit in units if window_v(unit) is None or unit.current is None)
    unfed = [Unfed("unknown needs", (unit.name,), (), unit.declared) for unit in unknown]
    known = tuple(unit for unit in units if unit not in unknown)
    if known and not rig.power.others:
        unfed.insert(0, Unfed("no word", tuple(unit.name for unit in known), (), known[0].declared))
        known = ()
    wanted = (*known, *reservations(rig))
    problem = outlet_problem(rig, limits, wanted, stated)
    if known and not problem.sites:
        unfed.append(Unfed("no outlets", tuple(unit.name for unit in known), (), rig.power.others_span or rig.end))
        return OutletChoice({}, {}, tuple(unfed), 0)
    taps, left, steps = _solved(rig, limits, problem)
    order = [unit.name for unit in wanted if unit.name in taps]
    return OutletChoice(
        {name: taps[name] for name in order if not name.startswith(RESERVE)},
        {taps[name].outlets[0]: name.removeprefix(RESERVE) for name in order if name.startswith(RESERVE)},
        (*unfed, *left),
        steps,
    )


def _solved(rig: Rig, limits: LoadLimits, problem: OutletProblem) -> tuple[dict[str, Tap], list[Unfed], int]:
    left: list[Unfed] = []
    steps = 0
    while True:
        undecided = False
        for bound in (limits, limits.replace(total_pct=100.0), HARD):
            for shares in _shares(problem):
                found = search(problem, bound, shares)
                steps += found.steps
                undecided = undecided or not found.decided
                if found.taps is not None:
                    return found.taps, left, steps
        if undecided:
            names = tuple(unit.name for unit in problem.units)
            left.append(Unfed("undecided", names, (), rig.power.others_span or rig.end))
            return {}, left, steps
        left.append(_obstacle(rig, problem))
        remaining = tuple(unit for unit in problem.units if unit.name not in left[-1].units)
        problem = problem.replace(units=remaining)


def _shares(problem: OutletProblem) -> list[int]:
    """How many units may join others: at first as few as can be, then all that could."""
    empty = sum(not site.tenants for site in problem.sites)
    most = sum(unit.name in problem.sharers for unit in problem.units)
    return sorted({min(most, max(0, len(problem.units) - empty)), most})


def _obstacle(rig: Rig, problem: OutletProblem) -> Unfed:
    """What stands in the way: the units that want too few outlets, those that can't share before all; else all together."""
    options = Options(problem, HARD)
    single = [unit for unit in problem.units if unit.name not in problem.sharers]
    for units in (single, list(problem.units)):
        rivals = match([options.looks(unit) for unit in units], options.room)
        if rivals.rivals:
            among = {units[at].name for at in rivals.rivals}
            names = tuple(name for name in (*rig.units, *(unit.name for unit in units)) if name in among)
            names = tuple(dict.fromkeys(names))
            outlets = [site.outlet for site in problem.sites if not site.tenants and site.look in rivals.contested]
            return Unfed("rivals", names, tuple(outlets), _where(rig, names[0]))
    names = tuple(unit.name for unit in problem.units)
    eased = {"kept free": problem.replace(spare={}), "ceiling": problem.replace(budgets={})}
    why = (word for word, easier in eased.items() if search(easier, HARD, len(names)).taps is not None)
    return Unfed(next(why, "together"), names, (), rig.power.others_span or rig.end)


def _where(rig: Rig, name: str) -> Span:
    unit = rig.units.get(name)
    return rig.power.others_span or rig.end if unit is None else unit.declared
