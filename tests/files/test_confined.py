"""Templates of unknown hands: each is stopped within its limits, and told with its file, its line and one thing to do."""

from __future__ import annotations

import os
import pickle
import sys
import time
from collections.abc import Callable
from pathlib import Path

import pytest

from rigc.files.confined import Confined, Limits
from rigc.files.template_folder import read_templates
from rigc.output.template_mistake import TemplateMistake
from rigc.output.templates import Whole
from rigc.reports.content import Cell, Column, Document, Row, Sheet, Table, TitleBlock

LEADS = Table("leads", "Leads", (Column("id"),), (Row((Cell("A01"),)),))
SHEET = Sheet("cable-list", "Cable list", "bench", (LEADS,))
TITLE = TitleBlock("Two Step", "two-step", "", "Cable list", "A", "2026-03-02", "R.K.", "", "0123456789")
DOCUMENT = Document(SHEET, TITLE, 1, 1)
WHOLE = Whole((SHEET,), {"figures": [{"name": "A01.cut", "text": "114 mm"}]})
QUICK = Limits(seconds=2.0, memory_mb=256, patience=2.0)

POSIX = pytest.mark.skipif(os.name != "posix", reason="this system has no such limits")


def rendered(folder: Path, *, form: str = "md", limits: Limits = QUICK, **files: str) -> str:
    for name, text in files.items():
        (folder / f"{name.replace('_', '-')}.j2").write_text(text, encoding="utf-8")
    with Confined(read_templates(folder), limits) as confined:
        return confined.render(form, (DOCUMENT,), "a4", WHOLE)


def mistake(folder: Path, text: str) -> TemplateMistake:
    with pytest.raises(TemplateMistake) as caught:
        rendered(folder, cable_list=f"first line\n{text}")
    return caught.value


def test_a_page_comes_back_as_text(tmp_path: Path) -> None:
    assert rendered(tmp_path, cable_list="{{ sheet.title }} {{ format }}") == "Cable list markdown\n"
    assert rendered(tmp_path, form="html", cable_list="{{ '<' ~ title.rig }}").count("&lt;Two Step") == 1


def test_a_template_is_given_the_other_sheets_and_the_model(tmp_path: Path) -> None:
    text = '{{ put.block(sheets["cable-list"].block("leads")) }}{{ model.figures[0].text }}'
    assert "| A01 |" in rendered(tmp_path, cable_list=text)
    assert rendered(tmp_path, cable_list=text).endswith("114 mm\n")


LOOP = "{% for a in range(99999) %}{% for b in range(99999) %}{% endfor %}{% endfor %}"


@POSIX
@pytest.mark.parametrize(
    ("text", "message"),
    [
        (LOOP, "the template takes longer than any page does"),
        ("{% for a in range(99999) %}{{ 'x' * 100000 }}{% endfor %}", "the template writes more than 32 MB"),
        ("{{ 'x' * 1000000000 }}", "the template needs more memory than any page does"),
        ("{% set n = namespace(a='x') %}{% for i in range(99) %}{% set n.a = n.a ~ n.a %}{% endfor %}", "more memory"),
        ("{{ '%0999999999d' % 1 }}", "the template needs more memory than any page does"),
        ("{% macro m() %}{{ m() }}{% endmacro %}{{ m() }}", "the template calls itself without end"),
    ],
    ids=["loops", "writes-9-GB", "holds-1-GB", "doubles", "pads", "calls-itself"],
)
def test_what_never_ends_is_stopped_at_its_line(tmp_path: Path, text: str, message: str) -> None:
    began = time.monotonic()
    found = mistake(tmp_path, text)
    assert (Path(found.file).name, found.line, found.over_limit) == ("cable-list.j2", 2, True)
    assert message in found.message
    assert found.finding().kind.name == "template-over-limit"
    assert found.help.startswith("take out the loop")
    assert time.monotonic() - began < 60  # it ends; how soon is not judged by this machine's clock


@pytest.mark.parametrize(
    ("text", "message", "help"),
    [
        ("{% include '/etc/passwd' %}", "no template '/etc/passwd'", "take one of cable-list.j2"),
        ("{% include '../../secret.j2' %}", "no template '../../secret.j2'", "take one of"),
        ("{{ ''.__class__.__mro__ }}", "access to attribute '__class__' of 'str' object is unsafe.", "take this out"),
        ("{{ cycler.__init__.__globals__ }}", "is unsafe", "take this out"),
        ("{{ 9 ** 99999999 }}", "a power above 64 is not allowed", "take this out"),
        ("{{ 1 / 0 }}", "division by zero", "correct this line"),
        ("{{ sheet.titel }}", "a sheet has no 'titel'", "write 'title'"),
        ("{{ put.tabel() }}", "'put' has no macro 'tabel'", "correct this line"),
        ("{% include 'cable-lst.j2' %}", "no template 'cable-lst.j2'", "write 'cable-list.j2'"),
        ("{% if %}", "Expected an expression", "correct the form of this line"),
    ],
)
def test_what_reaches_out_or_raises_is_told_at_its_line(tmp_path: Path, text: str, message: str, help: str) -> None:
    found = mistake(tmp_path, text)
    assert (Path(found.file).name, found.line, found.over_limit) == ("cable-list.j2", 2, False)
    assert message in found.message
    assert found.help.startswith(help)
    finding = found.finding()
    assert finding.kind.name == "broken-template"
    assert finding.span is not None
    assert (finding.span.line, finding.span.text) == (2, text)


@POSIX
@pytest.mark.parametrize("mode", ["r", "w"])
def test_the_process_can_open_nothing_though_the_sandbox_were_broken(tmp_path: Path, mode: str) -> None:
    """The second wall alone: code that runs in the process itself is refused a file, for reading and for writing."""
    path = tmp_path / "secret"
    path.write_text("secret")
    with Confined(read_templates(tmp_path), QUICK) as confined:
        confined.render("md", (DOCUMENT,), "a4", WHOLE)
        confined._ask("take", _Calls(len, "what does no harm is done"))
        with pytest.raises(TemplateMistake):  # it ends, for `open` fails there
            confined._ask("take", _Calls(open, str(path), mode))
    assert path.read_text() == "secret"


class _Calls:
    """Calls a function when it is read on the other side, as only rigc itself could ask it to."""

    def __init__(self, function: Callable[..., object], *arguments: object) -> None:
        self.call = function, arguments

    def __reduce__(self) -> tuple[object, ...]:
        return self.call


def test_a_process_that_ends_without_a_word_is_a_mistake_of_the_template(tmp_path: Path) -> None:
    (tmp_path / "cable-list.j2").write_text("text")
    with Confined(read_templates(tmp_path), QUICK) as confined:
        confined.render("md", (DOCUMENT,), "a4", WHOLE)
        assert confined._process is not None
        confined._process.kill()
        with pytest.raises(TemplateMistake) as caught:
            confined.render("md", (DOCUMENT,), "a4", WHOLE)
        assert (Path(caught.value.file).name, caught.value.over_limit) == ("cable-list.j2", True)
        assert confined.render("md", (DOCUMENT,), "a4", WHOLE) == "text\n"  # a new one takes its place


def test_no_process_is_left_behind(tmp_path: Path) -> None:
    with Confined(read_templates(tmp_path), QUICK) as confined:
        confined.render("md", (DOCUMENT,), "a4", WHOLE)
        process = confined._process
    assert process is not None
    assert process.poll() is not None


def test_nothing_of_the_environment_is_handed_over(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("PYTHONSTARTUP", "/nowhere")
    monkeypatch.setenv("A_SECRET", "x")
    with Confined(read_templates(tmp_path), QUICK) as confined:
        confined.render("md", (DOCUMENT,), "a4", WHOLE)
        process = confined._process
        assert process is not None
        if sys.platform == "linux":
            assert b"A_SECRET" not in Path(f"/proc/{process.pid}/environ").read_bytes()


def test_added_sheets_say_what_they_are(tmp_path: Path) -> None:
    (tmp_path / "title-page.j2").write_text('{% set sheet_title = "Brass Lamp" %}{% set sheet_first = true %}')
    (tmp_path / "packing-note.j2").write_text("text")
    (tmp_path / "_address.j2").write_text("text")
    (tmp_path / "sheet.css").write_text("")
    with Confined(read_templates(tmp_path), QUICK) as confined:
        packing, first = confined.added(("cable-list",))
    assert (packing.name, packing.title, packing.first) == ("packing-note", "Packing note", False)
    assert (first.name, first.title, first.first) == ("title-page", "Brass Lamp", True)


def test_a_file_that_was_surely_meant_for_a_sheet_of_ours_is_told(tmp_path: Path) -> None:
    (tmp_path / "cable_list.j2").write_text("text")
    with Confined(read_templates(tmp_path), QUICK) as confined, pytest.raises(TemplateMistake) as caught:
        confined.added(("cable-list",))
    assert caught.value.help.startswith("rename the file to cable-list.j2")


def test_a_slip_of_form_is_told_though_no_sheet_takes_the_file_in(tmp_path: Path) -> None:
    (tmp_path / "_address.j2").write_text("one\n{% for %}")
    with Confined(read_templates(tmp_path), QUICK) as confined, pytest.raises(TemplateMistake) as caught:
        confined.added(("cable-list",))
    assert (Path(caught.value.file).name, caught.value.line) == ("_address.j2", 2)


@pytest.mark.parametrize(("data", "line"), [(b"caf\xe9", 1), (b"one\ntwo \xff", 2)])
def test_a_file_that_is_no_text_is_told(tmp_path: Path, data: bytes, line: int) -> None:
    (tmp_path / "cable-list.j2").write_bytes(data)
    with pytest.raises(TemplateMistake) as caught:
        read_templates(tmp_path)
    assert (caught.value.line, caught.value.message) == (line, "the file is not UTF-8 text")


@POSIX
def test_a_link_out_of_the_folder_is_not_followed(tmp_path: Path) -> None:
    (tmp_path / "own").mkdir()
    (tmp_path / "secret").write_text("secret")
    (tmp_path / "own" / "cable-list.j2").symlink_to(tmp_path / "secret")
    with pytest.raises(TemplateMistake, match="this link leads out of the folder"):
        read_templates(tmp_path / "own")


@POSIX
def test_a_pipe_in_the_folder_does_not_hold_the_build_up(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "cable-list.j2")
    with pytest.raises(TemplateMistake, match="this is no file"):
        read_templates(tmp_path)


def test_a_style_that_goes_on_as_the_page_is_told(tmp_path: Path) -> None:
    (tmp_path / "sheet.css").write_text("body { color: black }\n</STYLE><script>alert(1)</script>\n")
    with pytest.raises(TemplateMistake) as caught:
        read_templates(tmp_path)
    assert (caught.value.line, caught.value.message) == (2, "the style ends itself here")


def test_templates_that_are_too_large_are_told(tmp_path: Path) -> None:
    (tmp_path / "cable-list.j2").write_text("x" * (5 * 1024 * 1024))
    with pytest.raises(TemplateMistake, match="larger than 4 MB"):
        read_templates(tmp_path)


def test_what_is_given_can_be_sent() -> None:
    assert pickle.loads(pickle.dumps(DOCUMENT)) == DOCUMENT
