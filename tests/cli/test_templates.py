"""`rigc templates` and `--templates`: run with the true compiler on an example."""

from __future__ import annotations

import json
from pathlib import Path

from cases import ROOT

from cli.conftest import Rigc

HOME = (ROOT / "examples/back-bedroom/board.rig").as_posix()


def own(**files: str) -> None:
    Path("own").mkdir()
    for name, text in files.items():
        Path("own", f"{name.replace('_', '-')}.j2").write_text(text, encoding="utf-8")


def test_the_list_names_every_sheet(real: Rigc) -> None:
    out = real("templates").out
    assert "cable-list.j2 " in out
    assert "README.md " in out


def test_copies_go_into_a_folder_and_over_nothing(real: Rigc) -> None:
    assert real("templates", "-o", "own", "rework.j2", "sheet.css").code == 0
    assert sorted(path.name for path in Path("own").iterdir()) == ["rework.j2", "sheet.css"]
    again = real("templates", "-o", "own", "sheet.css", "html.j2")
    assert (again.code, again.err) == (2, "rigc: 'own/sheet.css' is there already; nothing was written\n")
    assert not Path("own/html.j2").exists()


def test_copies_of_all_give_the_documents_that_ours_give(real: Rigc) -> None:
    real("templates", "-o", "own")
    chosen = (HOME, "--sheet", "cable-list,wiring-sheet", "--to", "md,html", "--draft")
    real("build", *chosen, "-o", "ours")
    assert real("build", *chosen, "-o", "theirs", "--templates", "own").code == 0
    for path in Path("ours").iterdir():
        assert path.read_bytes() == Path("theirs", path.name).read_bytes()


def test_each_file_of_a_folder_is_told(real: Rigc) -> None:
    own(cable_list="x", title_page="x")
    Path("own/_address.j2").write_text("x")
    Path("own/words.json").write_text("{}")
    told = {
        line.split("  ")[0]: line.split("  ")[1] for line in real("templates", "--templates", "own").out.splitlines()
    }
    assert told["cable-list.j2"] == "instead of ours"
    assert told["title-page.j2"] == "an added sheet"
    assert told["_address.j2"] == "for others to take in"
    assert told["words.json"] == "your wording"


def test_the_phrases_of_a_rig_can_be_filled_in(real: Rigc) -> None:
    words = json.loads(real("templates", "--words", HOME).out)
    assert set(words.values()) == {""}
    assert {"Cable list", "Leads", "Caution", "date"} <= set(words)


PAGE = """{% extends "builtin/sheet.j2" %}
{% set sheet_title = "Brass Lamp" %}
{% set sheet_first = true %}
{% block body %}{{ put.block(sheets["cable-list"].block("leads")) }}{{ model.rig.name }}{% endblock %}
"""


def test_an_added_sheet_is_a_sheet(real: Rigc) -> None:
    own(title_page=PAGE)
    assert real("build", HOME, "--templates", "own", "-o", "out", "--to", "md", "--separate").code == 0
    text = Path("out/title-page.md").read_text("utf-8")
    assert text.startswith("# Brass Lamp\n")
    assert "- sheet A1, 1 of " in text
    assert "\n## Leads\n" in text
    assert "\nback-bedroom*Valid" in text
    others = "".join(path.read_text("utf-8") for path in Path("out").glob("*.md") if path.name != "title-page.md")
    assert "- sheet 1 of " not in others


def test_an_added_sheet_alone_can_be_asked_for(real: Rigc) -> None:
    own(title_page=PAGE)
    assert real("build", HOME, "--templates", "own", "--sheet", "title-page", "--to", "html", "-o", "out").code == 0
    assert [path.name for path in Path("out").iterdir()] == ["title-page.html"]
    assert (
        "no sheet 'title-pag'; did you mean 'title-page'?"
        in real("build", HOME, "--templates", "own", "--sheet", "title-pag").err
    )


def test_a_broken_template_is_a_finding_and_nothing_is_written(real: Rigc) -> None:
    own(wiring_sheet="one\n  {{ sheet.titel }}")
    run = real("build", HOME, "--templates", "own", "-o", "out")
    assert run.code == 1
    assert "own/wiring-sheet.j2:2:3: error: a sheet has no 'titel' [broken-template]\n" in run.err
    assert "  do: write 'title'\n" in run.err
    assert "nothing was written\n" in run.err
    assert not Path("out").exists()


def test_a_finding_of_a_template_is_told_as_data_too(real: Rigc) -> None:
    own(wiring_sheet="{% for %}")
    run = real("build", HOME, "--templates", "own", "-o", "out", "--findings", "jsonl=found.jsonl")
    last = json.loads(Path("found.jsonl").read_text().splitlines()[-1])
    assert (run.code, last["rule"], last["file"], last["line"]) == (1, "broken-template", "own/wiring-sheet.j2", 1)


def test_fresh_takes_the_same_templates(real: Rigc) -> None:
    own(title_page=PAGE)
    run = real("fresh", (ROOT / "examples/back-bedroom").as_posix(), "--templates", "own")
    assert run.code == 1
    assert "missing" in run.out
    assert "documents/title-page.md\n" in run.out
