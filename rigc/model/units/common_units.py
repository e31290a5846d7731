"""The units that rigs are written in: of each the unit of its kind that the rest hang on, and how many of those it is.

They are what pint makes of `units.txt`, and a test holds each of them to it: to load pint takes longer than to read a rig.
"""

from __future__ import annotations

_PREFIXES = {
    **dict.fromkeys(("pico", "p"), 1e-12),
    **dict.fromkeys(("nano", "n"), 1e-9),
    **dict.fromkeys(("micro", "u", "µ", "μ"), 1e-6),
    **dict.fromkeys(("milli", "m"), 1e-3),
    **dict.fromkeys(("centi", "c"), 1e-2),
    **dict.fromkeys(("kilo", "k"), 1e3),
    **dict.fromkeys(("mega", "M"), 1e6),
    **dict.fromkeys(("giga", "G"), 1e9),
}
_UNITS = {
    **dict.fromkeys(("metre", "meter", "m"), ("m", 1.0)),
    **dict.fromkeys(("inch", "in"), ("m", 0.0254)),
    **dict.fromkeys(("foot", "ft"), ("m", 0.3048)),
    **dict.fromkeys(("gram", "g"), ("g", 1.0)),
    **dict.fromkeys(("pound", "lb"), ("g", 453.59237)),
    **dict.fromkeys(("ounce", "oz"), ("g", 28.349523125)),
    **dict.fromkeys(("second", "s"), ("s", 1.0)),
    **dict.fromkeys(("minute", "min"), ("s", 60.0)),
    **dict.fromkeys(("hour", "h"), ("s", 3600.0)),
    **dict.fromkeys(("ampere", "A"), ("A", 1.0)),
    **dict.fromkeys(("newton", "N"), ("N", 1.0)),
    **dict.fromkeys(("pascal", "Pa"), ("Pa", 1.0)),
    "psi": ("Pa", 4.4482216152605 / 0.0254**2),
    **dict.fromkeys(("watt", "W"), ("W", 1.0)),
    **dict.fromkeys(("volt", "V"), ("V", 1.0)),
    **dict.fromkeys(("ohm", "Ω", "Ω"), ("ohm", 1.0)),
    **dict.fromkeys(("farad", "F"), ("F", 1.0)),
    **dict.fromkeys(("henry", "H"), ("H", 1.0)),
    **dict.fromkeys(("hertz", "Hz"), ("Hz", 1.0)),
    **dict.fromkeys(("degree", "deg", "°"), ("deg", 1.0)),
}
SIMPLE: dict[str, tuple[str, float]] = {
    f"{prefix}{unit}": (kind, times * size)
    for prefix, times in _PREFIXES.items()
    for unit, (kind, size) in _UNITS.items()
} | _UNITS  # a minute is no thousandth of an inch
"""Each unit of `units.txt` with each prefix and with none."""

_LENGTHS = {unit: SIMPLE[unit][1] for unit in ("mm", "cm", "m", "in", "ft")}
_PER_LENGTH = ("pF", "nF", "uF", "µF", "F", "mg", "g", "kg", "oz", "lb", "ohm", "mohm")
COMPOUND: dict[str, tuple[str, float]] = {
    **{
        f"{unit}/{length}": (f"{SIMPLE[unit][0]}/m", SIMPLE[unit][1] / metres)
        for unit in _PER_LENGTH
        for length, metres in _LENGTHS.items()
    },
    **{f"{length}**2": ("m**2", metres**2) for length, metres in _LENGTHS.items()},
    **{f"{unit}*h": ("A*s", 3600 * SIMPLE[unit][1]) for unit in ("uA", "mA", "A")},
    **{f"{unit}*h": ("W*s", 3600 * SIMPLE[unit][1]) for unit in ("mW", "W", "kW")},
}
"""What is measured by the metre, areas, charges and energies."""

COMMON: dict[str, tuple[str, float]] = SIMPLE | COMPOUND
