"""`rigc show stock`: what ships, and what a rig has."""

from __future__ import annotations

import csv
import io
import json
from pathlib import Path

import pytest

from rigc.cli import main
from rigc.cli.commands.show import shipped
from rigc.loader import STOCK_FILES
from rigc.resources import folder


def test_the_files_of_the_stock_are_those_that_ship() -> None:
    assert tuple(sorted(path.stem for path in folder("stock").glob("*.rig"))) == STOCK_FILES
    text = shipped()("stock.rig").text
    assert all(f'use "stock/{name}.rig"' in text for name in STOCK_FILES)


def test_all_that_ships_is_listed(capfd: pytest.CaptureFixture[str]) -> None:
    assert main(["show", "stock"]) == 0
    out = capfd.readouterr().out
    for caption, name in (
        ("Cables", "stage-coax"),
        ("Plug kinds", "flat-angle"),
        ("Strips", "mushroom"),
        ("Decks", "rails-60"),
        ("Premade leads", "audio"),
    ):
        assert f"\n{name} " in out.partition(f"{caption}\n")[2]


def test_one_table_as_csv_and_all_as_json(capfd: pytest.CaptureFixture[str]) -> None:
    assert main(["show", "stock", "--table", "strips", "--to", "csv"]) == 0
    rows = list(csv.DictReader(io.StringIO(capfd.readouterr().out)))
    assert [row["name"] for row in rows] == ["hook", "mushroom", "rail-tape"]
    assert {row["file"] for row in rows} == {"stock/strips.rig"}
    assert main(["show", "stock", "--to", "json"]) == 0
    json.loads(capfd.readouterr().out)


def test_what_a_rig_has(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capfd: pytest.CaptureFixture[str]) -> None:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "board.rig").write_text(
        'language 1\nuse "stock/strips.rig"\nrig toy "Toy" {\n  revision A 2026-03-02\n}\n'
        'strip velvet "velvet" {\n  wide 30 mm\n}\n'
    )
    assert main(["show", "stock", "board.rig", "--table", "strips", "--to", "csv"]) == 0
    rows = list(csv.DictReader(io.StringIO(capfd.readouterr().out)))
    assert [(row["name"], row["file"]) for row in rows][-1] == ("velvet", "board.rig")
