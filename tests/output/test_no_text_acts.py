"""What a rig says is text in every format: markup, quotes, braces, pipes, newlines, marks of direction, and as much of it as a text may have.

One board is compiled twice: with plain words, and with words that would act if any format let them. Both must have the same
shape in every format; nothing of the second may have become an element, a row, a column or a command.
"""

from __future__ import annotations

import csv
import io
import json
import re
import shutil
import subprocess
from functools import cache
from html.parser import HTMLParser
from pathlib import Path
from xml.etree import ElementTree

import ezdxf
import openpyxl
import pytest
from cases import ROOT

from rigc.compile import Compiled, compile_rig
from rigc.files.confined import Confined
from rigc.files.disk import Disk
from rigc.files.reader import CachedReader
from rigc.files.template_folder import read_templates
from rigc.output import html, markdown
from rigc.output.design.model import render as model
from rigc.output.extras import dxf, pdf, xlsx
from rigc.output.formats import drawing_files, table_files
from rigc.output.layout import Layout
from rigc.output.templates import Whole
from rigc.reports.content import Document
from rigc.reports.deck.cut_plan import cut_plans
from rigc.reports.leads.printer_labels import printer_labels
from rigc.source import Source

PLAIN = "a plain word"
TRICKS = {
    "markup": "<script>alert(1)</script><img src=x onerror=y><!-- </style></svg>]]>",
    "entities": "&lt;b&gt; &#60; &amp;amp;",
    "quotes": "\" ' '; \\",
    "braces": "{{ 7 * 7 }} {% raw %} ${x} {# #}",
    "pipes": "a | b || c |---|",
    "backticks": "``` `x` ```",
    "newlines": "one\n\n# two\n- three\r\n| four |",
    "direction": "abc\u202edef\u2066ghi\u200f",
    "formula": "=HYPERLINK(0)",
    "sum": "+SUM(1)",
    "wide formula": "＝SUM(1)",
    "drawing": "%%c ^J \\U+00B0 {\\H9x;} \\P",
    "css": "*/ } @import url(x); \\22",
    "links": "[x](http://example.invalid) ![y](z) _a_ *b* ~c~ http://example.invalid",
    "rows": "1. x",
    "long": "x" * 10000,
}

EVERYTHING = "=x <b>|</b> \"' {{ 7 }} {% raw %} | ` \\ &lt; \u202eabc *b* [x](http://example.invalid)\n\n# two\n- three"
"""All of them at once, but for the long one."""


def source(word: str) -> str:
    """A board of one unit and a deck, with the word wherever the language takes a text."""
    said = json.dumps(word, ensure_ascii=False).replace("\\r", "")
    return f"""language 1
note {said}
rig sample {said} {{
  revision A 2026-03-02 {said}
  client {said}
  drawn by {said}
  checked by {said}
  class home
  note {said}
}}
instrument guitar {said} {{
  inductance 4.2 H
  capacitance 120 pF
}}
amp combo {said} {{
  input in ts 1 Mohm
}}
unit tern {said} {{
  owner {said}
  body 70 x 120 x 55 mm
  mass 400 g
  bypass buffered
  input in ts 1 Mohm right 80 mm up 25 mm
  output out ts 1 kohm left 80 mm up 25 mm
  note {said}
}}
chain guitar -> tern -> combo
deck plank {said} {{
  size 320 x 200 mm
  hole 25 mm at 60, 150 mm {said}
  hole 10 mm at 260, 150 mm {said}
  note {said}
}}
place {{
  tern at 200, 20 mm
}}
"""


@cache
def compiled(word: str) -> Compiled:
    result = compile_rig(lambda name: Source(name, source(word)), "sample.rig", CachedReader())
    assert result.results is not None, [finding.message for finding in result.findings]
    return result


@cache
def documents(word: str) -> tuple[Document, ...]:
    return compiled(word).documents(draft=True)


FORMULA = ("=", "@", "\t", "\r", "\n", "＝", "＠", "＋", "－", "+S", "-S")
"""What a spreadsheet begins to reckon at."""

words = pytest.mark.parametrize("word", TRICKS.values(), ids=list(TRICKS))


class Shape(HTMLParser):
    """The elements of a page in order, with the names of their attributes, and its text. `wbr` only lets a long word break."""

    def __init__(self, page: str) -> None:
        super().__init__(convert_charrefs=True)
        self.elements: list[tuple[str, tuple[str, ...]]] = []
        self.parts: list[str] = []
        self.feed(page)
        self.text = "".join(self.parts)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        if tag != "wbr":
            self.elements.append((tag, tuple(name for name, _ in attrs if name not in ("class",))))

    def handle_data(self, data: str) -> None:
        self.parts.append(data)

    def handle_comment(self, data: str) -> None:
        self.elements.append((f"<!-- {data}", ()))


def without_drawings(page: str) -> str:
    """A drawing is as long as its texts ask for; the files of drawings are looked at by themselves."""
    return re.sub(r"<svg xmlns.*?</svg>", "", page, flags=re.DOTALL)


@cache
def plain_page() -> tuple[Shape, Shape]:
    """The shape of the page with plain words: without its drawings, and with them."""
    page = html.render(documents(PLAIN))
    return Shape(without_drawings(page)), Shape(page)


@words
def test_html(word: str) -> None:
    page = html.render(documents(word))
    shape, (plain, drawn) = Shape(page), plain_page()
    assert Shape(without_drawings(page)).elements == plain.elements
    assert {tag for tag, _ in shape.elements} <= {tag for tag, _ in drawn.elements} | {"text", "tspan"}
    assert not re.search("[\u202a-\u202e\u2066-\u2069]|\\\\20(2[a-e]|6[6-9]) ", page)
    said = re.split("[\u202e\r\n]", word)[0].split()[0][:2000]
    assert "".join(said.split()) in "".join(shape.text.split())


@words
def test_markdown(word: str) -> None:
    text, plain = markdown.render(documents(word)), markdown.render(documents(PLAIN))
    assert [kind(line) for line in text.splitlines()] == [kind(line) for line in plain.splitlines()]
    assert not re.search(r"(?<!\\)<(?!br>)[a-zA-Z/!]", text)
    assert not re.search("[\u202a-\u202e\u2066-\u2069]", text)


def kind(line: str) -> tuple[str, int]:
    """What a line begins with that acts, and how many cells it has."""
    return re.match(r"#* ?(?:- |> |!|\||☐|\*|\d+[.)] )?", line)[0], len(re.findall(r"(?<!\\)\|", line))  # type: ignore[index]


@words
def test_svg(word: str) -> None:
    for document, plain in zip(documents(word), documents(PLAIN), strict=True):
        files, others = drawing_files(document), drawing_files(plain)
        assert [name for name, _ in files] == [name for name, _ in others]
        for (_, text), (_, other) in zip(files, others, strict=True):
            tags = {element.tag for element in ElementTree.fromstring(text).iter()}
            assert tags <= {element.tag for element in ElementTree.fromstring(other).iter()} | {
                f"{{http://www.w3.org/2000/svg}}{tag}" for tag in ("text", "path", "line", "rect")
            }


@words
def test_csv(word: str) -> None:
    for document, plain in zip(documents(word), documents(PLAIN), strict=True):
        for (name, text), (other, same) in zip(table_files(document, "csv"), table_files(plain, "csv"), strict=True):
            rows, wanted = list(csv.reader(io.StringIO(text, newline=""))), list(csv.reader(io.StringIO(same)))
            assert name == other
            assert [len(row) for row in rows] == [len(row) for row in wanted]
            assert not [cell for row in rows for cell in row if cell.startswith(FORMULA)]


def everywhere(path: Path, word: str) -> tuple[Document, ...]:
    """The documents of a rig that states all that can be stated, with the word for each of its texts."""
    said = json.dumps(word, ensure_ascii=False)
    lines = (
        line if line.lstrip().startswith("#") else re.sub(r'"(?![^"]*(?:\.rig"|\{id\}))[^"]*"', lambda _: said, line)
        for line in path.read_text("utf-8").splitlines()
    )
    disk = Disk(path, root=ROOT, given="\n".join(lines).encode())
    return compile_rig(disk, disk.name, CachedReader(), effort=300).documents(draft=True)


@pytest.mark.parametrize(
    "name",
    ["revision", *(pytest.param(name, marks=pytest.mark.long) for name in ("board", "hints", "rest", "sources"))],
)
def test_texts_of_every_statement(name: str) -> None:
    path = ROOT / f"tests/reach/{name}.rig"
    for document, plain in zip(everywhere(path, EVERYTHING), everywhere(path, PLAIN), strict=True):
        page, other = (without_drawings(html.render(each)) for each in (document, plain))
        assert Shape(page).elements == Shape(other).elements
        kinds = [[kind(line) for line in markdown.render(each).splitlines()] for each in (document, plain)]
        assert kinds[0] == kinds[1]
        for _, text in drawing_files(document):
            ElementTree.fromstring(text)
        for (_, text), (_, same) in zip(table_files(document, "csv"), table_files(plain, "csv"), strict=True):
            rows, wanted = list(csv.reader(io.StringIO(text, newline=""))), list(csv.reader(io.StringIO(same)))
            assert [len(row) for row in rows] == [len(row) for row in wanted]
            assert not [cell for row in rows for cell in row if cell.startswith(FORMULA)]


@words
def test_json(word: str) -> None:
    result = compiled(word)
    assert result.results is not None
    texts = [text for document in documents(word) for _, text in table_files(document, "json")]
    for text in (*texts, model(result.results, result.findings, result.hash)):
        assert isinstance(json.loads(text), dict)
        assert not re.search("[\u202a-\u202e\u2066-\u2069]", text)
    told = json.loads(model(result.results, result.findings, result.hash))
    assert told["rig"]["title"] == json.loads(json.dumps(word).replace("\\r", ""))


@words
def test_dxf(word: str, tmp_path: Path) -> None:
    result = compiled(word)
    assert result.results is not None
    (plan,) = result.results.call(cut_plans).all
    file = tmp_path / "plan.dxf"
    file.write_bytes(dxf.render(plan, documents(word)[0].title))
    drawing = ezdxf.readfile(file)
    assert not drawing.audit().errors
    texts = [entity.dxf.text for entity in drawing.modelspace().query("TEXT")]
    assert len(texts) == 2 + 1 + 2  # two holes, one unit, two lines of title
    for entity in drawing.modelspace().query("TEXT"):
        plain = entity.plain_text()
        assert plain.isprintable()
        assert "Ø" not in plain
    assert {layer.dxf.name for layer in drawing.layers} == {"0", "Defpoints", *dxf.LAYERS}


@pytest.mark.parametrize("word", [EVERYTHING, TRICKS["long"]], ids=["everything", "long"])
def test_pdf(word: str, tmp_path: Path) -> None:
    data = pdf.render(html.render(documents(word)[0]))
    assert data.startswith(b"%PDF-")
    assert b"/JavaScript" not in data
    if shutil.which("pdftotext") is None:
        pytest.skip("pdftotext is not installed")
    (tmp_path / "page.pdf").write_bytes(data)
    text = subprocess.run(["pdftotext", tmp_path / "page.pdf", "-"], capture_output=True, check=True).stdout.decode()
    assert "".join(word.split())[:12] in "".join(text.split())


def test_the_page_that_follows_each_save() -> None:
    """It takes a sheet's HTML in as it is, with the names of figures besides."""
    live = Layout(live=True)
    for document, plain in zip(documents(EVERYTHING), documents(PLAIN), strict=True):
        page, other = (without_drawings(html.render(each, live)) for each in (document, plain))
        assert Shape(page).elements == Shape(other).elements


def test_workbook() -> None:
    for document, plain in zip(documents(EVERYTHING), documents(PLAIN), strict=True):
        books, others = (
            [openpyxl.load_workbook(io.BytesIO(data)) for _, data in xlsx.files(each)] for each in (document, plain)
        )
        assert [book.sheetnames for book in books] == [book.sheetnames for book in others]
        for sheet in (sheet for book in books for sheet in book):
            assert "f" not in {cell.data_type for line in sheet.iter_rows() for cell in line}


def test_labels_for_a_printer() -> None:
    """What a label says is the builder's own text."""
    said = 'label "=SUM(1) <b> | {id} ` {here} > {far}"'
    text = source(PLAIN).replace("class home", f"class home\n  {said}")
    result = compile_rig(lambda name: Source(name, text), "sample.rig", CachedReader())
    assert result.results is not None
    (document,) = result.documents(("label-sheet",), draft=True)
    ((_, printed),) = table_files(document, "csv", (result.results.call(printer_labels),))
    head, *rows = csv.reader(io.StringIO(printed, newline=""))
    assert rows and {len(row) for row in rows} == {len(head)}
    assert not [cell for row in rows for cell in row if cell.startswith(FORMULA)]
    assert any("SUM(1) <b> | A1 `" in cell for row in rows for cell in row)


def test_templates_of_the_user(tmp_path: Path) -> None:
    """A rig's texts are text in a template of the user's too, though he marks nothing."""
    (tmp_path / "note.j2").write_text("{{ title.rig }} {{ model.rig.client }}")
    sheet = documents(PLAIN)[0].sheet.replace(name="note", blocks=())
    with Confined(read_templates(tmp_path)) as confined:
        shapes = {
            word: Shape(
                confined.render(
                    "html", (documents(word)[0].replace(sheet=sheet),), "a4", Whole((), {"rig": {"client": word}})
                )
            ).elements
            for word in (PLAIN, *TRICKS.values())
        }
    assert [word for word, shape in shapes.items() if shape != shapes[PLAIN]] == []
