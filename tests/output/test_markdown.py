"""Documents as Markdown."""

from __future__ import annotations

from small_sheets import AWKWARD, CAUTION, COLUMNS, EMPTY, LEADS, NOTE, TITLE, document, row

from rigc.output import markdown
from rigc.reports.content import Paragraph, Table

WHOLE = """\
# Cable list

- rig: Night Ferry (invented)
- code: NF-2
- client: Ada Quill (invented)
- sheet 3 of 4: cable list
- revision: C7
- date: 2026-03-14
- drawn: K. Moor
- checked:
- for: bench
- source: 9f31c2ab

> **Caution**
>
> Unplug mains before a lead is changed.

## Leads

| | lead | cut (mm) | status |
| --- | --- | --: | --- |
| ☐ | L01 | 153 | make |
| ☐ | L02 | 1.5 (assumed) | **make (FAIL)** |
| | **total** | **154.5** | |

## Spares

*no spares are carried*

> **Note to the crew**
>
> The long lead goes under the carpet.

*Valid for revision C7 only. Figures are computed from the facts entered: verify them by measurement.*
"""


def test_a_whole_document() -> None:
    assert markdown.render(document(CAUTION, LEADS, EMPTY, NOTE)) == WHOLE


def test_awkward_names_stay_in_their_cell() -> None:
    text = markdown.render(document(Table("t", "T", COLUMNS, (row(AWKWARD, "1", "ok"),))))
    assert "| a\\|b &lt;i>&amp;amp; \\\\ \\`c\\` \\*d\\* \\[e\\](f)<br>שלום 🎸 | 1 | ok |\n" in text


def test_one_changed_cell_is_one_changed_line() -> None:
    before, after = (
        markdown.render(document(Table("t", "T", COLUMNS, (row("L1", cut, "make"), row("L2", "90", "make")))))
        for cut in ("9", "100000")
    )
    assert sum(a != b for a, b in zip(before.splitlines(), after.splitlines(), strict=True)) == 1


def test_a_draft_says_so_at_its_head_and_its_end() -> None:
    text = markdown.render(document(LEADS, draft=True))
    assert "**DRAFT. Not to build from.**" in text
    assert text.endswith(
        "*Valid for revision C7 only (DRAFT). Figures are computed from the facts entered: verify them by measurement.*\n"
    )
    assert "DRAFT" not in markdown.render(document(LEADS))
    wrong = document(LEADS).replace(title=TITLE.replace(draft=True, faulty=True))
    assert "**DRAFT: written in spite of errors. Not to build from.**" in markdown.render(wrong)


def test_a_caution_with_a_heading_and_a_line_that_looks_like_a_list() -> None:
    text = markdown.render(document(Paragraph("m", ("- first", "# second"), "mains", "caution")))
    assert "> **Caution: mains**\n>\n> \\- first\n>\n> \\# second\n" in text


def test_several_documents_in_one_file_are_parted_by_a_rule() -> None:
    text = markdown.render((document(LEADS), document(EMPTY)))
    assert text.count("\n---\n") == 1
    assert text.count("# Cable list\n") == 2
