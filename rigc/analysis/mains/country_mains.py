"""A scenario's mains against a row of a table of countries."""

from __future__ import annotations

from rigc.facts.countries import Mains
from rigc.model.rig import Scenario


def agrees(scenario: Scenario, listed: Mains | None) -> bool:
    """Whether the stated mains are among those of a table's row; False where either is not there."""
    mains = scenario.mains
    if listed is None or mains is None:
        return False
    hertz = mains.hertz_low
    return any(mains.low_v <= volts <= mains.high_v for volts in listed.volts) and (
        hertz is None or any(abs(each - hertz) < 0.5 for each in listed.hertz)
    )
