"""A folder before two validators of HTML, each with its own rules: html-validate, and vnu, the checker of the W3C. Skipped where they are missing."""

from __future__ import annotations

import os
import shutil
import subprocess
from pathlib import Path

import pytest
from cases import ROOT, compiled

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
    text = html.render(compiled(ROOT / "examples/harbour-keys/board.rig").documents())
    good.write_text(text, encoding="utf-8")
    bad.write_text("<!DOCTYPE html><title>bad</title><button></button><p><table></table></p>", encoding="utf-8")
    (folder / ".htmlvalidate.json").write_text('{"root": true, "extends": ["html-validate:recommended"]}')
    return good, bad


def told(command: list[str | Path], page: Path) -> str:
    run = subprocess.run([*command, page], cwd=page.parent, capture_output=True, text=True, check=False, timeout=300)
    return run.stdout + run.stderr


@needs_validate
def test_html_validate(pages: tuple[Path, Path]) -> None:
    command: list[str | Path] = ["node", VALIDATE, "--formatter", "text"]
    assert told(command, pages[0]).strip() == ""
    assert "button" in told(command, pages[1])


@needs_vnu
def test_vnu(pages: tuple[Path, Path]) -> None:
    command: list[str | Path] = ["java", "-jar", VNU, "--stdout"]
    assert told(command, pages[0]).strip() == ""
    assert "error" in told(command, pages[1])
