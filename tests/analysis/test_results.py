"""Values by their type: each computation stands where its type is declared, and none is loaded that nobody asks for."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from rigc.analysis.results import needed
from rigc.discover import declaring

TOURING = Path(__file__).parents[2] / "examples" / "long-haul" / "board.rig"
LOADED = """
import sys
from rigc.cli import main
main(["-q", "check", sys.argv[1]])
print(*sys.modules, file=sys.stderr)
"""


@pytest.mark.parametrize("made", declaring("rigc.analysis", "COMPUTE"), ids=lambda made: made.__name__)
def test_a_computation_stands_beside_its_type(made: Callable[..., Any]) -> None:
    assert needed(made)[1].__module__ == made.__module__


def test_a_rig_that_follows_none_loads_nothing_of_revisions() -> None:
    loaded = _loaded(TOURING)
    assert "rigc.analysis.leads.leads" in loaded
    assert not loaded & {f"rigc.analysis.revision.{name}" for name in ("rework", "comparison", "seal")}
    revision = {
        name.removeprefix("rigc.analysis.revision.") for name in loaded if name.startswith("rigc.analysis.revision.")
    }
    rules = {"checks", "no_comparison", "unfit_release", "built", "built.unmade_swap"}
    assert {name for name in revision if not name.startswith("checks.")} == rules


SURE = """language 1
rig plain "Plain (invented)" {
  revision A 2026-03-02
}
unit marl {
  needs 9 V dc
  draws 40 mA
}
"""


@pytest.mark.parametrize(
    ("more", "loaded"),
    [
        ("", set()),
        ("unit fen {\n  mass 300 g assumed\n}\n", {"findings.limits_in_doubt"}),
        ('tests {\n  2026-03-01 test 14 at marl reads 69 dB by "T.O."\n}\n', {"tests.due_tests"}),
    ],
    ids=["neither", "a guess", "a reading"],
)
def test_what_is_reckoned_for_guesses_and_readings_alone_is_loaded_only_for_them(
    more: str, loaded: set[str], tmp_path: Path
) -> None:
    (tmp_path / "plain.rig").write_text(SURE + more, "utf-8")
    asked = {f"rigc.analysis.{name}" for name in ("findings.limits_in_doubt", "tests.due_tests")}
    assert asked & _loaded(tmp_path / "plain.rig") == {f"rigc.analysis.{name}" for name in loaded}


def _loaded(rig: Path) -> set[str]:
    """The modules that a check of the rig loads where nothing is kept."""
    nothing_kept = {**os.environ, "XDG_CACHE_HOME": "/dev/null/none"}
    run = [sys.executable, "-c", LOADED, str(rig)]
    return set(subprocess.run(run, capture_output=True, text=True, check=True, env=nothing_kept).stderr.split())
