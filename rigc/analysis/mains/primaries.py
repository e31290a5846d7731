"""Scenarios and mains loads -> every supply's primary in every scenario that states its mains."""

from __future__ import annotations

from rigc.analysis.mains.mains_loads import MainsLoads
from rigc.analysis.mains.primary import Primary, primary
from rigc.model.rig import Rig
from rigc.record import Record


class Primaries(Record):
    """All of them, scenario by scenario, supplies in order of declaration."""

    all: tuple[Primary, ...]


def primaries(rig: Rig, loads: MainsLoads) -> Primaries:
    """Supplies that feed nothing are left out, and scenarios without mains."""
    return Primaries(
        tuple(
            primary(scenario, scenario.mains, rig.supplies[name], load.volt_amperes)
            for scenario in rig.scenarios.values()
            if scenario.mains is not None
            for name, load in loads.all.items()
        )
    )


COMPUTE = primaries
