"""A radio plays in a country in which its band is not stated to be allowed.

Why it matters: a band that is free in one country belongs to telephones, police or television in the next: the set is lost to
interference, and the transmitter may be fined or seized.
What to do: ask the authority of the country; then state it, `band 823..832 MHz allowed DE, FR`, or take another transmitter or the
plain lead there. rigc ships no table of bands: it knows what the source says.
Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.mains.radio_bands import RadioBand, RadioBands
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.model.rig import Rig

KIND = Kind(
    "radio-band",
    Level.WARNING,
    __doc__,
    "in each scenario's country the band of each radio unit is stated as allowed",
    "common practice, no source",
)


def radio_band(rig: Rig, bands: RadioBands) -> Iterator[Diagnostic]:
    """One finding for each unit and country; a unit that states no band, and a scenario without a country, are asked for once."""
    units = dict.fromkeys(each.unit for each in bands.all)
    for name in units:
        mine = [each for each in bands.all if each.unit == name]
        if mine[0].band_mhz is None:
            yield _no_band(rig, name)
            continue
        refused: dict[str, list[RadioBand]] = {}
        for each in mine:
            if each.allowed is False and each.country is not None:
                refused.setdefault(each.country, []).append(each)
        for country, where in refused.items():
            yield _told(rig, country, where)
    lost = [scenario for scenario in rig.scenarios.values() if scenario.country is None]
    if units and lost:
        names = ", ".join(f"'{scenario.name}'" for scenario in lost)
        yield KIND.cant_check(
            lost[0].declared,
            f"whether the radio is allowed in {names} is not known: no country is stated there",
            subject=tuple(scenario.name for scenario in lost),
            help=f"write it into the block of '{lost[0].name}': country __",
        )


def _no_band(rig: Rig, name: str) -> Diagnostic:
    return KIND.cant_check(
        rig.units[name].declared,
        f"'{name}' is a radio, and its band is not stated",
        subject=(name,),
        help="read it off the unit, ask where it is allowed, and write both into its block: band ___..___ MHz allowed __",
    )


def _told(rig: Rig, country: str, where: list[RadioBand]) -> Diagnostic:
    unit, scenario = rig.units[where[0].unit], rig.scenarios[where[0].scenario or ""]
    low, high = where[0].band_mhz or (0.0, 0.0)
    allowed = ", ".join(where[0].countries)
    names = ", ".join(f"'{each.scenario}'" for each in where)
    return KIND.at(
        unit.declared,
        f"'{unit.name}' works in {low:g} to {high:g} MHz, stated as allowed in {allowed}; {names} {'is' if len(where) == 1 else 'are'} "
        f"in {country}",
        subject=(unit.name, country),
        label="this radio",
        also=(Label(scenario.declared, f"plays in {country}"),),
        help=f"ask the authority of {country}; if the band is allowed there, add {country} to its countries, else play on the plain lead",
    )


CHECK = radio_band
