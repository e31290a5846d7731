"""How each kind of figure is written on sheets, in findings and in formulas: one `Shown` for each."""

from __future__ import annotations

from math import inf

from rigc.diagnostics.decimals import decimals, signed
from rigc.diagnostics.figures import corner_khz, ohms
from rigc.traced.shown import Shown, as_typed, exactly, places

COUNT = as_typed("")
MILLIAMPS = as_typed("mA")
VOLTS = as_typed("V")
WATTS_GIVEN = exactly("W", 3)
WATTS_TAKEN = places("W", 3)
WATTS = places("W", 2)
VOLT_AMPERES = places("VA", 2)
AMPERES = exactly("A", 3)
FLUX = exactly("V/Hz", 3)
TRANSFORMER_VA = as_typed("VA")
WHOLE_PERCENT = places("%", 0)
FINE_MILLIAMPS = places("mA", 1)
SHARE = places("%", 1)
GRAMS = as_typed("g", 0.001)  # of a mass in kg
METRES_CUT = places("m", 4)
METRES_TAKEN = exactly("m", 2)
KILOGRAMS = exactly("kg", 3)
KILOGRAMS_STATED = places("kg", 3)
MILLIMETRES = as_typed("mm")
MILLIOHMS = places("mΩ", 1)
MILLIVOLTS = places("mV", 1)
FINE_MILLIVOLTS = places("mV", 2)
NEAREST_TENTH = places("mm", 1)
OHM_PER_KM = Shown("Ω/km", lambda value, more: signed(f"{value:.{4 + more}g}"))
FINE_SHARE = places("%", 2)
FINE_VOLTS = places("V", 2)
MILLIAMP_HOURS = as_typed("mAh")
WATT_HOURS = as_typed("Wh")
MINUTES = as_typed("min")
HOURS = places("h", 2)
HOURS_STATED = as_typed("h")
DBU = places("dBu", 1)
DECIBELS = places("dB", 1)
MILLISECONDS = places("ms", 2)
MILLISECONDS_MORE = Shown("ms", lambda value, more: f"+{decimals(value, 2 + more)}")  # what comes on top
HERTZ = places("Hz", 0)
BEATS = places("bpm", 1)
HERTZ_MAINS = as_typed("Hz")
SQUARE_METRES = exactly("m²", 3)
MICROTESLA = as_typed("µT", 1e-6)  # of a field in T
MICROVOLTS = exactly("µV", 1, 1e-6)  # of a voltage in V
NOMINAL_MILLIVOLTS = as_typed("mV", 1e-3)  # of a voltage in V
HUM_DECIBELS = exactly("dB", 1)
GAIN = as_typed("dB")
LEAST_GAIN = Shown("dB", lambda value, more: f"≥ {GAIN.write(value, more)}")
MILLISECONDS_WIRE = exactly("ms", 2)
TENTHS = places("mm", 1, 10)  # counted in tenths of a millimetre
METRES = places("m", 3)
PICOFARADS = places("pF", 1)
WHOLE_PICOFARADS = places("pF", 0)
LEAD_PICOFARADS = places("pF", 2)
PICOFARADS_PER_M = places("pF/m", 1)
HENRIES = places("H", 2)
KILOHMS = places("kΩ", 1, 1000)
PICKUP_KILOHMS = places("kΩ", 2, 1000)
RESPONSE_DECIBELS = places("dB", 2)
FACTOR = places("", 2)
_OHMS = {"Ω": 1.0, "kΩ": 1e3, "MΩ": 1e6, "": 1.0}


def _impedance(value: float, more: int) -> str:
    return "none" if value == inf else ohms(value, 3 + more)


def _read_impedance(text: str) -> float:
    figure, _, unit = text.partition(" ")
    return inf if text == "none" else float(figure) * _OHMS[unit]


IMPEDANCE = Shown("", _impedance, read=_read_impedance)  # of nothing that loads it is infinite, and told as `none`
CORNER = Shown("kHz", lambda khz, more: corner_khz(khz * 1000, more), 1000)


def money(currency: str) -> Shown:
    """A sum of money."""
    return exactly(currency, 2)
