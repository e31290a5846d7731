"""A folder before two validators of HTML, each with its own rules: html-validate, and vnu, the checker of the W3C. Skipped where they are missing."""

from __future__ import annotations

import os
import shutil
import subprocess
from pathlib import Path

import pytest
from cases import ROOT, compiled
from small_sheets import DAILY, RIGS

from rigc.output import html

NODE = Path(os.environ.get("RIGC_NODE") or "nowhere") / "node_modules"
VALIDATE, VNU = NODE / "html-validate" / "bin" / "html-validate.mjs", NODE / "vnu-jar" / "build" / "dist" / "vnu.jar"

pytestmark = pytest.mark.slow

needs_validate = pytest.mark.skipif(
    not VALIDATE.exists() or shutil.which("node") is None, reason="needs node, and html-validate in RIGC_NODE"
)
needs_vnu = pytest.mark.skipif(
    not VNU.exists() or shutil.which("java") is None, reason="needs java, and vnu-jar in RIGC_NODE"
)


@pytest.fixture(scope="module")
def pages(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, Path]:
    """A folder, and a page with a button that says nothing and a table in a paragraph."""
    folder = tmp_path_factory.mktemp("pages")
    good, bad = folder / "good.html", folder / "bad.html"
    written(good, DAILY)
    bad.write_text("<!DOCTYPE html><title>bad</title><button></button><p><table></table></p>", encoding="utf-8")
    (folder / ".htmlvalidate.json").write_text('{"root": true, "extends": ["html-validate:recommended"]}')
    return good, bad


def written(page: Path, rig: str) -> Path:
    page.write_text(html.render(compiled(ROOT / rig).documents()), encoding="utf-8")
    return page


def told(command: list[str | Path], *pages: Path) -> str:
    run = subprocess.run(
        [*command, *pages], cwd=pages[0].parent, capture_output=True, text=True, check=False, timeout=300
    )
    return run.stdout + run.stderr


HTML_VALIDATE: list[str | Path] = ["node", VALIDATE, "--formatter", "text"]
CHECKER: list[str | Path] = ["java", "-jar", VNU, "--stdout"]


@needs_validate
def test_html_validate(pages: tuple[Path, Path]) -> None:
    said = told(HTML_VALIDATE, *pages)
    assert pages[0].name not in said
    assert pages[1].name in said and "button" in said


@needs_vnu
def test_vnu(pages: tuple[Path, Path]) -> None:
    said = told(CHECKER, *pages)
    assert pages[0].name not in said
    assert pages[1].name in said and "error" in said


@pytest.mark.long
@needs_validate
@needs_vnu
@pytest.mark.parametrize("rig", RIGS[1:])
def test_both_hold_nothing_against_other_rigs(pages: tuple[Path, Path], rig: str) -> None:
    page = written(pages[0].with_name("other.html"), rig)
    assert (told(HTML_VALIDATE, page).strip(), told(CHECKER, page).strip()) == ("", "")
