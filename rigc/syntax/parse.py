"""Source -> Document as written, and every mistake of the file in one run. The only module that imports lark."""

from __future__ import annotations

import gc
import io
import logging
import re
from functools import cached_property, partial
from typing import Any

from lark import Lark, Token, Tree
from lark.exceptions import UnexpectedCharacters, UnexpectedInput, UnexpectedToken
from lark.lexer import PatternRE, PatternStr, TerminalDef

from rigc.diagnostics.diagnostic import Diagnostic
from rigc.source import Source, Span
from rigc.syntax import mistakes, nodes
from rigc.syntax.chunks import chunks
from rigc.syntax.each_slip_once import each_slip_once
from rigc.syntax.headless import Piece, without_heads
from rigc.syntax.mistake import Mistake
from rigc.syntax.nodes import File, Node, Text, Word
from rigc.syntax.parsed import Parsed
from rigc.syntax.reparsed import Unchanged, reparsed
from rigc.syntax.salvage import Stop, salvage
from rigc.syntax.slips.beyond_limits import BEYOND_LIMIT, beyond_limits
from rigc.syntax.slips.impossible_dates import impossible_dates
from rigc.syntax.slips.odd_signs import Looked, looked_at, no_text

MOST_MISTAKES_A_FILE = 200


_LEAVES = frozenset(("NAME", "MARK", "NUMBER", "UNIT", "STRING", "DATE"))
_WORD_ENDS = r"(?![A-Za-z0-9-])"


def whole_word(terminal: TerminalDef) -> None:
    """A word of the language ends where the text's word ends: `outlets` is not `outlet` and the name `s`."""
    word = terminal.pattern.value
    if isinstance(terminal.pattern, PatternStr) and re.fullmatch(r"[a-z][a-z-]*", word):
        terminal.pattern, terminal.priority = PatternRE(word + _WORD_ENDS), terminal.priority or 1


class Grammar:
    """The grammar's tables, ready to parse with."""

    def __init__(self, tables: Lark) -> None:
        self.tables = tables

    @classmethod
    def build(cls, text: str) -> Grammar:
        """Makes the tables from the text of `rig.lark`; takes about a second."""
        return cls(
            Lark(
                text,
                parser="lalr",
                start="file",
                maybe_placeholders=True,
                propagate_positions=True,
                edit_terminals=whole_word,
            )
        )

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

    @cached_property
    def heads(self) -> dict[str, frozenset[str]]:
        """For each block the words that begin its statements, for the top level under an empty text."""
        literals = _literals(self)
        found = {}
        for block, opening in {**mistakes.BLOCK_OPENERS, "": ""}.items():
            parser = self.tables.parse_interactive(f"{opening}\n")
            parser.exhaust_lexer()
            accepted = parser.accepts()  # type: ignore[no-untyped-call]
            found[block] = frozenset(literals[name] for name in accepted if literals.get(name, "-")[0].isalpha())
        return found

    def follows(self, block: str, text: str) -> frozenset[str]:
        """What may stand behind the beginning of a statement in a block (at the top level under an empty text): words and signs as they are
        written, and `NAME`, `MARK`, `NUMBER`, `UNIT`, `STRING`, `DATE`. Nothing where that beginning is none."""
        parser = self.tables.parse_interactive(f"{mistakes.BLOCK_OPENERS.get(block, '')}\n{text}")
        try:
            parser.exhaust_lexer()
        except UnexpectedInput:
            return frozenset()
        literals = _literals(self)
        accepted = parser.accepts()  # type: ignore[no-untyped-call]
        return frozenset(name if name in _LEAVES else literals.get(name, "") for name in accepted) - {""}

    def save(self) -> bytes:
        """The tables as bytes."""
        into = io.BytesIO()
        self.tables.save(into)
        return into.getvalue()


def parse(source: Source, grammar: Grammar, near: Parsed | None = None) -> Parsed:
    """Reads a whole file; after a mistake it goes on with the next line, so that all mistakes are found in one run. What `near` holds, which
    was read from a text much like this one, is not read again."""
    looked = looked_at(source)
    if looked is None:
        return Parsed(
            File(statements=(), span=Span(source, 0, 0)), (no_text(source),), (Span(source, 0, len(source.text)),)
        )
    more = (*looked.findings, *impossible_dates(source), *beyond_limits(source))
    if near is not None and not near.findings and not more and looked.text == source.text:
        try:
            return Parsed(reparsed(near.file, source, partial(_file, grammar, source)), (), ())
        except UnexpectedInput:  # what the change did not touch was whole before: the mistake is in the rest
            return _piece_by_piece(grammar, source, looked, more, near)
    try:
        return Parsed(_file(grammar, source, looked.text, 0), more, looked.passed_over)
    except UnexpectedInput:
        return _piece_by_piece(grammar, source, looked, more, near)


def _file(grammar: Grammar, source: Source, text: str, base: int) -> File:
    tree = grammar.tables.parse(text if text.endswith("\n") else text + "\n")
    (statements,) = tree.children
    return File(statements=_built(statements, source, base), span=Span(source, base, base + len(text)))


def _piece_by_piece(
    grammar: Grammar, source: Source, looked: Looked, more: tuple[Diagnostic, ...], near: Parsed | None
) -> Parsed:
    unchanged = Unchanged(near.file, source) if near is not None and not near.findings else None

    def read(text: str, base: int) -> File | Stop:
        known = None if unchanged is None else unchanged.alone_in(text, base)
        if known is not None:
            return File(statements=(known,), span=Span(source, base, base + len(text)))
        try:
            return _file(grammar, source, text, base)
        except UnexpectedInput as error:
            return _stop(error, grammar, source, base, text)

    statements: list[Node] = []
    pieces: list[Piece] = []
    skipped: list[Span] = list(looked.passed_over)
    count = 0
    for chunk in chunks(source, looked.text):
        salvaged = salvage(source, chunk, read)
        statements += salvaged.statements
        pieces.append((chunk, salvaged.findings))
        skipped += salvaged.skipped
        count += len(salvaged.findings)
        if count >= MOST_MISTAKES_A_FILE:
            skipped.append(Span(source, chunk.start, len(source.text)))
            break
    findings = without_heads(source, pieces, grammar.heads)
    if count >= MOST_MISTAKES_A_FILE:
        findings.append(mistakes.too_many(findings[-1].span or skipped[-1], count, "file"))
    told = (each for each in more if each.kind is not BEYOND_LIMIT or not _lies_in(each.span, skipped))
    return Parsed(
        File(statements=tuple(statements), span=Span(source, 0, len(source.text))),
        each_slip_once((*findings, *told)),
        tuple(skipped),
    )


def _lies_in(span: Span | None, skipped: list[Span]) -> bool:
    return span is not None and any(each.start <= span.start < each.end for each in skipped)


def _offset(error: UnexpectedInput, text: str) -> int:
    if isinstance(error, UnexpectedToken) and error.token.type == "$END":
        return len(text.rstrip())
    return error.pos_in_stream if error.pos_in_stream is not None else len(text)


def _stop(error: UnexpectedInput, grammar: Grammar, source: Source, base: int, text: str) -> Stop:
    at = min(max(_offset(error, text), 0), len(text))
    if isinstance(error, UnexpectedToken):
        token = error.token
        expected = frozenset(error.accepts or error.expected)
        kind = "end of file" if token.type == "$END" else token.type
        length = 0 if token.type in ("$END", "_NL") else len(token)
    else:
        assert isinstance(error, UnexpectedCharacters)
        expected, kind, length = frozenset(error.allowed or ()), "character", 1
    span = Span(source, base + at, base + at + length)
    literals = _literals(grammar)
    return Stop(at, lambda block: Mistake(span, kind, expected, literals, lambda: grammar.heads, block, text, at))


def _literals(grammar: Grammar) -> dict[str, str]:
    return {terminal.name: terminal.pattern.value.removesuffix(_WORD_ENDS) for terminal in grammar.tables.terminals}


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
    return made(*[_built(child, source, base) for child in node.children], span)  # type: ignore[call-arg]


def _leaf(token: Token, source: Source, base: int) -> Word | Text:
    assert token.start_pos is not None and token.end_pos is not None
    span = Span(source, base + token.start_pos, base + token.end_pos)
    if token.type == "STRING":
        value = token[1:-1]
        if "\\" in value:
            value = value.replace("\\\\", "\0").replace('\\"', '"').replace("\\n", "\n").replace("\0", "\\")
        return Text(value, span)
    return Word(str(token), span)
