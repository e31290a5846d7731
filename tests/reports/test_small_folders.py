"""Small rigs, whole: what is found on them, what their folders say, and each figure with how it came about, by which rule of which source.

A slip in a computation changes a line here, or nothing that anybody reads. Read what has changed line by line: the formulas are the
arithmetic. How drawings look, and what sheets say in every folder alike, is tested elsewhere.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from pathlib import Path

import pytest
from cases import ExpectedByName, compiled, told
from folder_rigs import RIGS
from syrupy.assertion import SnapshotAssertion

from rigc.analysis.reasoning import Reasoning
from rigc.compile import Compiled
from rigc.output.formats import document_renderer
from rigc.output.layout import STANDARD
from rigc.traced.reason import Reason

pytestmark = pytest.mark.usefixtures("names_anywhere")

COPIED = ("intake-sheet", "unit-data-sheets", "unit-schedule")
"""Sheets that copy what is stated and reckon nothing."""


@pytest.mark.parametrize("rig", RIGS, ids=lambda path: path.stem)
def test_what_a_folder_says(rig: Path, snapshot: SnapshotAssertion) -> None:
    made = compiled(rig)
    assert told(made.findings) + "\n".join(_lines(made)) + "\n" == snapshot(extension_class=ExpectedByName)


@pytest.mark.parametrize("rig", RIGS, ids=lambda path: f"{path.stem}-figures")
def test_how_each_figure_came_about(rig: Path, snapshot: SnapshotAssertion) -> None:
    made = compiled(rig)
    assert made.results is not None
    reasons = Reasoning(made.results).by_name.values()
    told = "".join(f"{each.name} = {f'{each.value} {each.unit}'.rstrip()}: {each.formula}\n" for each in reasons)
    assert told + _rules(reasons) == snapshot(extension_class=ExpectedByName)


def _rules(reasons: Iterable[Reason]) -> str:
    """Each rule with its source, and the figures that it made."""
    made: dict[str, list[str]] = {}
    for each in reasons:
        made.setdefault(f"{each.rule} ({each.source})", []).append(each.name)
    return "".join(f"\n# {rule}\n{', '.join(names)}\n" for rule, names in sorted(made.items()))


def _lines(made: Compiled) -> Iterator[str]:
    """Title and lines of each sheet, without its title block, its cautions and its notice."""
    render = document_renderer("md")
    for document in made.documents():
        if document.sheet.name not in COPIED:
            yield f"\n# {document.sheet.title}"
            body = render((document,), STANDARD).partition("\n- source: ")[2].partition("\n")[2]
            yield from (line for line in body.split("\n") if line and line[0] != ">" and line[:2] != "*V")
