"""Both designs' power -> the outlets that feed others, stand at another setting, or are loaded otherwise; and the
feeds."""

from __future__ import annotations

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.feeds.power_tap import outlet_at
from rigc.analysis.power.supply_totals import SupplyTotals
from rigc.analysis.revision.board import Board
from rigc.analysis.revision.plan.plan_records import FeedPlan, OutletPlan, OutletState, SupplyPlan
from rigc.model.jacks import Port
from rigc.model.rig import Rig

_NOTHING = OutletState((), None, 0.0, 0.0, (), "")
_SAME_MA = 0.05  # half of the last digit that is printed


def outlet_plans(
    rig: Rig, old: PowerAssignment, new: PowerAssignment, built: Board, board: Board
) -> tuple[OutletPlan, ...]:
    """In the order of the new design's outlets, then those of supplies that go."""
    ports = dict.fromkeys((*new.loads, *old.loads))
    before, after = _leads_at(built), _leads_at(board)
    plans = [_plan(rig, port, _state(old, before, port), _state(new, after, port)) for port in ports]
    return tuple(plan for plan in plans if _differs(plan.before, plan.after))


def supply_plans(old: SupplyTotals, new: SupplyTotals) -> tuple[SupplyPlan, ...]:
    """Supplies of which more or less is taken, in the order of the new design, then those that go."""
    before = {total.supply: total for total in old.all}
    after = {total.supply: total for total in new.all}
    plans = [SupplyPlan(name, before.get(name), after.get(name)) for name in {**after, **before}]
    return tuple(plan for plan in plans if plan.before != plan.after)


def feed_plans(built: Board, board: Board) -> tuple[FeedPlan, ...]:
    """Units that are fed otherwise, in the order of the new design, then those that are fed no longer."""
    plans = [FeedPlan(name, built.feeds.get(name), board.feeds.get(name)) for name in {**board.feeds, **built.feeds}]
    return tuple(plan for plan in plans if plan.before != plan.after)


def _plan(rig: Rig, port: Port, before: OutletState, after: OutletState) -> OutletPlan:
    outlet = outlet_at(rig, port)
    settable = outlet is not None and len(outlet.ratings) > 1
    return OutletPlan(port, before, after, settable and bool(after.units) and before.volts != after.volts)


def _leads_at(board: Board) -> dict[Port, dict[str, None]]:
    """The numbers of the leads that are plugged in at each jack."""
    found: dict[Port, dict[str, None]] = {}
    for lead in board.leads.values():
        for port in lead.ends or ():
            found.setdefault(port, {})[lead.mark] = None
    return found


def _state(power: PowerAssignment, leads: dict[Port, dict[str, None]], port: Port) -> OutletState:
    load = power.loads.get(port)
    if load is None:
        return _NOTHING
    return OutletState(load.units, load.volts, load.load_ma, load.percent, tuple(leads.get(port, ())), load.how)


def _differs(before: OutletState, after: OutletState) -> bool:
    if not before.units and not after.units:
        return False
    if (before.units, before.volts, before.how) != (after.units, after.volts, after.how):
        return True
    if before.load_ma is None or after.load_ma is None:
        return before.load_ma is not after.load_ma
    return abs(before.load_ma - after.load_ma) >= _SAME_MA
