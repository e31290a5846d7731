"""Answers in our records -> those of the protocol."""

from __future__ import annotations

import os
from collections.abc import Iterable, Mapping
from pathlib import Path

from lsprotocol import types as lsp
from pygls import uris

from rigc.diagnostics.diagnostic import Diagnostic, Level
from rigc.editor.answers.colours import SORTS, Colour
from rigc.editor.answers.folds import Fold
from rigc.editor.answers.hover import Hover
from rigc.editor.answers.outline import Entry
from rigc.editor.completion.offer import Offer
from rigc.editor.places import place_of, stretch_of, units
from rigc.editor.shelf import path_of
from rigc.editor.text_edits import line_edits
from rigc.loader import Unreadable
from rigc.source import Source, Span

_SEVERITIES = {
    Level.ERROR: lsp.DiagnosticSeverity.Error,
    Level.WARNING: lsp.DiagnosticSeverity.Warning,
    Level.REMARK: lsp.DiagnosticSeverity.Information,
    Level.CANT_CHECK: lsp.DiagnosticSeverity.Hint,
}
_OFFERS = {
    "word": lsp.CompletionItemKind.Keyword,
    "thing": lsp.CompletionItemKind.Class,
    "jack": lsp.CompletionItemKind.Property,
    "outlet": lsp.CompletionItemKind.Property,
    "stock": lsp.CompletionItemKind.Struct,
    "country": lsp.CompletionItemKind.EnumMember,
    "lead": lsp.CompletionItemKind.Reference,
    "file": lsp.CompletionItemKind.File,
    "unit": lsp.CompletionItemKind.Unit,
}
_ENTRIES = {
    "unit": lsp.SymbolKind.Class,
    "supply": lsp.SymbolKind.Class,
    "cable": lsp.SymbolKind.Struct,
    "plug": lsp.SymbolKind.Struct,
    "strip": lsp.SymbolKind.Struct,
    "chain": lsp.SymbolKind.Event,
    "lead": lsp.SymbolKind.Field,
    "scenario": lsp.SymbolKind.Namespace,
    "deck": lsp.SymbolKind.Namespace,
    "rig": lsp.SymbolKind.Package,
}


def path(uri: str) -> Path:
    """The file of a URI; of one that was never saved, where its name would be."""
    named = uris.to_fs_path(uri) or uri.rpartition(":")[2] or "untitled.rig"
    return Path(os.path.normpath(Path.cwd() / named))


def uri(path: Path) -> str:
    """The URI of a file."""
    return uris.from_fs_path(str(path)) or ""


class Converter:
    """For one rig and one way of counting characters. `uris` are those by which the editor knows what it has open: it may write them in
    another way, and a text that was never saved has one of its own."""

    def __init__(self, rig: Path, encoding: str, uris: Mapping[Path, str]) -> None:
        self.rig = rig
        self.encoding = encoding
        self._uris = uris

    def uri(self, source: Source) -> str:
        """Where a source is."""
        return self.uri_of(path_of(self.rig, source.name))

    def uri_of(self, path: Path) -> str:
        """The URI of a file, as the editor has it."""
        return self._uris.get(path) or uri(path)

    def range(self, span: Span) -> lsp.Range:
        """Where a span is in its file."""
        found = stretch_of(span, self.encoding)
        return lsp.Range(
            lsp.Position(found.start.line, found.start.character), lsp.Position(found.end.line, found.end.character)
        )

    def position(self, source: Source, offset: int) -> lsp.Position:
        """Where an offset is."""
        place = place_of(source, offset, self.encoding)
        return lsp.Position(place.line, place.character)

    def location(self, span: Span) -> lsp.Location:
        """A span with its file."""
        return lsp.Location(self.uri(span.source), self.range(span))

    def diagnostic(self, finding: Diagnostic, source: Source) -> lsp.Diagnostic:
        """A finding in that source. Mends are not in its words: they are offered as actions, when they were tried."""
        span = finding.span or Span(source, 0, len(source.line(1)))
        advice = finding.help or ("" if finding.mends else finding.otherwise)
        parts = (finding.message, finding.note, f"do: {advice}" if advice else "")
        return lsp.Diagnostic(
            self.range(span),
            "\n".join(filter(None, parts)),
            severity=_SEVERITIES[finding.level],
            code=finding.kind.name,
            source="rigc",
            related_information=[
                lsp.DiagnosticRelatedInformation(self.location(label.span), label.text) for label in finding.also
            ],
            data=finding.fingerprint,
        )

    def unreadable(self, fault: Unreadable) -> lsp.Diagnostic:
        """Why the text of the rig's file can't be read at all."""
        at = lsp.Position(max(0, fault.line - 1), max(0, fault.column - 1))
        text = "\n".join(filter(None, (fault.message, f"do: {fault.help}" if fault.help else "")))
        return lsp.Diagnostic(lsp.Range(at, at), text, severity=lsp.DiagnosticSeverity.Error, source="rigc")

    def edits(self, old: str, new: str) -> list[lsp.TextEdit]:
        """The lines that differ between two texts of a file."""
        held = Source("", old.replace("\r\n", "\n").replace("\r", "\n"))
        starts = len(held.line_starts)

        def at(line: int) -> lsp.Position:
            if line < starts:
                return lsp.Position(line, 0)
            return lsp.Position(starts - 1, units(held.line(starts), self.encoding))

        return [lsp.TextEdit(lsp.Range(at(each.first), at(each.last)), each.text) for each in line_edits(old, new)]


def completion(offer: Offer, at: lsp.Range, number: int) -> lsp.CompletionItem:
    """An offer that takes the place of what is begun; they are sorted as they come."""
    return lsp.CompletionItem(
        label=offer.label,
        kind=_OFFERS[offer.sort],
        detail=offer.detail or None,
        sort_text=f"{number:04}",
        filter_text=offer.label,
        text_edit=lsp.TextEdit(at, offer.text or offer.label),
    )


def hover(told: Hover, converter: Converter) -> lsp.Hover:
    """Lines as text, reasons in fixed width."""
    lines = "  \n".join(_plain(line) for line in told.lines)
    reasons = f"\n\n```text\n{told.reasons.rstrip()}\n```" if told.reasons else ""
    return lsp.Hover(lsp.MarkupContent(lsp.MarkupKind.Markdown, lines + reasons), converter.range(told.span))


def _plain(line: str) -> str:
    return "".join(f"\\{sign}" if sign in "\\`*_{}[]<>#|~" else sign for sign in line)


def symbol(entry: Entry, converter: Converter) -> lsp.DocumentSymbol:
    """A line of the outline with what is in it."""
    return lsp.DocumentSymbol(
        name=entry.name,
        kind=_ENTRIES.get(entry.sort, lsp.SymbolKind.Property),
        range=converter.range(entry.span),
        selection_range=converter.range(entry.word),
        detail=" ".join(filter(None, (entry.sort, entry.detail))),
        children=[symbol(each, converter) for each in entry.inside],
    )


def fold(each: Fold) -> lsp.FoldingRange:
    """Lines that fold."""
    kinds = {"comment": lsp.FoldingRangeKind.Comment, "imports": lsp.FoldingRangeKind.Imports}
    return lsp.FoldingRange(each.start, each.end, kind=kinds.get(each.sort))


def tokens(found: Iterable[Colour], source: Source, encoding: str) -> list[int]:
    """Colours as the protocol packs them: line and character from the one before, length, sort, and 1 for what declares."""
    data: list[int] = []
    line = character = 0
    for each in found:
        place = place_of(source, each.start, encoding)
        begin = place.character - character if place.line == line else place.character
        length = units(source.text[each.start : each.end], encoding)
        data += [place.line - line, begin, length, SORTS.index(each.sort), int(each.declares)]
        line, character = place.line, place.character
    return data
