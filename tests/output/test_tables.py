"""One sheet's tables on their own: text, Markdown, CSV, JSON."""

from __future__ import annotations

import csv
import io
import json

import pytest
from small_sheets import AWKWARD, CAUTION, COLUMNS, EMPTY, LEADS, document, row

from rigc.output.column_names import column_names
from rigc.output.formats import DOCUMENTS, TABLES, NotOneTable, document_renderer, render_tables
from rigc.output.layout import STANDARD
from rigc.reports.content import Column, Sheet, Table

ONE: Sheet = document(CAUTION, LEADS).sheet
CHANGED = row("L2", "2").replace(changed="3, 5")
TWO: Sheet = document(LEADS, EMPTY).sheet


def test_text_is_aligned() -> None:
    assert render_tables("text", ONE) == (
        "Leads\n"
        "lead        cut (mm)  status\n"
        "-----  -------------  -----------\n"
        "L01              153  make\n"
        "L02    1.5 (assumed)  make (FAIL)\n"
        "-----  -------------  -----------\n"
        "total          154.5\n"
    )


def test_wide_signs_take_two_columns_and_controls_none() -> None:
    table = Table("t", "T", (Column("a"), Column("b")), (row("🎸", "x"), row("e\u0301\x1b", "x"), row("abcd", "x")))
    lines = render_tables("text", document(table).sheet).splitlines()
    assert lines[3:] == ["🎸    x", "e\u0301     x", "abcd  x"]


def test_an_empty_table_says_so_in_text() -> None:
    assert render_tables("text", TWO, "spares") == "Spares\nno spares are carried\n"


def test_markdown_tables_stand_alone() -> None:
    text = render_tables("md", TWO)
    assert text.startswith("## Leads\n\n| | lead |")
    assert text.endswith("## Spares\n\n*no spares are carried*\n")


def test_csv_lines_names_and_marks() -> None:
    # RFC 4180, 2.1 and 2.3: CR LF ends a line, a header line of the same form may come first.
    assert (
        render_tables("csv", ONE)
        == "lead,cut_mm,status,marks\r\nL01,153,make,\r\nL02,1.5,make,cut_mm: assumed; status: FAIL\r\n"
    )


def test_csv_quotes_what_must_be_quoted() -> None:
    # RFC 4180, 2.6 and 2.7: line breaks, quotes and commas stand in quotes, a quote is doubled.
    table = Table("t", "T", COLUMNS, (row('a "b", c\nd', "1", AWKWARD),))
    text = render_tables("csv", document(table).sheet)
    assert text.startswith('lead,cut_mm,status,marks\r\n"a ""b"", c\nd",1,"a|b')
    assert list(csv.reader(io.StringIO(text, newline="")))[1] == ['a "b", c\nd', "1", AWKWARD, ""]


def test_a_row_that_this_revision_changed_bears_its_sign_in_every_face() -> None:
    table = Table("t", "T", (Column("lead"), Column("cut", "mm", number=True)), (row("L1", "1"), CHANGED))
    whole = document(table)
    assert render_tables("text", whole.sheet).splitlines()[4] == "L2 Δ 3, 5         2"
    assert render_tables("csv", whole.sheet).splitlines()[2] == 'L2,2,"row: changed 3, 5"'
    records = json.loads(render_tables("json", whole.sheet))["tables"]["t"]["records"]
    assert [each["marks"] for each in records] == [{}, {"row": "changed 3, 5"}]
    markdown = document_renderer("md")(whole, STANDARD)
    assert "| L1 | 1 |\n| L2 Δ 3, 5 | 2 |" in markdown
    assert "Δ changed in this revision, with the number of the change" in markdown
    page = document_renderer("html")(whole, STANDARD)
    assert page.count('<span class="mark change"><span class="unseen">changed </span>3, 5</span>') == 1
    assert "Δ changed in this revision" not in document_renderer("html")(document(LEADS), STANDARD)


def test_csv_of_several_tables_asks_which() -> None:
    with pytest.raises(NotOneTable, match="has leads, spares") as caught:
        render_tables("csv", TWO)
    assert caught.value.names == ("leads", "spares")
    assert render_tables("csv", TWO, "spares") == "lead,cut_mm,status,marks\r\n"


def test_a_table_that_is_not_there() -> None:
    with pytest.raises(LookupError, match="has no table 'power_off'"):
        render_tables("text", ONE, "power_off")


def test_json_keeps_numbers_as_numbers_and_totals_apart() -> None:
    held = json.loads(render_tables("json", ONE))
    assert held["format"] == 1
    assert held["tables"]["leads"] == {
        "records": [
            {"lead": "L01", "cut_mm": 153, "status": "make", "marks": {}},
            {"lead": "L02", "cut_mm": 1.5, "status": "make", "marks": {"cut_mm": "assumed", "status": "FAIL"}},
        ],
        "totals": [{"lead": "total", "cut_mm": 154.5, "status": None, "marks": {}}],
    }


def test_json_keeps_what_is_no_plain_number_as_text() -> None:
    table = Table("t", "T", COLUMNS, (row("007", "≤ 5", ""), row("x", "−20", "")))
    records = json.loads(render_tables("json", document(table).sheet))["tables"]["t"]["records"]
    assert [(record["lead"], record["cut_mm"]) for record in records] == [("007", "≤ 5"), ("x", -20)]


def test_column_names_are_stable_unique_and_bear_the_unit() -> None:
    columns = (
        Column("route R+V", "mm"),
        Column("used", "%"),
        Column("V"),
        Column("v"),
        Column("load", "mA", key="load_mA"),
        Column("#"),
    )
    assert column_names(Table("t", "T", columns, ())) == (
        "route_r_v_mm",
        "used_percent",
        "v",
        "v_2",
        "load_mA",
        "column",
    )


@pytest.mark.parametrize("name", DOCUMENTS)
def test_every_document_format_can_be_loaded(name: str) -> None:
    assert "Cable list" in document_renderer(name)(document(LEADS), STANDARD)


@pytest.mark.parametrize("name", TABLES)
def test_every_table_format_can_be_loaded(name: str) -> None:
    assert "L01" in render_tables(name, ONE)
