"""`rigc build`: which files appear, with what in them, and when none does."""

from __future__ import annotations

import errno
from pathlib import Path

import pytest

from cli.conftest import Rigc
from rigc.files import writing

ALL = {
    "cable-list.md": "md a4 cable-list 1/2\n",
    "cable-list.html": "html a4 cable-list 1/2\n",
    "power-table.md": "md a4 power-table 2/2\n",
    "power-table.html": "html a4 power-table 2/2\n",
}


def files(folder: Path) -> dict[str, str]:
    """Name and text of each file in a folder."""
    return {path.name: path.read_text() for path in folder.iterdir()} if folder.exists() else {}


@pytest.fixture
def rig(here: Path) -> Path:
    """The folder of a rig without faults."""
    (here / "tour").mkdir()
    (here / "tour" / "a.rig").write_text("fine\n")
    return here / "tour"


def test_the_documents_go_beside_the_rig(rigc: Rigc, rig: Path) -> None:
    code, out, err = rigc("build", "tour/a.rig", "--separate")
    assert (code, out) == (0, "")
    assert files(rig / "documents") == ALL
    assert err.splitlines() == [
        "4 files in tour/documents, 4 of them changed",
        "0 errors, 0 warnings, 0 remarks, 0 can't-check, 0 accepted",
    ]
    assert "4 files in tour/documents, 0 of them changed" in rigc("build", "tour/a.rig", "--separate").err


@pytest.mark.usefixtures("rig")
def test_sheets_formats_and_paper_are_chosen(rigc: Rigc, here: Path) -> None:
    chosen = ["--sheet", "power-table", "--to", "md", "--paper", "letter"]
    assert rigc("build", "tour/a.rig", "-o", "out", *chosen).code == 0
    assert files(here / "out") == {"power-table.md": "md letter power-table 1/1\n"}


@pytest.mark.usefixtures("rig")
def test_lists_may_be_given_at_once_or_one_by_one(rigc: Rigc, here: Path) -> None:
    rigc("build", "tour/a.rig", "-o", "one", "--sheet", "cable-list,power-table", "--to", "md,html")
    rigc(
        "build",
        "tour/a.rig",
        "-o",
        "two",
        "--sheet",
        "cable-list",
        "--sheet",
        "power-table",
        "--to",
        "md",
        "--to",
        "html",
    )
    assert files(here / "one") == files(here / "two") == ALL


def test_one_file_or_standard_output_holds_all(rigc: Rigc, here: Path, rig: Path) -> None:
    both = "html a4 cable-list 1/2\nhtml a4 power-table 2/2\n"
    assert rigc("build", "tour/a.rig", "-o", "all.html").code == 0
    assert (here / "all.html").read_text() == both
    assert rigc("build", "tour/a.rig", "-o", "-", "--to", "html").out == both
    assert rigc("build", "tour/a.rig", "-o", "-").out == both.replace("html", "md")
    assert not (rig / "documents").exists()


@pytest.mark.parametrize(
    ("forms", "written"),
    [
        ([], {"power-table.md", "power-table.html", "power-table-one.svg", "power-table-two.svg"}),
        (["--to", "md"], {"power-table.md", "power-table-one.svg", "power-table-two.svg"}),
        (["--to", "html"], {"power-table.html"}),
        (["--to", "svg"], {"power-table-one.svg", "power-table-two.svg"}),
        (["-o", "out/all.md"], {"all.md", "power-table-one.svg", "power-table-two.svg"}),
    ],
)
def test_drawings_are_files_beside_what_links_to_them(
    rigc: Rigc, here: Path, rig: Path, forms: list[str], written: set[str]
) -> None:
    (rig / "a.rig").write_text("draw one\ndraw two\n")
    target = [] if "-o" in forms else ["-o", "out/"]
    assert rigc("build", "tour/a.rig", "--sheet", "power-table", *target, *forms).code == 0
    made = files(here / "out")
    assert set(made) == written
    assert all("</svg>" in text for name, text in made.items() if name.endswith(".svg"))


def test_one_svg_file_holds_one_drawing(rigc: Rigc, here: Path, rig: Path) -> None:
    one = ("build", "tour/a.rig", "--sheet", "power-table", "-o", "one.svg")
    assert "these sheets have none" in rigc(*one).err
    (rig / "a.rig").write_text("draw one\n")
    assert rigc(*one).code == 0
    assert "<title" in (here / "one.svg").read_text()
    (rig / "a.rig").write_text("draw one\ndraw two\n")
    code, _, err = rigc(*one)
    assert code == 2
    assert "one SVG file holds one drawing; these sheets have power-table-one.svg, power-table-two.svg" in err


def test_sheets_without_drawings_make_no_svg(rigc: Rigc, rig: Path) -> None:
    code, _, err = rigc("build", "tour/a.rig", "--to", "svg")
    assert code == 0
    assert err.splitlines()[0] == "nothing was written: these sheets have no drawings"
    assert not (rig / "documents").exists()


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["--sheet", "cable-lst"], "no sheet 'cable-lst'; did you mean 'cable-list'?"),
        (["--to", "docx"], "no format 'docx'; there are md, html, svg, pdf, csv, json, xlsx, dxf"),
        (["-o", "x.md", "--to", "html"], "'x.md' ends in .md, but --to says html"),
        (["-o", "-", "--to", "md,html"], "-o - holds one format; name one with --to"),
        (["-o", "-", "--findings", "jsonl"], "standard output is for the documents; give --findings a file"),
        (["-o", "out", "tour/a.rig"], "-o is for one rig; without it each rig's documents go beside it"),
    ],
)
def test_what_cannot_be_asked_for(rigc: Rigc, rig: Path, arguments: list[str], said: str) -> None:
    assert rigc("build", "tour/a.rig", *arguments) == (2, "", f"rigc build: {said} (rigc build --help says more)\n")
    assert not (rig / "documents").exists()


def test_errors_keep_the_documents_as_they_are(rigc: Rigc, rig: Path) -> None:
    rigc("build", "tour/a.rig", "--separate")
    (rig / "a.rig").write_text("error one\n")
    code, _, err = rigc("build", "tour/a.rig", "--separate")
    assert code == 1
    assert err.splitlines()[-2:] == [
        "nothing was written; --draft writes in spite of errors",
        "1 error, 0 warnings, 0 remarks, 0 can't-check, 0 accepted",
    ]
    assert files(rig / "documents") == ALL


def test_a_warning_stops_nothing(rigc: Rigc, rig: Path) -> None:
    (rig / "a.rig").write_text("warning one\n")
    assert rigc("build", "tour/a.rig", "--separate", "--fail-on", "warning").code == 1
    assert files(rig / "documents") == ALL


def test_a_draft_is_written_in_spite_of_errors_and_the_answer_stays_no(rigc: Rigc, rig: Path) -> None:
    (rig / "a.rig").write_text("error one\n")
    assert rigc("build", "tour/a.rig", "--separate", "--draft").code == 1
    assert files(rig / "documents") == {name: text.replace("\n", " DRAFT\n") for name, text in ALL.items()}


def test_of_several_rigs_one_with_errors_stops_all(rigc: Rigc, here: Path, rig: Path) -> None:
    (here / "bad").mkdir()
    (here / "bad" / "b.rig").write_text("error one\n")
    assert rigc("build", "tour/a.rig", "--separate", "bad/b.rig").code == 1
    assert not (rig / "documents").exists()
    (here / "bad" / "b.rig").write_text("fine\n")
    assert rigc("build", "tour/a.rig", "--separate", "bad/b.rig").code == 0
    assert files(rig / "documents") == files(here / "bad" / "documents") == ALL


def test_two_rigs_of_one_folder_do_not_overwrite_each_other(rigc: Rigc, rig: Path) -> None:
    (rig / "b.rig").write_text("fine\n")
    code, _, err = rigc("build", "tour/a.rig", "--separate", "tour/b.rig")
    assert code == 2
    assert "two rigs would both write 'tour/documents/cable-list.md'" in err
    assert not (rig / "documents").exists()


@pytest.mark.usefixtures("rig")
def test_a_folder_that_cannot_be_made(rigc: Rigc) -> None:
    code, _, err = rigc("build", "tour/a.rig", "--separate", "-o", "tour/a.rig/out")
    assert code == 2
    assert err == (
        "rigc: cannot write 'tour/a.rig/out/cable-list.md': a part of its path is a file, not a folder; "
        "nothing was written\n"
    )


@pytest.mark.parametrize(
    ("fault", "said"),
    [
        (OSError(errno.ENOSPC, "No space left on device"), "no space left on device"),
        (PermissionError(errno.EACCES, "Permission denied"), "permission denied"),
        (OSError(errno.EROFS, "Read-only file system"), "read-only file system"),
    ],
)
def test_a_full_disk_or_a_locked_folder_in_the_middle(
    rigc: Rigc, rig: Path, monkeypatch: pytest.MonkeyPatch, fault: OSError, said: str
) -> None:
    rigc("build", "tour/a.rig", "--sheet", "cable-list")
    before = files(rig / "documents")
    real = writing._write

    def full(path: Path, data: bytes) -> None:
        real(path, data[:4])
        if "power-table" in path.name:
            raise fault

    monkeypatch.setattr(writing, "_write", full)
    code, _, err = rigc("build", "tour/a.rig", "--separate", "--paper", "letter")
    assert code == 2
    assert err.endswith(f"power-table.md': {said}; nothing was written\n")
    assert files(rig / "documents") == before


def test_an_interrupt_in_the_middle(rigc: Rigc, rig: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    rigc("build", "tour/a.rig", "--separate")
    real = Path.replace

    def interrupted(path: Path, target: Path) -> Path:
        if path.suffix == ".new" and target.name == "power-table.md":
            raise KeyboardInterrupt
        return real(path, target)

    monkeypatch.setattr(Path, "replace", interrupted)
    code, _, err = rigc("build", "tour/a.rig", "--separate", "--paper", "letter")
    assert (code, err) == (130, "rigc: interrupted; no file is left half-written\n")
    assert files(rig / "documents") == ALL


def test_the_folder_is_one_file_unless_its_sheets_are_asked_for(rigc: Rigc, rig: Path) -> None:
    """Sheets that are named get files of their own beside it."""
    assert rigc("build", "tour/a.rig").code == 0
    whole = "html a4 cable-list 1/2\nhtml a4 power-table 2/2\n"
    assert files(rig / "documents") == {"folder.html": whole}
    assert rigc("build", "tour/a.rig", "--to", "md").code == 0
    assert files(rig / "documents") == {"folder.html": whole, "folder.md": whole.replace("html", "md")}
    assert rigc("build", "tour/a.rig", "--sheet", "cable-list", "--to", "md").code == 0
    assert set(files(rig / "documents")) == {"folder.html", "folder.md", "cable-list.md"}
