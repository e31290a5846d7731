"""What the automaton reads is what lark reads: the same nodes at the same places, and nothing that lark does not."""

from __future__ import annotations

import random
import re
from typing import Any

import pytest
from cases import ROOT
from grammars import class_name, grammar
from lark import Token
from lark.exceptions import UnexpectedInput

from rigc.record import Record
from rigc.source import Source, Span
from rigc.syntax.mistakes import BLOCK_OPENERS

BOARDS = ("back-bedroom", "harbour-keys", "tide-line", "long-haul-d")
MUTANTS = 40


def _by_lark(text: str) -> Any:
    """Class, parts and place of all that lark's tree holds; None where it reads nothing."""

    def told(part: Any) -> Any:
        if part is None:
            return None
        if isinstance(part, Token):
            place = part.start_pos, part.end_pos
            if part.type != "STRING":
                return "Word", str(part), place
            return "Text", re.sub(r"\\(.)", lambda sign: "\n" if sign[1] == "n" else sign[1], part[1:-1]), place
        parts = tuple(map(told, part.children))
        if part.data.endswith("_list"):
            return parts
        place = part.meta.start_pos, part.meta.end_pos
        if part.data.endswith("_word"):
            return "Word", " ".join(map(str, part.children)), place
        return class_name(part.data), *parts, place

    try:
        return told(grammar().tables.lark.parse(text).children[0])
    except UnexpectedInput:
        return None


def _by_automaton(text: str) -> Any:
    def told(part: Any) -> Any:
        if isinstance(part, tuple):
            return tuple(map(told, part))
        if isinstance(part, Span):
            return part.start, part.end
        if isinstance(part, Record):
            return type(part).__name__, *(told(getattr(part, name)) for name in part.FIELDS)
        return part

    return told(grammar().automaton.read(text, Source("board.rig", text), 0))


@pytest.mark.parametrize("board", BOARDS)
def test_whole_rigs_and_pieces_with_another_sign(board: str) -> None:
    """Pieces of a few statements in which a sign is put in, taken out or changed: some still are right, most are not."""
    text = (ROOT / "examples" / board / "board.rig").read_text("utf-8")
    assert _by_automaton(text) == _by_lark(text) is not None
    dice = random.Random(board)
    heads = [found.start() for found in re.finditer(r"^\S", text, re.MULTILINE)]
    right = 0
    for _ in range(MUTANTS):
        first = dice.randrange(len(heads) - 6)
        piece = text[heads[first] : heads[first + 5]]
        at = dice.randrange(len(piece))
        sign = dice.choice(["", "x", "1", " ", "-", "{", "\n", '"', "in ", "#", "..", "\\n", " x 1"])
        piece = f"{piece[:at]}{sign}{piece[at + dice.randrange(2) :]}\n"
        read = _by_automaton(piece)
        assert read == _by_lark(piece), piece
        right += read is not None
    assert 0 < right < MUTANTS


def test_each_statement_of_the_language() -> None:
    for path in sorted((ROOT / "tests" / "syntax" / "sentences").rglob("*.rig")):
        text = path.read_text("utf-8")
        assert _by_automaton(text) == _by_lark(text), path.name


@pytest.mark.parametrize("block", ["", "unit", "supply", "leads", "deck", "preset"])
def test_a_line_reads_where_its_nodes_can_be_made(block: str) -> None:
    """Lines of all blocks, some with a part more or less, in this one: what reads without nodes is what reads with them."""
    dice = random.Random(block)
    text = "".join((ROOT / "examples" / board / "board.rig").read_text("utf-8") for board in BOARDS)
    lines = [line for line in text.splitlines() if "{" not in line and "}" not in line]
    opener, closing = (BLOCK_OPENERS[block], "}\n") if block else ("", "")
    right = 0
    for line in [*dice.sample(lines, 10 * MUTANTS), "", "  # a remark", "mass 400 g # heavy", "mass", "\nmass 400 g"]:
        parts = line.split(" ")
        if dice.random() < 0.5:
            parts.insert(dice.randrange(len(parts) + 1), dice.choice(["x", "1", "in", "mm", '"a b"', ""]))
        tail = f"\n{' '.join(parts)}\n{closing}"
        reads = grammar().automaton.reads(opener, tail)
        assert reads == (_by_automaton(opener + tail) is not None), tail
        right += reads
    assert 0 < right < 10 * MUTANTS
