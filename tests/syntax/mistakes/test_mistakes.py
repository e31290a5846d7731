"""What a builder is told about each mistake in writing: every sample with its findings, word for word."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from cases import Expected, cases, compiled, told
from syrupy.assertion import SnapshotAssertion

FOLDER = Path(__file__).parent


@pytest.mark.parametrize("case", cases(FOLDER / "cases"))
def test_a_mistake_is_told(case: Path, snapshot: SnapshotAssertion) -> None:
    assert told(compiled(case).findings) == snapshot(extension_class=Expected)


@pytest.mark.parametrize("case", cases(FOLDER / "cases"))
def test_a_finding_can_be_used(case: Path) -> None:
    """One line, lower case, no full stop, a place, and one thing to do."""
    made = compiled(case)
    assert made.has_errors
    for finding in made.findings:
        assert "\n" not in finding.message
        assert not finding.message.endswith(".")
        assert not re.match(r"[A-Z][a-z]", finding.message)
        assert finding.span is not None
        assert finding.advice and not re.match(r"[A-Z][a-z]", finding.advice)


def test_every_expectation_belongs_to_a_sample() -> None:
    samples = {case.stem for case in (FOLDER / "cases").glob("*.rig")}
    assert {text.stem for text in (FOLDER / "expected").glob("*.txt")} == samples
    assert len(samples) >= 40
