"""What a block came to is not made again while its words, and those of what it is like, are the same; its places are where the words are now."""

from __future__ import annotations

from typing import Any

from cases import READER

from rigc.model.resolve import KnownThings, Resolved, resolved
from rigc.source import Source, Span
from rigc.syntax.nodes import Unit

TEXT = """rig fens {
  title "Fens"
  revision A 2026-03-02
}
unit tern {
  body 70 x 120 x 50 mm
  mass 400 g
  input in
  output out
}
unit fen like tern {
  mass 420 g
}
cable thin {
  outer 3 mm
}
"""


def made(text: str, known: KnownThings) -> Resolved:
    """What a text says, with what is known."""
    source = Source("a.rig", text)
    parsed = READER.parse(source)
    return resolved(parsed.file.statements, READER.reserved, Span(source, 0, 0), known)


def things(found: Resolved) -> tuple[Any, Any, Any]:
    rig = found.rig
    assert rig is not None
    return rig.units["tern"], rig.units["fen"], rig.stock.cables["thin"]


def test_the_same_words_make_the_same_things_where_they_are_now() -> None:
    first = KnownThings()
    made(TEXT, first)
    now = f"# a remark\n{TEXT}"
    found = things(made(now, KnownThings(first)))
    assert found == things(made(now, KnownThings()))
    tern, fen, thin = found
    assert (tern.mass_kg.span.text, tern.mass_kg.span.line) == ("400 g", 8)
    assert (fen.mass_kg.span.text, fen.mass_kg.span.line) == ("420 g", 13)
    assert (fen.width_mm.span.text, fen.width_mm.span.line) == ("70", 7)  # of what it is like
    assert (thin.outer_mm.span.text, thin.outer_mm.span.line) == ("3 mm", 16)


def test_in_the_same_text_they_are_the_very_things() -> None:
    known = KnownThings()
    source = Source("a.rig", TEXT)
    statements = READER.parse(source).file.statements
    twice = [things(resolved(statements, READER.reserved, Span(source, 0, 0), known)) for _ in range(2)]
    assert all(one is other for one, other in zip(*twice, strict=True))


def test_what_it_is_like_is_part_of_it() -> None:
    first = KnownThings()
    made(TEXT, first)
    tern, fen, _ = things(made(TEXT.replace("70 x", "75 x"), KnownThings(first)))
    assert tern.width_mm.value == fen.width_mm.value == 75


def test_a_line_that_could_not_be_read_and_now_can_be_counts() -> None:
    """The words of the block are the same: what was made without the line is not known of it."""
    first = KnownThings()
    source = Source("a.rig", TEXT)
    parsed = READER.parse(source)
    unread = [
        each.replace(items=each.items[1:]) if isinstance(each, Unit) and str(each.name) == "tern" else each
        for each in parsed.file.statements
    ]
    assert things(resolved(tuple(unread), READER.reserved, Span(source, 0, 0), first))[0].width_mm is None
    assert things(made(TEXT, KnownThings(first)))[0].width_mm.value == 70


def test_a_thing_with_a_finding_tells_it_again() -> None:
    wrong = TEXT.replace("mass 400 g", "mass 400 mm")
    first = KnownThings()
    told = made(wrong, first).findings
    again = made(f"\n{wrong}", KnownThings(first)).findings
    assert told
    assert [each.message for each in told] == [each.message for each in again]
    assert [each.span.line + 1 for each in told if each.span] == [each.span.line for each in again if each.span]
