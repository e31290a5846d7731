"""Measures: what can be measured on a rig, in which unit the model holds it, and what is plausible (common practice, no source)."""

from __future__ import annotations

from rigc.record import Record


class Measure(Record):
    """A kind of quantity: what people call it, the unit of the model's float, an example, and what is plausible."""

    name: str
    unit: str
    example: str
    low: float = 0.0
    high: float = float("inf")


LENGTH = Measure("a length", "mm", "70 mm", 0, 100_000)
OFFSET = Measure("a length", "mm", "70 mm", -5_000, 5_000)
WIDTH = Measure("a width", "mm", "70 mm", 20, 2_000)
DEPTH = Measure("a depth", "mm", "120 mm", 20, 2_000)
HEIGHT = Measure("a height", "mm", "55 mm", 5, 600)
THIN = Measure("a small length", "mm", "20 mm", 0, 500)
BARREL = Measure("a barrel size", "mm", "5.5 mm", 0.5, 12)
MASS = Measure("a mass", "kg", "350 g", 0.001, 200)
VOLTAGE = Measure("a voltage", "V", "9 V", 0, 1_000)
MAINS = Measure("a mains voltage", "V", "230 V", 50, 480)
CURRENT = Measure("a current", "mA", "22 mA", 0, 5_000)
RATING = Measure("a current", "mA", "100 mA", 0, 20_000)
CHARGE = Measure("a battery's charge", "mA*h", "500 mAh", 1, 100_000)
POWER = Measure("a power", "W", "6 W", 0, 2_000)
APPARENT = Measure("an apparent power", "W", "50 VA", 1, 10_000)
FREQUENCY = Measure("a mains frequency", "Hz", "50 Hz", 10, 500)
NOTE = Measure("a note's frequency", "Hz", "82.4 Hz", 8, 5_000)
RADIO = Measure("a radio frequency", "MHz", "823 MHz", 0.1, 300_000)
IMPEDANCE = Measure("an impedance", "ohm", "1 Mohm", 0.1, 1e9)
RESISTANCE = Measure("a resistance", "ohm", "7.8 kohm", 0.1, 1e8)
INDUCTANCE = Measure("an inductance", "H", "4.2 H", 0.001, 100)
CAPACITANCE = Measure("a capacitance", "pF", "120 pF", 0, 1e7)
CAPACITOR = Measure("a capacitance", "nF", "22 nF", 0.01, 1e5)
PER_LENGTH = Measure("a capacitance per length", "pF/m", "105 pF/m", 1, 2_000)
MASS_PER_LENGTH = Measure("a mass per length", "g/m", "35 g/m", 0.1, 5_000)
READ_VOLTAGE = Measure("a voltage", "V", "9.1 V", -1_000, 1_000)  # turned round, a plug reads negative
READ_OHM = Measure("a resistance", "ohm", "0.2 ohm", 0, 1e13)
TEMPERATURE = Measure("a temperature", "°C", "45 °C", -40, 150)
DURATION = Measure("a time", "ms", "3.2 ms", 0, 10_000)
PULL = Measure("a pull", "kPa", "30 kPa", 0.1, 10_000)
ANGLE = Measure("an angle", "deg", "90 deg", -360, 360)
AREA = Measure("a conductor's area", "mm**2", "0.5 mm2", 0.001, 100)
SHARE = Measure("a share", "%", "50 %", 0, 100)
PERCENT = Measure("a percentage", "%", "75 %", 0, 1_000)
SHARE_OF_RATING = Measure("a share of a rating", "%", "75 %", 1, 100)
LEVEL = Measure("a level", "dBu", "-20 dBu", -120, 60)
GAIN = Measure("a gain", "dB", "12 dB", -120, 120)
TEMPO = Measure("a tempo", "bpm", "120 bpm", 10, 400)
GAUGE = Measure("a wire gauge", "awg", "24 awg", 0, 50)
MONEY = Measure("a sum of money", "currency", "450 EUR", 0, 1e9)
