"""`rigc show` and `rigc explain`: one table, one page."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from cli.conftest import Rigc


def test_without_a_sheet_the_list(rigc: Rigc) -> None:
    code, out, err = rigc("show")
    assert (code, err) == (0, "")
    assert [line.split()[0] for line in out.splitlines()][:2] == ["cable-list", "power-table"]


def test_a_table_in_each_format(rigc: Rigc, here: Path) -> None:
    (here / "a.rig").write_text("fine\nwarning w\n")
    code, out, err = rigc("show", "cable-list", "a.rig")
    assert code == 0
    assert out.splitlines()[-2:] == ["fine", "warning w"]
    assert err == "0 errors, 1 warning, 0 remarks, 0 can't-check, 0 accepted; `rigc check` tells them all\n"
    assert "| fine |" in rigc("show", "cable-list", "a.rig", "--to", "md").out
    assert "fine" in rigc("show", "cable-list", "a.rig", "--to", "csv").out.splitlines()[1]
    json.loads(rigc("show", "cable-list", "a.rig", "--to", "json").out)


def test_one_table_of_several(rigc: Rigc, here: Path) -> None:
    (here / "a.rig").write_text("fine\n")
    code, out, err = rigc("show", "power-table", "a.rig", "--to", "csv")
    assert (code, out) == (2, "")
    assert "name one with --table" in err
    assert rigc("show", "power-table", "a.rig", "--to", "csv", "--table", "lines").code == 0
    assert "no table 'line'; did you mean 'lines'?" in rigc("show", "power-table", "a.rig", "--table", "line").err


def test_a_rig_with_errors_is_shown_and_the_answer_is_no(rigc: Rigc, here: Path) -> None:
    (here / "a.rig").write_text("error e\n")
    code, out, _ = rigc("show", "cable-list", "a.rig")
    assert code == 1
    assert "error e" in out


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["cable-lists", "a.rig"], "no sheet 'cable-lists'; did you mean 'cable-list'?"),
        (["cable-list", "a.rig", "--findings", "jsonl"], "standard output is for the table; give --findings a file"),
    ],
)
def test_what_cannot_be_asked_for(rigc: Rigc, arguments: list[str], said: str) -> None:
    assert rigc("show", *arguments) == (2, "", f"rigc show: {said} (rigc show --help says more)\n")
