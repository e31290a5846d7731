"""The editing commands as they are called: what they write, print and answer."""

from __future__ import annotations

from pathlib import Path

import pytest
from small_rigs import HEAD

from edit.conftest import Command

UNTIDY = "language   1\n"
BROKEN = "unit x {\n  body 3 potatoes\n  }\nnonsense\n"
RIG = (
    HEAD
    + """\
instrument guitar {
}
unit tern {
  input in ts
  output out ts
  passive
}
amp combo {
  input in ts
}
chain guitar -> tern -> combo
leads {
  # mine
}
"""
)
SOUND = HEAD + "instrument guitar {\n}\namp combo {\n  input in ts\n}\nchain guitar -> combo\n"
PINNED = RIG.replace("  # mine\n", "  # mine\n  A1 guitar.out -> tern.in\n  A2 tern.out -> combo.in\n")


def test_fmt_writes(run: Command) -> None:
    Path("a.rig").write_text(UNTIDY)
    assert run("fmt") == (0, "", "wrote a.rig\n")
    assert Path("a.rig").read_text() == "language 1\n"
    assert run("fmt") == (0, "", "")


def test_fmt_check_and_diff_write_nothing(run: Command) -> None:
    Path("sub").mkdir()
    Path("sub/a.rig").write_text(UNTIDY)
    Path(".hidden").mkdir()
    Path(".hidden/a.rig").write_text(UNTIDY)
    assert run("fmt", "--check", ".") == (1, "", "not canonical: sub/a.rig\n")
    diff = "--- a/sub/a.rig\n+++ b/sub/a.rig\n@@ -1 +1 @@\n-language   1\n+language 1\n"
    assert run("fmt", "--diff", ".") == (0, diff, "")
    assert run("fmt", "--diff", "--check", ".") == (1, diff, "not canonical: sub/a.rig\n")
    assert Path("sub/a.rig").read_text() == UNTIDY


def test_fmt_leaves_a_file_with_mistakes_alone(run: Command) -> None:
    Path("a.rig").write_text(UNTIDY)
    Path("b.rig").write_text(BROKEN)
    code, out, err = run("fmt", "b.rig", "a.rig")
    assert (code, out) == (2, "")
    assert "b.rig:4:1: error:" in err
    assert (Path("b.rig").read_text(), Path("a.rig").read_text()) == (BROKEN, "language 1\n")
    assert run("fmt", "c.rig").code == 2


def test_fmt_of_standard_input(run: Command, monkeypatch: pytest.MonkeyPatch) -> None:
    feed(monkeypatch, UNTIDY)
    assert run("fmt", "-") == (0, "language 1\n", "")
    feed(monkeypatch, UNTIDY)
    assert run("fmt", "--check", "-") == (1, "", "not canonical: standard input\n")
    feed(monkeypatch, BROKEN)
    code, out, err = run("fmt", "-", "--stdin-name", "x/y.rig")
    assert (code, out) == (2, "")
    assert err.startswith("x/y.rig:")


def test_pin(run: Command, monkeypatch: pytest.MonkeyPatch) -> None:
    Path("a.rig").write_text(RIG)
    code, out, _ = run("pin", "a.rig", "--diff")
    assert "+  A1 guitar.out -> tern.in\n+  A2 tern.out -> combo.in\n" in out
    assert Path("a.rig").read_text() == RIG
    assert run("pin", "a.rig").err.startswith("") and Path("a.rig").read_text() == PINNED
    assert "nothing was left to pin\n" in run("pin", "a.rig").err
    feed(monkeypatch, RIG)
    assert run("pin", "-").out == PINNED
    assert code == run("check", "a.rig").code


def test_pin_refuses(run: Command) -> None:
    Path("a.rig").write_text(RIG.replace("chain guitar", "chain gitar"))
    code, out, err = run("pin", "a.rig")
    assert (code, out) == (2, "")
    assert "nothing is chosen while names or quantities are wrong\n" in err
    assert run("pin", "a.rig", "--only", "lead").err.startswith("rigc pin: no kind 'lead'; did you mean 'leads'?")


def test_rename_in_all_files(run: Command) -> None:
    """The named file and what it uses change together, and back."""
    Path("bench").mkdir()
    Path("bench/units.rig").write_text("unit tern {\n  input in ts\n  output out ts\n}\n")
    main = HEAD + 'use "bench/units.rig"\nunit fen like tern {\n}\n'
    Path("a.rig").write_text(main)
    assert run("rename", "tern", "gull", "a.rig") == (
        0,
        "",
        "wrote a.rig\nwrote bench/units.rig\nother rigs that use bench/units.rig may still say 'tern'\n",
    )
    assert "unit gull {\n  was tern\n" in Path("bench/units.rig").read_text()
    assert "unit fen like gull" in Path("a.rig").read_text()
    assert run("rename", "gull", "tern", "a.rig").code == 0
    assert (Path("a.rig").read_text(), "was" in Path("bench/units.rig").read_text()) == (main, False)


def test_rename_refuses(run: Command) -> None:
    Path("a.rig").write_text(RIG)
    taken, reserved = run("rename", "tern", "combo", "a.rig"), run("rename", "tern", "others", "a.rig")
    assert (taken.code, reserved.code) == (1, 1)
    assert "[name-taken]" in taken.err and "[reserved-name]" in reserved.err
    assert run("rename", "tern", "Gull", "a.rig").code == 2
    assert run("rename", "tern", "tern", "a.rig").code == 2
    assert Path("a.rig").read_text() == RIG
    Path("a.rig").write_text(RIG + "unit x like y {\n}\n")
    wrong = run("rename", "tern", "gull", "a.rig")
    assert wrong.code == 2 and "could be like" in wrong.err


def test_fresh(run: Command) -> None:
    Path("shop").mkdir()
    Path("shop/a.rig").write_text(SOUND)
    assert run("fresh") == (0, "", "")  # no folder of documents, nothing to be stale
    assert run("build", "shop/a.rig", "--to", "md", "--separate").code == 0
    made = sorted(Path("shop/documents").glob("*.md"))
    assert run("fresh", ".") == (0, "", "")
    with Path("shop/a.rig").open("a") as file:
        file.write("# another comment: the hash of the sources is another\n")
    made[1].unlink()
    Path("shop/documents/old.md").write_text("old\n")
    code, out, err = run("fresh", ".")
    assert code == 1
    assert "left over shop/documents/old.md\n" in out
    assert f"missing {made[1].as_posix()}\n" in out
    assert f"stale {made[0].as_posix()}\n" in out
    assert err.endswith("documents are not fresh; rigc build writes them anew\n")
    assert f"--- a/{made[0].as_posix()}\n" in run("fresh", "--diff").out


def test_fresh_of_a_rig_with_errors(run: Command) -> None:
    Path("documents").mkdir()
    Path("a.rig").write_text(RIG.replace("chain guitar", "chain gitar"))
    code, out, err = run("fresh")
    assert (code, out) == (2, "")
    assert err.endswith("1 rig gives no documents because of its errors\n")


def feed(monkeypatch: pytest.MonkeyPatch, text: str) -> None:
    """Put a text on standard input."""
    import io
    from types import SimpleNamespace

    monkeypatch.setattr("sys.stdin", SimpleNamespace(buffer=io.BytesIO(text.encode())))


def test_a_folder_in_one_file_is_fresh_or_not(run: Command) -> None:
    Path("shop").mkdir()
    Path("shop/a.rig").write_text(SOUND)
    assert run("build", "shop/a.rig").code == 0
    assert [path.name for path in Path("shop/documents").iterdir()] == ["folder.html"]
    assert run("fresh", ".") == (0, "", "")
    Path("shop/documents/folder.html").write_text("old\n")
    assert "stale shop/documents/folder.html\n" in run("fresh", ".").out
