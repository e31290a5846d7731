"""Every check against its cases: what trips it is told as expected, what lies just inside the limit is not; and no formula of theirs is false."""

from __future__ import annotations

from pathlib import Path

import pytest
from cases import Expected, cases, compiled, proved, told
from syrupy.assertion import SnapshotAssertion
from untrue_reasons import judged

from rigc.analysis.every_check import all_checks
from rigc.diagnostics.explain import all_kinds

CASES = Path(__file__).parent / "cases"


@pytest.mark.parametrize("case", cases(CASES))
def test_case(case: Path, snapshot: SnapshotAssertion) -> None:
    """The findings of the rule that the case's folder is named after; no other rule may stop the case from being judged. Cases lack
    facts, join outlets, turn units: their reasons stand on what is there."""
    made = compiled(case)
    assert made.results is not None, told(made.findings)
    assert told(proved(case, made, case.parent.name)) == snapshot(extension_class=Expected)
    assert judged(made.results).wrong == []


@pytest.mark.parametrize("check", [check.__name__ for check in all_checks()])
def test_each_check_has_a_case_on_both_sides(check: str) -> None:
    """At least one case trips the rule and at least one is passed."""
    folder = CASES / check.replace("_", "-")
    expected = [
        path.read_text("utf-8") for path in sorted((folder.parent.parent / "expected" / folder.name).glob("*.txt"))
    ]
    assert any(text != "nothing to report\n" for text in expected), f"no case trips {check}"
    assert any(text == "nothing to report\n" for text in expected), f"no case lies just inside the limit of {check}"


def test_each_case_belongs_to_a_rule() -> None:
    """A folder of cases is named after a rule."""
    slugs = {kind.name for kind in all_kinds()}
    assert {folder.name for folder in CASES.iterdir() if folder.is_dir()} <= slugs
