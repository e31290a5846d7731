"""A jack of a unit, amp, desk or source in a scenario -> the ground on which the shield of a lead in it lands."""

from __future__ import annotations

from rigc.model.jacks import Port
from rigc.model.rig import Rig, Scenario
from rigc.model.ways.ground_link import GROUND, Pole, far_side
from rigc.record import Record


class Landing(Record):
    """The ground at a jack; None where the shield is lifted. `lift` is open, closed, or empty where none is stated;
    `transformer` tells whether an isolating path ends there, `unsure` that a lift's position is stated nowhere."""

    pole: Pole | None
    lift: str
    transformer: bool
    unsure: bool = False

    @property
    def isolated(self) -> bool:
        """Whether sound leaves here by an isolating path whose grounds stay apart."""
        return self.transformer and self.lift != "closed"


def landing(rig: Rig, port: Port, scenario: Scenario | None) -> Landing:
    """Where the shield lands: a scenario's lift position rules, then the one in which the jack leaves its maker, then `lifted`,
    then the path that ends at the jack. A lift of which neither is known is taken as closed, unsure: a ring that it may close
    has to be looked at."""
    jack, stated = rig.jack(port), dict(scenario.lifts).get(str(port), "") if scenario is not None else ""
    new = jack.lift if jack is not None and jack.lift is not None else ""
    unsure = not stated and new == "unknown"
    lift = stated or ("closed" if unsure else new)
    unit = rig.units.get(port.thing)
    ways = [path.how for path in unit.paths if path.end == port.jack] if unit is not None else []
    transformer = any(how.startswith("transformer") for how in ways)
    if lift == "closed":
        return Landing((port.thing, GROUND), lift, transformer, unsure)
    if lift == "open" or any(how.endswith("lifted") for how in ways):
        return Landing(None, lift, transformer)
    return Landing(far_side(port) if transformer else (port.thing, GROUND), lift, transformer)
