"""Source -> Document as written, and every mistake of the file in one run. The only module that imports lark."""

from __future__ import annotations

import gc
import io
import logging
import re
from typing import TYPE_CHECKING, Any

import lark
from lark import Lark, Token, Tree
from lark.exceptions import UnexpectedCharacters, UnexpectedInput, UnexpectedToken

from rigc.diagnostics.diagnostic import Diagnostic
from rigc.source import Source, Span
from rigc.syntax import mistakes, nodes
from rigc.syntax.chunks import Chunk, chunks
from rigc.syntax.nodes import File, Node, Text, Word
from rigc.syntax.parsed import Parsed

if TYPE_CHECKING:
    from collections.abc import Callable

LARK_VERSION = lark.__version__
MOST_MISTAKES_A_BLOCK = 40


class Grammar:
    """The grammar's tables, ready to parse with."""

    def __init__(self, tables: Lark) -> None:
        self.tables = tables

    @classmethod
    def build(cls, text: str) -> Grammar:
        """Makes the tables from the text of `rig.lark`; takes about a second."""
        return cls(Lark(text, parser="lalr", start="file", maybe_placeholders=True, propagate_positions=True))

    @classmethod
    def load(cls, saved: bytes) -> Grammar | None:
        """The tables as `save` gave them; None if these bytes are not such tables. Only for bytes that are our own."""
        logging.getLogger("lark").setLevel(logging.CRITICAL)
        collecting = gc.isenabled()
        gc.disable()
        try:
            return cls(Lark.load(io.BytesIO(saved)))
        except Exception:  # a pickle cut short or of another version can fail in any way; the tables are then made anew
            return None
        finally:
            if collecting:
                gc.enable()

    @property
    def reserved(self) -> frozenset[str]:
        """The words that some statement takes where a name may stand as well; none of them names a declared thing."""
        rivals: set[str] = set()
        for actions in self.tables.parser.parser._parse_table.states.values():
            if "NAME" in actions:
                rivals.update(actions)
        literals = _literals(self)
        words = (literals[name] for name in rivals if name in literals)
        return frozenset(word for word in words if re.fullmatch(r"[a-z][a-z0-9-]*", word))

    def save(self) -> bytes:
        """The tables as bytes."""
        into = io.BytesIO()
        self.tables.save(into)
        return into.getvalue()


def parse(source: Source, grammar: Grammar) -> Parsed:
    """Reads a whole file; after a mistake it goes on with the next line, so that all mistakes are found in one run."""
    found = mistakes.at_sight(source)
    if found:
        return Parsed(File((), Span(source, 0, 0)), found, (Span(source, 0, len(source.text)),))
    try:
        return Parsed(_file(grammar, source, source.text, 0), (), ())
    except UnexpectedInput:
        return _piece_by_piece(grammar, source)


def _file(grammar: Grammar, source: Source, text: str, base: int) -> File:
    tree = grammar.tables.parse(text if text.endswith("\n") else text + "\n")
    (statements,) = tree.children
    return File(_built(statements, source, base), Span(source, base, base + len(text)))


def _piece_by_piece(grammar: Grammar, source: Source) -> Parsed:
    statements: list[Node] = []
    findings: list[Diagnostic] = []
    skipped: list[Span] = []
    for chunk in chunks(source):
        findings.extend(chunk.findings)
        good, bad, passed_over = _chunk(grammar, source, chunk)
        statements.extend(good)
        findings.extend(bad)
        skipped.extend(passed_over)
    return Parsed(File(tuple(statements), Span(source, 0, len(source.text))), tuple(findings), tuple(skipped))


def _chunk(grammar: Grammar, source: Source, chunk: Chunk) -> tuple[list[Node], list[Diagnostic], list[Span]]:
    text, base = chunk.text, chunk.start
    findings: list[Diagnostic] = []
    skipped: list[Span] = []
    headless = False
    while True:
        try:
            statements = _file(grammar, source, text, base).statements
            return ([] if headless else list(statements)), findings, skipped
        except UnexpectedInput as error:
            at = min(max(_offset(error, text), 0), len(text))
            start, end = _statement_around(text, at, chunk.header_end if not headless else 0)
            span = Span(source, base + start, base + end)
            skipped.append(span)
            findings.append(mistakes.tell(_mistake(error, grammar, source, base, at, text)))
            if len(findings) >= MOST_MISTAKES_A_BLOCK:
                skipped.append(Span(source, base, base + len(text)))
                return [], [*findings, mistakes.too_many(span, MOST_MISTAKES_A_BLOCK)], skipped
            if chunk.opener and not headless and start < chunk.header_end:
                headless = True
                skipped.append(Span(source, base, base + len(text)))
                lead = mistakes.BLOCK_OPENERS.get(chunk.opener, "")
                if not lead:
                    return [], findings, skipped
                text = lead + text[chunk.header_end :]
                base += chunk.header_end - len(lead)
            else:
                text = text[:start] + " " * (end - start) + text[end:]


def _statement_around(text: str, at: int, header_end: int) -> tuple[int, int]:
    """The line around `at`, with the lines that a broken chain joins to it; a block's opening line as a whole."""
    if at < header_end:
        return 0, header_end
    start = text.rfind("\n", 0, at) + 1
    while start > header_end and text[:start].rstrip().endswith(("->", "=>")):
        start = text.rfind("\n", 0, start - 1) + 1
    end = text.find("\n", at)
    end = len(text) if end < 0 else end
    while text[start:end].rstrip().endswith(("->", "=>")) and end < len(text):
        following = text.find("\n", end + 1)
        end = len(text) if following < 0 else following
    closing = text.rfind("}", start, end) if not text[start:end].split("#")[0].rstrip().endswith("{") else -1
    if closing >= 0 and not text[start:closing].strip() and at <= closing:
        return closing, closing + 1
    return max(start, header_end), end


def _offset(error: UnexpectedInput, text: str) -> int:
    if isinstance(error, UnexpectedToken) and error.token.type == "$END":
        return len(text.rstrip())
    return error.pos_in_stream if error.pos_in_stream is not None else len(text)


def _mistake(
    error: UnexpectedInput, grammar: Grammar, source: Source, base: int, at: int, text: str
) -> mistakes.Mistake:
    if isinstance(error, UnexpectedToken):
        token = error.token
        expected = frozenset(error.accepts or error.expected)
        kind = "end of file" if token.type == "$END" else token.type
        length = 0 if token.type in ("$END", "_NL") else len(token)
    else:
        assert isinstance(error, UnexpectedCharacters)
        expected, kind, length = frozenset(error.allowed or ()), "character", 1
    literals = _literals(grammar)
    return mistakes.Mistake(
        Span(source, base + at, base + at + length), kind, expected, literals, _homes(grammar), text, at
    )


def _literals(grammar: Grammar) -> dict[str, str]:
    return {terminal.name: terminal.pattern.value for terminal in grammar.tables.terminals}


def _homes(grammar: Grammar) -> Callable[[str], list[str]]:
    """Tells in which blocks a word begins a statement (asked only for a mistake's wording)."""

    def homes(word: str) -> list[str]:
        found = []
        literals = _literals(grammar)
        for block, opening in mistakes.BLOCK_OPENERS.items():
            parser = grammar.tables.parse_interactive(opening + "\n")
            parser.exhaust_lexer()
            accepted = parser.accepts()  # type: ignore[no-untyped-call]
            if any(literals.get(name) == word for name in accepted):
                found.append(block)
        return found

    return homes


def _built(node: Any, source: Source, base: int) -> Any:
    if node is None:
        return None
    if isinstance(node, Token):
        return _leaf(node, source, base)
    assert isinstance(node, Tree)
    rule = str(node.data)
    if rule.endswith("_word"):
        tokens = node.children
        return Word(
            " ".join(map(str, tokens)),
            Span(source, base + node.meta.start_pos, base + node.meta.end_pos),
        )
    if rule.endswith("_list"):
        return tuple([_built(child, source, base) for child in node.children])
    span = Span(source, base + node.meta.start_pos, base + node.meta.end_pos)
    made: type[Node] = getattr(nodes, "".join([part.capitalize() for part in rule.split("_")]))
    return made(*[_built(child, source, base) for child in node.children], span)


def _leaf(token: Token, source: Source, base: int) -> Word | Text:
    assert token.start_pos is not None and token.end_pos is not None
    span = Span(source, base + token.start_pos, base + token.end_pos)
    if token.type == "STRING":
        value = token[1:-1]
        if "\\" in value:
            value = value.replace("\\\\", "\0").replace('\\"', '"').replace("\\n", "\n").replace("\0", "\\")
        return Text(value, span)
    return Word(str(token), span)
