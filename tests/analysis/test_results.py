"""Values by their type: each computation stands where its type is declared, and none is loaded that nobody asks for."""

from __future__ import annotations

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
    told = subprocess.run([sys.executable, "-c", LOADED, str(TOURING)], capture_output=True, text=True, check=True)
    loaded = set(told.stderr.split())
    assert "rigc.analysis.leads.leads" in loaded
    assert not loaded & {f"rigc.analysis.revision.{name}" for name in ("rework", "comparison", "seal")}
    revision = {
        name.removeprefix("rigc.analysis.revision.") for name in loaded if name.startswith("rigc.analysis.revision.")
    }
    rules = {"checks", "no_comparison", "unfit_release", "built", "built.unmade_swap"}
    assert {name for name in revision if not name.startswith("checks.")} == rules
