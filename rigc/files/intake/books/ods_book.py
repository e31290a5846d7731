"""ODS -> its cells, by odfpy (extra `tables`): as shown, with formulas, merged cells and hidden rows."""

from __future__ import annotations

import io
from collections.abc import Iterator
from typing import Any

from rigc.files.intake.books.book import (
    MOST_COLUMNS,
    Book,
    BookCell,
    BookRow,
    BookSheet,
    NoBook,
    letters,
    refuse_extent,
    refuse_zip,
)
from rigc.output.extras.missing_extra import of_extra

_HIDDEN = ("collapse", "filter")


def read(name: str, data: bytes, saved: str) -> Book:
    """The workbook. Raises `NoBook`, and `MissingExtra` where the package is not installed."""
    with of_extra("tables", "ODS", "odfpy", "odf"):
        from odf import opendocument
    refuse_zip(name, data)
    try:
        document = opendocument.load(io.BytesIO(data))
        days = [str(each) for each in document.meta.childNodes if each.qname[1] == "date"]
        sheets = [each for each in document.spreadsheet.childNodes if _is(each, "table")]
        return Book(name, days[0][:10] if days else saved, tuple(_sheet(name, each, document) for each in sheets))
    except NoBook:
        raise
    except Exception as fault:  # a broken file can fail in any way
        raise NoBook(
            f"'{name}' can't be read as ODS: {type(fault).__name__}", "open it in its program and save it anew"
        ) from None


def _is(node: Any, word: str) -> bool:
    return getattr(node, "qname", ("", ""))[1] == word


def _below(node: Any, *words: str) -> Iterator[Any]:
    """The nodes of these names, also those within groups and headers."""
    for each in node.childNodes:
        if getattr(each, "qname", ("", ""))[1] in words:
            yield each
        elif hasattr(each, "childNodes") and "group" in each.qname[1] + each.qname[1].replace("header", "group"):
            yield from _below(each, *words)


def _attribute(node: Any, word: str) -> str:
    return next((str(value) for (_, name), value in node.attributes.items() if name == word), "")


def _times(node: Any, word: str) -> int:
    return int(_attribute(node, word) or 1)


def _sheet(name: str, table: Any, document: Any) -> BookSheet:
    rows: list[BookRow] = []
    spread: dict[tuple[int, int], BookCell] = {}
    number = 0
    for row in _below(table, "table-row"):
        times = _times(row, "number-rows-repeated")
        out = "hidden" if _attribute(row, "visibility") in _HIDDEN else ""
        cells = _cells(row, number, spread)
        for again in range(times if cells else 0):
            refuse_extent(name, number + again + 1, max(cells) + 1)
            rows.append(BookRow(number + again + 1, _moved(cells, again), out))
        number += times
    style = next(
        (
            each
            for each in document.automaticstyles.childNodes
            if _attribute(each, "name") == _attribute(table, "style-name")
        ),
        None,
    )
    shown = style is None or all(_attribute(each, "display") != "false" for each in style.childNodes)
    return BookSheet(_attribute(table, "name"), tuple(rows), _hidden(table), "" if shown else "hidden")


def _moved(cells: dict[int, BookCell], down: int) -> dict[int, BookCell]:
    """The cells of a row that is repeated, so many rows below."""
    if not down:
        return cells
    return {
        at: cell.replace(place=f"{letters(at)}{int(''.join(filter(str.isdigit, cell.place))) + down}")
        for at, cell in cells.items()
    }


def _cells(row: Any, number: int, spread: dict[tuple[int, int], BookCell]) -> dict[int, BookCell]:
    cells: dict[int, BookCell] = {}
    at = 0
    for node in _below(row, "table-cell", "covered-table-cell"):
        times = _times(node, "number-columns-repeated")
        for _ in range(min(times, MOST_COLUMNS - at)):
            held = spread.get((number, at)) or (
                _cell(node, f"{letters(at)}{number + 1}") if _is(node, "table-cell") else None
            )
            if held is not None:
                cells[at] = held
                for down in range(_times(node, "number-rows-spanned") if _is(node, "table-cell") else 0):
                    for along in range(held.across):
                        spread[number + down, at + along] = held
            at += 1
    return cells


def _cell(node: Any, place: str) -> BookCell | None:
    text = "\n".join(_text(each) for each in node.childNodes if _is(each, "p")).strip()
    remark = "\n".join(
        _text(line) for each in node.childNodes if _is(each, "annotation") for line in each.childNodes if _is(line, "p")
    )
    formula = _attribute(node, "formula").partition(":")[2] if _attribute(node, "formula") else ""
    kind = {"float": "number", "date": "date", "percentage": "number", "currency": "number"}.get(
        _attribute(node, "value-type"), "text"
    )
    if kind == "date":
        text = _attribute(node, "date-value")[:10]
    if text.startswith(("#", "Err:")) and formula:
        kind = "error"
    if not text and not remark:
        return None
    return BookCell(place, text, kind, formula, remark.strip(), _times(node, "number-columns-spanned"))


def _text(node: Any) -> str:
    from odf import teletype

    return str(teletype.extractText(node))


def _hidden(table: Any) -> frozenset[int]:
    hidden: set[int] = set()
    at = 0
    for column in _below(table, "table-column"):
        times = _times(column, "number-columns-repeated")
        if _attribute(column, "visibility") in _HIDDEN:
            hidden.update(range(at, min(at + times, MOST_COLUMNS)))
        at += times
    return frozenset(hidden)
