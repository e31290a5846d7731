"""Every sentence that a rig must be able to say: its statement stands in its case, and the case compiles."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from cases import ROOT, compiled
from grammars import parsed
from reference import SENTENCES, Row, rows

from rigc.syntax import nodes
from rigc.syntax.nodes import Node

WRONG = (
    "malformed-statement", "unclosed-block", "nested-block", "unknown-name", "misused-name", "reserved-name", "said-twice",
    "name-taken", "wrong-quantity", "outside-body",
)  # fmt: skip


def test_the_table_holds_each_sentence_once() -> None:
    numbers = [row.number for row in rows()]
    assert numbers == sorted(set(numbers))
    assert len({row.sentence for row in rows()}) == len(numbers)


def test_each_case_belongs_to_one_row() -> None:
    assert sorted(row.case for row in rows()) == sorted(SENTENCES.glob("*.rig"))
    assert all(row.case.name.startswith(f"{row.number:03}-") for row in rows())


def test_each_rule_of_the_grammar_is_said_in_a_case() -> None:
    said = {type(node) for row in rows() for node in _nodes(parsed(row.case.read_text("utf-8")).file)}
    written = {
        kind for kind in vars(nodes).values() if isinstance(kind, type) and issubclass(kind, Node) and kind is not Node
    }
    assert sorted(kind.__name__ for kind in written - said) == []


def _nodes(value: object) -> Iterator[Node]:
    if isinstance(value, tuple):
        for each in value:
            yield from _nodes(each)
    elif isinstance(value, Node):
        yield value
        for field in value.FIELDS:
            yield from _nodes(getattr(value, field))


@pytest.mark.parametrize("row", rows(), ids=lambda row: row.case.stem)
def test_the_statement_stands_in_the_case(row: Row) -> None:
    text = row.case.read_text("utf-8")
    assert row.statements
    for statement in row.statements:
        assert any(line.strip().startswith(statement) for line in text.splitlines()), statement


@pytest.mark.parametrize("row", rows(), ids=lambda row: row.case.stem)
def test_the_case_is_well_written(row: Row) -> None:
    wrong = [
        f"{finding.span}: {finding.message}" for finding in compiled(row.case).findings if finding.kind.name in WRONG
    ]
    assert wrong == []


@pytest.mark.parametrize("row", rows(), ids=lambda row: row.case.stem)
def test_the_case_prints_as_it_reads(row: Row) -> None:
    file = parsed(row.case.read_text("utf-8")).file
    again = parsed(str(file))
    assert again.findings == ()
    assert again.file == file
    assert str(again.file) == str(file)


def test_the_cases_say_that_they_are_invented() -> None:
    cases = [*SENTENCES.glob("*.rig"), *(ROOT / "examples").rglob("*.rig")]
    assert [case.name for case in cases if "nvented" not in case.read_text("utf-8").split("\n")[0]] == []
