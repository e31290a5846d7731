"""Documents -> Markdown: tables unpadded, so that one changed cell is one changed line."""

from __future__ import annotations

import re

from rigc.output import templates
from rigc.output.layout import STANDARD, Layout
from rigc.output.templates import NOTHING, Whole
from rigc.reports.content import Document, Table

_GAP = re.compile(r"\n{3,}")


def render(documents: tuple[Document, ...] | Document, layout: Layout = STANDARD, whole: Whole = NOTHING) -> str:
    """One Markdown file with all documents, in order. Raises `TemplateMistake`."""
    several = (documents,) if isinstance(documents, Document) else documents
    return _tidy(templates.render("markdown", several, layout, whole))


def render_tables(tables: tuple[Table, ...]) -> str:
    """Tables alone, each under its caption."""
    return _tidy(templates.render_tables("markdown", tables, STANDARD))


def _tidy(text: str) -> str:
    return _GAP.sub("\n\n", "\n".join(row.rstrip() for row in text.split("\n"))).strip("\n") + "\n"
