"""The user's own templates: what they override, what they may not do, and how a mistake in them is told."""

from __future__ import annotations

from pathlib import Path

import pytest
from small_sheets import AWKWARD, CAUTION, LEADS, NOTE, document

from rigc.analysis.kept import Kept
from rigc.files.cache import Cache
from rigc.files.template_folder import read_templates
from rigc.output import html, markdown, ready, templates
from rigc.output.layout import Layout
from rigc.output.template_mistake import TemplateMistake


def rendered(folder: Path, **files: str) -> str:
    for name, text in files.items():
        (folder / f"{name.replace('_', '-')}.j2").write_text(text, encoding="utf-8")
    return markdown.render(document(CAUTION, LEADS, NOTE), own(folder))


def own(folder: Path) -> Layout:
    return Layout(templates=read_templates(folder))


def mistake(folder: Path, **files: str) -> TemplateMistake:
    with pytest.raises(TemplateMistake) as caught:
        rendered(folder, **files)
    return caught.value


def test_an_empty_folder_changes_nothing(tmp_path: Path) -> None:
    assert rendered(tmp_path) == markdown.render(document(CAUTION, LEADS, NOTE))


def test_a_template_of_the_same_name_takes_the_place_of_ours(tmp_path: Path) -> None:
    assert rendered(tmp_path, cable_list="only {{ sheet.title }}, {{ format }}") == "only Cable list, markdown\n"


def test_a_sheet_without_a_template_takes_the_generic_one(tmp_path: Path) -> None:
    (tmp_path / "sheet.j2").write_text("generic {{ sheet.name }}")
    assert markdown.render(document(LEADS, name="unheard-of"), own(tmp_path)) == "generic unheard-of\n"


def test_blocks_are_placed_by_name_in_an_extension_of_ours(tmp_path: Path) -> None:
    own = '{% extends "builtin/cable-list.j2" %}{% block body %}{{ put.block(sheet.block("crew")) }}{% endblock %}'
    text = rendered(tmp_path, cable_list=own)
    assert "Note to the crew" in text
    assert "Caution" not in text
    assert text.startswith("# Cable list\n")


def test_one_macro_can_be_changed_and_the_others_stay_ours(tmp_path: Path) -> None:
    text = rendered(tmp_path, markdown="{% macro note(paragraph) %}NB {{ paragraph.lines[0] }}{% endmacro %}")
    assert "NB The long lead goes under the carpet." in text
    assert "> **Caution**" in text


def test_the_style_can_be_changed_alone(tmp_path: Path) -> None:
    (tmp_path / "sheet.css").write_text("p { color: teal; }")
    text = html.render(document(LEADS), own(tmp_path))
    assert "p { color: teal; }" in text
    assert "size: A4 portrait" in text


def test_what_a_template_prints_is_escaped_in_html(tmp_path: Path) -> None:
    (tmp_path / "cable-list.j2").write_text("{{ sheet.blocks[0].lines[0] }}")
    text = html.render(document(CAUTION.replace(lines=(AWKWARD,))), own(tmp_path))
    assert "a|b &lt;i&gt;&amp;amp;" in text


def test_a_template_kept_from_html_does_not_escape_in_markdown(tmp_path: Path) -> None:
    (tmp_path / "cable-list.j2").write_text("{{ 'a > b' }}")
    (tmp_path / "kept").mkdir()
    layout = own(tmp_path).replace(kept=Kept(Cache(tmp_path / "kept")))
    assert "a &gt; b" in html.render(document(LEADS), layout)
    assert markdown.render(document(LEADS), layout) == "a > b\n"


@pytest.mark.parametrize(
    "trick",
    [
        "{{ ().__class__ }}",
        "{{ sheet.__class__.__init_subclass__ }}",
        "{{ ''['__class__'] }}",
        "{{ put.block.__globals__ }}",
        "{{ sheet.__dict__.update(title='x') }}",
        "{{ put.__dict__ }}",
    ],
)
def test_the_sandbox_holds(tmp_path: Path, trick: str) -> None:
    found = mistake(tmp_path, cable_list="\n" + trick)
    assert (Path(found.file).name, found.line) == ("cable-list.j2", 2)


@pytest.mark.parametrize("name", ["../secret.j2", "/etc/hostname", "builtin/../../pyproject.toml"])
def test_a_template_reads_nothing_outside_the_folders(tmp_path: Path, name: str) -> None:
    own = tmp_path / "own"
    own.mkdir()
    (tmp_path / "secret.j2").write_text("secret")
    assert mistake(own, cable_list=f"{{% include '{name}' %}}").message == f"no template '{name}'"


@pytest.mark.parametrize(
    ("text", "line", "message"),
    [
        ("one\n{{ sheet.titel }}", 2, "titel"),
        ("{{ nobody }}", 1, "'nobody' is undefined"),
        ("\n\n{% if %}", 3, "Expected an expression"),
        ("\n{{ put.tabel(sheet) }}", 2, "'put' has no macro 'tabel'"),
        ("\n{{ put.table() }}", 2, "table"),
        ("{{ 1 / 0 }}", 1, "division by zero"),
        ('\n{{ put.block(sheet.block("lead")) }}', 2, "has no block 'lead'; it has power_off, leads, crew"),
        ('{% include "cable-list.j2" %}', 1, "calls itself without end"),
        ('{% include "gone.j2" %}', 1, "no template 'gone.j2'"),
    ],
)
def test_a_mistake_is_told_with_its_file_and_line(tmp_path: Path, text: str, line: int, message: str) -> None:
    found = mistake(tmp_path, cable_list=text)
    assert (found.file, found.line) == ((tmp_path / "cable-list.j2").as_posix(), line)
    assert message in found.message
    assert "\n" not in str(found)


def test_a_mistake_in_a_macro_file_is_told_too(tmp_path: Path) -> None:
    found = mistake(tmp_path, markdown="{% macro note(paragraph) %}\n{{ paragraph.text }}\n{% endmacro %}")
    assert (Path(found.file).name, found.line) == ("markdown.j2", 2)


def test_a_template_that_is_not_text_is_a_mistake(tmp_path: Path) -> None:
    (tmp_path / "cable-list.j2").write_bytes(b"caf\xe9")
    assert mistake(tmp_path).message == "the file is not UTF-8 text"


@pytest.mark.parametrize("made_of", ["this", "else", None])
def test_templates_are_read_as_code_if_they_are_of_this_rigc(
    made_of: str | None, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Code that was made of the same writes the same page; a word put into it shows only where it is taken."""
    first = html.render(document(LEADS))
    for name, text in templates.made_ready().items():
        (tmp_path / name).write_text(text.replace("A printed copy", "A plank copy"), "utf-8")
    if made_of != "this":
        (tmp_path / ready.MADE_OF).unlink() if made_of is None else (tmp_path / ready.MADE_OF).write_text(made_of)
    monkeypatch.setattr(ready, "READY", tmp_path)
    for each in (ready._made_of, templates._environment):
        each.cache_clear()
    try:
        again = html.render(document(LEADS))
    finally:
        for each in (ready._made_of, templates._environment):
            each.cache_clear()
    assert again == (first.replace("A printed copy", "A plank copy") if made_of == "this" else first)
    assert ("A plank copy" in again) == (made_of == "this")
