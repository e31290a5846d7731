"""Offer: one thing that can be typed."""

from __future__ import annotations

from rigc.record import Record


class Offer(Record):
    """What is listed (`label`) and written (`text`, where that is more), of which `sort`: word, thing, jack, outlet, stock, country, lead, file
    or unit; `detail` says in a line what it is. Those with a smaller `rank` come first."""

    label: str
    sort: str
    detail: str = ""
    text: str = ""
    rank: int = 1
