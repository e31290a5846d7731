"""Loads, totals, voltages and drops -> those that guesses drive near a limit."""

from __future__ import annotations

from rigc.analysis.feeds.load_limits import LoadLimits
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.findings.near_limit import Guess, NearLimit, driven, guessed, near, nearest
from rigc.analysis.power.joint_loads import JointLoads
from rigc.analysis.power.lead_drops import LeadDrops
from rigc.analysis.power.supply_totals import SupplyTotals
from rigc.facts.conductors import DROP_SHARE
from rigc.model.rig import Rig


def load_limits_near(rig: Rig, joint: JointLoads, limits: LoadLimits) -> list[NearLimit]:
    """The loads of outlets against their ratings and the share of them that the rules allow."""
    found = []
    for load in joint.all:
        guesses = [guess for name in load.units if (guess := _current(rig, name)) is not None]
        share = limits.digital_pct if load.digital else limits.load_pct
        limit = nearest(load.known_ma, (load.limit_ma * share / 100, load.limit_ma))
        if driven(load.known_ma, limit, sum(guess.fact.value for guess in guesses)):
            found += [NearLimit(guess, f"the load of {load}", load.known_ma, limit, "mA") for guess in guesses]
    return found


def ceilings_near(rig: Rig, power: PowerAssignment, totals: SupplyTotals, limits: LoadLimits) -> list[NearLimit]:
    """The totals of supplies against their ceilings and the share of them that the rules allow."""
    found = []
    for total in totals.all:
        if total.ceiling is None:
            continue
        loads = [load for port, load in power.loads.items() if port.thing == total.supply]
        parts = {
            name: guess.fact.value * (1.0 if total.unit == "mA" else load.volts / 1000)
            for load in loads
            for name in load.units
            if (guess := _current(rig, name)) is not None
        }
        limit = nearest(total.taken, (total.ceiling * limits.total_pct / 100, total.ceiling))
        supply = rig.supplies[total.supply]
        ceiling = supply.ceiling_w or supply.ceiling_ma
        guesses = [guess for name in parts if (guess := _current(rig, name)) is not None]
        if ceiling is not None and guessed(ceiling) and near(total.taken, limit):
            guesses.append(Guess(total.supply, f"the ceiling of '{total.supply}'", ceiling))
        elif not driven(total.taken, limit, sum(parts.values())):
            guesses = []
        found += [
            NearLimit(guess, f"the total of '{total.supply}'", total.taken, limit, total.unit) for guess in guesses
        ]
    return found


def windows_near(rig: Rig, power: PowerAssignment) -> list[NearLimit]:
    """The voltages of outlets against assumed ends of their units' windows."""
    found = []
    for feed in power.feeds:
        unit = rig.units[feed.unit]
        for fact, which in ((unit.accepts_low_v, "lowest"), (unit.accepts_high_v, "highest")):
            if fact is not None and guessed(fact) and near(feed.volts, fact.value):
                guess = Guess(unit.name, f"the {which} voltage that '{unit.name}' accepts", fact)
                found.append(NearLimit(guess, "the voltage that feeds it", feed.volts, fact.value, "V"))
    return found


def drops_near(rig: Rig, drops: LeadDrops) -> list[NearLimit]:
    """The drops of leads against the share of the voltage that they may lose."""
    found = []
    for drop in drops.all.values():
        limit = drop.volts * DROP_SHARE.value / 100
        guess = _current(rig, drop.unit)
        if guess is not None and drop.drop_v is not None and near(drop.drop_v, limit):
            found.append(NearLimit(guess, f"the drop of {drop.mark}", drop.drop_v, limit, "V"))
    return found


def _current(rig: Rig, name: str) -> Guess | None:
    fact = rig.units[name].draws_ma
    return (
        Guess(name, f"the current of '{name}'", fact) if fact is not None and guessed(fact, leaflet_too=True) else None
    )
