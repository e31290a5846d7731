"""A second `rigc build` of what has not changed makes nothing anew, and says and leaves what it would have left."""

from __future__ import annotations

import sys
from pathlib import Path
from shutil import copytree, rmtree
from typing import Any

import pytest
from cases import ROOT
from shelf import Shelf

from cli.conftest import Rigc, Run
from rigc.analysis.kept import NOTHING_KEPT, Kept
from rigc.cli import main, seam
from rigc.output import templates
from rigc.output.paper.fit import Fit
from rigc.reports.drawings.means.choosing import Choice
from rigc.reports.drawings.means.labelling import Ground
from rigc.reports.drawings.means.wish import Wish

SMALL = """language 1
rig sample {
  revision A 2026-03-02
}
instrument guitar {
}
amp combo {
  input in ts
}
unit marl {
  body 60 x 110 x 50 mm
  mass 0.3 kg
  input in ts right 60 mm
  output out ts left 60 mm
}
unit lant {
  body 60 x 110 x 50 mm
  input in ts right 60 mm
  output out ts left 60 mm
}
chain guitar -> marl -> lant -> combo
deck plate {
  size 400 x 200 mm
}
place {
  lant at 40, 20 mm
  marl at 200, 20 mm
}
"""


class Compiles:
    """How often the compiler was asked since this was last read."""

    def __init__(self, monkeypatch: pytest.MonkeyPatch) -> None:
        self.count = 0
        true = sys.modules["rigc.compile"].compile_rig

        def counted(*arguments: Any, **more: Any) -> Any:
            self.count += 1
            return true(*arguments, **more)

        monkeypatch.setattr(sys.modules["rigc.compile"], "compile_rig", counted)

    def __call__(self) -> int:
        count, self.count = self.count, 0
        return count


@pytest.fixture
def compiles(rigc: Rigc, here: Path, monkeypatch: pytest.MonkeyPatch) -> Compiles:  # noqa: ARG001
    """With a cache folder that is empty, and a rig of two files."""
    monkeypatch.setenv("XDG_CACHE_HOME", str(here / "cache"))
    (here / "a.rig").write_text("use b.rig\nwarning of a\n")
    (here / "b.rig").write_text("language 1\n")
    return Compiles(monkeypatch)


def test_nothing_changed(rigc: Rigc, compiles: Compiles) -> None:
    first = rigc("-v", "build", "a.rig")
    assert compiles() == 1
    second = rigc("-v", "build", "a.rig")
    assert compiles() == 0
    assert second == Run(0, "", first.err.replace("wrote", "unchanged").replace("1 of them", "0 of them"))


@pytest.mark.parametrize("change", ["a.rig", "b.rig", "documents/folder.html"])
@pytest.mark.parametrize("how", ["longer", "as long", "gone"])
def test_a_changed_file(change: str, how: str, rigc: Rigc, here: Path, compiles: Compiles) -> None:
    """What it says and leaves is what a run without a cache does."""
    rigc("build", "a.rig")
    text = (here / change).read_text()
    if how == "gone":
        (here / change).unlink()
    else:
        (here / change).write_text(text + "# more\n" if how == "longer" else text.replace("a", "e"))
    compiles()
    done = rigc("build", "a.rig")
    assert compiles() == (0 if (change, how) == ("a.rig", "gone") else 1)
    left = {path.name: path.read_bytes() for path in (here / "documents").iterdir()}
    if change.startswith("documents"):
        assert "1 of them changed" in done.err
        assert left == {"folder.html": text.encode()}
        return
    rmtree(here / "cache")
    assert rigc("build", "a.rig") == Run(done.code, done.out, done.err.replace("1 of them", "0 of them"))
    assert left == {path.name: path.read_bytes() for path in (here / "documents").iterdir()}


def test_what_is_asked_for_is_part_of_what_is_kept(rigc: Rigc, here: Path, compiles: Compiles) -> None:
    ways: tuple[tuple[str, ...], ...] = (
        (), ("--paper", "letter"), ("--draft",), ("--separate",), ("--to", "md"), ("--sheet", "cable-list"), ("--on", "2030-01-01"),
        ("--fail-on", "warning"), ("--findings", "short"), ("-o", "out"),
    )  # fmt: skip
    for way in ways:
        rmtree(here / "documents", ignore_errors=True)
        rigc("build", "a.rig", *way)
        assert compiles() == 1, way
        rigc("build", "a.rig", *way)
        assert compiles() == 0, way
    rigc("build", "a.rig", "-o", "-")
    rigc("build", "a.rig", "-o", "-")
    assert compiles() == 2  # nothing is on the disk


def test_errors_are_told_again(rigc: Rigc, here: Path, compiles: Compiles) -> None:
    (here / "a.rig").write_text("error bad\n")
    first = rigc("build", "a.rig")
    assert first.code == 1
    assert (rigc("build", "a.rig"), compiles()) == (first, 1)
    # a rig behind one with errors is compiled, and not rendered: that is not taken for all that it gives
    (here / "c.rig").write_text("fine\n")
    rigc("build", "a.rig", "c.rig")
    assert not (here / "documents").exists()
    rigc("build", "c.rig")
    assert (here / "documents" / "folder.html").exists()


@pytest.mark.usefixtures("capfd")
def test_a_real_rig_to_the_byte(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """With our templates and with a template of the user's: the second build makes nothing, and after a change of the rig or of the
    template the documents are those that are made anew."""
    copytree(ROOT / "examples" / "back-bedroom", tmp_path / "rig", ignore=lambda *_: ["documents"])
    copytree(ROOT / "examples" / "bench", tmp_path / "bench")
    (tmp_path / "rig-root").touch()
    (tmp_path / "own").mkdir()
    own = tmp_path / "own" / "power-table.j2"
    own.write_text('{% extends "builtin/sheet.j2" %}{% block head %}ours{% endblock %}')
    board = tmp_path / "rig" / "board.rig"
    asked = ["-q", "build", str(board), "--sheet", "power-table", "--to", "md", "--templates", str(tmp_path / "own")]

    def built(*more: str) -> dict[str, bytes]:
        assert main([*asked, *more]) == 0
        return {path.name: path.read_bytes() for path in (tmp_path / "rig" / "documents").iterdir()}

    first = built()
    with monkeypatch.context() as patch:
        patch.setattr(seam, "compiled", None)
        assert built() == first
    for path, old, new in ((board, "draws 30 mA", "draws 31 mA"), (own, "ours", "yours")):
        assert old in path.read_text()
        path.write_text(path.read_text().replace(old, new))
        changed = built()
        with monkeypatch.context() as patch:
            patch.setattr("rigc.cli.made.Built.again", lambda _: None)
            assert built() == changed != first
        first = changed


@pytest.mark.usefixtures("capfd")
def test_after_an_edit_only_what_it_touches_is_made(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A folder after an edit is to the byte the one that is made with nothing kept; names are placed, and sheets filled in, only where the
    edit shows. Put back, all of it is known."""
    board = tmp_path / "board.rig"
    board.write_text(SMALL)
    made: list[str] = []
    placed, body = Ground._placed, templates._body

    def placing(ground: Ground, wanted: tuple[Wish, ...]) -> tuple[Choice | None, ...]:
        made.append("names")
        return placed(ground, wanted)

    def filling(environment: Any, fit: Fit, *more: Any) -> str:
        made.append(fit.document.sheet.name)
        return body(environment, fit, *more)

    monkeypatch.setattr("rigc.cli.made.Built.again", lambda _: None)
    monkeypatch.setattr(Ground, "_placed", placing)
    monkeypatch.setattr(templates, "_body", filling)

    def built(kept: Kept) -> tuple[bytes, set[str]]:
        monkeypatch.setattr("rigc.files.kept.kept", lambda: kept)
        made.clear()
        target = tmp_path / "documents" / "some.html"
        sheets = "deck-drawing,mass-and-balance,cable-list"
        assert main(["-q", "build", "--draft", str(board), "--sheet", sheets, "-o", str(target)]) == 1
        return target.read_bytes(), set(made)

    kept = Kept(Shelf())
    first, _ = built(kept)
    board.write_text(SMALL.replace("mass 0.3 kg", "mass 0.2 kg"))
    changed, anew = built(kept)
    assert "mass-and-balance" in anew
    assert not anew & {"names", "deck-drawing", "cable-list"}
    bare, every = built(NOTHING_KEPT)
    assert (bare == changed) and (bare != first)
    assert {"names", "deck-drawing"} <= every
    board.write_text(f"{SMALL}# a remark\n")
    assert built(kept)[1] == set()
