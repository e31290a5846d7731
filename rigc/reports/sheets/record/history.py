"""History: this revision, what it follows, what it changes and why, and who released it when."""

from __future__ import annotations

from rigc.model.rig import Head, Rig
from rigc.reports.content import Cell, Column, Paragraph, Row, Sheet, Table
from rigc.reports.revision.change_table import board_words, change_table

_READING = Paragraph(
    "reading",
    (
        "Numbers of leads, outlets and labels are given once and never again. A change is ticked when it is done on the board, "
        "and then entered: as-built, done NUMBER.",
        "Pages of the folder that bear another revision, or another source, are taken out and destroyed.",
    ),
    heading="How to use it",
)


def history(rig: Rig) -> Sheet:
    """The revision with its dates and names, and its changes with cause, reason, what they touch, and whether they are done."""
    state = tuple(board_words(rig.head, built) for built in rig.as_built)
    return Sheet(
        "history",
        "History",
        "builder, client and tech",
        (
            _revision(rig.head),
            *((Paragraph("state", state, heading="The board"),) if state else ()),
            change_table(rig),
            *((_limits(rig.head),) if rig.head.limits else ()),
            _READING,
            _release(rig.head),
        ),
    )


def _revision(head: Head) -> Table:
    follows = "none is stated" if head.follows is None else f"revision {head.follows[0]}, {head.follows[1]}"
    frozen = head.frozen
    rows = (
        ("revision", head.letter),
        ("date", head.date),
        ("what it is", head.revision_text or "not stated"),
        ("class", head.rig_class or "not stated"),
        ("follows", follows),
        ("drawn by", head.drawn or "not stated"),
        ("checked by", head.checked or "not stated"),
        ("frozen", "not frozen: may still change" if frozen is None else f"{frozen.date} by {frozen.by}"),
        ("seal", "none" if frozen is None or not frozen.seal else frozen.seal),
    )
    cells = tuple(Row((Cell(name), Cell(value, strong=name in ("revision", "frozen")))) for name, value in rows)
    return Table("revision", f"Revision {head.letter}", (Column("what"), Column("this revision", key="value")), cells)


def _limits(head: Head) -> Table:
    columns = (Column("limit"), Column("value"), Column("source"))
    rows = tuple(
        Row((Cell(each.name, strong=True), Cell(each.amount.typed), Cell(each.source or "not stated")))
        for each in head.limits
    )
    return Table("own_limits", "Limits that this rig sets for itself", columns, rows)


def _release(head: Head) -> Table:
    columns = (
        Column("signed"),
        Column("name", least_mm=45),
        Column("date", least_mm=25),
        Column("signature", least_mm=45),
    )
    what = (f"revision {head.letter} released", f"revision {head.letter} received, older pages destroyed")
    return Table("signed", "Signed", columns, tuple(Row((Cell(each), *(Cell(""),) * 3)) for each in what))


PLACE = 1
SHEET = history
