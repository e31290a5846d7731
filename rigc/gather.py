"""A named file and all that it uses -> its statements in order of use, each file once; a circle is shown as a chain."""

from __future__ import annotations

from rigc.diagnostics.diagnostic import Diagnostic, Label
from rigc.loader import Loader, Unreadable, used_name
from rigc.record import Record
from rigc.source import Source, Span
from rigc.syntax import nodes
from rigc.syntax.nodes import Node
from rigc.syntax.parsed import Reader
from rigc.syntax.use_mistakes import CIRCLE, OTHER_LANGUAGE, UNUSABLE

LANGUAGE = "1"


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
        self.open: list[tuple[Source, Span | None]] = []

    def take(self, source: Source, used_at: Span | None) -> None:
        if any(source is each for each, _ in self.open):
            self.findings.append(self._circle(source, used_at))
            return
        if source.name in self.done:
            return
        self.done[source.name] = source
        self.open.append((source, used_at))
        parsed = self.reader.parse(source)
        self.findings += parsed.findings
        self.skipped += parsed.skipped
        for statement in parsed.file.statements:
            if isinstance(statement, nodes.Use):
                self._use(source, statement)
            elif isinstance(statement, nodes.Language):
                self._language(statement)
        self.statements += [s for s in parsed.file.statements if not isinstance(s, nodes.Use | nodes.Language)]
        self.open.pop()

    def _use(self, source: Source, statement: nodes.Use) -> None:
        try:
            used = self.load(used_name(source.name, statement.path.value))
        except Unreadable as fault:
            place = f" (line {fault.line}, column {fault.column})" if fault.line else ""
            self.findings.append(
                UNUSABLE.at(
                    statement.path.span,
                    f"{fault.message}{place}",
                    label="used here",
                    help=fault.help or "correct the path; it counts from this file",
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

    def _language(self, statement: nodes.Language) -> None:
        if statement.version.text != LANGUAGE:
            self.findings.append(
                OTHER_LANGUAGE.at(
                    statement.version.span,
                    f"this file is written in language {statement.version.text}; rigc reads language {LANGUAGE}",
                    label="this version",
                    help=f"write 'language {LANGUAGE}', or use a newer rigc",
                )
            )


def gather(load: Loader, name: str, reader: Reader) -> Gathered:
    """Reads the named file and all that it uses. Raises `Unreadable` where the named file itself can't be read."""
    gatherer = _Gatherer(load, reader)
    gatherer.take(load(name), None)
    return Gathered(
        tuple(gatherer.statements), tuple(gatherer.findings), tuple(gatherer.skipped), tuple(gatherer.done.values())
    )
