"""What a table says over and over -> said once, in its caption: columns that are the same in nearly every row, and rows that are fine.

A column takes part that says in which words (`Column.folds`), and the rows that differ say so behind a sign; rows take part where
the table says how many are fine. A column in which no row says anything is left out, unless it is written in by hand.
Data keeps all of it: CSV and JSON do not come by here.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable

from rigc.record import Record
from rigc.reports.content import Cell, Column, Row, Sheet, Table

SIGN = "▲"
CAPTION_WORDS = _ALL, _EXCEPT, _WITHOUT, _NOT, _NONE, _UNKNOWN = (
    "all",
    "except",
    "without",
    "not this",
    "none of these",
    "not known",
)
_OPEN = ("", "?", "not said")  # what a cell says that is not known; why, its mark says
_LEAST = 3  # rows: below, a table is read at a glance
_FEW = 5  # one row of so many may differ


class _Folded(Record):
    place: int
    told: Cell


def without_constants(sheet: Sheet, word: Callable[[str], str]) -> Sheet:
    """The sheet as it is printed; `word` gives the fixed words in the user's own wording."""
    blocks = tuple(_table(_without_fine(block), word) if isinstance(block, Table) else block for block in sheet.blocks)
    told: Sheet = sheet.replace(blocks=blocks)
    return told


def _without_fine(table: Table) -> Table:
    rows = tuple(row for row in table.rows if not row.fine)
    if not table.fine or len(rows) == len(table.rows):
        return table
    left: Table = table.replace(
        rows=rows, caption=f"{table.caption} · {table.fine}" if rows else table.caption, empty=table.fine
    )
    return left


def _table(table: Table, word: Callable[[str], str]) -> Table:
    rows = [row for row in table.rows if not row.total]
    found = [each for place in range(1, len(table.columns)) for each in _constant(table, place, rows)]
    if found and len(found) == len(table.columns) - 1 and not any(_exceptions(table, row, found, word) for row in rows):
        found.pop()  # names alone are no table
    if not found:
        return table
    away = {each.place for each in found}
    stay = [place for place in range(len(table.columns)) if place not in away]
    beside = [_exceptions(table, row, found, word) for row in table.rows]
    column = (Column(SIGN, key="exceptions"),) if any(beside) else ()
    told = _told(table, found, word)
    but = f", {word(_EXCEPT)}\u00a0{SIGN}" if told and column else ""
    printed: Table = table.replace(
        caption=f"{table.caption} · {told}{but}" if told else table.caption,
        columns=(*(table.columns[place] for place in stay), *column),
        rows=tuple(
            row.replace(cells=(*(row.cells[place] for place in stay), *((Cell(text, strong=True),) if column else ())))
            for row, text in zip(table.rows, beside, strict=True)
        ),
    )
    return printed


def _constant(table: Table, place: int, rows: list[Row]) -> list[_Folded]:
    column, cells = table.columns[place], [row.cells[place] for row in rows]
    if not column.least_mm and all(_is_empty(row.cells[place]) for row in table.rows):
        return [_Folded(place, Cell(""))]
    if not column.folds or len(rows) < _LEAST:
        return []
    if any(row.total and not _is_empty(row.cells[place]) for row in table.rows) or any(
        each.mark.isupper() for each in cells
    ):
        return []
    said = [each for each in cells if not (column.blank_fits and each == Cell(""))]
    if not said:
        return []
    (((text, mark), count),) = Counter(map(_bare, said)).most_common(1)
    return [_Folded(place, Cell(text, mark=mark))] if (len(said) - count) * _FEW <= len(said) else []


def _bare(cell: Cell) -> tuple[str, str]:
    """What it says, however it is stressed."""
    return cell.text, cell.mark


def _is_empty(cell: Cell) -> bool:
    return not (cell.text or cell.mark or cell.strong or cell.sheet)


def _told(table: Table, found: list[_Folded], word: Callable[[str], str]) -> str:
    """What the caption says of all rows: what they have in common, then what is known of none."""
    same = [_words(table.columns[each.place], each.told) for each in found if not _unknown(each.told)]
    unknown = [table.columns[each.place].head for each in found if _unknown(each.told)]
    parts = [f"{word(_ALL)} {', '.join(told)}" for told in [[each for each in same if each]] if told]
    return "; ".join([*parts, *([f"{word(_UNKNOWN)}: {', '.join(unknown)}"] if unknown else [])])


def _exceptions(table: Table, row: Row, found: list[_Folded], word: Callable[[str], str]) -> str:
    other = [] if row.total else [each.place for each in found if _differs(table, row, each)]
    if not other:
        return ""
    lacks = [place for place in other if row.cells[place] == Cell("")]
    named = [each.place for each in found if each.told != Cell("")]
    told = [_words(table.columns[place], row.cells[place]) for place in other if place not in lacks]
    if lacks:
        heads = f"{word(_WITHOUT)} {', '.join(table.columns[place].head for place in lacks)}"
        told.insert(0, heads if lacks != named else word(_NOT) if len(named) == 1 else word(_NONE))
    return f"{SIGN} {', '.join(told)}"


def _differs(table: Table, row: Row, folded: _Folded) -> bool:
    cell = row.cells[folded.place]
    blank = table.columns[folded.place].blank_fits and cell == Cell("")
    return not blank and _bare(cell) != _bare(folded.told)


def _unknown(cell: Cell) -> bool:
    return cell.text in _OPEN and cell != Cell("")


def _words(column: Column, cell: Cell) -> str:
    """What the caption says of a cell; nothing of an empty one."""
    if _unknown(cell):
        return f"{column.head}: {cell.mark or cell.text}"
    measured = column.unit and cell.text[-1:].isdigit()
    text = f"{cell.text}{'' if column.unit == '°' else ' '}{column.unit}" if measured else cell.text
    told = f"{text} ({cell.mark})" if cell.mark else text
    return column.folds.replace("{}", told) if told else ""
