"""A changed text of which most was read before gives what reading all of it gives, with each piece at its place."""

from __future__ import annotations

import random
from typing import Any

import pytest
from cases import ROOT

from rigc.files.reader import CachedReader
from rigc.record import Record
from rigc.source import Source, Span
from rigc.syntax.parse import parse
from rigc.syntax.reparsed import reparsed

BOARDS = ("back-bedroom", "tide-line", "harbour-keys", "long-haul")
GRAMMAR = CachedReader().grammar


def places(value: Any, source: Source) -> Any:
    """A node with its places as numbers, all of them in this source."""
    if isinstance(value, Span):
        assert value.source is source
        return value.start, value.end
    if isinstance(value, tuple):
        return tuple(places(each, source) for each in value)
    if isinstance(value, Record):
        return type(value).__name__, *(places(getattr(value, name), source) for name in value.FIELDS)
    return value


def changed(text: str, dice: random.Random) -> str:
    """A line or two gone, twice, at another place, with a word less, made a remark or joined with the next; or a few characters gone."""
    lines = text.splitlines(keepends=True)
    at, other = sorted((dice.randrange(len(lines)), dice.randrange(len(lines))))
    way = dice.randrange(9)
    if way == 0:
        del lines[at : at + dice.randrange(1, 4)]
    elif way == 1:
        lines.insert(at, lines[at])
    elif way == 2:
        lines.insert(at, lines.pop(other))
    elif way == 3:
        lines[at] = lines[at].rstrip("\n").rpartition(" ")[0] + "\n"
    elif way == 4:
        start = dice.randrange(len(text))
        return text[:start] + text[start + dice.randrange(1, 30) :]
    elif way == 5:
        lines[at] = f"  # {lines[at]}"
    elif way == 6:
        lines[at] = lines[at].rstrip("\n")
    elif way == 7:
        return changed("".join([*lines[:other], changed("".join(lines[other:]), dice)]), dice)
    else:
        lines.insert(at, dice.choice(("# a word\n", "\n", "  -> tern\n", "{\n", "}\n", 'note "one more"\n')))
    return "".join(lines)


@pytest.mark.parametrize("board", BOARDS)
@pytest.mark.parametrize("seed", range(12))
def test_what_is_kept_is_what_is_read(board: str, seed: int) -> None:
    text = (ROOT / "examples" / board / "board.rig").read_text("utf-8")
    near = parse(Source("board.rig", text), GRAMMAR)
    source = Source("board.rig", changed(text, random.Random(f"{board} {seed}")))
    quick, whole = parse(source, GRAMMAR, near), parse(source, GRAMMAR)
    assert places(quick.file, source) == places(whole.file, source)
    assert [each.message for each in quick.findings] == [each.message for each in whole.findings]
    assert places(quick.skipped, source) == places(whole.skipped, source)


@pytest.mark.parametrize("board", BOARDS)
def test_what_is_kept_of_a_text_with_mistakes_is_what_is_read(board: str) -> None:
    dice = random.Random(board)
    text = (ROOT / "examples" / board / "board.rig").read_text("utf-8")
    near = parse(Source("board.rig", text), GRAMMAR)
    for _ in range(20):
        text = changed(text, dice)
        source = Source("board.rig", text)
        quick, whole = parse(source, GRAMMAR, near), parse(source, GRAMMAR)
        assert places(quick.file, source) == places(whole.file, source)
        assert quick.findings == whole.findings
        assert places(quick.skipped, source) == places(whole.skipped, source)
        near = quick


def test_a_block_of_which_a_line_was_passed_over_is_read_again() -> None:
    """Kept without its mistake it would be taken for whole."""
    text = "unit tern {\n  mass 400 g\n  colour green\n}\nunit fen {\n  mass 420 g\n}\n"
    near = parse(Source("a.rig", text), GRAMMAR)
    source = Source("a.rig", text.replace("420", "1420"))
    (mistake,) = parse(source, GRAMMAR, near).findings
    assert mistake.span is not None
    assert mistake.span.text == "colour"


def test_only_the_statement_that_changed_is_read() -> None:
    text = "language 1\n\nunit tern {\n  mass 400 g\n}  # ours\nunit fen {\n  mass 420 g\n}\nchain tern -> fen\n"
    near = parse(Source("a.rig", text), GRAMMAR)
    source = Source("a.rig", text.replace("420", "1420"))
    read: list[str] = []

    def one(piece: str, base: int) -> Any:
        read.append(piece)
        return parse(Source("a.rig", " " * base + piece), GRAMMAR).file

    assert len(reparsed(near.file, source, one).statements) == 4
    assert read == ["unit fen {\n  mass 1420 g\n}\n"]


def test_a_day_that_no_calendar_has_is_told_and_no_more_read_than_its_statement(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    text = (ROOT / "examples" / "back-bedroom" / "board.rig").read_text("utf-8")
    near = parse(Source("board.rig", text), GRAMMAR)
    source = Source("board.rig", text.replace("measured 2026-02-14", "measured 2026-82-14", 1))
    whole, read = parse(source, GRAMMAR), list[str]()
    by_table = GRAMMAR.automaton.read

    def reading(piece: str, *where: Any) -> Any:
        read.append(piece)
        return by_table(piece, *where)

    monkeypatch.setattr(GRAMMAR.automaton, "read", reading)
    quick = parse(source, GRAMMAR, near)
    assert [each.message for each in quick.findings] == ["there is no such date as 2026-82-14"]
    assert quick.findings == whole.findings
    assert places(quick.file, source) == places(whole.file, source)
    assert len("".join(read)) * 10 < len(text)


@pytest.mark.parametrize(
    "text", ["", "\n", "language 1", "language 1\n", "language 1\n\nlanguage 1\n", "# language 1\n", "language 12"]
)
@pytest.mark.parametrize("before", ["language 1\n", "language 1", "# language 1\n"])
def test_texts_of_a_line(text: str, before: str) -> None:
    near = parse(Source("a.rig", before), GRAMMAR)
    source = Source("a.rig", text)
    assert places(parse(source, GRAMMAR, near).file, source) == places(parse(source, GRAMMAR).file, source)
