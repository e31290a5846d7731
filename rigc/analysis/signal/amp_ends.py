"""An amp or desk -> the jacks where sound comes to it for good: the return of a series loop that is wired, else its inputs."""

from __future__ import annotations

from collections.abc import Container

from rigc.model.jacks import Port
from rigc.model.things import Unit
from rigc.model.ways.inner_ways import main_inputs


def amp_ends(unit: Unit, wired: Container[Port]) -> list[Port]:
    """Of loops in series the last counts. A loop that does not say how it joins is taken as one in series: what lies in
    it may then be all that is heard."""
    backs = [Port(unit.name, loop.back) for loop in unit.loops if loop.mix != "parallel"]
    live = [port for port in backs if port in wired]
    return live[-1:] or [port for port in main_inputs(unit) if port in wired]
