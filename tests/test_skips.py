"""In CI nothing is skipped silently."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

SKIPPED_TEST = "import pytest\n\n@pytest.mark.skip\ndef test_one():\n    pass\n"
SKIPPED_FILE = "import pytest\n\npytest.importorskip('no_such_module_anywhere')\n"


@pytest.mark.parametrize("text", [SKIPPED_TEST, SKIPPED_FILE])
def test_a_skip_fails_in_ci_and_only_there(tmp_path: Path, text: str) -> None:
    (tmp_path / "conftest.py").write_text((Path(__file__).parent / "conftest.py").read_text())
    (tmp_path / "test_it.py").write_text(text + "\n\ndef test_two():\n    pass\n")
    command = [sys.executable, "-m", "pytest", "-q", "-p", "no:cacheprovider", str(tmp_path)]
    plain = {name: value for name, value in os.environ.items() if name != "RIGC_CI" and not name.startswith("PYTEST")}
    assert subprocess.run(command, env=plain, capture_output=True, cwd=tmp_path).returncode in (0, 5)
    in_ci = subprocess.run(command, env={**plain, "RIGC_CI": "1"}, capture_output=True, text=True, cwd=tmp_path)
    assert in_ci.returncode not in (0, 5)
    assert "skipped in CI" in in_ci.stdout
