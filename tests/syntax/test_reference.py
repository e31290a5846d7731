"""The language reference shows a worked line, that reads as it prints, for every statement of the grammar."""

from __future__ import annotations

import re

import pytest
import reference
from grammars import TEXT, class_name, node_classes, parsed, rules, within
from reference import Line, worked_lines

NO_LINE_OF_THEIR_OWN = {"File", "Desk", "Amount", "Spread", "UpTo"}
"""The whole file; a desk, which is written as an amp is; and what is no node."""


@pytest.mark.parametrize("worked", worked_lines(), ids=lambda worked: worked.line)
def test_a_worked_line_reads_as_it_prints(worked: Line) -> None:
    read = parsed(worked.text)
    assert [finding.message for finding in read.findings] == []
    assert worked.line in str(read.file).replace("\n  ", "\n").split("\n")


def test_every_statement_has_a_worked_line() -> None:
    shown = {type(node).__name__ for line in worked_lines() for node in within(parsed(line.text).file)}
    assert {class_name(rule) for rule in rules()} - shown - NO_LINE_OF_THEIR_OWN == set()
    assert set(node_classes()) - shown - NO_LINE_OF_THEIR_OWN == set()


def test_every_choice_of_words_is_told() -> None:
    """Each reserved word of the grammar stands somewhere in the reference."""
    written = set(re.findall(r"[a-z][a-z0-9-]*", " ".join(re.findall(r"`([^`]*)`", reference.TEXT))))
    words = set(re.findall(r'"([a-z][a-z-]*)"', TEXT))
    assert words - written == set()
