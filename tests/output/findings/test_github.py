"""Findings as commands of a workflow: one line each whatever the words are, and columns only within one line."""

from __future__ import annotations

from some_findings import FINDINGS

from rigc.output.findings.github import render

LINES = """\
::error file=rigs/board.rig,line=2,endLine=2,col=3,endColumn=17,title=overloaded-supply::'mäin' gives 170 mA, 100 mA at most%0Atwo units hang on it%0Ado: state 200 mA, and less in 'tern'; or drop the note; or feed 'tern' elsewhere
::warning file=rigs/board.rig,line=1,endLine=4,title=moved-switch::a block of%0Aseveral lines
::warning title=moved-switch::what ships is odd
::notice title=a-matter-of-taste::has no place: 100 %25, so it is
::notice file=rigs/my units/tern.rig,line=1,endLine=1,col=6,endColumn=10,title=cannot check overloaded-supply::'tern' states no peak%0Ado: measure it
"""


def shown(name: str) -> str:
    return name if name.startswith("stock/") else f"rigs/{name}"


def test_every_sort_of_finding() -> None:
    """What was accepted is not told; what ships has no line that a reviewer could see."""
    assert render(FINDINGS, shown) == LINES


def test_a_path_cannot_end_its_property() -> None:
    line = render(FINDINGS[:1], lambda _: "a,b:c%d\n.rig")
    assert line.startswith("::error file=a%2Cb%3Ac%25d%0A.rig,line=2,")
    assert line.count("\n") == 1
