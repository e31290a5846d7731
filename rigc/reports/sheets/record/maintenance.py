"""Maintenance: what is done every so many shows, batteries, strips that wear; with room for when it was done and who did it."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.mains.fuses import Fuses
from rigc.analysis.power.battery_lives import BatteryLives
from rigc.analysis.power.pack_lives import PackLives
from rigc.model.rig import Rig
from rigc.reports.content import Cell, Column, NoSheet, Row, Sheet, Table
from rigc.reports.front.cautions import care
from rigc.traced.figure import assumed

_COLUMNS = (
    Column("every", least_mm=24),
    Column("task"),
    Column("last", least_mm=25),
    Column("next", least_mm=25),
    Column("initials", least_mm=16),
)


def maintenance(
    rig: Rig, power: PowerAssignment, lives: BatteryLives, packs: PackLives, fuses: Fuses
) -> Sheet | NoSheet:
    """Interval, task, last, next, initials: stated upkeep, batteries by their life, strips by the times they may be opened, fuses."""
    rows = (*_upkeep(rig), *_batteries(rig, power, lives), *_packs(packs), *_strips(rig), *_fuses(fuses))
    if not rows:
        return NoSheet(
            "maintenance", "Maintenance", "No upkeep is stated, no battery, no fuse, and no strip that wears."
        )
    return Sheet(
        "maintenance",
        "Maintenance",
        "tech",
        (care("maintenance", rig, power), Table("tasks", "Maintenance", _COLUMNS, rows)),
    )


def _upkeep(rig: Rig) -> Iterator[Row]:
    for shows, task in rig.upkeep:
        yield _row(_shows(shows), Cell(task))


def _batteries(rig: Rig, power: PowerAssignment, lives: BatteryLives) -> Iterator[Row]:
    """A battery is changed before the last show that it lasts; with no life known, before each. One that an outlet spares counts the
    shows that are played on it alone."""
    for life in lives.all:
        every = "?" if life.shows is None else _shows(life.shows) if life.shows else f"less than {life.show:.3g} h"
        source = rig.instruments.get(life.unit)
        on_mains = source is not None and bool(source.mains)
        every += " on battery alone" if on_mains or power.of(life.unit) is not None else ""
        guessed = life.shows is not None and assumed(life.lasts)
        charged = on_mains or (life.unit in rig.units and rig.units[life.unit].ends)
        renew = "charge it full, or fit a new battery" if charged else "fit a new battery"
        yield _row(every, Cell(f"{life.unit}: {renew}, {life.kind}", mark="assumed" if guessed else ""))


def _packs(packs: PackLives) -> Iterator[Row]:
    """A supply's battery is charged before the last show that it lasts; with no life known, before each."""
    for life in packs.all:
        every = _shows(life.shows) if life.shows else "1 show" if life.shows is None else f"less than {life.show:.3g} h"
        every += "" if life.pack.only else " on battery alone"
        guessed = life.shows is not None and assumed(life.lasts)
        task = f"{life.supply}: charge it full, {life.pack.kind}; what it lasts falls with its age"
        yield _row(every, Cell(task, mark="assumed" if guessed else ""))


def _strips(rig: Rig) -> Iterator[Row]:
    for name in dict.fromkeys((rig.mounting.all_with, *(strip for _, strip in rig.mounting.strips))):
        strip = None if name is None else rig.stock.strips.get(name)
        if strip is not None and strip.cycles is not None:
            yield _row(f"{strip.cycles} times opened", Cell(f"{strip.name}: fit new strip"))


def _fuses(fuses: Fuses) -> Iterator[Row]:
    for each in fuses.all:
        yield _row("when it blows", Cell(f"{each.thing}: mains plug out, fit a fuse {each.fuse.words}{each.at}, once"))


def _shows(number: int) -> str:
    return f"{number} show{'' if number == 1 else 's'}"


def _row(every: str, task: Cell) -> Row:
    return Row((Cell(every, strong=True), task, *(Cell(""),) * 3))


PLACE = 7
SHEET = maintenance
