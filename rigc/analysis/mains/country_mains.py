"""A scenario's mains against a row of a table of countries."""

from __future__ import annotations

from rigc.facts.countries import Mains, country
from rigc.model.rig import Scenario


def foreign_rows(scenario: Scenario) -> tuple[Mains, ...]:
    """The rows of the tables for its country of which the stated mains are none; empty where they are one, or nothing can be compared."""
    listed = None if scenario.country is None else country(scenario.country)
    if scenario.mains is None or listed is None:
        return ()
    rows = tuple(row for row in (listed.first, listed.second) if row is not None)
    return () if any(agrees(scenario, row) for row in rows) else rows


def given_there(scenario: Scenario) -> str:
    """What homes in its country have instead of the stated mains, as it is told; empty where they have the same or nothing can be compared."""
    return " or ".join(dict.fromkeys(str(row).partition(", plug")[0] for row in foreign_rows(scenario)))


def other_hertz(scenario: Scenario) -> tuple[int, ...]:
    """The frequencies of its country where these alone are others than the stated one; else none."""
    rows, mains = foreign_rows(scenario), scenario.mains
    if mains is None or not any(mains.low_v <= volts <= mains.high_v for row in rows for volts in row.volts):
        return ()
    return tuple(dict.fromkeys(hertz for row in rows for hertz in row.hertz))


def agrees(scenario: Scenario, listed: Mains | None) -> bool:
    """Whether the stated mains are among those of a table's row; False where either is not there."""
    mains = scenario.mains
    if listed is None or mains is None:
        return False
    hertz = mains.hertz_low
    return any(mains.low_v <= volts <= mains.high_v for volts in listed.volts) and (
        hertz is None or any(abs(each - hertz) < 0.5 for each in listed.hertz)
    )
