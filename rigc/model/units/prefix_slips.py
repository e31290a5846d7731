"""A quantity that is not plausible -> the units, of the same kind but of another prefix, with which it would be."""

from __future__ import annotations

from collections.abc import Sequence

from rigc.model.units.measures import Measure

_FAMILIES = (
    (("uA", 1e-6), ("mA", 1e-3), ("A", 1.0), ("MA", 1e6)),
    (("µA", 1e-6), ("mA", 1e-3), ("A", 1.0)),
    (("mV", 1e-3), ("V", 1.0)),
    (("mW", 1e-3), ("W", 1.0), ("MW", 1e6)),
    (("mVA", 1e-3), ("VA", 1.0)),
    (("mohm", 1e-3), ("ohm", 1.0), ("kohm", 1e3), ("Mohm", 1e6)),
    (("mΩ", 1e-3), ("Ω", 1.0), ("kΩ", 1e3), ("MΩ", 1e6)),
    (("mH", 1e-3), ("H", 1.0)),
    (("pF", 1e-12), ("nF", 1e-9), ("uF", 1e-6)),
    (("pF", 1e-12), ("nF", 1e-9), ("µF", 1e-6)),
    (("pF/m", 1e-12), ("nF/m", 1e-9), ("uF/m", 1e-6), ("µF/m", 1e-6)),
    (("mm", 1e-3), ("cm", 1e-2), ("m", 1.0)),
    (("in", 25.4e-3), ("mm", 1e-3), ("cm", 1e-2), ("ft", 304.8e-3)),
    (("g", 1e-3), ("kg", 1.0)),
    (("g/m", 1e-3), ("kg/m", 1.0)),
    (("ms", 1e-3), ("s", 1.0)),
    (("Hz", 1.0), ("kHz", 1e3), ("MHz", 1e6), ("GHz", 1e9)),
    (("mAh", 1e-3), ("Ah", 1.0)),
    (("Pa", 1.0), ("kPa", 1e3)),
)
"""The units that people interchange, with what each is of the kind's own."""
_NEVER_MEANT = {
    "MA",
    "MW",
    "uA",
    "µA",
    "mVA",
    "mohm",
    "mΩ",
    "in",
    "ft",
}  # typed for another, but never the one that was meant on a pedal board


def slips(unit: str, values: Sequence[tuple[float, Measure]]) -> tuple[str, ...]:
    """The other units with which each of these, read in its measure's unit, would be plausible."""
    found: list[str] = []
    for family in _FAMILIES:
        sizes = dict(family)
        if unit in sizes:
            for other, size in family:
                fits = all(each.low <= value * size / sizes[unit] * (1 + 1e-12) <= each.high for value, each in values)
                if other != unit and other not in _NEVER_MEANT and fits and other not in found:
                    found.append(other)
    same = [other for other in found if other.lower() == unit.lower()]  # `mohm` for `Mohm`
    return tuple(same or found)


def in_words(value: float, unit: str) -> str:
    """A bound with the unit in which people say it: `100 Mohm` for 100,000,000 ohm, `5 A` for 5000 mA."""
    base = {"ohm": 1.0, "mA": 1e-3, "pF": 1e-12, "mm": 1e-3}.get(unit)
    family = next((family for family in _FAMILIES if base is not None and (unit, base) in family), ((unit, 1.0),))
    for other, size in reversed(family):
        told = value * (base or 1.0) / size
        if abs(told) >= 1 and other not in ("MA", "cm", "uA", "mohm"):
            return f"{told:.6g} {other}"
    return f"{value:.6g} {unit}"
