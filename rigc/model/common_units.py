"""The units that rigs are mostly written in: of each the unit of its kind that the rest hang on, and how many of those it is.

They are what pint makes of `units.txt`, and a test holds them to it: to load pint takes longer than to read a rig.
"""

from __future__ import annotations

COMMON: dict[str, tuple[str, float]] = {
    "mm": ("m", 1e-3), "cm": ("m", 1e-2), "m": ("m", 1.0), "in": ("m", 0.0254), "ft": ("m", 0.3048),
    "g": ("g", 1.0), "kg": ("g", 1e3),
    "mV": ("V", 1e-3), "V": ("V", 1.0),
    "uA": ("A", 1e-6), "mA": ("A", 1e-3), "A": ("A", 1.0),
    "mW": ("W", 1e-3), "W": ("W", 1.0),
    "ohm": ("ohm", 1.0), "kohm": ("ohm", 1e3), "Mohm": ("ohm", 1e6),
    "pF": ("F", 1e-12), "nF": ("F", 1e-9), "uF": ("F", 1e-6),
    "mH": ("H", 1e-3), "H": ("H", 1.0),
    "us": ("s", 1e-6), "ms": ("s", 1e-3), "s": ("s", 1.0),
    "Hz": ("Hz", 1.0), "kHz": ("Hz", 1e3), "MHz": ("Hz", 1e6),
    "deg": ("deg", 1.0),
}  # fmt: skip
