"""Every sentence that a rig must be able to say: its statement stands in its case, and the case compiles."""

from __future__ import annotations

import pytest
from cases import ROOT, compiled
from grammars import parsed
from reference import SENTENCES, Row, rows

WRONG = ("name-taken", "wrong-quantity", "outside-body")


def test_the_table_holds_each_sentence_once() -> None:
    assert [row.number for row in rows()] == list(range(1, 124))
    assert len({row.sentence for row in rows()}) == 123


def test_each_case_belongs_to_one_row() -> None:
    assert sorted(row.case for row in rows()) == sorted(SENTENCES.glob("*.rig"))
    assert all(row.case.name.startswith(f"{row.number:03}-") for row in rows())


@pytest.mark.parametrize("row", rows(), ids=lambda row: row.case.stem)
def test_the_statement_stands_in_the_case(row: Row) -> None:
    text = row.case.read_text("utf-8")
    assert row.statements
    for statement in row.statements:
        assert any(line.strip().startswith(statement) for line in text.splitlines()), statement


@pytest.mark.parametrize("row", rows(), ids=lambda row: row.case.stem)
def test_the_case_is_well_written(row: Row) -> None:
    wrong = [
        f"{finding.span}: {finding.message}"
        for finding in compiled(row.case).findings
        if finding.kind.name[0] in "XU" or finding.kind.name in WRONG
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
