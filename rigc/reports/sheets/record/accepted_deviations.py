"""Accepted deviations: which findings the builder lets stand, why, who signed, until when."""

from __future__ import annotations

from rigc.diagnostics.explain import all_kinds
from rigc.model.records import Accept
from rigc.model.rig import Rig
from rigc.reports.content import Cell, Column, NoSheet, Paragraph, Row, Sheet, Table
from rigc.reports.tests.reading_cells import BY

_COLUMNS = (
    Column("rule"),
    Column("what it wants", key="rule_words"),
    Column("about"),
    Column("place"),
    Column("reason"),
    BY,
    Column("until", least_mm=25),
    Column("seal"),
    Column("on the day of the revision", key="holds"),
    Column("initials", least_mm=16),
)
_READING = Paragraph(
    "reading",
    (
        "What is listed here was found, and somebody answers for it with a reason and an end. After its end a deviation stands "
        "again as a finding: mend it, or sign it anew.",
        "The seal binds each to the state and the figures that were signed: what is worse, or another state, stands as a finding.",
        "Errors that endanger something can't be accepted.",
    ),
    heading="How to read it",
)


def accepted_deviations(rig: Rig) -> Sheet | NoSheet:
    """Rule, about, place, reason, by, until, and whether it holds on the day of the revision."""
    if not rig.accepts:
        return NoSheet("accepted-deviations", "Accepted deviations", "No finding is accepted.")
    rules = {kind.name: kind.rule for kind in all_kinds()}
    rows = tuple(_row(rig, accept, rules.get(accept.rule, "no such rule")) for accept in rig.accepts)
    table = Table("accepted", "Accepted deviations", _COLUMNS, rows)
    return Sheet(
        "accepted-deviations", "Accepted deviations", "client, builder and tech", (table, _READING), landscape=True
    )


def _row(rig: Rig, accept: Accept, wants: str) -> Row:
    holds = accept.until >= rig.head.date
    return Row(
        (
            Cell(accept.rule, strong=True),
            Cell(wants),
            Cell(accept.target or "all of this rule"),
            Cell(f"{accept.span.source.name}:{accept.span.line}"),
            Cell(accept.reason),
            Cell(accept.by),
            Cell(accept.until),
            Cell(accept.seal) if accept.seal else Cell("", strong=True, mark="NOT SIGNED"),
            Cell("holds") if holds else Cell("", strong=True, mark="ENDED"),
            Cell(""),
        )
    )


PLACE = 3
SHEET = accepted_deviations
