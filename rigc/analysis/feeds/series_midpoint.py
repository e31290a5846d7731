"""A series pair -> the outlets that nobody else may stand on: their returns lie at the pair's midpoint, or may lie there.

The upper outlet's return is the lower one's positive pole. A unit on the upper outlet, or on an outlet whose return is joined to
it, has its audio ground there; the shields of its audio leads join that to the ground of the pair's own unit, and so short
the lower outlet.
"""

from __future__ import annotations

from rigc.analysis.feeds.outlet_sharing import positive
from rigc.analysis.feeds.power_tap import Tap, outlet_at
from rigc.model.jacks import Port
from rigc.model.rig import Rig


def live_outlets(rig: Rig, units: tuple[str, ...], pair: Tap) -> tuple[Port, ...]:
    """The outlets that no unit but these may stand on, which the pair feeds; those of the pair first.

    Where the source does not say which outlet is the lower, either may be the upper. The ground of a unit of positive ground is
    the pair's upper end, so that no other unit may stand on either outlet.
    """
    if pair.how != "series":
        return ()
    safe = None if any(positive(rig.units[name]) for name in units if name in rig.units) else pair.lower
    upper = tuple(port for port in pair.outlets if port != safe)
    joined = tuple(
        port
        for each in upper
        if (common := shared(rig, each)) is not None
        for outlet in rig.supplies[each.thing].outlets
        if (port := Port(each.thing, outlet.name)) not in pair.outlets and outlet.common == common
    )
    return tuple(dict.fromkeys((*upper, *joined)))


def midpoints(rig: Rig, taps: dict[str, Tap]) -> frozenset[Port]:
    """The live outlets of all series pairs."""
    return frozenset(port for name, each in taps.items() for port in live_outlets(rig, (name,), each))


def shared(rig: Rig, port: Port) -> str | None:
    """The common of an outlet; None where it is isolated."""
    outlet = outlet_at(rig, port)
    return None if outlet is None else outlet.common
