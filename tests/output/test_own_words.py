"""A shop's own wording: what is looked up, and what is never touched."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from small_sheets import CAUTION, LEADS, document

from rigc.files.template_folder import read_templates
from rigc.output import html, markdown
from rigc.output.layout import Layout
from rigc.output.own_words import phrases
from rigc.output.template_mistake import TemplateMistake


def rendered(folder: Path, words: str) -> str:
    (folder / "words.json").write_text(words, encoding="utf-8")
    return markdown.render(document(CAUTION, LEADS), Layout(templates=read_templates(folder)))


def test_titles_captions_heads_and_fixed_words_are_the_shops(tmp_path: Path) -> None:
    words = {"Cable list": "Kabelliste", "Leads": "Kabel", "lead": "Nr.", "Caution": "Achtung", "date": "Datum"}
    text = rendered(tmp_path, json.dumps(words))
    assert text.startswith("# Kabelliste\n")
    assert "## Kabel\n" in text
    assert "| | Nr. | cut (mm) |" in text
    assert "> **Achtung" in text
    assert "- Datum: " in text


def test_a_phrase_left_empty_or_unknown_stays_ours(tmp_path: Path) -> None:
    assert rendered(tmp_path, '{"Leads": "", "nothing of ours": "x"}') == markdown.render(document(CAUTION, LEADS))


def test_cells_hold_the_rigs_own_names_and_stay(tmp_path: Path) -> None:
    first = LEADS.rows[0].cells[0].text
    assert first not in phrases((document(LEADS),))
    assert rendered(tmp_path, f'{{"{first}": "changed"}}') == markdown.render(document(CAUTION, LEADS))


def test_a_phrase_of_the_shop_is_text_and_no_markup(tmp_path: Path) -> None:
    (tmp_path / "words.json").write_text('{"Leads": "<b>|x"}', encoding="utf-8")
    layout = Layout(templates=read_templates(tmp_path))
    assert "&lt;b&gt;|x" in html.render(document(LEADS), layout)
    assert "## &lt;b>\\|x" in markdown.render(document(LEADS), layout)


@pytest.mark.parametrize(
    ("text", "line", "message"),
    [
        ('{\n"Leads": }', 2, "this is no JSON: Expecting value"),
        ("[]", 1, "this is no list of phrases"),
        ('{"Leads": 1}', 1, "this is no list of phrases"),
        ("[" * 100000, 1, "this is nested without end"),
    ],
)
def test_a_mistake_in_it_is_told_with_its_line(tmp_path: Path, text: str, line: int, message: str) -> None:
    with pytest.raises(TemplateMistake) as caught:
        rendered(tmp_path, text)
    assert (Path(caught.value.file).name, caught.value.line, caught.value.message) == ("words.json", line, message)
    assert "words RIG" in caught.value.help
