"""Where the commands meet the compiler, which is loaded only when a command needs it."""

from __future__ import annotations

from collections.abc import Callable
from importlib import import_module
from typing import Any, Protocol

import click

from rigc.diagnostics.diagnostic import Diagnostic
from rigc.files.disk import Disk


class Compiled(Protocol):
    """What the commands use of a compiled rig: its findings in order, and its documents (none if there is no rig)."""

    @property
    def findings(self) -> tuple[Diagnostic, ...]: ...

    @property
    def has_errors(self) -> bool: ...

    def documents(self, sheet_names: tuple[str, ...], draft: bool) -> tuple[Any, ...]: ...

    def sheets(self, sheet_names: tuple[str, ...]) -> tuple[Any, ...]: ...


def compiled(
    disk: Disk,
    on: str | None,
    effort: int | None = None,
    reads: Any = None,
    watch: Callable[[int, int], None] | None = None,
) -> Compiled:
    """Compile the file that `disk` was made for, judging dates as on the day `on` (None: the rig's revision).

    `effort` is how many steps are spent on places that are not stated (None: the usual number); `watch` is told how far that is.
    """
    from rigc.files.kept import kept

    result: Compiled = import_module("rigc.compile").compile_rig(
        disk, disk.name, reads or reader(), on=on, effort=effort, watch=watch, kept=kept()
    )
    return result


def bench(result: Any, disk: Disk, on: str | None, effort: int | None, reads: Any = None) -> Any:
    """Where the mends of a compiled rig's findings are tried."""
    from rigc.proved import Bench

    return Bench(result, disk, disk.name, reads or reader(), on, effort)


def reader() -> Any:
    """What reads the sources of a run: with one for all of it, the tables of the grammar are loaded once."""
    from rigc.files.reader import CachedReader

    return CachedReader()


def sheet_names() -> tuple[str, ...]:
    """The name of every sheet."""
    from rigc.files.kept import kept
    from rigc.reports.folder import sheet_names

    return sheet_names(kept())


def sheets() -> tuple[tuple[str, str], ...]:
    """Name and title of every sheet."""
    from rigc.reports.folder import sheet_lines

    return sheet_lines()


def views() -> tuple[tuple[str, str], ...]:
    """Name and title of what can only be shown."""
    from rigc.reports.folder import view_lines

    return view_lines()


def rendered(documents: tuple[Any, ...], form: str, paper: str) -> str:
    """The documents as one text in the format `form`, by the templates that ship with rigc."""
    from rigc.files.kept import kept
    from rigc.output.formats import document_renderer
    from rigc.output.layout import Layout

    return document_renderer(form)(documents, Layout(paper, None, kept()))


def printed(page: str) -> bytes:
    """A page of HTML as PDF. Raises `MissingExtra`."""
    from rigc.output.extras.pdf import render

    return render(page)


def whole(result: Any, documents: tuple[Any, ...]) -> Any:
    """What the user's templates are given of a compiled rig beside their own document."""
    from rigc.output.design.model import model
    from rigc.output.templates import Whole

    return Whole(tuple(each.sheet for each in documents), model(result.results, result.findings, result.hash))


def fixed_words() -> tuple[str, ...]:
    """The phrases that stand in our templates themselves."""
    from rigc.output.templates import fixed_words

    return fixed_words()


def split(document: Any, form: str, result: Any) -> tuple[tuple[str, str | bytes], ...]:
    """Name and text of each file of a document in a format that has a file for each part. Raises `MissingExtra`."""
    from rigc.output.formats import drawing_files, table_files

    if form == "svg":
        return drawing_files(document)
    if form == "csv" and document.sheet.name == "label-sheet":
        from rigc.reports.leads.printer_labels import printer_labels

        return (*table_files(document, form), *table_files(document, form, (result.results.call(printer_labels),)))
    if form == "xlsx":
        from rigc.output.extras import xlsx

        return xlsx.files(document)
    if form != "dxf":
        return table_files(document, form)
    if document.sheet.name != "deck-drawing":
        return ()
    from rigc.output.extras.dxf import render
    from rigc.reports.deck.cut_plan import cut_plans

    plans = result.results.call(cut_plans).all
    return tuple((f"{document.sheet.name}-{plan.name}.dxf", render(plan, document.title)) for plan in plans)


def documents(result: Any, names: tuple[str, ...], draft: bool) -> tuple[Any, ...]:
    """The documents of these names or codes; a code that the rig's folder lacks ends the command with exit code 2."""
    return _by_code(lambda: result.documents(names, draft))


def shown_sheets(result: Any, names: tuple[str, ...]) -> tuple[Any, ...]:
    """The sheets of these names or codes, without what the folder adds; as `documents`."""
    return _by_code(lambda: result.sheets(names))


def _by_code(asked: Callable[[], tuple[Any, ...]]) -> tuple[Any, ...]:
    from rigc.reports.folder import NoSuchCode

    try:
        return asked()
    except NoSuchCode as fault:
        raise click.UsageError(str(fault)) from None


def tables(sheets: tuple[Any, ...], form: str, only: str) -> str:
    """The tables of sheets in the format `form`. Raises `NotOneTable`; `only` must be one of their names, or empty."""
    from rigc.output.formats import render_tables

    return "".join(render_tables(form, sheet, only) for sheet in sheets)


def why(result: Any, name: str, form: str, deep: bool, shown: Callable[[str], str]) -> str | None:
    """How the value of that name in a compiled rig came about, as `text` or `json`; None where nothing was computed.

    Of a thing or a lead all values, in short. A name without a value ends the command with exit code 2.
    """
    if result.results is None:
        return None
    from rigc.analysis.reasoning import Reasoning, UnknownValue

    reasoning = Reasoning(result.results)
    try:
        reasons = reasoning.of(name)
    except UnknownValue as fault:
        raise click.UsageError(str(fault)) from None
    if form == "json":
        from rigc.output.reasons.json import render

        return render(reasoning, reasoning.deep(reasons) if deep else reasons, shown)
    from rigc.output.reasons.text import short, whole

    if len(reasons) > 1 and not deep:
        return short(reasoning, reasons)
    return "\n".join(whole(reasoning, reason, shown, deep) for reason in reasons)


def model(result: Any, shown: Callable[[str], str]) -> str | None:
    """The whole computed design of a compiled rig as JSON; None where nothing was computed."""
    if result.results is None:
        return None
    from rigc.output.design.model import render

    return render(result.results, result.findings, result.hash, shown)
