"""A load that is too high for its outlet -> other outlets that would do."""

from __future__ import annotations

from rigc.analysis.computations.joint_loads import JointLoad
from rigc.analysis.computations.load_limits import LoadLimits
from rigc.analysis.power.open_problem import stated_taps
from rigc.analysis.power.outlet_bearing import bears
from rigc.analysis.power.outlet_fit import fits, resized, reversing
from rigc.analysis.power.power_tap import Tap, tap
from rigc.analysis.power.series_midpoint import midpoints
from rigc.model.jacks import Port
from rigc.model.rig import Rig


def better_outlets(rig: Rig, load: JointLoad, limits: LoadLimits) -> tuple[Tap, ...]:
    """The outlets, used by others or not, that would bear the load's units within the limits; those of its own supplies first."""
    units = tuple(rig.units[name] for name in load.units)
    own = tuple(dict.fromkeys(port.thing for port in load.outlets))
    turned, sized = reversing(rig), resized(rig)
    live = midpoints(rig, stated_taps(rig))
    found = []
    for name in dict.fromkeys((*own, *rig.supplies)):
        for outlet in rig.supplies[name].outlets:
            port = Port(name, outlet.name)
            if port in load.outlets or port in live:
                continue
            for rating in outlet.ratings:
                way = tap(rig, (port,), "", (rating,))
                if bears(way, units, limits) and all(
                    fits(each, way, each.name in turned, each.name in sized) for each in units
                ):
                    found.append(way)
                    break
    return tuple(found)
