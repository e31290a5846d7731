"""A rig's text -> every fact that it states, each changed alone: the text with the change, and what was changed.

A number becomes a tenth more or less, a word of a few another of them, a text a longer one, a date the next day, a declared name
another name wherever it stands; a statement that is nothing but words and names is left out. Where that makes no sense, a comment
behind the line says the other line: `hedge from mill5.o1  # outlets: hedge from mill5.o2`.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache
from typing import Any

from cases import ROOT

from rigc.record import Record
from rigc.source import Source, Span
from rigc.syntax import nodes
from rigc.syntax.nodes import Amount, Node, Text, Word
from rigc.syntax.nodes.written import rule_of

GRAMMAR = (ROOT / "grammar/rig.lark").read_text("utf-8")
BLOCKS = frozenset(re.findall(r'(?m)^(\w+): .*"\{"', GRAMMAR))


class Fact(Record):
    """One part of one statement: `statement` is the grammar's rule, `block` that of the block it stands in (empty at the top)."""

    block: str
    statement: str
    part: str

    def __str__(self) -> str:
        return f"{self.statement}{f' in {self.block}' if self.block else ''}: {self.part}"


class Change(Record):
    """A fact, where it stands, and the texts that state it otherwise: the first of them that compiles is the change."""

    fact: Fact
    span: Span
    texts: tuple[str, ...]


def changes(source: Source, file: nodes.File) -> Iterator[Change]:
    """Every fact of the file, changed alone."""
    for statement in file.statements:
        yield from _statement(source, statement, "")


def _statement(source: Source, node: Node, block: str) -> Iterator[Change]:
    if isinstance(node, nodes.Sourced):
        yield from _statement(source, node.fact, block)
        yield from _statement(source, node.provenance, block)
        return
    rule = rule_of(type(node))
    other = _other_lines(source, node)
    found = list(_parts(source, node, block, other))
    if rule in BLOCKS:
        yield from found
        for field in node.FIELDS:
            value = getattr(node, field)
            if isinstance(value, tuple):
                for each in value:
                    yield from _statement(source, each, rule)
        return
    yield from found
    if "stated" in other:
        yield Change(Fact(block, rule, "stated"), span_of(node), (other["stated"],))
    elif not found or _names_something(node):
        yield Change(Fact(block, rule, "stated"), span_of(node), (_without(source, span_of(node)),))


def _parts(source: Source, node: Node, block: str, other: dict[str, str]) -> Iterator[Change]:
    """The parts of a statement that are numbers, words of a few, texts and dates, those of the nodes within it too."""
    rule = rule_of(type(node))
    for field in node.FIELDS:
        value = getattr(node, field)
        if field in other:
            yield Change(Fact(block, rule, field), span_of(node), (other[field],))
            continue
        for each in value if isinstance(value, tuple) else (value,):
            if isinstance(each, Node):
                if rule not in BLOCKS:
                    yield from _parts(source, each, block, other)
            elif isinstance(each, Amount | Word | Text):
                texts = tuple(_texts(source, rule, field, each))
                if texts:
                    yield Change(Fact(block, rule, field), each.span, texts)


def _names_something(node: Node) -> bool:
    """Whether a statement names a thing, a jack or a lead that it does not declare."""
    for field in node.FIELDS:
        value = getattr(node, field)
        for each in value if isinstance(value, tuple) else (value,):
            if isinstance(each, nodes.Names):
                continue
            if isinstance(each, Node) and _names_something(each):
                return True
            if isinstance(each, Word) and _is_name(rule_of(type(node)), each):
                return True
    return False


def span_of(node: Any) -> Span:
    found: Span = node.span
    return found


def _is_name(rule: str, word: Word) -> bool:
    return bool(re.fullmatch(r"[A-Za-z][\w-]*", word.text)) and not words_beside(rule, word.text)


def _other_lines(source: Source, node: Node) -> dict[str, str]:
    """The texts with the other lines that a comment behind a statement gives, by the part that they change."""
    line = source.line(span_of(node).line)
    start = source.line_starts[span_of(node).line - 1]
    before, _, comment = line.partition("#")
    if before.strip() != span_of(node).text.split("\n")[0].strip():
        return {}
    found = re.findall(r"(\w+): ([^|]+)", comment)
    return {part: source.text[:start] + other.strip() + source.text[start + len(line) :] for part, other in found}


def _put(source: Source, span: Span, text: str) -> str:
    return source.text[: span.start] + text + source.text[span.end :]


def _without(source: Source, span: Span) -> str:
    """Without the line or lines of a statement, their ends kept so that all else stays on its line."""
    return _put(source, span, "\n" * span.text.count("\n"))


def _texts(source: Source, rule: str, field: str, leaf: Amount | Word | Text) -> Iterator[str]:
    if isinstance(leaf, Amount):
        for number in _numbers(leaf.number.text, leaf.unit.text if leaf.unit else ""):
            yield _put(source, leaf.number.span, number)
    elif isinstance(leaf, Text):
        other = f'{str(leaf)[:-1]} x"'
        yield source.text.replace(str(leaf), other) if rule in ("knob", "setting") else _put(source, leaf.span, other)
    elif re.fullmatch(r"\d{4}-\d\d-\d\d", leaf.text):
        yield _put(source, leaf.span, f"{leaf.text[:8]}{int(leaf.text[8:]) % 27 + 1:02d}")
    elif re.fullmatch(r"[+-]?\d+(?:\.\d+)?", leaf.text):
        for number in _numbers(leaf.text, ""):
            yield _put(source, leaf.span, number)
    elif others := words_beside(rule, leaf.text):
        for word in others:
            yield _put(source, leaf.span, word)
    elif field in ("name", "mark") and (rule in BLOCKS or rule in ("lead", "adaptor", "tier")):
        yield re.sub(rf"(?<![\w.-]){re.escape(leaf.text)}(?![\w-])", f"{leaf.text}9", source.text)
    elif re.fullmatch("[A-Z]{2}", leaf.text) and rule in ("country", "origin", "band", "colour"):
        yield _put(source, leaf.span, "NO")


def _numbers(text: str, unit: str) -> list[str]:
    """A tenth more, a tenth less, as many decimals as before; whole numbers without unit one more, one less."""
    places = len(text.partition(".")[2])
    value, step = float(text), 10.0**-places
    least = max(step, abs(value) / 10) if unit else step
    pair = [f"{value + least:.{places}f}", f"{value - least:.{places}f}"]
    return pair[::-1] if unit == "%" else pair


@cache
def words_beside(rule: str, word: str) -> tuple[str, ...]:
    """The other words that may stand where a statement has this one of a few; none where it is no such word."""
    body = re.search(rf"(?m)^\??{rule}: (.*(?:\n +[|].*)*)", GRAMMAR)
    for name in re.findall(r"\b(\w+_word)\b", body.group(1) if body else ""):
        alternatives = re.search(rf"(?m)^!{name}: (.*(?:\n +[|].*)*)", GRAMMAR)
        words = (
            [" ".join(re.findall(r'"([^"]+)"', each)) for each in alternatives.group(1).split("|")]
            if alternatives
            else []
        )
        if word in words and len(words) > 1:
            at = words.index(word)
            return (*words[at + 1 :], *words[:at])
    return ()
