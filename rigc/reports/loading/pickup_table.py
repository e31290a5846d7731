"""What passive instruments drive -> each pickup with what resonates with it, and how sharp its resonance is."""

from __future__ import annotations

from math import inf

from rigc.analysis.signal.section import Section
from rigc.analysis.signal.source_network import SourceNetwork, parallel
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.loading.words import figure

_COLUMNS = (
    Column("curve", number=True),
    Column("instrument"),
    Column("inductance", "H", number=True),
    Column("resistance", "kΩ", number=True),
    Column("its own", "pF", number=True, key="pickup_pf"),
    Column("cable", "pF", number=True, key="cable_pf"),
    Column("controls and inputs", "kΩ", number=True, key="across"),
    Column("unloaded resonance", "Hz", number=True, key="unloaded"),
    Column("Q", number=True),
)


def pickup_table(driven: tuple[Section, ...]) -> Table | None:
    """A row for each curve; None where no passive instrument is in a chain."""
    rows = tuple(_row(section, number) for number, section in enumerate(driven, 1))
    caption = "Pickups and their resonance; Q with both controls full up"
    return Table("pickups", caption, _COLUMNS, rows) if rows else None


def _row(section: Section, number: int) -> Row:
    names = (Cell(str(number), strong=True), Cell(section.source.thing))
    network = section.network
    if network is None:
        return Row((*names, *(figure(None, 0) for _ in _COLUMNS[len(names) :])))
    leans = section.assumed
    across = parallel((network.volume_ohm, network.tone_ohm, network.load_ohm))
    return Row(
        (
            *names,
            figure(network.henry, 2, leans),
            figure(network.ohm / 1000, 2, leans),
            figure(network.pickup_pf, 0, leans),
            figure(network.cable_pf, 1, leans),
            Cell("none") if across == inf else figure(across / 1000, 1, leans),
            figure(section.unloaded_hz, 0, leans),
            _quality(network, leans),
        )
    )


def _quality(network: SourceNetwork, leans: bool) -> Cell:
    return Cell("a control is down") if network.quality is None else figure(network.quality, 2, leans)
