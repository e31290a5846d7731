"""Scenarios and radio units -> whether each band is stated to be allowed in each country. No table of bands ships with rigc."""

from __future__ import annotations

from rigc.analysis.deck.used_units import used_units
from rigc.model.jacks import AUDIO_IN, AUDIO_OUT
from rigc.model.rig import Rig
from rigc.model.things import Unit
from rigc.record import Record


class RadioBand(Record):
    """A radio unit in a scenario (None where the rig states none). `allowed` is None where the unit states no band, or
    the scenario no country."""

    unit: str
    band_mhz: tuple[float, float] | None
    countries: tuple[str, ...]
    scenario: str | None
    country: str | None
    allowed: bool | None


class RadioBands(Record):
    """Unit by unit, in the order of the scenarios."""

    all: tuple[RadioBand, ...]


def radio_bands(rig: Rig) -> RadioBands:
    """A unit is a radio if one of its audio jacks is wireless, or if it states a band."""
    places: list[tuple[str | None, str | None]] = [(each.name, each.country) for each in rig.scenarios.values()]
    places = places or [(None, None)]
    return RadioBands(tuple(_band(unit, *place) for unit in used_units(rig) if is_radio(unit) for place in places))


def is_radio(unit: Unit) -> bool:
    """Whether it takes or gives sound through the air."""
    air = any(jack.role in (AUDIO_IN, AUDIO_OUT) and jack.connector.kind == "wireless" for jack in unit.jacks)
    return air or unit.band_mhz is not None


def _band(unit: Unit, scenario: str | None, country: str | None) -> RadioBand:
    known = unit.band_mhz is not None and country is not None
    allowed = country in unit.band_countries if known else None
    return RadioBand(unit.name, unit.band_mhz, unit.band_countries, scenario, country, allowed)


COMPUTE = radio_bands
