"""A named file and all that it uses -> its statements in order of use, each file once; a circle is shown as a chain."""

from __future__ import annotations

import posixpath
import re
from typing import Any

from rigc.diagnostics.diagnostic import Diagnostic, Label
from rigc.diagnostics.mend import Delete, Mend, Replace
from rigc.loader import STOCK, STOCK_FILES, Loader, Unreadable, used_name
from rigc.record import Record
from rigc.source import Source, Span
from rigc.syntax import nodes
from rigc.syntax.nodes import File, Node, Text
from rigc.syntax.parsed import Reader
from rigc.syntax.slips.beyond_limits import MOST_LINES, too_many_lines
from rigc.syntax.slips.use_mistakes import CIRCLE, OTHER_LANGUAGE, UNSTATED_LANGUAGE, UNUSABLE

LANGUAGE = "1"
DEEPEST = 100  # far beyond what a person writes, far below what would exhaust the reader


class Gathered(Record):
    """All statements, the findings of reading, the stretches that were passed over, and the sources."""

    statements: tuple[Node, ...]
    findings: tuple[Diagnostic, ...]
    skipped: tuple[Span, ...]
    sources: tuple[Source, ...]


class _Gatherer:
    def __init__(self, load: Loader, reader: Reader) -> None:
        self.load = load
        self.reader = reader
        self.statements: list[Node] = []
        self.findings: list[Diagnostic] = []
        self.skipped: list[Span] = []
        self.done: dict[str, Source] = {}
        self.lines = 0
        self.open: list[tuple[Source, Span | None]] = []

    def take(self, source: Source, used_at: Span | None) -> None:
        if any(source is each for each, _ in self.open):
            self.findings.append(self._circle(source, used_at))
            return
        if source.name in self.done:
            return
        self.done[source.name] = source
        before, self.lines = self.lines, self.lines + source.text.count("\n")
        if self.lines > MOST_LINES:
            self.findings.append(too_many_lines(source, MOST_LINES - before + 1))
            self.skipped.append(Span(source, 0, len(source.text)))
            return
        self.open.append((source, used_at))
        parsed = self.reader.parse(source)
        self.findings += parsed.findings
        self.skipped += parsed.skipped
        spoken: nodes.Language | None = None
        for statement in parsed.file.statements:
            if isinstance(statement, nodes.Use):
                self._use(source, statement)
            elif isinstance(statement, nodes.Language):
                self._language(statement)
                if spoken is not None:
                    self.findings.append(_said_before(statement, spoken))
                spoken = statement
        if parsed.file.statements and not parsed.findings:
            self._says_language(source, parsed.file)
        self.statements += [s for s in parsed.file.statements if not isinstance(s, nodes.Use | nodes.Language)]
        self.open.pop()

    def _use(self, source: Source, statement: nodes.Use) -> None:
        path = statement.path.span
        if "\\" in path.text:
            right = re.sub(r"\\+", "/", path.text)
            mends = (Mend(f"write {right}", (Replace(path, right),)),)
            told = UNUSABLE.at(
                path, "a path is written with /, not with a backslash", label="in this path", mends=mends
            )
            self.findings.append(told)
            return
        try:
            used = self.load(used_name(source.name, statement.path.value))
        except Unreadable as fault:
            place = f" (line {fault.line}, column {fault.column})" if fault.line else ""
            self.findings.append(
                UNUSABLE.at(
                    statement.path.span,
                    f"{fault.message}{place}",
                    label="used here",
                    help=""
                    if fault.near
                    else _files(statement.path) or fault.help or "correct the path; it counts from this file",
                    mends=_in_stock(statement.path) or _nearest_file(statement.path, fault.near),
                )
            )
            return
        if len(self.open) >= DEEPEST and used.name not in self.done:
            self.findings.append(
                UNUSABLE.at(
                    statement.path.span,
                    f"'{used.name}' is not read: files use each other more than {DEEPEST} deep",
                    label="one too many",
                    help="let the rig's own file use it",
                )
            )
            return
        self.take(used, statement.path.span)

    def _circle(self, source: Source, used_at: Span | None) -> Diagnostic:
        names = [each.name for each, _ in self.open]
        chain = [*names[names.index(source.name) :], source.name]
        also = tuple(Label(span, "and this uses it") for _, span in self.open[names.index(source.name) + 1 :] if span)
        return CIRCLE.at(
            used_at,
            f"these files use each other in a circle: {' -> '.join(chain)}",
            label="closes the circle",
            also=also,
            help="delete one of these lines; move what both need into a third file",
        )

    def _says_language(self, source: Source, file: File) -> None:
        if any(isinstance(statement, nodes.Language) for statement in file.statements):
            return
        begin: Any = file.statements[0]
        first: Span = begin.span
        self.findings.append(
            UNSTATED_LANGUAGE.at(
                Span(source, first.start, first.start + len(first.text.partition("\n")[0])),
                "this file does not say in which version of the language it is written",
                subject=("language", source.name),
                label="the file begins here",
                mends=(
                    Mend(
                        f"write 'language {LANGUAGE}' above it",
                        (Replace(Span(source, first.start, first.start), f"language {LANGUAGE}\n\n"),),
                    ),
                ),
            )
        )

    def _language(self, statement: nodes.Language) -> None:
        if statement.version.text != LANGUAGE:
            self.findings.append(
                OTHER_LANGUAGE.at(
                    statement.version.span,
                    f"this file is written in language {statement.version.text}; rigc reads language {LANGUAGE}",
                    label="this version",
                    help="use a newer rigc",
                    mends=(Mend(f"write 'language {LANGUAGE}'", (Replace(statement.version.span, LANGUAGE),)),),
                )
            )


def _said_before(again: nodes.Language, first: nodes.Language) -> Diagnostic:
    return OTHER_LANGUAGE.at(
        again.span,
        "the language is stated twice",
        label="here again",
        also=(Label(first.span, "first here"),),
        mends=(Mend("delete the second line", (Delete(again.span),)),),
    )


def _files(path: Text) -> str:
    """What can be used where the stock is named as a whole."""
    if path.value.removeprefix("./").strip("/") != STOCK.strip("/"):
        return ""
    return f"it is a folder: write a line for each of its files that you need: {', '.join(f'{STOCK}{name}.rig' for name in STOCK_FILES)}"


def _in_stock(path: Text) -> tuple[Mend, ...]:
    """The mend that names a file of the generic stock by its whole path."""
    name = posixpath.basename(path.value).removesuffix(".rig")
    if name not in STOCK_FILES or path.value.startswith(STOCK):
        return ()
    right = f'"{STOCK}{name}.rig"'
    return (Mend(f"write {right}", (Replace(path.span, right),)),)


def _nearest_file(path: Text, near: str) -> tuple[Mend, ...]:
    """The mend that names the file of the same folder whose name is like the one that there is not."""
    if not near:
        return ()
    right = f'"{posixpath.join(posixpath.dirname(path.value), near)}"'
    return (Mend(f"write {right}", (Replace(path.span, right),)),)


def gather(load: Loader, name: str, reader: Reader) -> Gathered:
    """Reads the named file and all that it uses. Raises `Unreadable` where the named file itself can't be read."""
    gatherer = _Gatherer(load, reader)
    gatherer.take(load(name), None)
    return Gathered(
        tuple(gatherer.statements), tuple(gatherer.findings), tuple(gatherer.skipped), tuple(gatherer.done.values())
    )
