"""`rigc show places` and `fit` on a rig whose places are chosen, and what a rig with stated places never loads."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).parent.parent.parent
RIG = """language 1
use "stock/plugs.rig"
rig pair {
  revision A 2026-01-01
}
unit dunlin {
  body 60 x 100 x 50 mm
  bypass true
  output out ts left 50 mm up 20 mm
}
unit knot {
  body 60 x 100 x 50 mm
  bypass true
  input in ts right 50 mm up 20 mm
}
chain dunlin -> knot
deck pan {
  size 300 x 200 mm
  thickness 10 mm
  drop 150 mm
}
"""


def run(here: Path, *arguments: str, code: int | None = None) -> str:
    made = subprocess.run(
        [sys.executable, "-m", "rigc", *arguments],
        cwd=here,
        env={"PYTHONPATH": str(ROOT), "PATH": "", "XDG_CACHE_HOME": str(here.parent)},
        capture_output=True,
        text=True,
        check=False,
    )
    assert made.returncode in ((0, 1) if code is None else (code,)), made.stderr
    return made.stdout


def test_pasted_statements_keep_the_chosen_places(tmp_path: Path) -> None:
    rig = tmp_path / "pair.rig"
    rig.write_text(RIG)
    shown = run(tmp_path, "show", "places", "pair.rig", "--effort", "3000")
    assert "chosen" in shown and "stated" not in shown
    rig.write_text(RIG + shown[shown.index("place {") :])
    again = run(tmp_path, "show", "places", "pair.rig", "--effort", "3000")
    assert "chosen" not in again
    assert "# every place is stated" in again
    figures = [line for line in shown.splitlines() if line.startswith("A1")]
    assert figures and figures[0].split()[:4] == ["A1", "dunlin.out", "knot.in", "90"]


def test_places_keep_what_stood_before(tmp_path: Path) -> None:
    """A third unit in the chain; the file before is the same without it."""
    (tmp_path / "old.rig").write_text(RIG + "place {\n  dunlin at 40, 40 mm\n  knot at 130, 40 mm\n}\n")
    more = RIG.replace("unit knot", "unit ruff {\n  body 60 x 100 x 50 mm\n}\nunit knot")
    (tmp_path / "new.rig").write_text(f"{more}place {{\n  ruff side right\n}}\n")
    shown = run(tmp_path, "show", "places", "new.rig", "--against", "old.rig", "--effort", "500")
    assert "0 of 2 move, 1 new" in shown
    assert "  dunlin at 40, 40 mm\n  knot at 130, 40 mm\n  ruff at" in shown


def test_alternatives_are_told_apart_and_asked_for_places_alone(tmp_path: Path) -> None:
    (tmp_path / "pair.rig").write_text(RIG)
    shown = run(tmp_path, "show", "places", "pair.rig", "--alternatives", "2", "--effort", "300")
    assert "layout 1" in shown and shown.count("place {") == shown.count("# layout")
    refused = run(tmp_path, "show", "fit", "pair.rig", "--alternatives", "2", code=2)
    assert refused == ""


def test_fit_tells_the_smallest_rectangle(tmp_path: Path) -> None:
    (tmp_path / "pair.rig").write_text(RIG)
    shown = run(tmp_path, "show", "fit", "pair.rig", "--effort", "0")
    assert "The smallest rectangle found" in shown
    assert shown.splitlines()[3].split()[:4] == ["pan", "300", "200", "all"]


def test_stated_places_load_no_search() -> None:
    code = (
        "import sys; from rigc.cli import main; sys.argv = ['rigc', 'check', 'examples/back-bedroom/board.rig']\n"
        "try:\n    main()\nexcept SystemExit:\n    pass\n"
        "search = ('annealing', 'moves', 'refill', 'rows.first_layout', 'shelves', 'packing')\n"
        "print([name for name in search if f'rigc.analysis.laying.search.{name}' in sys.modules])"
    )
    made = subprocess.run([sys.executable, "-c", code], cwd=ROOT, capture_output=True, text=True, check=True)
    assert made.stdout.splitlines()[-1] == "[]"
