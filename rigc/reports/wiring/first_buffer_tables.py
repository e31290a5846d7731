"""The first sections -> the leads before the first buffer, their sums, and what could not be reckoned."""

from __future__ import annotations

from rigc.analysis.computations.first_section import FirstSection, InstrumentSection
from rigc.diagnostics.decimals import decimals
from rigc.reports.content import Cell, Column, Paragraph, Row, Table

LEADS = (
    Column("instrument"),
    Column("lead"),
    Column("length", "m", number=True),
    Column("per metre", "pF/m", number=True),
    Column("capacitance", "pF", number=True),
)
SUMS = (
    Column("instrument"),
    Column("scenario"),
    Column("up to"),
    Column("cable", "pF", number=True),
    Column("of the limit", "%", number=True),
    Column("limit", "pF", number=True),
    Column("pickup", "pF", number=True),
    Column("together", "pF", number=True),
    Column("unloaded resonance", "Hz", number=True),
    Column("the same on the plain lead", "Hz", number=True, key="plain_lead"),
)
_UNKNOWN = "not known"


def first_buffer_tables(first: FirstSection) -> tuple[Table | Paragraph, ...]:
    """The two tables, and a paragraph that says how to read them and which facts are missing; nothing where no instrument plays."""
    if not first.sections:
        return ()
    passive = [section for section in first.sections if not section.active]
    leads = Table(
        "before_first_buffer",
        "Before the first buffer, all units off: leads",
        LEADS,
        tuple(row for section in passive for row in _leads(section)),
        empty="no lead is driven by a passive instrument",
    )
    sums = Table(
        "before_first_buffer_sums",
        "Before the first buffer, all units off: sums",
        SUMS,
        tuple(_sums(section) for section in first.sections),
        empty="no instrument is in a chain",
    )
    return leads, sums, Paragraph("before_first_buffer_notes", _notes(first), kind="text")


def _leads(section: InstrumentSection) -> list[Row]:
    return [
        Row(
            (
                Cell(_who(section)),
                Cell(lead.mark, strong=True),
                _figure(None if lead.length_mm is None else lead.length_mm / 1000, 3),
                _figure(lead.pf_per_m, 1),
                _figure(lead.pf, 2, lead.assumed),
            )
        )
        for lead in section.leads
    ]


def _who(section: InstrumentSection) -> str:
    return f"{section.instrument} ({', '.join(section.scenarios)})" if section.scenarios else section.instrument


def _sums(section: InstrumentSection) -> Row:
    names = (
        Cell(section.instrument),
        Cell(", ".join(section.scenarios) or "all"),
        Cell("active instrument" if section.active else ", ".join(section.until) or "no buffer"),
    )
    if section.active:
        return Row((*names, *(Cell("") for _ in SUMS[len(names) :])))
    return Row(
        (
            *names,
            _figure(section.cable_pf, 1, section.assumed),
            _figure(section.percent, 1),
            _figure(section.limit_pf, 0),
            _figure(section.pickup_pf, 1),
            _figure(section.total_pf, 1, section.assumed),
            _figure(section.unloaded_hz, 0, section.assumed),
            Cell("") if section.plain_hz is None else _figure(section.plain_hz, 0),
        )
    )


def _figure(value: float | None, places: int, assumed: bool = False) -> Cell:
    if value is None:
        return Cell("", mark=_UNKNOWN)
    return Cell(decimals(value, places), mark="assumed" if assumed else "")


def _notes(first: FirstSection) -> tuple[str, ...]:
    missing = dict.fromkeys(f"Not known: {reason}." for section in first.sections for reason in section.missing)
    return (
        "The unloaded resonance is 1/(2π√(LC)) of pickup and cable alone; volume and tone controls and the input pull it lower.",
        *missing,
    )
