"""`rigc build --to`: the formats that are written on request, with the true compiler on an example."""

from __future__ import annotations

import csv
import json
import sys
from pathlib import Path

import pytest
from cases import ROOT

from cli.conftest import Rigc

HOME = (ROOT / "examples/back-bedroom/board.rig").as_posix()


def files(folder: str) -> list[str]:
    return sorted(path.name for path in Path(folder).iterdir())


def test_csv_has_a_file_for_each_table(real: Rigc) -> None:
    assert real("build", HOME, "--to", "csv", "--sheet", "cable-list", "-o", "out").code == 0
    assert "cable-list-leads.csv" in files("out")
    assert {Path(name).suffix for name in files("out")} == {".csv"}
    with Path("out/cable-list-leads.csv").open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    assert rows[0]["id"] == "A2"


def test_a_label_printer_gets_a_row_for_each_label(real: Rigc) -> None:
    """A2 goes from the tuner to the overdrive: a marker at each end, its number, the jack here, and the far one."""
    assert real("build", HOME, "--to", "csv", "--sheet", "label-sheet", "-o", "out").code == 0
    with Path("out/label-sheet-printer.csv").open(encoding="utf-8", newline="") as file:
        rows = [(row["id"], row["line_1"], row["line_2"]) for row in csv.DictReader(file)]
    assert [row for row in rows if row[0] == "A2"] == [
        ("A2", "plumb.out", "far hedge.in"),
        ("A2", "hedge.in", "far plumb.out"),
    ]


def test_json_has_a_file_for_each_sheet(real: Rigc) -> None:
    assert real("build", HOME, "--to", "json", "--sheet", "cable-list", "-o", "out").code == 0
    assert files("out") == ["cable-list.json"]
    assert "leads" in json.loads(Path("out/cable-list.json").read_text("utf-8"))["tables"]


def test_dxf_has_a_file_for_each_deck(real: Rigc) -> None:
    assert real("build", HOME, "--to", "dxf", "-o", "out").code == 0
    assert files("out") == ["deck-drawing-board.dxf"]
    assert real("build", HOME, "--to", "dxf", "-o", "plan.dxf").code == 0
    assert Path("plan.dxf").read_bytes() == Path("out/deck-drawing-board.dxf").read_bytes()


def test_pdf_is_one_file_for_a_sheet_or_for_several(real: Rigc) -> None:
    chosen = ("--sheet", "cable-list,power-table")
    assert real("build", HOME, "--to", "pdf", *chosen, "-o", "out").code == 0
    assert files("out") == ["cable-list.pdf", "power-table.pdf"]
    assert real("build", HOME, *chosen, "-o", "folder.pdf").code == 0
    assert Path("folder.pdf").read_bytes().startswith(b"%PDF-")
    assert real("build", HOME, *chosen, "--to", "pdf", "-o", "-").out.startswith("%PDF-")


def test_without_a_format_nothing_of_these_is_written(real: Rigc) -> None:
    assert real("build", HOME, "--sheet", "cable-list", "-o", "out").code == 0
    assert {Path(name).suffix for name in files("out")} == {".html", ".md"}


@pytest.mark.parametrize(
    ("form", "part"), [("csv", "table"), ("json", "sheet with tables"), ("xlsx", "sheet with tables")]
)
def test_one_file_holds_one_part(form: str, part: str, real: Rigc) -> None:
    run = real("build", HOME, "--sheet", "cable-list,power-table", "-o", f"out.{form}")
    assert run.code == 2
    assert f"one {form.upper()} file holds one {part}; these sheets have " in run.err


@pytest.mark.parametrize(
    ("form", "package", "extra"),
    [("pdf", "weasyprint", "pdf"), ("dxf", "ezdxf", "dxf"), ("xlsx", "openpyxl", "tables")],
)
def test_a_missing_package_is_a_finding(
    form: str, package: str, extra: str, real: Rigc, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setitem(sys.modules, package, None)
    run = real("build", HOME, "--to", form, "-o", "out")
    assert run.code == 1
    assert f"the package {package}, which is not installed [missing-extra]\n" in run.err
    assert f"  do: pip install 'rigc[{extra}]'\n" in run.err
    assert not Path("out").exists()
