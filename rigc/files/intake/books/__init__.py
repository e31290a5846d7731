"""Bytes of a spreadsheet -> its cells: CSV by the standard library, XLSX and ODS by packages of their own (extra `tables`)."""

from __future__ import annotations

from importlib import import_module

from rigc.files.intake.books.book import Book, NoBook

KINDS = {
    "csv": "csv_book",
    "tsv": "csv_book",
    "txt": "csv_book",
    "xlsx": "xlsx_book",
    "xlsm": "xlsx_book",
    "ods": "ods_book",
}
"""The ending of a file -> the module that reads it."""


def book(name: str, data: bytes, saved: str) -> Book:
    """The cells of the spreadsheet of that name. `saved` is the day (ISO date) on which the file was written, for a format that does not say it itself.

    Raises `NoBook` where these bytes are no such spreadsheet, `MissingExtra` where its package is not installed.
    """
    ending = name.rpartition(".")[2].lower()
    if ending not in KINDS:
        raise NoBook(
            f"'{name}' is none of .csv, .tsv, .xlsx and .ods",
            "save it as one of these: in most programs Save As, then the format",
        )
    made: Book = import_module(f"rigc.files.intake.books.{KINDS[ending]}").read(name, data, saved)
    return made
