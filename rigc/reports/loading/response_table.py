"""What instruments drive -> their responses in figures: peak, fall, levels, and the difference from the plain stage lead."""

from __future__ import annotations

from rigc.analysis.computations.loading import Loading
from rigc.analysis.signal.section import Section
from rigc.analysis.signal.source_network import TOLD_HZ, SourceNetwork
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.loading.words import figure, state_names, way

_HZ = [f"{hertz:g} Hz" if hertz < 1000 else f"{hertz / 1000:g} kHz" for hertz in TOLD_HZ]
COLUMNS = (
    Column("curve", number=True),
    Column("section"),
    Column("state"),
    Column("peak", "Hz", number=True),
    Column("peak level", "dB", number=True),
    Column("3 dB down", "Hz", number=True, key="fallen"),
    *(Column(f"at {hertz}", "dB", number=True, key=f"at_{hertz.replace(' ', '').lower()}") for hertz in _HZ),
    *(
        Column(f"{hertz} against plain lead", "dB", number=True, key=f"plain_{hertz.replace(' ', '').lower()}")
        for hertz in _HZ
    ),
)


def response_table(loading: Loading, sections: tuple[Section, ...]) -> Table:
    """One row a section that a passive instrument drives; the numbers are those of the curves."""
    rows = tuple(_row(loading, section, at) for at, section in enumerate(sections, 1))
    return Table(
        "responses",
        "Responses of passive instruments, controls and inputs counted",
        COLUMNS,
        rows,
        empty="no lead is driven by a passive instrument",
        landscape=True,
    )


def _row(loading: Loading, section: Section, number: int) -> Row:
    network = section.network
    names = (Cell(str(number), strong=True), Cell(way(section)), Cell(state_names(loading, (section,))))
    if network is None:
        return Row((*names, *(figure(None, 0) for _ in COLUMNS[len(names) :])))
    if network.silent:
        return Row((*names, Cell("none"), Cell(""), Cell("none"), *(Cell("silent") for _ in _HZ * 2)))
    leans = section.assumed
    return Row(
        (
            *names,
            *_peak(network, leans),
            Cell("none") if network.fallen_hz is None else figure(network.fallen_hz, 0, leans),
            *(figure(network.decibel(hertz), 2, leans) for hertz in TOLD_HZ),
            *(figure(section.against_plain_db(hertz), 2, leans) for hertz in TOLD_HZ),
        )
    )


def _peak(network: SourceNetwork, leans: bool) -> tuple[Cell, Cell]:
    if network.peak_hz is None:
        return Cell("none"), Cell("")
    return figure(network.peak_hz, 0, leans), figure(network.decibel(network.peak_hz), 2, leans)
