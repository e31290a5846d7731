"""Supplied units and their taps -> the load of each outlet of every supply in use."""

from __future__ import annotations

from rigc.analysis.computations.load_limits import percent_of
from rigc.analysis.power.outlet_bearing import drawn_ma, highest_ma, unknown_start
from rigc.analysis.power.power_tap import Tap, tap
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.things import Outlet, Rating
from rigc.record import Record


class OutletLoad(Record):
    """An outlet at its setting: its rating, what may be taken of it (`limit_ma`: less in series or parallel), what is.

    `load_ma` is None where a unit's current is not known (those are `unknown`); `known_ma` is the sum of the others.
    `start_ma` counts measured start-up currents in place of running ones. An outlet in parallel bears its share of the
    current, one in series all of it. `joined` names the outlets that work as one with it, itself among them.
    """

    outlet: Port
    units: tuple[str, ...]
    joined: tuple[Port, ...]
    how: str
    setting: Rating
    limit_ma: float
    known_ma: float
    start_ma: float
    unknown: tuple[str, ...]
    digital: bool  # a digital unit of unknown start-up current is on it

    @property
    def volts(self) -> float:
        """The voltage at which it stands, in V."""
        return self.setting.volts.value

    @property
    def rating_ma(self) -> float:
        """Its own rating at that voltage, in mA."""
        return self.setting.milliamps.value

    @property
    def load_ma(self) -> float | None:
        """Its load in mA; None where a unit's current is not known."""
        return None if self.unknown else self.known_ma

    @property
    def percent(self) -> float | None:
        """Its load in percent of what may be taken; None where not known or nothing may."""
        return None if self.unknown else percent_of(self.known_ma, self.limit_ma)


def outlet_loads(rig: Rig, supplies: tuple[str, ...], taps: dict[str, Tap]) -> dict[Port, OutletLoad]:
    """The load of every outlet of these supplies, in order of declaration."""
    users: dict[Port, list[str]] = {}
    for name, each in taps.items():
        for port in dict.fromkeys(each.outlets):
            users.setdefault(port, []).append(name)
    loads = {}
    for supply in supplies:
        for outlet in rig.supplies[supply].outlets:
            port = Port(supply, outlet.name)
            if outlet.ratings:
                loads[port] = _load(rig, port, outlet, {name: taps[name] for name in users.get(port, ())})
    return loads


def _load(rig: Rig, port: Port, outlet: Outlet, taps: dict[str, Tap]) -> OutletLoad:
    units = [rig.units[name] for name in taps]
    own = next((each.setting(port) for each in taps.values()), outlet.ratings[0])
    limits = [each.limit_ma * each.share(port) for each in taps.values()]
    joined = max(
        (each for each in taps.values()), key=lambda each: len(each.outlets), default=tap(rig, (port,), "", (own,))
    )
    return OutletLoad(
        port,
        tuple(taps),
        joined.outlets,
        joined.how,
        own,
        min(limits, default=own.milliamps.value),
        sum(drawn_ma(unit) * taps[unit.name].share(port) for unit in units),
        sum(highest_ma(unit) * taps[unit.name].share(port) for unit in units),
        tuple(unit.name for unit in units if unit.draws_ma is None),
        any(unknown_start(unit) for unit in units),
    )
