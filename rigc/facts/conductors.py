"""Conductors: what a metre of copper resists, by table where a standard has one, by geometry where not."""

from __future__ import annotations

from rigc.facts.fact import Fact

_PRACTICE = "common practice, no source"
_ISO_6722 = "ISO 6722-1, from memory"


def _class_table(strand: str, source: str, ohm_per_km: dict[float, float]) -> dict[float, Fact]:
    return {
        area: Fact(ohm, "ohm/km", f"most that a conductor of {area:g} mm² resists at 20 °C, {strand}", source)
        for area, ohm in ohm_per_km.items()
    }


COPPER_OHM_MM2_PER_M = Fact(
    1 / 58, "ohm mm²/m", "resistivity of standard annealed copper at 20 °C", "IEC 60028, from memory"
)
COPPER_PER_KELVIN = Fact(
    0.00393, "1/K", "temperature coefficient of copper's resistance at 20 °C", "NBS Handbook 100 (1966), from memory"
)
COPPER_DENSITY = Fact(8.89, "g/cm³", "density of standard annealed copper at 20 °C", "IEC 60028, from memory")
TABLE_CELSIUS = Fact(20, "°C", "temperature of the tables and of the resistivity", "IEC 60228; IEC 60028")
WARM_CELSIUS = Fact(40, "°C", "a lead on a warm stage", _PRACTICE)

SOLID = _class_table(
    "solid, classes 1 and 2", "IEC 60228 tables 1 and 2", {0.5: 36.0, 0.75: 24.5, 1.0: 18.1, 1.5: 12.1}
)
FLEXIBLE = {
    **_class_table("flexible", _ISO_6722, {0.22: 84.4, 0.35: 54.4}),
    **_class_table("flexible, class 5", "IEC 60228 table 3", {0.5: 39.0, 0.75: 26.0, 1.0: 19.5, 1.5: 13.3}),
}
TINNED = _class_table(
    "flexible and tinned, class 5", "IEC 60228 table 3", {0.5: 40.1, 0.75: 26.7, 1.0: 20.0, 1.5: 13.7}
)

DROP_SHARE = Fact(3, "%", "a lead's drop, of the voltage that feeds it", _PRACTICE)

SHIELD_OHM = Fact(0.05, "ohm", "shield of a lead between two units with the contacts of its plugs", "from memory")
UNKNOWN_LEAD_OHM = Fact(
    0.1, "ohm", "one conductor of a power lead of which cable or length is not known", "from memory"
)
SHIELD_MA = Fact(100, "mA", "supply current through the shield of a signal lead", _PRACTICE)
