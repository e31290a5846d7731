"""The changes of a revision, and what of them is done on the board -> a table, and a sentence that says what the board is."""

from __future__ import annotations

from rigc.diagnostics.wording import joined
from rigc.model.records import AsBuilt, Change
from rigc.model.rig import Head, Rig
from rigc.reports.content import Cell, Column, Row, Table

_CAUSES = {
    "design": "the design was edited",
    "facts": "facts were corrected",
    "stock": "the stock changed",
    "rules": "rules changed",
}
_COLUMNS = (
    Column("change", number=True),
    Column("cause"),
    Column("what"),
    Column("because"),
    Column("touches"),
    Column("on the board", key="done"),
)


def change_table(rig: Rig) -> Table:
    """A row for each change, with what it touches and whether it is done."""
    done = {number for built in rig.as_built for number in built.done}
    rows = tuple(_row(change, change.number in done, bool(rig.as_built)) for change in rig.head.changes)
    return Table(
        "changes",
        f"Changes of revision {rig.head.letter}",
        _COLUMNS,
        rows,
        empty="",
        tick=True,
    )


def _row(change: Change, done: bool, built: bool) -> Row:
    state = Cell("done") if done else Cell("open", strong=True) if built else Cell("")
    return Row(
        (
            Cell(str(change.number), strong=True),
            Cell(_CAUSES[change.cause]),
            Cell(change.text),
            Cell(change.because),
            Cell(", ".join(change.touches)),
            state,
        )
    )


def board_words(head: Head, built: AsBuilt) -> str:
    """`The board is C with changes 1 and 3 of D; change 2 is open.`"""
    done = [change.number for change in head.changes if change.number in built.done]
    still = [change.number for change in head.changes if change.number not in built.done]
    before = head.follows[0] if head.follows else "" if built.revision == head.letter else built.revision
    if not head.changes:
        same = "this revision" if built.revision == head.letter else f"not this revision, {head.letter}"
        return f"The board was built to revision {built.revision}: {same}."
    if not still:
        return f"The board is {head.letter}: all its changes are done."
    base = f"revision {before}" if before else f"the revision before {head.letter}"
    if not done:
        return f"The board is {base}: none of the changes of {head.letter} is done."
    opened = f"{_numbers('change', still)} {'is' if len(still) == 1 else 'are'} open"
    return f"The board is {base} with {_numbers('change', done)} of {head.letter}; {opened}."


def _numbers(word: str, numbers: list[int]) -> str:
    return f"{word}{'s' if len(numbers) > 1 else ''} {joined(numbers)}"
