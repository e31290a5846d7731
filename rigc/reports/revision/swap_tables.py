"""Swaps of the as-built blocks -> which unit stands for which, and all that hangs on it."""

from __future__ import annotations

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.leads.leads import Lead, Leads
from rigc.analysis.signal.touched import Touched, touched
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.reports.content import Cell, Column, Row, Table


class Swapped(Record):
    """`found` went out and `fitted` came in; `note` is the number of the field note."""

    found: str
    fitted: str
    note: int | None


_COLUMNS = (
    Column("found"),
    Column("fitted"),
    Column("note", number=True),
    Column("leads: number, at the unit, to", key="leads"),
    Column("outlets"),
    Column("presets"),
    Column("songs"),
)


def swaps(rig: Rig) -> tuple[Swapped, ...]:
    """All of them, in the order of the source."""
    return tuple(Swapped(out, into, note) for built in rig.as_built for out, into, note in built.swaps)


def swap_table(rig: Rig, leads: Leads, power: PowerAssignment) -> Table | None:
    """A row for each swap with all that it touches; None if nothing was swapped."""
    rows = tuple(_row(each, _hangs(rig, leads, power, each)) for each in swaps(rig))
    caption = "Units swapped, and what hangs on them"
    return Table("swaps", caption, _COLUMNS, rows) if rows else None


def _hangs(rig: Rig, leads: Leads, power: PowerAssignment, each: Swapped) -> tuple[str, Touched]:
    """What hangs on the unit that was found, or on the fitted one where the design knows it already."""
    found = touched(rig, leads, power, each.found)
    if found.leads or found.feed is not None:
        return each.found, found
    return each.fitted, touched(rig, leads, power, each.fitted)


def _row(each: Swapped, hangs: tuple[str, Touched]) -> Row:
    unit, what = hangs
    feed = what.feed
    outlets = "" if feed is None else f"{', '.join(map(str, feed.outlets))} at {feed.volts:g} V {feed.current.upper()}"
    return Row(
        (
            Cell(each.found, strong=True),
            Cell(each.fitted, strong=True),
            Cell("" if each.note is None else str(each.note)),
            Cell("\n".join(_lead(lead, unit) for lead in what.leads) or "none"),
            Cell(outlets or "none"),
            Cell("\n".join(f"{preset.number} {preset.title}".strip() for preset in what.presets) or "none"),
            Cell("\n".join(song.title for song in what.songs) or "none"),
        )
    )


def _lead(lead: Lead, unit: str) -> str:
    here, there = (lead.start, lead.end) if lead.start.thing == unit else (lead.end, lead.start)
    return f"{lead.mark}  .{here.jack}, {there}"
