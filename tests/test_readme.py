"""The README's walk is true: its blocks make a rig that compiles without a finding and gives the numbers that it tells."""

from __future__ import annotations

import re
from pathlib import Path

from cases import ROOT, compiled

from rigc.analysis.leads.lengths.cable_lengths import CableLengths
from rigc.diagnostics.diagnostic import Level


def walk() -> str:
    """All blocks of the walk in order: one file."""
    text = (ROOT / "README.md").read_text("utf-8")
    return "\n".join(re.findall(r"```rig\n(.*?)```", text, re.DOTALL))


def test_the_walk_compiles(tmp_path: Path) -> None:
    """The finished file of the walk has no finding but facts that nobody measured; A2 is 90 mm finished and 114 mm cut (54 mm route, 2 × 12 mm cut-in)."""
    board = tmp_path / "board.rig"
    board.write_text(walk(), "utf-8")
    made = compiled(board)
    assert [finding.message for finding in made.findings if finding.level is not Level.CANT_CHECK] == []
    assert made.results is not None
    lengths = made.results.get(CableLengths)
    lead = lengths.lengths["A2"]
    assert (lead.finished, lead.cut) == (900, 1140)


def test_readme_opens_with_the_job() -> None:
    """The first paragraph tells the job."""
    first = (ROOT / "README.md").read_text("utf-8").split("\n\n")[1]
    for word in ("units", "signal order", "power", "deck", "leads", "labelled", "mounted"):
        assert word in first
