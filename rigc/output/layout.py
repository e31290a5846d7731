"""How documents are to be laid out: the choices of the user that are no part of their content."""

from __future__ import annotations

from pathlib import Path

from rigc.output.own_templates import OwnTemplates
from rigc.record import Record

PAPERS = ("a4", "letter")


class Layout(Record):
    """The paper that pages are printed on (one of `PAPERS`), and the user's own templates, if any.

    `cache` is a folder of the user's own in which compiled templates are kept; None where there is none.
    """

    paper: str = "a4"
    templates: OwnTemplates | None = None
    cache: Path | None = None


STANDARD = Layout()
