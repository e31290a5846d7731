"""Guesses: how far a figure that was not measured may be off, by its kind; and when an old one is confirmed anew.

A share is of the guessed figure, an amount is in its own unit. A spread that is stated beside a guess takes the place of these.
"""

from __future__ import annotations

from rigc.facts.fact import Fact

LEAFLET_CURRENT_SPREAD = Fact(
    15, "%", "by which the current of a leaflet, a typical one, may be off, either way", "common practice, no source"
)
OLD_MONTHS = Fact(24, "months", "a fact that is older is confirmed anew", "common practice, no source")
FAR_MONTHS = Fact(
    120, "months", "a date that is farther from the revision's day has a wrong year", "common practice, no source"
)
IMPEDANCE_SPREAD = Fact(30, "%", "by which a guessed impedance may be off, either way", "common practice, no source")
LEVEL_SPREAD_DB = Fact(2, "dB", "by which a guessed level or gain may be off, either way", "common practice, no source")
LATENCY_SPREAD = Fact(50, "%", "by which a guessed latency may be off, either way", "common practice, no source")
HEAT_SPREAD = Fact(30, "%", "by which a guessed heat may be off, either way", "common practice, no source")
SIZE_SPREAD_MM = Fact(5, "mm", "by which a size guessed by eye may be off, either way", "common practice, no source")
SMALL_SIZE_SPREAD_MM = Fact(
    2,
    "mm",
    "by which a guessed size of a plug, strip or deck's thickness may be off, either way",
    "common practice, no source",
)
THICKNESS_SPREAD_MM = Fact(
    0.5, "mm", "by which the guessed thickness of a cable may be off, either way", "common practice, no source"
)
LENGTH_SPREAD = Fact(
    10,
    "%",
    "by which the guessed length of a lead, slack and all, may be off, either way",
    "common practice, no source",
)
MASS_SPREAD = Fact(15, "%", "by which a guessed mass may be off, either way", "common practice, no source")
PULL_SPREAD = Fact(30, "%", "by which the guessed pull of a strip may be off, either way", "common practice, no source")
CURRENT_SPREAD = Fact(30, "%", "by which a guessed current may be off, either way", "common practice, no source")
SWITCH_ON_SPREAD = Fact(
    50, "%", "by which a guessed current at switch-on may be off, either way", "common practice, no source"
)
RATING_SPREAD = Fact(
    20, "%", "by which the guessed rating or ceiling of a supply may be off, either way", "common practice, no source"
)
OUTLET_VOLTAGE_SPREAD = Fact(
    5, "%", "by which the guessed voltage of an outlet may be off, either way", "common practice, no source"
)
EFFICIENCY_SPREAD = Fact(
    10,
    "%",
    "by which the guessed efficiency of a supply may be off, in points, either way",
    "common practice, no source",
)
CHARGE_SPREAD = Fact(
    20, "%", "by which the guessed charge of a battery may be off, either way", "common practice, no source"
)
INDUCTANCE_SPREAD = Fact(20, "%", "by which a guessed inductance may be off, either way", "common practice, no source")
WINDING_SPREAD = Fact(
    15, "%", "by which the guessed resistance of a winding may be off, either way", "common practice, no source"
)
CAPACITANCE_SPREAD = Fact(
    30, "%", "by which the guessed capacitance of a winding may be off, either way", "common practice, no source"
)
CABLE_CAPACITANCE_SPREAD = Fact(
    20, "%", "by which the guessed capacitance of a metre of cable may be off, either way", "common practice, no source"
)
CAPACITOR_SPREAD = Fact(
    20,
    "%",
    "by which a capacitor whose tolerance is not known may be off, either way",
    "series E6 of IEC 60063, from memory",
)
POT_SPREAD = Fact(20, "%", "by which a control's track may be off, either way", "common practice, no source")
CONDUCTOR_SPREAD = Fact(
    20, "%", "by which the guessed area of a conductor may be off, either way", "common practice, no source"
)
