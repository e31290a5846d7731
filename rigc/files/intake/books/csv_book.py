"""CSV, however it was saved -> its cells: commas, semicolons or tabs; UTF-8, UTF-16 or the older encoding of western Europe."""

from __future__ import annotations

import csv
import io

from rigc.files.intake.books.book import (
    Book,
    BookCell,
    BookRow,
    BookSheet,
    NoBook,
    letters,
    refuse_extent,
    refuse_size,
)

_MARKS = ((b"\xef\xbb\xbf", "utf-8-sig"), (b"\xff\xfe", "utf-16"), (b"\xfe\xff", "utf-16"))
_SEPARATORS = (",", ";", "\t", "|")


def read(name: str, data: bytes, saved: str) -> Book:
    """The file as one sheet without a name. Raises `NoBook`."""
    refuse_size(name, len(data))
    text, remark = _decoded(name, data)
    if not text.strip():
        raise NoBook(f"'{name}' holds nothing", "name the file that holds the list")
    separator, text = _separator(text)
    try:
        lines = list(csv.reader(io.StringIO(text, newline=""), delimiter=separator))
    except csv.Error as fault:
        raise NoBook(
            f"'{name}' is no CSV: {fault}", "open it in a spreadsheet program and save it as CSV anew"
        ) from None
    refuse_extent(name, len(lines), max(map(len, lines), default=0))
    rows = tuple(
        BookRow(
            number,
            {at: BookCell(f"{letters(at)}{number}", cell.strip()) for at, cell in enumerate(line) if cell.strip()},
        )
        for number, line in enumerate(lines, 1)
    )
    return Book(name, saved, (BookSheet("", rows),), (remark,) if remark else ())


def _decoded(name: str, data: bytes) -> tuple[str, str]:
    """The text, and what must be said of how it was read."""
    encoding = next((encoding for mark, encoding in _MARKS if data.startswith(mark)), "utf-8")
    try:
        return data.decode(encoding).replace("\0", ""), ""
    except UnicodeDecodeError:
        if encoding != "utf-8":
            raise NoBook(f"'{name}' is no {encoding} text, though it begins like one", "save it as UTF-8") from None
    said = "is not saved as UTF-8 and was read in the encoding of western Europe (Windows-1252); look at its signs, and save it as UTF-8 if one is wrong"
    return data.decode("cp1252", "replace").replace("\0", ""), said


def _separator(text: str) -> tuple[str, str]:
    """What parts the cells: as a first line `sep=;` says, else what cuts most lines into as many cells as the longest has; and the text behind that line."""
    first, _, rest = text.partition("\n")
    if first.strip().strip('"').lower().startswith("sep=") and len(first.strip().strip('"')) == 5:
        return first.strip().strip('"')[4], "\n" + rest
    return max(_SEPARATORS, key=lambda each: _cells(text, each)), text


def _cells(text: str, separator: str) -> tuple[int, int]:
    lines = [line for line in csv.reader(io.StringIO(text, newline=""), delimiter=separator) if any(line)]
    widest = max(map(len, lines), default=1)
    return (0, 0) if widest == 1 else (sum(len(line) == widest for line in lines), widest)
