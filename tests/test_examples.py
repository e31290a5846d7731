"""The examples compile, report what their expectation says, and their committed documents are what building them gives now."""

from __future__ import annotations

from pathlib import Path

import pytest
from cases import ROOT, compiled, told

EXAMPLES = sorted((ROOT / "examples").glob("*/board.rig"))
EXPECTED = {
    # What the worked rigs leave standing: no bypass plan is declared (silent-without-power), a ring through the shared outlet (shared-supply-ring).
    "back-bedroom": ["silent-without-power", "shared-supply-ring"],
    # 33.258 kg with its case against 23 kg for one lifter and 32 kg for an airline piece (D09), two switches that must
    # leave their maker's position (moved-switch), a brighter guitar (brighter-guitar), a delay in a loop (cut-tails),
    # and a switcher whose foot switches nobody measured (can't-check).
    "long-haul": [
        "too-heavy",
        "silent-without-power",
        "moved-switch",
        "moved-switch",
        "brighter-guitar",
        "cut-tails",
        "switches-too-near",
    ],
    # As before it, and no outlet to spare (no-spare-outlet), a pitch unit of unknown start-up current at 71.1 % (nearly-full-outlet), and a delay on
    # the common of the MIDI splitter (mixed-outlet).
    "long-haul-d": [
        "too-heavy",
        "silent-without-power",
        "no-spare-outlet",
        "nearly-full-outlet",
        "mixed-outlet",
        "moved-switch",
        "moved-switch",
        "brighter-guitar",
        "cut-tails",
        "switches-too-near",
    ],
    # A brick's lead of 1.5 m on a way of 0.2 m (unfit-lead-length), a ring through the shared outlet (shared-supply-ring).
    "harbour-keys": ["unfit-lead-length", "shared-supply-ring"],
    # examples/tide-line/worked.md
    "tide-line": ["lost-side", "too-weak", "paths-cancel", "paths-late", "battery-only"],
}


@pytest.mark.parametrize("board", EXAMPLES, ids=lambda path: path.parent.name)
def test_reports_what_is_expected(board: Path) -> None:
    """No error, and exactly the rules that the worked rig leaves standing."""
    made = compiled(board)
    assert [finding.kind.name for finding in made.findings] == EXPECTED[board.parent.name], told(made.findings)


@pytest.mark.parametrize("board", EXAMPLES, ids=lambda path: path.parent.name)
def test_committed_documents_are_fresh(board: Path) -> None:
    """`rigc build` of the example gives the committed bytes: every sheet as Markdown and HTML, every drawing as SVG."""
    from rigc.output.formats import document_renderer, drawing_files
    from rigc.output.layout import STANDARD

    made: dict[str, str] = {}
    for document in compiled(board).documents():
        for form in ("md", "html"):
            made[f"{document.sheet.name}.{form}"] = document_renderer(form)((document,), STANDARD)
        made.update(drawing_files(document))
    kept = {path.name: path.read_bytes() for path in (board.parent / "documents").iterdir()}
    stale = [name for name in sorted({*made, *kept}) if made.get(name, "").encode("utf-8") != kept.get(name)]
    assert stale == [], f"run: rigc build --separate {board.relative_to(ROOT)}"


def test_each_example_says_that_it_is_invented() -> None:
    """Demo data is marked as such, in the source and on the sheets."""
    for board in EXAMPLES:
        assert "invented" in board.read_text("utf-8").split("\n")[0].lower()
        assert any("invented" in note.lower() for note in compiled(board).results.rig.notes)  # type: ignore[union-attr]
