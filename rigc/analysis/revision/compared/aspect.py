"""Aspect: one thing that can be said of a revision, with what has to be done where it is said otherwise."""

from __future__ import annotations

from typing import Any

from rigc.record import Record
from rigc.source import Span

REWIRE, REPOWER, REDRILL, RELABEL, PAPER = WORK = ("rewire", "repower", "redrill", "relabel", "paper")
"""The kinds of work, the one that takes most first: leads to make, move or pull; outlets, voltages and mains settings; what
moves or is fastened otherwise; labels; what is only read and filed."""

DESIGN, FACTS, STOCK, RULES, COMPUTED = "design", "facts", "stock", "rules", "computed"

Key = tuple[str, str, str]
"""Kind, name and field."""


class Aspect(Record):
    """What holds for the `field` of a thing: `text` is how it is told (with its unit), `value` what counts when compared.

    The aspect whose field is empty says that the thing is there. `origin` is design, facts, stock, rules (all stated) or
    computed; `work` what a change of it asks for. A `detail` is told only if everything is asked for.
    """

    kind: str
    name: str
    field: str
    text: str
    value: Any
    origin: str
    work: tuple[str, ...] = (PAPER,)
    span: Span | None = None
    detail: bool = False

    @property
    def key(self) -> Key:
        """What two revisions know it by."""
        return self.kind, self.name, self.field
