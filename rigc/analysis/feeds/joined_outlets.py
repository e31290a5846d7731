"""Two outlets that one lead joins -> what they have in common and how they are called together."""

from __future__ import annotations

from rigc.analysis.feeds.power_tap import Tap, outlet_at
from rigc.model.rig import Rig


def shared_common(rig: Rig, each: Tap) -> str | None:
    """The common that the outlets of a tap share; None where they are isolated from each other."""
    commons = {(port.thing, outlet.common) for port in each.outlets if (outlet := outlet_at(rig, port)) is not None}
    if len(commons) > 1 or len(each.outlets) < 2:
        return None
    return next((common for _, common in commons), None)


def both_earthed(rig: Rig, each: Tap) -> bool:
    """Whether several outlets have their negative pole at the mains earth, which joins them as a common does."""
    return len(each.outlets) > 1 and all(rig.supplies[port.thing].minus_earthed for port in each.outlets)


def pair_names(each: Tap) -> str:
    """`'weir8.b7' and 'weir8.b8'`."""
    return " and ".join(f"'{port}'" for port in each.outlets)


def pair_volts(each: Tap) -> str:
    """`9 V and 12 V`."""
    return " and ".join(f"{setting.volts.value:g} V" for setting in each.settings)


def equal_volts(each: Tap) -> bool:
    """Whether all outlets of a tap stand at one voltage."""
    return len({setting.volts.value for setting in each.settings}) < 2
