"""`rigc diff` of two files: its formats, its answers, and what it does with sides that do not compile."""

from __future__ import annotations

import json
import re
import subprocess
import sys
from pathlib import Path
from typing import Any, NamedTuple

import pytest

from rigc.analysis.revision.compared.aspect import WORK as ALL_WORK
from rigc.cli import main
from rigc.cli.commands.diff import WORK
from rigc.reports.revision.changes.words import KINDS, MEANING

ROOT = Path(__file__).parent.parent.parent
TOURING = str(ROOT / "examples" / "long-haul" / "board.rig")
TOURING_D = str(ROOT / "examples" / "long-haul-d" / "board.rig")
SMALL = """language 1
rig small "Small <&> Co" {
  revision A 2026-03-02
}
unit marl "a | b" {
  input in ts
  output out ts
  mass 400 g
}
unit tern like marl {
}
chain marl -> tern
"""


class Run(NamedTuple):
    """What a command gave."""

    code: int
    out: str
    err: str


@pytest.fixture
def diff(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capfdbinary: pytest.CaptureFixture[bytes]) -> Any:
    """Run `rigc diff` in a folder of its own, on two texts or on files."""
    monkeypatch.chdir(tmp_path)

    def run(*arguments: str, old: str = "", new: str = "") -> Run:
        if old:
            Path("old.rig").write_text(old, "utf-8")
            Path("new.rig").write_text(new, "utf-8")
            arguments = ("old.rig", "new.rig", *arguments)
        code = main(["diff", *arguments])
        out, err = capfdbinary.readouterr()
        return Run(code, out.decode(), err.decode())

    return run


def test_a_successor_that_its_block_names_is_no_guess(diff: Any) -> None:
    new = SMALL.replace("revision A", "revision B").replace("tern like marl {", "fen like marl {\n  stands in for tern")
    told = diff(old=SMALL, new=new.replace("-> tern", "-> fen")).out
    assert "fen stands in for tern, as its block says." in told
    assert "a guess" not in told


def test_the_work_stands_first(diff: Any) -> None:
    """Leads A14, A15, D07, D08 and D16 and the adaptor Y1; the feeds of two units; one unit and its place."""
    found = diff(TOURING, TOURING_D)
    assert (found.code, found.err) == (0, "")
    rows = [
        re.split(r"  +", line) for line in found.out.split("What has to be done\n")[1].split("\n\n")[0].splitlines()[2:]
    ]
    assert [(row[0], row[1], row[3]) for row in rows] == [
        ("rewire", "6", "A14, A15, D07, D08, D16, Y1"),
        ("repower", "2", "stepladder-ii, echomill"),
        ("redrill", "1", "stepladder-ii"),
        ("relabel", "6", "A14, A15, D07, D08, D16, Y1"),
        ("paper", "5", "loop 7 of signalbox, board, supply mill8, supply weir8, every page"),
    ]
    assert (
        "stepladder-ii stands in for stepladder: a guess, since both are in loop 7 of signalbox and in one place."
        in found.out
    )
    assert "A14 stepladder.in / far signalbox.s7   A14 stepladder-ii.in / far signalbox.s7" in found.out
    assert "comes    warning  no-spare-outlet" in found.out


def test_nothing_differs(diff: Any) -> None:
    found = diff("--fail-on", "paper", "--exit-code", old=SMALL, new=SMALL.replace("400 g", "0.4 kg  # weighed"))
    assert (found.code, found.err) == (0, "")
    assert found.out.endswith("Nothing differs.\n")


def test_one_line_a_thing(diff: Any) -> None:
    found = diff("--brief", old=SMALL, new=SMALL.replace("400 g", "410 g").replace("small", "large"))
    lines = found.out.split("What differs\n")[1].splitlines()[2:5]
    assert [line.split("  ")[0] for line in lines] == ["unit marl", "unit tern", "every page"]


def test_what_is_held_back_is_told_when_all_is(diff: Any) -> None:
    assert "2 figures ask for no work" in diff(TOURING, TOURING_D).out
    whole = diff(TOURING, TOURING_D, "--all").out
    assert "3 figures" not in whole
    assert "lead A14  length  830 mm  780 mm  the lead that is there, 830 mm, still does: 736 to 926.6 mm" in whole
    assert "outlet mill8.a7  feeds          echomill" in whole


@pytest.mark.parametrize(
    ("work", "code"), [("rewire", 0), ("repower", 0), ("redrill", 1), ("relabel", 1), ("paper", 1)]
)
def test_work_that_is_too_much(diff: Any, work: str, code: int) -> None:
    """A hole more is redrilling: asked about that or less it is a no, asked about more it is a yes."""
    deck = "deck plate {\n  size 400 x 300 mm\n}\n"
    found = diff("--fail-on", work, old=SMALL + deck, new=SMALL + deck.replace("}", "  hole 12 mm at 30, 40 mm\n}"))
    assert found.code == code, found.out
    assert found.err == (f"rigc diff: --fail-on {work}: 1 to redrill\n" if code else "")
    assert "hole plate at 30, 40 mm  new   –       12 mm" in found.out


def test_any_difference_as_an_exit_code(diff: Any) -> None:
    found = diff("--exit-code", old=SMALL, new=SMALL.replace("400 g", "410 g"))
    assert (found.code, found.err) == (1, "rigc diff: the two sides differ\n")


def test_markdown_and_html(diff: Any) -> None:
    new = SMALL.replace("400 g", "410 g").replace("a | b", "a | <script>")
    markdown = diff("--to", "md", old=SMALL, new=new).out
    assert r"| unit marl | title | a \| b | a \| &lt;script> |" in markdown
    html = diff("--to", "html", old=SMALL, new=new).out
    assert html.startswith("<!DOCTYPE html>") and "<script>" not in html and "a | &lt;script&gt;" in html


def test_json_has_a_stable_shape(diff: Any) -> None:
    made = json.loads(diff("--to", "json", old=SMALL, new=SMALL.replace("400 g", "410 g")).out)
    assert list(made) == ["format", "old", "new", "work", "things", "stated", "findings", "held_back", "cut"]
    assert made["format"] == 1
    assert made["new"] == {
        "file": "new.rig", "rig": "small", "title": "Small <&> Co", "revision": "A", "date": "2026-03-02", "text": "",
    }  # fmt: skip
    assert made["work"] == {"rewire": [], "repower": [], "redrill": [], "relabel": [], "paper": ["marl", "tern"]}
    assert made["things"][0] == {
        "kind": "unit", "name": "marl", "was": None, "how": "changed", "guess": None, "work": ["paper"],
        "causes": ["facts"], "stated": [],
        "fields": [
            {
                "field": "mass", "before": "400 g", "now": "410 g", "exact_before": 0.4, "exact_now": 0.41,
                "work": ["paper"], "causes": ["facts"], "origin": "facts", "held_back": None, "detail": False,
                "source": "new.rig:8:8",
            }
        ],
    }  # fmt: skip
    assert made["findings"] == {"came": [], "went": [], "changed": []} and made["cut"] == 0


@pytest.mark.parametrize("form", ["text", "md", "json"])
def test_a_limit_is_kept_and_what_is_cut_is_counted(diff: Any, form: str) -> None:
    whole = diff(TOURING, TOURING_D, "--to", form).out
    limit = len(whole.encode()) * 2 // 3
    short = diff(TOURING, TOURING_D, "--to", form, "--limit", str(limit)).out
    assert len(short.encode()) <= limit
    if form == "json":
        made = json.loads(short)
        assert made["cut"] == len(json.loads(whole)["things"]) - len(made["things"]) > 0
        assert made["work"] == json.loads(whole)["work"]
    else:
        cut = re.search(r"Cut off here: (\d+) of 15 things", short)
        assert cut is not None and 0 < int(cut[1]) < 15
        assert "A14, A15, D07, D08, D16, Y1" in short
    assert diff(TOURING, TOURING_D, "--to", form, "--limit", str(len(whole.encode()))).out == whole


def test_a_limit_that_holds_nothing(diff: Any) -> None:
    found = diff(TOURING, TOURING_D, "--limit", "50")
    assert found.code == 2 and not found.out
    assert re.fullmatch(
        r"rigc diff: --limit 50 is too small: what has to be done takes \d+ bytes as text \(.*\)\n", found.err
    )


def test_a_side_that_does_not_compile(diff: Any) -> None:
    for old, new, bad in (
        (SMALL, SMALL.replace("-> tern", "-> torn"), "new.rig"),
        (SMALL.replace("400 g", "400 V"), SMALL, "old.rig"),
    ):
        found = diff(old=old, new=new)
        assert found.code == 2 and not found.out
        assert found.err.startswith(f"{bad}:")
        assert found.err.endswith(
            f"rigc diff: '{bad}' has errors in its names or quantities, so nothing was compared\n"
        )


def test_where_neither_side_compiles_both_are_told(diff: Any) -> None:
    found = diff(old=SMALL.replace("400 g", "400 V"), new=SMALL.replace("-> tern", "-> torn"))
    assert found.code == 2 and not found.out
    assert "old.rig:" in found.err and "new.rig:" in found.err


def test_a_file_that_is_not_there(diff: Any) -> None:
    Path("new.rig").write_text(SMALL, "utf-8")
    found = diff("newer.rig", "new.rig")
    assert found.code == 2 and not found.out
    assert found.err == (
        "newer.rig: error: cannot read 'newer.rig': there is no such file\n  do: did you mean 'new.rig'?\n"
        "rigc diff: 'newer.rig' can't be read, so nothing was compared\n"
    )


def test_every_kind_and_every_work_has_its_words() -> None:
    assert ALL_WORK == WORK == tuple(MEANING)
    modules = sorted((ROOT / "rigc" / "analysis" / "revision" / "compared" / "aspects").glob("*.py"))
    text = "".join(path.read_text("utf-8") for path in modules)
    kinds = set(re.findall(r'(?:Aspect|fact_aspects|jack_aspects|_item)\(\s*"([^"]+)"', text))
    assert {"unit", "lead", "rig"} <= kinds <= set(KINDS)


@pytest.mark.skipif(sys.platform == "win32", reason="needs a pipe")
def test_what_a_reader_reads_twice_is_the_same() -> None:
    """Hashes of strings differ from process to process; the text does not."""
    command = [sys.executable, "-m", "rigc", "diff", TOURING, TOURING_D, "--all"]
    told = {subprocess.run(command, capture_output=True, check=True, cwd=ROOT).stdout for _ in range(2)}
    assert len(told) == 1
