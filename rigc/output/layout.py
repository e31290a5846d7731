"""How documents are to be laid out: the choices of the user that are no part of their content."""

from __future__ import annotations

from typing import Protocol

from rigc.output.own_templates import OwnTemplates
from rigc.record import Record

PAPERS = ("a4", "letter")


class Kept(Protocol):
    """Bytes by name from one run to the next; what is read is what was written, or None."""

    def read(self, name: str) -> bytes | None: ...

    def write(self, name: str, data: bytes) -> None: ...

    def __hash__(self) -> int: ...


class Layout(Record):
    """The paper that pages are printed on (one of `PAPERS`), and the user's own templates, if any.

    Compiled templates are kept in `cache`, which nobody but the user can write; None where they are not. What is `live` is no
    page, but goes into one that answers clicks: its numbers tell the names of their figures.
    """

    paper: str = "a4"
    templates: OwnTemplates | None = None
    cache: Kept | None = None
    live: bool = False


STANDARD = Layout()
