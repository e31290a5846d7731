"""Connections through the air -> what the player wears, and the plain lead that takes the radio's place when it fails."""

from __future__ import annotations

from rigc.analysis.leads.leads import Leads
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.things import Instrument
from rigc.record import Record
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.schedule.cells import lead_cell


class RadioLink(Record):
    """An instrument that is heard through the air, the receiver, and the jacks behind the receiver, each with the lead in it now."""

    instrument: Instrument
    receiver: Port
    behind: tuple[tuple[Port, str], ...]

    @property
    def by_lead(self) -> str:
        """What to plug where when the radio fails; empty where no plain lead is stated."""
        if self.instrument.plain_mm is None or not self.behind:
            return ""
        into = " and ".join(f"{port}, where {mark} was" for port, mark in self.behind)
        return f"{Port(self.instrument.name, 'out')} into {into}"


def radio_links(rig: Rig, leads: Leads) -> tuple[RadioLink, ...]:
    """One for each instrument and receiver, in the order of the chains."""
    found: dict[tuple[str, Port], RadioLink] = {}
    for each in rig.connections:
        instrument, jack = rig.instruments.get(each.start.thing), rig.jack(each.end)
        if instrument is not None and jack is not None and jack.connector.kind == "wireless":
            behind = {
                lead.end: lead.mark
                for lead in leads.to(each.end.thing)
                if lead.signal == "audio" and lead.start.thing == each.end.thing
            }
            found.setdefault((instrument.name, each.end), RadioLink(instrument, each.end, tuple(behind.items())))
    return tuple(found.values())


def radio_table(links: tuple[RadioLink, ...]) -> Table:
    """A row for each link."""
    columns = (
        Column("instrument"),
        Column("through the air to", key="receiver"),
        Column("lead to the body-pack", key="own"),
        Column("plain lead, when the radio fails", key="plain"),
        Column("goes from", key="goes"),
    )
    rows = tuple(
        Row(
            (
                Cell(each.instrument.name, strong=True),
                Cell(str(each.receiver)),
                lead_cell(each.instrument.lead_mm, each.instrument.lead_cable),
                lead_cell(each.instrument.plain_mm, each.instrument.plain_cable),
                Cell(each.by_lead, strong=True),
            )
        )
        for each in links
    )
    return Table("radio", "What comes through the air", columns, rows, tick=True)
