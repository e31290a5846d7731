"""Unfed: why units are left without an outlet."""

from __future__ import annotations

from rigc.model.jacks import Port
from rigc.record import Record
from rigc.source import Span


class Unfed(Record):
    """Units without an outlet for one common reason; `outlets` are those it is about.

    `why` is `no word` (nothing in the source feeds them), `no outlets` (the
    supplies to choose from have none), `unknown needs`, `rivals` (they want only these outlets, which are too few; none
    at all where `outlets` is empty); or each alone would find one and all together don't, because of outlets that the source
    wants `kept free`, a supply's `ceiling`, or several such things `together`; or the search ended `undecided`
    after more steps than it may take.
    """

    why: str
    units: tuple[str, ...]
    outlets: tuple[Port, ...]
    span: Span
