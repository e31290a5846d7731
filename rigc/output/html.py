"""Documents -> one HTML file that needs nothing else: styles inside, no script, made for the screen and for paper."""

from __future__ import annotations

from rigc.output import templates
from rigc.output.layout import STANDARD, Layout
from rigc.output.templates import NOTHING, Whole
from rigc.reports.content import Document


def render(documents: tuple[Document, ...] | Document, layout: Layout = STANDARD, whole: Whole = NOTHING) -> str:
    """One HTML file with all documents, in order, each from a new page on. Raises `TemplateMistake`."""
    several = (documents,) if isinstance(documents, Document) else documents
    return templates.render("html", several, layout, whole).strip("\n") + "\n"
