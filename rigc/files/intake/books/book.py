"""What a spreadsheet holds: sheets, rows, cells with their places, and why a row is not to be counted."""

from __future__ import annotations

from collections.abc import Mapping

from rigc.record import Record


class NoBook(Exception):
    """A file that is no spreadsheet, or cannot be read as one; `help` says what to do."""

    def __init__(self, message: str, help: str) -> None:
        super().__init__(message)
        self.help = help


class BookCell(Record):
    """A cell: its text as the program shows it. `formula` is what it is reckoned by; `kind` is `text`, `number`, `date` or `error`; `place`
    the cell where that stands, which for a part of merged cells is the first of them; `remark` is what somebody pinned to it."""

    place: str
    text: str
    kind: str = "text"
    formula: str = ""
    remark: str = ""
    across: int = 1
    """Over so many columns it was merged."""


class BookRow(Record):
    """A row by its number as the program shows it, and its cells that hold something by their column from 0. `out` says why it counts
    for nothing, if so: `hidden`, `struck through`."""

    number: int
    cells: Mapping[int, BookCell]
    out: str = ""


class BookSheet(Record):
    """A sheet. `hidden` are the columns that nobody sees; `out` as of a row."""

    name: str
    rows: tuple[BookRow, ...]
    hidden: frozenset[int] = frozenset()
    out: str = ""


class Book(Record):
    """A spreadsheet: the name of its file, the day (ISO date) on which it was saved, its sheets, and what was odd about reading it."""

    name: str
    saved: str
    sheets: tuple[BookSheet, ...]
    remarks: tuple[str, ...] = ()


def letters(column: int) -> str:
    """The name of a column that is counted from 0: A to Z, then AA."""
    name = ""
    column += 1
    while column:
        column, rest = divmod(column - 1, 26)
        name = chr(ord("A") + rest) + name
    return name


MOST_BYTES = 16 * 1024 * 1024
MOST_ROWS, MOST_COLUMNS = 5000, 256


def refuse_size(name: str, size: int) -> None:
    """Raises `NoBook` for a file that is larger than any list of gear."""
    if size > MOST_BYTES:
        raise NoBook(
            f"'{name}' is larger than {MOST_BYTES // 1024**2} MiB",
            "delete pictures and sheets that are no list of gear",
        )


def refuse_extent(name: str, rows: int, columns: int) -> None:
    """Raises `NoBook` for a sheet with more rows or columns than any list of gear: what lies beyond would be lost."""
    if rows > MOST_ROWS or columns > MOST_COLUMNS:
        raise NoBook(f"'{name}' has more than {MOST_ROWS} rows or {MOST_COLUMNS} columns", "split it into several")


def refuse_zip(name: str, data: bytes) -> None:
    """Raises `NoBook` for a file that is no archive, or one that unpacks to more than any list of gear."""
    import io
    import zipfile

    refuse_size(name, len(data))
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as archive:
            refuse_size(
                name, sum(entry.file_size for entry in archive.infolist() if entry.filename.endswith(".xml")) // 8
            )
    except zipfile.BadZipFile:
        raise NoBook(
            f"'{name}' is not what its ending says, or has a password",
            "open it, take the password off, and save it anew",
        ) from None
