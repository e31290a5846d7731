"""How documents are to be laid out: the choices of the user that are no part of their content."""

from __future__ import annotations

from rigc.analysis.kept import NOTHING_KEPT, Kept
from rigc.output.own_templates import OwnTemplates
from rigc.record import Record

PAPERS = ("a4", "letter")


class Layout(Record):
    """The paper that pages are printed on (one of `PAPERS`), and the user's own templates, if any.

    What our own templates made of a sheet is `kept`. What is `live` is no page, but goes into one that answers clicks: its numbers tell
    the names of their figures.
    """

    paper: str = "a4"
    templates: OwnTemplates | None = None
    kept: Kept = NOTHING_KEPT
    live: bool = False


STANDARD = Layout()
