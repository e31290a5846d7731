"""The first sections -> the leads before the first buffer, their sums, and what could not be reckoned."""

from __future__ import annotations

from rigc.analysis.signal.loading.first_section import FirstSection, InstrumentSection
from rigc.reports.content import Cell, Column, Paragraph, Row, Table
from rigc.reports.figure_cell import told_cell

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
    Column("of the limit", "%", number=True, bar=True),
    Column("limit", "pF", number=True),
    Column("pickup", "pF", number=True),
    Column("together", "pF", number=True),
    Column("unloaded resonance", "Hz", number=True),
    Column("the same on the plain lead", "Hz", number=True, key="plain_lead"),
)


def first_buffer_tables(first: FirstSection) -> tuple[Table | Paragraph, ...]:
    """The two tables, and a paragraph that says how to read them and which facts are missing; nothing where no instrument plays."""
    if not first.sections:
        return ()
    leads = Table(
        "before_first_buffer",
        "Before the first buffer, all units off: leads",
        LEADS,
        tuple(row for section in first.sections for row in _leads(section)),
        empty="",
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
    who = Cell(_who(section))
    return [
        Row((who, Cell(lead.mark, strong=True), *map(told_cell, (lead.length, lead.per_metre, lead.capacitance))))
        for lead in (section.passive.leads if section.passive is not None else ())
    ]


def _who(section: InstrumentSection) -> str:
    return f"{section.instrument} ({', '.join(section.scenarios)})" if section.scenarios else section.instrument


def _sums(section: InstrumentSection) -> Row:
    told = section.passive
    names = (
        Cell(section.instrument),
        Cell(", ".join(section.scenarios) or "all"),
        Cell("active instrument" if told is None else ", ".join(section.until) or "no buffer"),
    )
    if told is None:
        return Row((*names, *(Cell("") for _ in SUMS[len(names) :])))
    cells = (told.cable, told.percent, told.limit, told.pickup, told.together, told.resonance, told.plain)
    return Row((*names, *map(told_cell, cells)))


def _notes(first: FirstSection) -> tuple[str, ...]:
    missing = dict.fromkeys(f"Not known: {reason}." for section in first.sections for reason in section.missing)
    passive = any(section.passive is not None for section in first.sections)
    formula = "The unloaded resonance is 1/(2π√(LC)) of pickup and cable alone; volume and tone controls and the input pull it lower."
    return (*((formula,) if passive else ()), *missing)
