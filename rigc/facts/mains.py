"""Mains: what supplies take for what they give, what appliance inlets carry, where low voltage ends."""

from __future__ import annotations

from rigc.facts.fact import Fact

_MEMORY = "trade figure, from memory"
_PRACTICE = "common practice, no source"
_COUPLERS = "IEC 60320 (list in AS/NZS 60320.1:2004)"

EFFICIENCY_PCT = {
    "linear": Fact(40, "%", "what a linear supply gives, of what it takes", _MEMORY),
    "switch-mode": Fact(80, "%", "what a small switch-mode supply gives, of what it takes", _MEMORY),
}
POWER_FACTOR = {
    "linear": Fact(0.7, "", "power factor of a linear supply", _MEMORY),
    "switch-mode": Fact(0.55, "", "power factor of a small switch-mode supply", _MEMORY),
}
OFF_LOAD = Fact(1.5, "", "voltage of an unregulated supply without load, of its nominal one: 1.3 to 1.5", _MEMORY)

SHOWN_V = {
    100: Fact(100, "V", "nominal voltage in Japan", "table of countries in this package"),
    120: Fact(120, "V", "nominal voltage in North America", "IEC 60038 table 1"),
    230: Fact(230, "V", "nominal voltage in Europe", "IEC 60038 table 1"),
}
WIDE_RANGE = Fact(
    1.5, "", "highest of a supply's voltages, of its lowest, beyond which their middle is nobody's mains", _PRACTICE
)
STEP_MORE = Fact(1.5, "", "rating of a step transformer, of the volt-amperes behind it", _PRACTICE)
STEP_SIZE_VA = Fact(25, "VA", "step transformers come in multiples of this", _PRACTICE)

INLET_A = {
    kind: Fact(amperes, "A", f"rated current of an appliance inlet {kind}, {earth}", _COUPLERS)
    for kind, amperes, earth in (
        ("C6", 2.5, "class I (earthed)"),
        ("C8", 2.5, "class II"),
        ("C14", 10.0, "class I (earthed)"),
        ("C16", 10.0, "class I (earthed)"),
        ("C20", 16.0, "class I (earthed)"),
    )
}
WITHOUT_EARTH = ("C8", "C18")
WITH_EARTH = ("C6", "C14", "C16", "C20")
"""Appliance inlets of IEC 60320 for class II equipment, and for class I; from memory, but for those in the list above."""
LOW_AC_V = Fact(50, "V", "ceiling of safety extra-low voltage, AC r.m.s.", "IEC 61558-1 and IEC 61140, as in the IEV")
LOW_DC_V = Fact(
    120, "V", "ceiling of safety extra-low voltage, ripple-free DC", "IEC 61558-1 and IEC 61140, as in the IEV"
)
LOWER_DC_V = Fact(60, "V", "ceiling of energy class 1, DC", "IEC 62368-1 table 4, from memory")
PLUG_TYPES = "ABCDEFGHIJKLMNO"
"""The types of mains plugs in homes, by the letters that IEC World Plugs gives them; from memory."""
