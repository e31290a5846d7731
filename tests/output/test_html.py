"""Documents as one HTML file: well formed, harmless, complete, and in need of nothing else."""

from __future__ import annotations

import re
from html.parser import HTMLParser

import pytest
from small_sheets import AWKWARD, CAUTION, COLUMNS, EMPTY, LEADS, NOTE, TITLE, document, row

from rigc.output import html
from rigc.output.layout import Layout
from rigc.reports.content import Column, Document, Paragraph, Table

VOID = {"meta", "wbr", "path"}


class Outline(HTMLParser):
    """Reads HTML strictly: fails where an element is not closed; keeps the elements and the text of cells."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.open: list[str] = []
        self.elements: list[tuple[str, dict[str, str | None]]] = []
        self.cells: list[str] = []
        self.feed(text)
        self.close()
        assert self.open == []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.elements.append((tag, dict(attrs)))
        if tag not in VOID:
            self.open.append(tag)
        if tag in ("td", "th"):
            self.cells.append("")

    def handle_endtag(self, tag: str) -> None:
        if tag not in VOID:
            assert self.open.pop() == tag

    def handle_data(self, data: str) -> None:
        if self.open and {"td", "th"} & set(self.open):
            self.cells[-1] += data

    def named(self, tag: str) -> list[dict[str, str | None]]:
        return [attributes for name, attributes in self.elements if name == tag]


def test_awkward_text_comes_back_as_it_went_in() -> None:
    table = Table("t", AWKWARD, COLUMNS, (row(AWKWARD, "1", "</td><script>alert(1)</script>"),))
    outline = Outline(html.render(document(table, Paragraph("p", (AWKWARD,), AWKWARD, "caution"))))
    assert AWKWARD in outline.cells
    assert "</td><script>alert(1)</script>" in outline.cells
    assert outline.named("script") == []


@pytest.mark.parametrize(
    "field", ["rig", "code", "client", "sheet", "revision", "date", "drawn", "checked", "source_hash"]
)
def test_no_field_of_the_title_breaks_out_of_the_page_or_its_style(field: str) -> None:
    nasty = '"; } </style><script>x</script>\\'
    plain = document(LEADS)
    outline = Outline(html.render(plain.replace(title=TITLE.replace(**{field: nasty}))))
    assert outline.named("script") == []
    assert len(outline.elements) == len(Outline(html.render(plain)).elements)


def test_it_needs_nothing_else() -> None:
    text = html.render(document(CAUTION, LEADS, EMPTY, NOTE))
    assert not re.search(r"<script|<link|<img|https?:|url\((?!data:font/woff2;base64,)|@import|\ssrc=", text)
    (policy,) = re.findall(r'<meta http-equiv="Content-Security-Policy" content="([^"]*)">', text)
    allowed = dict(part.split(" ", 1) for part in policy.split("; "))
    assert allowed.pop("style-src") == "'unsafe-inline'"
    assert allowed == dict.fromkeys(("default-src", "base-uri", "form-action"), "'none'") | dict.fromkeys(
        ("font-src", "img-src"), "data:"
    )


def test_landmarks_captions_and_scopes() -> None:
    outline = Outline(html.render(document(CAUTION, LEADS)))
    assert [len(outline.named(tag)) for tag in ("main", "article", "header", "footer", "h1", "caption")] == [1] * 6
    assert {cell.get("scope") for cell in outline.named("th")} == {"col", "row"}
    assert outline.named("html") == [{"lang": "en"}]


def test_a_caution_says_caution() -> None:
    assert re.search(
        r"</svg>Caution</h2>\s*<p>Unplug mains before a lead is changed.</p>", html.render(document(CAUTION))
    )


def test_a_row_to_tick_has_a_box_and_a_total_has_none() -> None:
    outline = Outline(html.render(document(LEADS)))
    assert sum(span.get("class") == "box" for span in outline.named("span")) == 2


def test_an_empty_table_says_what_there_is_none_of() -> None:
    text = html.render(document(EMPTY))
    assert "<p>no spares are carried</p>" in text
    assert "<table" not in text


@pytest.mark.parametrize(
    ("paper", "landscape", "size"),
    [
        ("a4", False, "A4 portrait"),
        ("a4", True, "A4 landscape"),
        ("letter", False, "letter portrait"),
        ("letter", True, "letter landscape"),
    ],
)
def test_the_page_is_as_chosen(paper: str, landscape: bool, size: str) -> None:
    text = html.render(document(LEADS, landscape=landscape), Layout(paper=paper))
    assert re.search(rf"@page sheet-3 {{\s*size: {size};", text)


def test_a_wide_table_turns_its_page() -> None:
    text = html.render(document(LEADS.replace(landscape=True)))
    assert '<div class="wide turned"' in text
    assert re.search(r"@page sheet-3-turned {\s*size: A4 landscape;", text)


def test_several_documents_are_listed_and_linked() -> None:
    second: Document = document(EMPTY).replace(number=4)
    outline = Outline(html.render((document(LEADS), second)))
    assert [link["href"] for link in outline.named("a")] == ["#sheet-3", "#sheet-4"]
    assert [article["id"] for article in outline.named("article")] == ["sheet-3", "sheet-4"]


def test_the_same_document_gives_the_same_bytes() -> None:
    assert html.render(document(CAUTION, LEADS)) == html.render(document(CAUTION, LEADS))


def test_a_draft_is_stamped() -> None:
    assert '<div class="stamp" aria-hidden="true">DRAFT</div>' in html.render(document(LEADS, draft=True))
    assert "DRAFT" not in html.render(document(LEADS))


def test_a_draft_says_whether_errors_stand_in_it() -> None:
    clean, wrong = (document(LEADS).replace(title=TITLE.replace(draft=True, faulty=each)) for each in (False, True))
    assert "<strong>DRAFT</strong> Not to build from." in html.render(clean)
    assert "<strong>DRAFT</strong> Written in spite of errors. Not to build from." in html.render(wrong)


def test_a_long_first_cell_may_break_and_a_table_to_write_in_is_smaller() -> None:
    """A first cell of many words would push the room to write in off the paper."""
    columns = (Column("signed"), Column("name", least_mm=40))
    rows = (row("tests 1 and 2, by a competent person", ""), row("L01", ""))
    page = html.render(document(Table("signed", "Signed", columns, rows)))
    assert '<th scope="row" class="words">' in page
    assert '<th scope="row">L01' in page
    assert '<table class="written">' in page


def test_the_head_of_the_front_page_is_the_rig_s_name() -> None:
    told = html.render(document(EMPTY, name="front-page"))
    assert re.search(r'@top-left \{ content: "Night Ferry [^"]*"; width: [\d.]+mm; font-size: 15pt; \}', told)
    assert re.search(r'@top-left \{ content: "cable list"; width: [\d.]+mm; \}', html.render(document(EMPTY)))
