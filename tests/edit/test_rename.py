"""Another name for a thing: everywhere, there and back to the same text, and refused where it would be wrong."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import Any

import pytest
from cases import READER, ROOT
from grammars import within
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from rigc.edit.rename import Renamed, is_name, rename
from rigc.files.disk import Disk
from rigc.gather import Gathered, gather
from rigc.model.resolve import FAMILIES, resolve
from rigc.source import Source, Span
from rigc.syntax import nodes

some = settings(
    max_examples=12, deadline=None, database=None, derandomize=True, suppress_health_check=list(HealthCheck)
)
BOARDS = [*sorted((ROOT / "examples").glob("*/board.rig")), *sorted((ROOT / "tests" / "rigs").glob("*.rig"))]
SMALL = """\
language 1
rig small {
  revision A 2026-03-02
}
unit tern { # the first
    input in ts
    output out ts
}
unit fen like tern "tern tern" {}
supply brook { was creek
}
supply tern-2 {
  was rill
}
cable tern {
  carries audio
}
accept open-chain on tern "stays" by "R.K." until 2026-12-31
"""


def read(text: str, name: str = "board.rig") -> Gathered:
    """One file as a project."""
    source = Source(name, text)
    return gather(lambda _: source, name, READER)


def told(gathered: Gathered) -> list[str]:
    """What is wrong with names and quantities."""
    findings = resolve(gathered.statements, READER.reserved, Span(gathered.sources[0], 0, 0))[1]
    return [finding.kind.name for finding in (*gathered.findings, *findings)]


def renamed(text: str, old: str, new: str, kind: str = "") -> str:
    """The one file after renaming."""
    made = rename(read(text), READER.reserved, old, new, kind)
    assert made.refused is None, made.refused
    return made.texts["board.rig"]


def refusal(text: str, old: str, new: str) -> str:
    """Rule and message of a refusal."""
    made = rename(read(text), READER.reserved, old, new)
    assert made.refused is not None
    assert made.texts == {}
    return f"{made.refused.kind.name} {made.refused.message}"


@cache
def project(board: Path) -> Gathered:
    """A rig and all that it uses."""
    disk = Disk(board, root=ROOT)
    return gather(disk, disk.name, READER)


def with_texts(board: Path, made: Renamed) -> Gathered:
    """The rig with the new texts in place of the old."""
    disk = Disk(board, root=ROOT)
    kept: dict[str, Source] = {}

    def load(name: str) -> Source:
        source = disk(name)
        return kept.setdefault(source.name, Source(source.name, made.texts.get(source.name, source.text)))

    return gather(load, disk.name, READER)


@some
@given(st.data())
def test_there_and_back_is_the_same_text(data: st.DataObject) -> None:
    """No finding of names comes or goes on the way, and what is meant by the name is found nowhere any more."""
    board = data.draw(st.sampled_from(BOARDS))
    before = project(board)
    own = [
        each for each in before.statements if type(each) in FAMILIES and not each.span.source.name.startswith("stock/")
    ]
    block: Any = data.draw(st.sampled_from(own))
    old, kind, new = block.name.text, FAMILIES[type(block)][1], data.draw(st.sampled_from(["zz-9", "q", "over"]))
    there = rename(before, READER.reserved, old, new, kind)
    if new in READER.reserved:
        assert there.refused is not None
        return
    after = with_texts(board, there)
    assert told(after) == told(before)
    feeds = [each for each in within(after.statements) if isinstance(each, nodes.Stop | nodes.Feed | nodes.At)]
    assert not any(f" {old} " in f" {each} ".replace(",", " ").replace(".", " . ") for each in feeds if kind == "unit")
    back = rename(after, READER.reserved, new, old, kind)
    texts = {source.name: source.text for source in before.sources}
    assert {name: texts[name] for name in there.texts} == back.texts


def test_what_is_renamed() -> None:
    """The unit, not the cable of the same name, no text in quotes; `like` and `accept` follow."""
    made = renamed(SMALL, "tern", "gull", "unit")
    assert "unit gull { # the first\n    was tern\n    input in ts\n" in made
    assert 'unit fen like gull "tern tern" {}' in made
    assert "cable tern {" in made
    assert 'accept open-chain on gull "stays"' in made
    assert renamed(made, "gull", "tern", "unit") == SMALL


@pytest.mark.parametrize(
    ("old", "new", "lines"),
    [
        ("brook", "creek", "supply creek {}\n"),  # the name of the revision before: the clause would say its own name
        ("brook", "beck", "supply beck { was creek\n}\n"),  # what a revision knows is the older name
        ("tern-2", "rill", "supply rill {\n}\n"),
        ("fen", "moor", 'unit moor like tern "tern tern" { was fen\n}\n'),
    ],
)
def test_the_clause_that_tells_the_old_name(old: str, new: str, lines: str) -> None:
    made = renamed(SMALL, old, new)
    assert lines in made
    assert READER.parse(Source("board.rig", made)).findings == ()


def test_line_ends_and_a_byte_order_mark_stay() -> None:
    text = "\ufeff" + SMALL.replace("\n", "\r\n")
    source = Source("board.rig", SMALL, text.encode())
    made = rename(gather(lambda _: source, "board.rig", READER), READER.reserved, "fen", "moor")
    assert made.texts["board.rig"] == "\ufeff" + renamed(SMALL, "fen", "moor").replace("\n", "\r\n")


def test_a_word_of_the_language_is_refused() -> None:
    assert (
        refusal(SMALL, "fen", "others")
        == "reserved-name 'others' is a word of the language; 'fen' can't be called that"
    )


def test_a_taken_name_is_refused() -> None:
    assert refusal(SMALL, "fen", "brook") == "name-taken 'brook' is a supply already, so 'fen' can't be called that"


def test_an_unknown_name_is_refused() -> None:
    assert refusal(SMALL, "feen", "moor") == "unknown-name nothing declares 'feen', so it can't be renamed"


def test_two_things_of_one_name_are_refused() -> None:
    assert refusal(SMALL, "tern", "moor") == "misused-name 'tern' is a unit and a cable; it is not said which to rename"


def test_stock_that_ships_with_rigc_is_refused() -> None:
    source = Source("stock/x.rig", SMALL)
    made = rename(gather(lambda _: source, "stock/x.rig", READER), READER.reserved, "fen", "moor")
    assert made.refused is not None
    assert "ships with rigc" in made.refused.message


def test_names() -> None:
    assert is_name("lant-2") and is_name("z")
    assert not any(map(is_name, ("", "2z", "Z", "a--b", "a.b", "é", "a b", "a-")))


def test_the_old_name_is_not_inherited() -> None:
    """What is like a renamed unit was never called that itself."""
    gathered = read(renamed(SMALL, "tern", "gull", "unit"))
    rig, _ = resolve(gathered.statements, READER.reserved, Span(gathered.sources[0], 0, 0))
    assert rig is not None
    assert (rig.units["gull"].was, rig.units["fen"].was) == ("tern", None)
