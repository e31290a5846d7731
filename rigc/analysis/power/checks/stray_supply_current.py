"""Supply current takes a way that is not made for it: a short between sources through returns and shields (error), or a unit's current comes
back through the shield of a signal lead (warning).

Why it matters: no more current than all units draw together can flow anywhere, unless outlets work against each other through copper: then it is
as much as the supply gives, and leads and jacks burn. Less of it through a shield is heard as hum and whine.
What to do: give the units outlets that are isolated from each other; or make the power lead of that unit shorter and thicker.
Source: physics: Kirchhoff's laws, the network solved whole; {conductors.SHIELD_MA} through a shield are common practice, no source. The shields' own
resistance is reckoned as 50 mΩ [from memory].
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.feeds.load_limits import LoadLimits, exceeds
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.feeds.power_tap import Tap
from rigc.analysis.feeds.series_midpoint import shared
from rigc.analysis.leads.leads import Leads
from rigc.analysis.power.checks.shared_positive_ground import shared_positive_ground
from rigc.analysis.power.checks.tapped_series_pair import tapped_series_pair
from rigc.analysis.power.checks.unfit_parallel_lead import unfit_parallel_lead
from rigc.analysis.power.checks.unfit_series_lead import unfit_series_lead
from rigc.analysis.power.checks.wrong_polarity import wrong_polarity
from rigc.analysis.power.mends.other_feeds import moves
from rigc.analysis.power.power_network import PowerNetwork, ReturnFlow, ShieldFlow, SolvedState
from rigc.diagnostics.decimals import decimals
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Level, Number
from rigc.diagnostics.mend import Mend
from rigc.diagnostics.wording import listed
from rigc.facts.conductors import SHIELD_MA
from rigc.model.rig import Rig

KIND = Kind(
    "stray-supply-current",
    Level.ERROR,
    __doc__,
    f"no return or shield carries more than all units draw; warning above {SHIELD_MA} in a shield",
    f"physics: Kirchhoff's laws; the {SHIELD_MA} are common practice, no source",
)


def stray_supply_current(
    rig: Rig, power: PowerAssignment, leads: Leads, network: PowerNetwork, limits: LoadLimits
) -> Iterator[Diagnostic]:
    """One finding for a short that no other rule tells, one for each shield that carries too much."""
    shorts = [(state, flow) for state in network.states if (flow := _short(state)) is not None]
    if shorts:
        if not _foreseen(rig, power, leads, limits):
            yield _shorted(rig, power, limits, *shorts[0])
        return
    told: set[tuple[str, ...]] = set()
    for state in network.states:
        for flow in state.shields:
            if exceeds(abs(flow.ma), 100, SHIELD_MA.value) and flow.marks not in told:
                told.add(flow.marks)
                yield _through_shield(rig, power, limits, state, flow)


def _short(state: SolvedState) -> ReturnFlow | ShieldFlow | None:
    """The conductor that carries most, where that is more than all units draw."""
    flows: list[ReturnFlow | ShieldFlow] = [*state.shields, *state.returns]
    most = max(flows, key=lambda flow: abs(flow.ma), default=None)
    return most if most is not None and abs(most.ma) > state.drawn_ma * (1 + 1e-6) + 1 else None


def _foreseen(rig: Rig, power: PowerAssignment, leads: Leads, limits: LoadLimits) -> bool:
    """Whether another rule names the cause, so that one fault is one finding."""
    found = (
        *tapped_series_pair(rig, power),
        *unfit_series_lead(rig, power, limits),
        *unfit_parallel_lead(rig, power, limits),
        *wrong_polarity(rig, power, limits),
        *shared_positive_ground(rig, power, leads, limits),
    )
    return any(finding.level is Level.ERROR for finding in found)


def _shorted(
    rig: Rig, power: PowerAssignment, limits: LoadLimits, state: SolvedState, flow: ReturnFlow | ShieldFlow
) -> Diagnostic:
    shield = isinstance(flow, ShieldFlow)
    marks = flow.marks if isinstance(flow, ShieldFlow) else (flow.mark,)
    what = f"the shield of {', '.join(marks)}" if shield else f"the return of {marks[0]}"
    return KIND.at(
        rig.power.others_span or (rig.power.feeds[0].span if rig.power.feeds else rig.end),
        f"outlets are shorted through {what}: {decimals(abs(flow.ma) / 1000)} A would flow there, and all units draw "
        f"{decimals(state.drawn_ma / 1000, 2)} A{_where(state)}",
        subject=marks,
        label="as these feeds have it",
        numbers=(Number("current", abs(flow.ma) / 1000, "A"), Number("drawn", state.drawn_ma / 1000, "A")),
        mends=_isolated(rig, power, limits, flow.things if isinstance(flow, ShieldFlow) else (flow.unit,)),
        help="don't plug it in as it is: the units that this lead joins want outlets whose returns nothing else joins",
    )


def _through_shield(
    rig: Rig, power: PowerAssignment, limits: LoadLimits, state: SolvedState, flow: ShieldFlow
) -> Diagnostic:
    fed = [feed for name in flow.things if (feed := power.of(name)) is not None]
    return KIND.at(
        flow.link.span or (fed[0].span if fed else rig.end),
        f"{decimals(abs(flow.ma))} mA of supply current come back through the shield of {', '.join(flow.marks)} "
        f"between {listed(flow.things)}, more than {SHIELD_MA.value:g} mA{_where(state)}",
        subject=(*flow.marks, *flow.things),
        label="a way beside the power lead",
        numbers=(Number("current", abs(flow.ma), "mA"), Number("limit", SHIELD_MA.value, "mA")),
        mends=_isolated(rig, power, limits, flow.things),
        otherwise=f"give {listed(flow.things)} outlets that are isolated from each other, or a thicker or shorter power lead to the "
        "one that draws most",
        level=Level.WARNING,
    )


def _isolated(rig: Rig, power: PowerAssignment, limits: LoadLimits, things: tuple[str, ...]) -> tuple[Mend, ...]:
    """One of the units on an isolated outlet."""

    def alone(way: Tap) -> bool:
        return all(shared(rig, port) is None for port in way.outlets)

    units = [name for name in things if name in power.taps]
    return tuple(mend for name in units for mend in moves(rig, power, name, limits, alone)[:1])


def _where(state: SolvedState) -> str:
    return f" in {', '.join(state.scenarios)}" if state.scenarios else ""


CHECK = stray_supply_current
