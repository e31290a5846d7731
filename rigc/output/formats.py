"""The name of a format -> the function that renders it, loaded only when it is asked for."""

from __future__ import annotations

from collections.abc import Callable
from importlib import import_module
from typing import Any

from rigc.reports.content import Document, Drawing, Paragraph, Sheet, Table

DOCUMENTS = {"md": "markdown", "html": "html"}
TABLES = {"text": "text", "md": "markdown", "csv": "csv", "json": "json"}


class NotOneTable(Exception):
    """CSV holds one table, and the sheet has none or several; `names` are those that it has."""

    def __init__(self, sheet: str, names: tuple[str, ...]) -> None:
        super().__init__(f"CSV holds one table; the sheet '{sheet}' has {', '.join(names) or 'none'}")
        self.names = names


def document_renderer(name: str) -> Callable[..., str]:
    """What renders documents in a format, a key of `DOCUMENTS`, from them, a `Layout` and a `Whole`; the key is also the ending of the file."""
    render: Callable[..., str] = _module(DOCUMENTS[name]).render
    return render


def render_tables(name: str, sheet: Sheet, only: str = "") -> str:
    """The tables of a sheet, or the one named `only`, in a format, a key of `TABLES`.

    Raises `LookupError` if no table has that name, `NotOneTable` if the format is CSV and several (or none) are left.
    """
    tables = tuple(block for block in sheet.blocks if isinstance(block, Table) and only in ("", block.name))
    if only and not tables:
        raise LookupError(f"the sheet '{sheet.name}' has no table '{only}'")
    if name == "csv" and len(tables) != 1:
        raise NotOneTable(sheet.name, tuple(table.name for table in tables))
    text: str = _module(TABLES[name]).render_tables(tables)
    if name == "text" and not only:
        text += _module("text").render_statements(
            tuple(block for block in sheet.blocks if isinstance(block, Paragraph))
        )
    pictures = tuple(block for block in sheet.blocks if isinstance(block, Drawing))
    if name == "text" and pictures and not only:
        return text + "\n" * bool(text) + str(_module("text").render_drawings(pictures))
    return text


def drawing_files(document: Document) -> tuple[tuple[str, str], ...]:
    """Name and SVG of the file of each drawing of a document."""
    if not any(isinstance(block, Drawing) for block in document.sheet.blocks):
        return ()
    svg = _module("svg")
    return tuple(
        (svg.file_name(document.sheet, drawing), svg.render(document, drawing)) for drawing in svg.drawings(document)
    )


def table_files(document: Document, form: str, others: tuple[Table, ...] = ()) -> tuple[tuple[str, str], ...]:
    """Name and text of the files of a document's tables, or of `others`: as `csv` one for each table, as `json` one for all."""
    sheet = document.sheet
    found = others or tuple(block for block in sheet.blocks if isinstance(block, Table))
    if form == "csv":
        return tuple((f"{sheet.name}-{table.name}.csv", _module("csv").render_tables((table,))) for table in found)
    return ((f"{sheet.name}.json", _module("json").render_tables(found)),) if found else ()


def _module(name: str) -> Any:
    return import_module(f"rigc.output.{name}")
