"""PowerAssignment -> the loads of outlets that work as one, each told once."""

from __future__ import annotations

from functools import cached_property

from rigc.analysis.feeds.load_limits import percent_of
from rigc.analysis.feeds.outlet_loads import OutletLoad
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.feeds.power_tap import outlets_told
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.traced.means import highest, total
from rigc.traced.term import Term


class JointLoad(Record):
    """What outlets that work as one (often a single one) give and what is taken of them, in mA; `unknown` as in `OutletLoad`."""

    outlets: tuple[Port, ...]
    how: str
    units: tuple[str, ...]
    limit_ma: float
    known_ma: float
    start_ma: float
    unknown: tuple[str, ...]
    digital: bool
    parts: tuple[OutletLoad, ...]

    def __str__(self) -> str:
        return outlets_told(self.outlets, self.how)

    @property
    def known_pct(self) -> float | None:
        """What is known to be taken, in percent of what may be; None where nothing may."""
        return percent_of(self.known_ma, self.limit_ma)

    @property
    def taken(self) -> Term:
        """What is known to be taken, in mA, of outlets in series the most that one bears; with the facts that it is made of."""
        known = [part.known_ma for part in self.parts]
        taken: Term = total(known) if self.how == "parallel" else highest(*known)
        return taken

    @property
    def start_pct(self) -> float | None:
        """The same at switch-on."""
        return percent_of(self.start_ma, self.limit_ma)


class JointLoads(Record):
    """The loads in order of the outlets; empty outlets are left out."""

    all: tuple[JointLoad, ...]

    @cached_property
    def _by_outlet(self) -> dict[Port, JointLoad]:
        return {outlet: load for load in reversed(self.all) for outlet in load.outlets}

    def of(self, outlet: Port) -> JointLoad | None:
        """The load that an outlet bears, alone or with others; None where it feeds nothing."""
        return self._by_outlet.get(outlet)


def joint_loads(rig: Rig, power: PowerAssignment) -> JointLoads:
    """One load for each outlet or joined pair that feeds a unit."""
    found: dict[tuple[Port, ...], JointLoad] = {}
    order = {name: at for at, name in enumerate(rig.units)}
    for load in power.loads.values():
        if load.units and load.joined not in found:
            found[load.joined] = _joint(order, load, [power.loads[port] for port in load.joined])
    return JointLoads(tuple(found.values()))


def _joint(order: dict[str, int], first: OutletLoad, parts: list[OutletLoad]) -> JointLoad:
    together = sum if first.how == "parallel" else max
    names = {name for part in parts for name in part.units}
    return JointLoad(
        first.joined,
        first.how,
        tuple(sorted(names & order.keys(), key=order.__getitem__)),
        sum(part.limit_ma for part in parts) if first.how == "parallel" else min(part.limit_ma for part in parts),
        together([part.known_ma for part in parts]),
        together([part.start_ma for part in parts]),
        tuple(dict.fromkeys(name for part in parts for name in part.unknown)),
        any(part.digital for part in parts),
        tuple(parts),
    )


COMPUTE = joint_loads
