"""Measures: what can be measured on a rig, in which unit the model holds it, and between which figures it is plausible.

Each number of the language is read by one of these. A range is wide enough for all gear that we know of, and narrow enough that a
slip of a unit's prefix falls outside; the language reference holds the same table for people, and a test holds them together.
"""

from __future__ import annotations

from rigc.facts import guesses
from rigc.facts.fact import Fact
from rigc.record import Record

_PRACTICE = "common practice, no source"


class Measure(Record):
    """A kind of quantity: what people call it, the unit of the model's float, an example, and what is plausible.

    `bearer` is what has such a quantity; `why` tells where the range comes from; `guess` by how much an assumed one may be off:
    a share in %, or an amount in the measure's unit. None where nobody guesses it, or any part of it would be. `leaflet` is the
    same of one that stands in a leaflet, where that gives no more than typical figures. `exact` is what is decided, agreed or
    counted, so that it is off by nothing.
    """

    name: str
    unit: str
    example: str
    low: float = 0.0
    high: float = float("inf")
    bearer: str = "this"
    why: str = _PRACTICE
    guess: Fact | None = None
    exact: bool = False
    leaflet: Fact | None = None


# Lengths and places.
LEAD = Measure(
    "a length",
    "mm",
    "300 mm",
    10,
    100_000,
    "a lead",
    f"plugs alone are longer, and stages shorter; {_PRACTICE}",
    guess=guesses.LENGTH_SPREAD,
)
SLACK = Measure("a length", "mm", "60 mm", 0, 5_000, "slack", exact=True)
OFFSET = Measure("a length", "mm", "70 mm", -5_000, 5_000, "a place on a board", guess=guesses.SIZE_SPREAD_MM)
PANEL_AT = Measure("a length", "mm", "540 mm", -100, 5_000, "a panel on the deck", guess=guesses.SIZE_SPREAD_MM)
UP = Measure("a length", "mm", "25 mm", 0, 600, "a jack's height", guess=guesses.SIZE_SPREAD_MM)
WIDTH = Measure("a width", "mm", "70 mm", 20, 600, "a pedal's width", guess=guesses.SIZE_SPREAD_MM)
DEPTH = Measure("a depth", "mm", "120 mm", 20, 600, "a pedal's depth", guess=guesses.SIZE_SPREAD_MM)
HEIGHT = Measure("a height", "mm", "55 mm", 5, 300, "a pedal's height", guess=guesses.SIZE_SPREAD_MM)
LARGE = Measure("a size", "mm", "600 mm", 20, 3_000, "an amp or desk", guess=guesses.SIZE_SPREAD_MM)
TREADLE = Measure("a length", "mm", "55 mm", 5, 400, "a treadle", guess=guesses.SIZE_SPREAD_MM)
THIN = Measure(
    "a small length", "mm", "20 mm", 0, 200, "what lies in a plug, or behind it", guess=guesses.SMALL_SIZE_SPREAD_MM
)
PLUG = Measure(
    "a small length",
    "mm",
    "20 mm",
    1,
    200,
    "a plug's width or height, a strip's width",
    guess=guesses.SMALL_SIZE_SPREAD_MM,
)
OUTER = Measure("a small length", "mm", "5 mm", 0.5, 40, "a cable's thickness", guess=guesses.THICKNESS_SPREAD_MM)
BARREL = Measure("a barrel size", "mm", "5.5 mm", 0.5, 12, "a barrel plug", exact=True)
PATCH = Measure("a length", "mm", "30 mm", 1, 5_000, "an area of a base or deck", guess=guesses.SIZE_SPREAD_MM)
DECK_SIDE = Measure("a deck's size", "mm", "600 mm", 50, 5_000, "a deck", guess=guesses.SIZE_SPREAD_MM)
THICKNESS = Measure("a small length", "mm", "20 mm", 0.5, 200, "a deck's thickness", guess=guesses.SMALL_SIZE_SPREAD_MM)
CLEARANCE = Measure("a length", "mm", "60 mm", 0, 1_000, "the room below a deck", guess=guesses.SIZE_SPREAD_MM)
HEEL = Measure("a length", "mm", "30 mm", 0, 500, "a heel", guess=guesses.SIZE_SPREAD_MM)
INSET = Measure("a length", "mm", "20 mm", 0, 1_000, "a deck's feet", guess=guesses.SIZE_SPREAD_MM)
HOLE = Measure("a length", "mm", "25 mm", 1, 500, "a hole")
RAISED = Measure("a length", "mm", "50 mm", 1, 500, "a tier", guess=guesses.SIZE_SPREAD_MM)
INSIDE = Measure("a length", "mm", "620 mm", 50, 5_000, "a case", guess=guesses.SIZE_SPREAD_MM)
LID = Measure("a length", "mm", "60 mm", 0, 1_000, "a case's lid", guess=guesses.SIZE_SPREAD_MM)
GAP = Measure("a length", "mm", "10 mm", 0, 2_000, "a gap on a board", exact=True)
APART = Measure("a length", "mm", "120 mm", 1, 2_000, "how far things shall be apart", exact=True)
ROLL = Measure("a length", "mm", "5 m", 100, 1_000_000, "a roll of strip", guess=guesses.LENGTH_SPREAD)
ANGLE = Measure("an angle", "deg", "90 deg", -360, 360, "a turn")
SLOPE = Measure("an angle", "deg", "8 deg", 0, 60, "a deck's slope")
# Masses.
MASS = Measure("a mass", "kg", "350 g", 0.001, 200, "a thing on a board", guess=guesses.MASS_SPREAD)
LARGE_MASS = Measure("a mass", "kg", "2.10 kg", 0.05, 200, "a deck or a case", guess=guesses.MASS_SPREAD)
MOST_MASS = Measure("a mass", "kg", "23 kg", 0.5, 1_000, "a limit of mass", exact=True)
MASS_PER_LENGTH = Measure(
    "a mass per length", "g/m", "35 g/m", 0.1, 5_000, "cable or strip by the metre", guess=guesses.MASS_SPREAD
)
PULL = Measure("a pull", "kPa", "30 kPa", 0.1, 10_000, "a strip's pull", guess=guesses.PULL_SPREAD)
# Power.
VOLTAGE = Measure(
    "a voltage",
    "V",
    "9 V",
    1,
    60,
    "a pedal or outlet",
    f"one cell of a battery; what may be touched, IEC 61140, from memory; {_PRACTICE}",
    guess=guesses.OUTLET_VOLTAGE_SPREAD,
)
MAINS = Measure(
    "a mains voltage", "V", "230 V", 50, 480, "the mains", f"100 V to three phases of 480 V; {_PRACTICE}", exact=True
)
FUSE = Measure("a current", "mA", "630 mA", 10, 32_000, "a fuse", exact=True)
FUSE_SIZE = Measure("a length", "mm", "20 mm", 1, 100, "a fuse's size", exact=True)
TOLERANCE = Measure("a percentage", "%", "10 %", 0.1, 30, "the mains that a supply takes", exact=True)
FREQUENCY = Measure(
    "a mains frequency",
    "Hz",
    "50 Hz",
    16,
    420,
    "the mains' frequency",
    f"railways to aircraft; {_PRACTICE}",
    exact=True,
)
CURRENT = Measure(
    "a current",
    "mA",
    "22 mA",
    0.1,
    5_000,
    "a pedal",
    guess=guesses.CURRENT_SPREAD,
    leaflet=guesses.LEAFLET_CURRENT_SPREAD,
)
STARTS = Measure("a current", "mA", "420 mA", 0.1, 10_000, "a pedal at switch-on", guess=guesses.SWITCH_ON_SPREAD)
RATING = Measure("a current", "mA", "100 mA", 1, 20_000, "an outlet", guess=guesses.RATING_SPREAD)
CEILING_MA = Measure(
    "a power or a current", "mA", "6 W", 10, 100_000, "a supply's ceiling in mA", guess=guesses.RATING_SPREAD
)
POWER = Measure("a power", "W", "6 W", 0.1, 2_000, "a supply's ceiling in W", guess=guesses.RATING_SPREAD)
WARM = Measure("a power", "W", "12 W", 0.01, 500, "a pedal's heat", guess=guesses.HEAT_SPREAD)
TAKES = Measure("an apparent power", "W", "300 VA", 1, 10_000, "an amp at the mains", guess=guesses.RATING_SPREAD)
APPARENT = Measure("an apparent power", "W", "50 VA", 1, 10_000, "a transformer", guess=guesses.RATING_SPREAD)
EFFICIENCY = Measure(
    "a percentage",
    "%",
    "80 %",
    10,
    100,
    "a supply",
    f"no supply gives more than it takes, physics; the least {_PRACTICE}",
    guess=guesses.EFFICIENCY_SPREAD,
)
CHARGE = Measure("a battery's charge", "mA*h", "500 mAh", 10, 100_000, "a battery", guess=guesses.CHARGE_SPREAD)
ENERGY = Measure("an energy", "W*h", "37 Wh", 0.5, 2_000, "a battery pack", guess=guesses.CHARGE_SPREAD)
CELLS = Measure("a voltage", "V", "3.7 V", 1, 60, "the cells of a battery pack", guess=guesses.OUTLET_VOLTAGE_SPREAD)
SHARE_OF_RATING = Measure("a share of a rating", "%", "75 %", 1, 100, "a limit of load", exact=True)
# Signal.
INPUT_OHM = Measure(
    "an impedance",
    "ohm",
    "1 Mohm",
    100,
    1e8,
    "an input",
    f"a microphone input to a buffer of 100 Mohm; {_PRACTICE}",
    guess=guesses.IMPEDANCE_SPREAD,
)
LOAD_OHM = Measure("an impedance", "ohm", "8 ohm", 1, 1e6, "a speaker or headphones", guess=guesses.IMPEDANCE_SPREAD)
OUTPUT_OHM = Measure("an impedance", "ohm", "1 kohm", 0.01, 1e7, "an output", guess=guesses.IMPEDANCE_SPREAD)
BYPASSED_OHM = Measure("an impedance", "ohm", "1 Mohm", 100, 1e8, "a jack in bypass", guess=guesses.IMPEDANCE_SPREAD)
WINDING_OHM = Measure(
    "a resistance",
    "ohm",
    "7.8 kohm",
    10,
    1e6,
    "a pickup's resistance",
    f"an active output to an overwound coil; {_PRACTICE}",
    guess=guesses.WINDING_SPREAD,
)
POT_OHM = Measure(
    "a resistance",
    "ohm",
    "500 kohm",
    5_000,
    1e7,
    "a guitar's volume or tone",
    f"10 kohm of active gear to 5 Mohm; {_PRACTICE}",
    guess=guesses.POT_SPREAD,
)
TRACK_OHM = Measure("a resistance", "ohm", "10 kohm", 1_000, 2e6, "a treadle's track", guess=guesses.POT_SPREAD)
INDUCTANCE = Measure(
    "an inductance",
    "H",
    "4.2 H",
    0.05,
    50,
    "a pickup's inductance",
    f"low-impedance coils to humbuckers; {_PRACTICE}",
    guess=guesses.INDUCTANCE_SPREAD,
)
CAPACITANCE = Measure(
    "a capacitance", "pF", "120 pF", 0, 10_000, "a pickup's capacitance", guess=guesses.CAPACITANCE_SPREAD
)
LIMIT_PF = Measure("a capacitance", "pF", "800 pF", 10, 100_000, "a limit of capacitance", exact=True)
CAPACITOR = Measure(
    "a capacitance", "nF", "22 nF", 0.1, 1_000, "a tone control's capacitor", guess=guesses.CAPACITOR_SPREAD
)
PER_LENGTH = Measure(
    "a capacitance per length",
    "pF/m",
    "105 pF/m",
    1,
    2_000,
    "a cable's capacitance",
    guess=guesses.CABLE_CAPACITANCE_SPREAD,
)
SHOW = Measure(
    "a time", "min", "90 min", 15, 1_440, "a show", f"a short set to a day on stage; {_PRACTICE}", exact=True
)
LATENCY = Measure("a time", "ms", "3.2 ms", 0, 500, "a pedal's latency", guess=guesses.LATENCY_SPREAD)
LEVEL = Measure(
    "a level",
    "dBu",
    "-20 dBu",
    -120,
    40,
    "a jack's level",
    f"the noise floor to a loudspeaker's line; {_PRACTICE}",
    guess=guesses.LEVEL_SPREAD_DB,
)
GAIN = Measure("a gain", "dB", "12 dB", -120, 120, "a pedal's gain", guess=guesses.LEVEL_SPREAD_DB)
NOTE = Measure(
    "a note's frequency",
    "Hz",
    "82.4 Hz",
    8,
    5_000,
    "an instrument's note",
    f"a 32-foot pipe to the top of a piano; {_PRACTICE}",
    exact=True,
)
RADIO = Measure(
    "a radio frequency",
    "MHz",
    "823 MHz",
    10,
    300_000,
    "a radio's band",
    f"stage radios begin at some 30 MHz; the highest band of the ITU, from memory; {_PRACTICE}",
    exact=True,
)
TERM = Measure("a percentage", "%", "40 %", 0, 10_000, "a weight in the choice of places", exact=True)
SHARE = Measure("a share", "%", "50 %", 0, 100, "a part of a whole", "arithmetic: a part of a whole", exact=True)
TEMPO = Measure("a tempo", "bpm", "120 bpm", 10, 400, "a song", exact=True)
# Conductors and money.
AREA = Measure(
    "a conductor's area", "mm**2", "0.5 mm2", 0.001, 100, "a conductor's area", guess=guesses.CONDUCTOR_SPREAD
)
GAUGE = Measure(
    "a wire gauge", "awg", "24 awg", 0, 50, "a conductor's gauge", "ASTM B258 ends at 50, from memory", exact=True
)
MONEY = Measure("a sum of money", "currency", "450 EUR", 0.01, 1e7, "what a thing costs")
# What a meter reads.
READ_VOLTAGE = Measure(
    "a voltage",
    "V",
    "9.1 V",
    -1_000,
    1_000,
    "a reading of a voltage",
    f"turned round, a plug reads negative; {_PRACTICE}",
)
READ_OHM = Measure("a resistance", "ohm", "0.2 ohm", 0, 1e13, "a reading of a resistance")
READ_CURRENT = Measure("a current", "mA", "22 mA", 0, 20_000, "a reading of a current")
READ_TIME = Measure("a time", "ms", "3.2 ms", 0, 10_000, "a reading of a time")
READ_PERCENT = Measure("a percentage", "%", "75 %", 0, 1_000, "a reading in percent")
READ_GAIN = Measure("a gain", "dB", "0.2 dB", -200, 120, "a reading in dB")
READ_LEVEL = Measure("a level", "dBu", "-90 dBu", -160, 60, "a reading of a level")
TEMPERATURE = Measure("a temperature", "°C", "45 °C", -40, 150, "a reading of a temperature")
