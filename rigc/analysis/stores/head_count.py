"""The rig -> how many things it is: `rig.units`, `rig.supplies`, `rig.leads` (those that stay on the board), `rig.stage-leads`."""

from __future__ import annotations

from collections import Counter

from rigc.analysis.deck.used_units import used_units
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.feeds.used_things import used_supplies
from rigc.analysis.leads.leads import Leads
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.traced.figure import Figure, known_figure
from rigc.traced.given import mentioned
from rigc.traced.means import found
from rigc.traced.reason import ARITHMETIC
from rigc.traced.units import COUNT


class HeadCount(Record):
    """Units in use without amps, desks and other listeners; supplies in use; leads that stay on the board, and those of the stage."""

    units: Figure
    supplies: Figure
    leads: Figure
    stage_leads: Figure


def head_count(rig: Rig, power: PowerAssignment, leads: Leads) -> HeadCount:
    """Counts names and numbers; a Y lead and each of its legs bear one each."""
    units = [(unit.name, "units") for unit in used_units(rig) if not unit.ends]
    supplies = [(supply.name, "supplies") for supply in used_supplies(rig, power)]
    own = [(lead.mark, lead.signal) for lead in leads.all if not lead.stage]
    stage = [(lead.mark, lead.signal) for lead in leads.all if lead.stage]
    return HeadCount(
        _counted("units", units, "units in use; amps, desks and listeners are not counted"),
        _counted("supplies", supplies, "supplies in use"),
        _counted("leads", own, "leads that stay on the board"),
        _counted("stage-leads", stage, "leads from the board to the stage, and those between what stands there"),
    )


def _counted(name: str, each: list[tuple[str, str]], rule: str) -> Figure:
    """What is counted, by its name and its kind."""
    kinds = Counter(kind for _, kind in each)
    number = found(
        float(len(each)),
        lambda: f"{' + '.join(f'{many} {kind}' for kind, many in kinds.items()) or '0'} = {len(each)}",
    )
    named = mentioned("counted", ", ".join(what for what, _ in each) or "none")
    return known_figure(f"rig.{name}", number, COUNT, named, rule=rule, source=ARITHMETIC)


COMPUTE = head_count
