"""A mend's edits -> texts: what each does to a file, and that all else keeps its bytes."""

from __future__ import annotations

import pytest
from cases import READER

from rigc.diagnostics.mend import Add, AddTo, Delete, Edit, Mend, Replace
from rigc.edit.mended import CannotMend, mended
from rigc.source import Source, Span
from rigc.syntax.nodes import File

TEXT = """language 1
use "stock/plugs.rig"

rig toy "Toy" {
  revision A 2026-03-02  # the first
}

unit tern {
  mass 400 g   # weighed
  draws 8 mA
}
unit fen like tern { mass 420 g }
"""


def parse(source: Source) -> File:
    return READER.parse(source).file


def made(*edits: Edit, text: str = TEXT, source: Source | None = None) -> str:
    source = source or Source("a.rig", text)
    return mended(Mend("do it", edits), (source,), parse)["a.rig"]


def at(source: Source, words: str) -> Span:
    start = source.text.index(words)
    return Span(source, start, start + len(words))


def test_a_replacement_changes_no_other_byte() -> None:
    source = Source("a.rig", TEXT)
    assert made(Replace(at(source, "8 mA"), "80 mA"), source=source) == TEXT.replace("8 mA", "80 mA")


def test_line_ends_stay() -> None:
    raw = TEXT.replace("\n", "\r\n")
    source = Source("a.rig", TEXT, raw.encode())
    assert made(AddTo("unit", "tern", "digital"), source=source) == raw.replace(
        "  draws 8 mA\r\n", "  draws 8 mA\r\n  digital\r\n"
    )


def test_a_deleted_statement_takes_its_line_and_its_comment() -> None:
    source = Source("a.rig", TEXT)
    assert made(Delete(at(source, "400 g")), source=source) == TEXT.replace("  mass 400 g   # weighed\n", "")


def test_a_deleted_statement_leaves_what_stands_on_its_line() -> None:
    source = Source("a.rig", TEXT)
    assert made(Delete(at(source, "420 g")), source=source) == TEXT.replace("{ mass 420 g }", "{  }")


def test_a_deleted_block_goes_whole() -> None:
    source = Source("a.rig", TEXT)
    block = TEXT[TEXT.index("unit tern") : TEXT.index("unit fen")]
    assert made(Delete(at(source, block.rstrip())), source=source) == TEXT.replace(block, "")


def test_a_line_for_a_block_that_there_is_not() -> None:
    assert made(AddTo("power", "", "tern from brook.o1")) == f"{TEXT}\npower {{\n  tern from brook.o1\n}}\n"
    with pytest.raises(CannotMend, match="no block 'unit gull'"):
        made(AddTo("unit", "gull", "digital"))


def test_a_new_statement_at_the_end_and_behind_the_uses() -> None:
    assert made(Add('bypass guitar -> combo "round"')) == f'{TEXT}bypass guitar -> combo "round"\n'
    use = 'use "stock/cables.rig"'
    assert made(Add(use, at_start=True)) == TEXT.replace('plugs.rig"\n', f'plugs.rig"\n{use}\n')
    assert made(Add(use, at_start=True), text="rig toy { }\n") == f"{use}\nrig toy {{ }}\n"


def test_two_edits_of_one_place_are_no_mend() -> None:
    source = Source("a.rig", TEXT)
    with pytest.raises(CannotMend, match="overlap"):
        made(Replace(at(source, "8 mA"), "80 mA"), Delete(at(source, "draws 8 mA")), source=source)


def test_the_stock_that_ships_is_nobodys_to_mend() -> None:
    stock = Source("stock/plugs.rig", "language 1\n")
    with pytest.raises(CannotMend, match="ships with rigc"):
        mended(Mend("do it", (Replace(Span(stock, 9, 10), "2"),)), (Source("a.rig", TEXT), stock), parse)
