"""`rigc check`: findings, where they go, and the answer."""

from __future__ import annotations

import io
import json
from pathlib import Path
from types import SimpleNamespace

import pytest

from cli.conftest import Rigc

CLEAN = "0 errors, 0 warnings, 0 remarks, 0 can't-check, 0 accepted\n"


def test_a_clean_rig_is_a_yes_and_leaves_nothing(rigc: Rigc, here: Path) -> None:
    (here / "a.rig").write_text("fine\n")
    before = sorted(here.rglob("*"))
    assert rigc("check", "a.rig") == (0, "", CLEAN)
    assert sorted(here.rglob("*")) == before


def test_an_error_is_a_no(rigc: Rigc, here: Path) -> None:
    (here / "rigs").mkdir()
    (here / "rigs" / "a.rig").write_text("fine\nerror the supply is too small\n")
    assert rigc("check", "rigs/a.rig") == (
        1,
        "rigs/a.rig:2:1: error: the supply is too small [a-error]\n"
        "  2 | error the supply is too small\n"
        "    | ~~~~~~~~~~~~~~~~~~~~~~~~~~~~~\n"
        "  rule: a rule\n"
        "\n",
        "1 error, 0 warnings, 0 remarks, 0 can't-check, 0 accepted\n",
    )


@pytest.mark.parametrize(
    ("fail_on", "codes"),
    [("error", [1, 0, 0, 0]), ("warning", [1, 1, 0, 0]), ("remark", [1, 1, 1, 0]), ("cant-check", [1, 1, 1, 1])],
)
def test_the_level_that_is_a_no(rigc: Rigc, here: Path, fail_on: str, codes: list[int]) -> None:
    for word, code in zip(("error", "warning", "remark", "can't-check"), codes, strict=True):
        (here / "a.rig").write_text(f"{word} so it is\n")
        assert rigc("check", "a.rig", "--fail-on", fail_on).code == code, word


def test_an_accepted_error_is_a_yes_and_is_counted(rigc: Rigc, here: Path) -> None:
    (here / "a.rig").write_text("accepted two plugs meet\n")
    code, out, err = rigc("check", "a.rig")
    assert code == 0
    assert "a.rig:1:1: accepted error: two plugs meet" in out
    assert err.endswith("0 errors, 0 warnings, 0 remarks, 0 can't-check, 1 accepted\n")


def test_quiet_prints_only_what_makes_it_a_no(rigc: Rigc, here: Path) -> None:
    (here / "a.rig").write_text("warning small\n")
    assert rigc("-q", "check", "a.rig") == (0, "", "")
    (here / "a.rig").write_text("warning small\nerror big\n")
    code, out, err = rigc("-q", "check", "a.rig", "--findings", "short")
    assert (code, out) == (1, "a.rig:2:1: error: big [a-error]\n")
    assert err == ("1 error, 1 warning, 0 remarks, 0 can't-check, 0 accepted\n")


def test_verbose_names_the_files_that_were_read(rigc: Rigc, here: Path) -> None:
    (here / "sub").mkdir()
    (here / "sub" / "a.rig").write_text("use ../b.rig\n")
    (here / "b.rig").write_text("fine\n")
    assert rigc("-v", "check", "sub/a.rig").err == f"read sub/a.rig\nread b.rig\n{CLEAN}"


def test_several_rigs_are_all_checked(rigc: Rigc, here: Path) -> None:
    (here / "a.rig").write_text("error one\n")
    (here / "b.rig").write_text("warning two\n")
    code, out, err = rigc("check", "a.rig", "b.rig", "--findings", "short")
    assert code == 1
    assert out == "a.rig:1:1: error: one [a-error]\nb.rig:1:1: warning: two [a-warning]\n"
    assert err == ("1 error, 1 warning, 0 remarks, 0 can't-check, 0 accepted\n")


def test_without_a_path_the_only_rig_here(rigc: Rigc, here: Path) -> None:
    assert rigc("check") == (
        2,
        "",
        "rigc check: name a rig: this folder holds no .rig file (rigc check --help says more)\n",
    )
    (here / "a.rig").write_text("warning it is this\n")
    assert "a.rig:1:1: warning: it is this" in rigc("check").out
    (here / "b.rig").touch()
    assert "this folder holds 2 .rig files" in rigc("check").err


def test_findings_for_machines_go_to_standard_output(rigc: Rigc, here: Path) -> None:
    (here / "a.rig").write_text("error one\n")
    code, out, err = rigc("check", "a.rig", "--findings", "jsonl")
    assert (code, [json.loads(line)["message"] for line in out.splitlines()]) == (1, ["one"])
    assert err == "1 error, 0 warnings, 0 remarks, 0 can't-check, 0 accepted\n"


def test_findings_in_several_formats_and_files(rigc: Rigc, here: Path) -> None:
    (here / "a.rig").write_text("error one\n")
    code, out, err = rigc(
        "--color",
        "always",
        "check",
        "a.rig",
        "--findings",
        "text",
        "--findings",
        "jsonl=f.jsonl",
        "--findings",
        "short=-",
    )
    assert code == 1
    assert out.startswith("a.rig:1:1: \x1b[1;31merror\x1b[0m: one [a-error]\n")
    assert out.endswith("a.rig:1:1: error: one [a-error]\n")
    assert err == "1 error, 0 warnings, 0 remarks, 0 can't-check, 0 accepted\n"
    assert json.loads((here / "f.jsonl").read_text())["rule"] == "a-error"


def test_a_file_of_findings_that_cannot_be_written(rigc: Rigc, here: Path) -> None:
    (here / "a.rig").write_text("fine\n")
    code, _, err = rigc("check", "a.rig", "--findings", "short=a.rig/f.txt")
    assert code == 2
    assert err == "rigc: cannot write 'a.rig/f.txt': a part of its path is a file, not a folder; nothing was written\n"


@pytest.mark.parametrize(
    ("given", "said"),
    [
        ("shrt", "no format of findings 'shrt'; did you mean 'short'?"),
        ("xml", "no format of findings 'xml'; there are text, short, jsonl, sarif, github"),
        ("jsonl=", "--findings jsonl= names no file"),
    ],
)
def test_a_format_that_there_is_not(rigc: Rigc, given: str, said: str) -> None:
    assert rigc("check", "--findings", given) == (2, "", f"rigc check: {said} (rigc check --help says more)\n")


def test_the_day_is_passed_on(rigc: Rigc, here: Path) -> None:
    (here / "a.rig").write_text("day\n")
    assert "remark: it is 2027-02-01" in rigc("check", "a.rig", "--on", "2027-02-01").out
    assert "remark: it is None" in rigc("check", "a.rig").out


@pytest.mark.parametrize("day", ["tomorrow", "2026-02-30", "20260201", "2026-W01-1"])
def test_a_day_that_is_none(rigc: Rigc, day: str) -> None:
    assert rigc("check", "--on", day).err.startswith(f"rigc check: '{day}' is no date; write it as 2026-12-31")


def test_standard_input_under_a_name(rigc: Rigc, here: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (here / "sub").mkdir()
    (here / "sub" / "b.rig").touch()
    monkeypatch.setattr("sys.stdin", SimpleNamespace(buffer=io.BytesIO(b"use b.rig\r\nwarning w\r\n")))
    code, out, _ = rigc("check", "-", "--stdin-name", "sub/new.rig", "--findings", "short")
    assert (code, out.splitlines()[0]) == (0, "sub/new.rig:2:1: warning: w [a-warning]")


def test_standard_input_only_once(rigc: Rigc) -> None:
    assert "standard input can be read only once" in rigc("check", "-", "-").err


def test_the_root_lets_a_file_from_outside_in(rigc: Rigc, here: Path) -> None:
    (here / "in").mkdir()
    (here / "in" / "rig-root").touch()
    (here / "in" / "a.rig").write_text("use ../b.rig\n")
    (here / "b.rig").touch()
    code, out, _ = rigc("check", "in/a.rig")
    assert code == 1
    assert "'../b.rig' lies outside the project" in out
    assert rigc("check", "in/a.rig", "--root", ".").code == 0


@pytest.mark.parametrize(
    ("data", "line"),
    [
        (None, "a.rig: error: cannot read 'a.rig': there is no such file\n"),
        (
            b"fine\n\x89PNG",
            "a.rig:2:1: error: 'a.rig' is not saved as UTF-8: '‰' (0x89) in '‰PNG' is of an older encoding "
            "(line 2, byte 6 of the file)\n",
        ),
        (b"x" * (4 * 1024 * 1024 + 1), "a.rig: error: 'a.rig' is larger than 4 MiB, the limit for a rig file\n"),
    ],
)
def test_a_file_that_cannot_be_read_is_no_answer(rigc: Rigc, here: Path, data: bytes | None, line: str) -> None:
    if data is not None:
        (here / "a.rig").write_bytes(data)
    code, out, err = rigc("check", "a.rig")
    assert (code, out) == (2, "")
    assert err.startswith(line)


def test_an_unreadable_rig_does_not_keep_the_others_from_being_checked(rigc: Rigc, here: Path) -> None:
    (here / "b.rig").write_text("error one\n")
    code, out, err = rigc("check", "a.rig", "b.rig", "--findings", "short")
    assert code == 2
    assert "a.rig: error: cannot read 'a.rig'" in err
    assert "b.rig:1:1: error: one" in out


def test_a_folder_is_its_rigs(rigc: Rigc, here: Path) -> None:
    """Files that only serve rigs are none, hidden folders are passed over, and a head that can't be read is a rig all the same."""
    for name, text in {
        "units.rig": "error a unit\n",
        "a.rig": "rig a\nerror one\n",
        "sub/b.rig": "  RIG b\nerror two\n",
        ".old/c.rig": "rig c\nerror three\n",
    }.items():
        (here / name).parent.mkdir(exist_ok=True)
        (here / name).write_text(text)
    code, out, _ = rigc("check", ".", "a.rig", "--findings", "short")
    assert (code, out) == (1, "a.rig:2:1: error: one [a-error]\nsub/b.rig:2:1: error: two [a-error]\n")
    (here / "none").mkdir()
    assert "no file below 'none' declares a rig" in rigc("check", "none").err


def test_sarif_and_more_in_one_file(rigc: Rigc, here: Path) -> None:
    (here / "a.rig").write_text("fine\n")
    code, _, err = rigc("check", "--findings", "sarif=a", "--findings", "jsonl=a")
    assert code == 2
    assert "'a' can't hold sarif and more; name a file for each" in err
