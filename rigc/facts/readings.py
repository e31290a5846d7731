"""Readings: what is measured on a built board must keep to."""

from __future__ import annotations

from rigc.facts.fact import Fact

_PRACTICE = "common practice, no source"
EARTH_CODES = (
    "EN 50678, EN 50699 and the UK code of practice for in-service inspection, from memory; local rules prevail"
)

BOND_OHM = Fact(
    0.1, "ohm", "most from the inlet's earth pin to earthed metal; the lead's own resistance is added", EARTH_CODES
)
INSULATION_MOHM = Fact(1, "Mohm", "least from live parts to earth, at 500 V DC", EARTH_CODES)
LEAD_OHM = Fact(0.3, "ohm", "an audio, control or MIDI lead has less from contact to contact", _PRACTICE)
LONG_LEAD_OHM = Fact(0.5, "ohm", "most of such a lead that is longer than a metre", _PRACTICE)
LONG_LEAD_MM = Fact(1000, "mm", "from beyond this length on a lead may have the higher resistance", _PRACTICE)
LEAKAGE_MOHM = Fact(20, "Mohm", "an audio lead has more from contact to contact", _PRACTICE)
OFF_LOAD_LOW_V = {
    9: Fact(8.7, "V", "least at a 9 V plug without load", _PRACTICE),
    12: Fact(11.6, "V", "least at a 12 V plug without load", _PRACTICE),
    18: Fact(17.4, "V", "least at an 18 V plug without load", _PRACTICE),
}
OFF_LOAD_HIGH_V = {
    9: Fact(9.9, "V", "most at a 9 V plug without load", _PRACTICE),
    12: Fact(12.9, "V", "most at a 12 V plug without load", _PRACTICE),
    18: Fact(19.5, "V", "most at an 18 V plug without load", _PRACTICE),
}
UNREGULATED_SHARE = Fact(1.5, "", "most of an unregulated outlet without load, of its nominal voltage", _PRACTICE)
ON_LOAD_PCT = Fact(95, "%", "least at the unit under load, of the nominal voltage", _PRACTICE)
RIPPLE_MV = {
    "linear": Fact(10, "mV", "most ripple of a linear supply", _PRACTICE),
    "switch-mode": Fact(30, "mV", "most ripple of a switch-mode supply", _PRACTICE),
}
ISOLATION_MOHM = Fact(1, "Mohm", "outlets that share no return have more between them", _PRACTICE)
TEST_TONE_DBU = Fact(-20, "dBu", "level of the tone that is sent through the board", _PRACTICE)
THROUGH_DB = Fact(0.5, "dB", "most change of the tone through the board, all units off", _PRACTICE)
BYPASS_DB = Fact(0.3, "dB", "most change of the tone through one bypassed unit", _PRACTICE)
TREBLE_DB = Fact(1.5, "dB", "most loss at 10 kHz against 1 kHz", _PRACTICE)
NOISE_DB = Fact(3, "dB", "most noise above that of one plain lead", _PRACTICE)
POP_DB = Fact(10, "dB", "most pop of a switch over the noise floor", _PRACTICE)
HUM_DB = Fact(-70, "dB", "most hum, of the test tone", _PRACTICE)
MUTE_DB = Fact(70, "dB", "least that a mute takes away", _PRACTICE)
FOLLOW_MS = Fact(20, "ms", "most until every unit has followed a program change", _PRACTICE)
HEEL = Fact(0, "", "value sent at the heel of an expression treadle", "MIDI 1.0, seven-bit controller values")
TOE = Fact(127, "", "value sent at the toe of an expression treadle", "MIDI 1.0, seven-bit controller values")
STARTS = Fact(5, "", "times that the supply is switched off and on", _PRACTICE)
LOW_MAINS_V = Fact(90, "V", "a weak 100 V socket, to try a board that plays there", _PRACTICE)
STOMPS = Fact(20, "", "times that each switch is stamped on", _PRACTICE)
CLOSED_ROOM_H = Fact(2, "h", "time that the board is on in a closed room", _PRACTICE)
SUPPLY_C = Fact(60, "°C", "the case of a supply stays below", _PRACTICE)
UNIT_C = Fact(50, "°C", "no unit grows warmer than", _PRACTICE)
EXPECTED_PCT = Fact(
    5, "%", "a reading may lie that far from the one expected, where the test has no band of its own", _PRACTICE
)
