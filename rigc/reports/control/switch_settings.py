"""SwitchSettings and RadioBands -> the tables of what to set before the first note, and of the radio bands by country."""

from __future__ import annotations

from rigc.analysis.control.switch_settings import SwitchSetting, SwitchSettings
from rigc.analysis.deck.zones import Zones
from rigc.analysis.mains.radio_bands import RadioBand, RadioBands
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.deck.zone_column import ZONE, zoned
from rigc.reports.schedule.worst_first import worst_first

_SWITCHES = (
    Column("at"),
    ZONE,
    Column("switch"),
    Column("set to", least_mm=26),
    Column("scenario"),
    Column("leaves its maker at", key="new", folds="leaves its maker at {}"),
)
_BANDS = (
    Column("unit"),
    Column("band", "MHz", key="band", folds="{}"),
    Column("stated as allowed in", key="countries", folds="allowed in {}"),
    Column("scenario"),
    Column("country"),
    Column("there"),
)


def switch_table(settings: SwitchSettings, zones: Zones) -> Table | None:
    """A row for each switch and position, to be ticked; None where no switch has to stand anywhere."""
    rows = tuple(_switch(each, zones) for each in settings.all)
    if not rows:
        return None
    return zoned(Table("switches", "Switches and settings, before power", _SWITCHES, rows, tick=True))


def band_table(bands: RadioBands) -> Table | None:
    """A row for each radio unit in each scenario; None where there is no radio."""
    rows = worst_first(map(_band, bands.all))
    caption = "Radio bands: only what is stated; ask the country's authority"
    return Table("radio", caption, _BANDS, rows) if rows else None


def _switch(each: SwitchSetting, zones: Zones) -> Row:
    moved = bool(each.new) and each.new != each.position
    return Row(
        (
            Cell(each.at, strong=True),
            Cell(zones.named(each.at)),
            Cell(each.switch),
            Cell(each.position, strong=True, mark="tape over" if moved else ""),
            Cell(", ".join(each.scenarios) or "all"),
            Cell(each.new),
        )
    )


def _band(each: RadioBand) -> Row:
    there = {
        True: Cell("allowed"),
        False: Cell("", strong=True, mark="NOT STATED AS ALLOWED"),
        None: Cell("", mark="not known"),
    }
    return Row(
        (
            Cell(each.unit, strong=True),
            Cell("" if each.band_mhz is None else f"{each.band_mhz[0]:g} to {each.band_mhz[1]:g}"),
            Cell(", ".join(each.countries)),
            Cell(each.scenario or "any"),
            Cell(each.country or ""),
            there[each.allowed],
        )
    )
