"""The rework sheet of the touring rig on paper: one page of A4 or Letter. Skipped where the programs are missing."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest
from test_print import pages, printed
from two_boards import LONG_HAUL, LONG_HAUL_D, compiled_after

MISSING = [program for program in ("chromium", "pdftotext") if shutil.which(program) is None]
CHANGES = (
    '  change 1 design "the larger pitch unit, as the player asked" touches stepladder-ii, A14, A15, D07, D08, Y1\n'
    '  change 2 design "the delay moves to the other supply" touches echomill, D16\n'
)
DONE = "\nas-built C {\n  done 2\n}\n"


@pytest.mark.slow
@pytest.mark.skipif(bool(MISSING), reason=f"not installed: {', '.join(MISSING)}")
@pytest.mark.parametrize(("built", "paper"), [("", "letter"), (DONE, "a4")], ids=["to do", "half done"])
def test_it_is_one_page_with_its_line_to_sign(tmp_path: Path, built: str, paper: str) -> None:
    documents = compiled_after(LONG_HAUL, LONG_HAUL_D + built, CHANGES).documents(("rework",))
    texts = pages(printed(tmp_path, documents, paper))
    assert len(texts) == 1
    assert "page 1 of 1" in texts[0]
    assert "done by ___" in texts[0] and "power off, mains lead out" in texts[0]
