"""The documentation as a site: a page of each rule with an example that a test holds, and pages in colour."""

from __future__ import annotations

import importlib.util
import re
import subprocess
import sys
from pathlib import Path
from types import ModuleType

import pytest
from cases import ROOT

from rigc.diagnostics.explain import rule_names

WITHOUT_A_RIG = {
    *("broken-template", "template-over-limit", "missing-extra", "no-comparison", "unmade-swap"),
    *("ended-accept", "firm-finding", "unsigned-accept"),
}
"""Rules that hang on templates, packages, other revisions and the day, and that tests of the commands trip."""


@pytest.fixture(scope="module")
def gather() -> ModuleType:
    path = ROOT / "grammar" / "site" / "gather.py"
    spec = importlib.util.spec_from_file_location("gather", path)
    assert spec is not None and spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


def test_each_rule_has_an_example_that_a_test_holds(gather: ModuleType) -> None:
    assert {name for name in rule_names() if gather.example(name) is None} == WITHOUT_A_RIG
    rig, told = gather.example("plugs-collide")
    assert "unit " in rig
    assert "[plugs-collide]" in told


def test_each_link_between_pages_is_to_something_that_is_there(gather: ModuleType) -> None:
    for name in gather.OURS:
        text = re.sub(r"```.*?```", "", (ROOT / name).read_text("utf-8"), flags=re.DOTALL)
        for target in re.findall(r"(?<!!)\[[^\]\n]+\]\(([^)\s#:]+)(?:#[^)]*)?\)", text):
            assert (ROOT / name).parent.joinpath(target).exists(), f"{name}: {target}"


@pytest.mark.long
def test_the_site_is_built(tmp_path: Path) -> None:
    config = str(ROOT / "grammar" / "site" / "mkdocs.yml")
    command = [sys.executable, "-m", "mkdocs", "build", "-q", "--strict", "-f", config, "-d", str(tmp_path)]
    subprocess.run(command, check=True, cwd=ROOT)
    for name in rule_names():
        assert f'<h1 id="{name}">' in (tmp_path / "rules" / f"{name}.html").read_text("utf-8")
    language = (tmp_path / "rules" / "plugs-collide.html").read_text("utf-8")
    assert re.search(r'<span class="k[a-z]?">unit</span>', language)
    for path in tmp_path.rglob("*.html"):
        loaded = re.findall(r'<(?:script|link)[^>]+(?:src|href)="([^"]+)"', path.read_text("utf-8"))
        assert [each for each in loaded if re.match(r"(?:https?:)?//", each)] == []
