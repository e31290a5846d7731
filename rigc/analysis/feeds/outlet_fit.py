"""A unit and a tap -> whether it takes its voltage, kind of current, polarity and plug: yes, no, or not known (None)."""

from __future__ import annotations

from rigc.analysis.feeds.power_tap import Tap
from rigc.model.rig import Rig
from rigc.model.things import Unit

OTHER_POLARITY = {"centre-negative": "centre-positive", "centre-positive": "centre-negative"}
POLAR = ("barrel", "mini-jack")  # connectors whose polarity the eye cannot see


def needs_outlet(unit: Unit) -> bool:
    """Whether a unit takes power from an outlet of a supply: not by battery only, and not from the mains itself."""
    if unit.battery is not None and unit.battery.only:
        return False
    if unit.inlet is not None:
        return not unit.inlet.takes_mains
    return unit.volts is not None or unit.draws_ma is not None


def window_v(unit: Unit) -> tuple[float, float] | None:
    """The lowest and highest voltage in V that a unit takes: what it accepts, else exactly what it needs; None if neither is said."""
    if unit.accepts_low_v is not None and unit.accepts_high_v is not None:
        ends = sorted((unit.accepts_low_v.value, unit.accepts_high_v.value))
        return ends[0], ends[1]
    return None if unit.volts is None else (unit.volts.value, unit.volts.value)


def takes_voltage(unit: Unit, tap: Tap) -> bool | None:
    """Whether the tap's voltage lies in the unit's window."""
    window = window_v(unit)
    return None if window is None else window[0] - 1e-9 <= tap.volts <= window[1] + 1e-9


def takes_current(unit: Unit, tap: Tap) -> bool | None:
    """Whether unit and tap are both DC or both AC."""
    return None if unit.current is None else unit.current == tap.current


def takes_polarity(unit: Unit, tap: Tap, turned: bool) -> bool | None:
    """Whether the centre pin's polarity is right, after a reversing lead if `turned`. AC and keyed connectors have none."""
    if "ac" in (unit.current, tap.current):
        return True
    if unit.polarity is None or tap.polarity is None:
        return None if unit.inlet is None or unit.inlet.connector.kind in POLAR else True
    got = OTHER_POLARITY[tap.polarity] if turned else tap.polarity
    return unit.polarity.value == got


def assumed_polarity(unit: Unit, tap: Tap) -> bool:
    """Whether what is plugged in leans on a polarity that is assumed, at a connector whose polarity the eye cannot see."""
    polar = unit.inlet is None or unit.inlet.connector.kind in POLAR
    return polar and "ac" not in (unit.current, tap.current) and unit.polarity is not None and unit.polarity.assumed


def takes_connector(unit: Unit, tap: Tap) -> bool | None:
    """Whether one kind of plug fits both the outlet and the unit's inlet (or its captive lead's plug the outlet)."""
    if unit.inlet is None or tap.connector is None:
        return None
    return unit.inlet.connector == tap.connector


def reversing(rig: Rig) -> frozenset[str]:
    """The units for which a reversing lead or adaptor is stated."""
    feeds = {name for feed in rig.power.feeds if feed.reversed for name in feed.units}
    return frozenset(
        feeds | set(rig.power.turned) | {each.unit for each in rig.lead_wishes.adaptors if each.kind == "reversing"}
    )


def resized(rig: Rig) -> frozenset[str]:
    """The units for which an adaptor of connector size is stated."""
    return frozenset(each.unit for each in rig.lead_wishes.adaptors if each.kind == "size")


def fits(unit: Unit, tap: Tap, turned: bool, sized: bool) -> bool:
    """Whether nothing that is known speaks against this unit on this tap, its current apart."""
    return bool(takes_voltage(unit, tap) and takes_current(unit, tap)) and not (
        takes_polarity(unit, tap, turned) is False or (not sized and takes_connector(unit, tap) is False)
    )
