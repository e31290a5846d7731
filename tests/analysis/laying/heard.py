"""A search that runs -> what its parts ask each other and answer: how often, and a check sum of all of it.

Where a search comes to the same places by another way, a slip in how it goes there shows here.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from typing import Any
from zlib import crc32

import pytest

from rigc.analysis.laying.search.asked import Asked
from rigc.analysis.laying.search.free_room import FreeRoom
from rigc.analysis.laying.search.glue import Glue
from rigc.analysis.laying.search.insertion import Insertion
from rigc.analysis.laying.search.known import KNOWN
from rigc.analysis.laying.search.layout import Layout
from rigc.analysis.laying.search.moves import Dice
from rigc.analysis.laying.search.rows.hindrance import Hindrance
from rigc.analysis.laying.search.rows.lead_ways import LeadWays
from rigc.analysis.laying.search.rows.met_leads import MetLeads

_PRIME = (1 << 61) - 1
PARTS: tuple[tuple[type, str], ...] = (
    (Dice, "below"),
    (Layout, "__init__"),
    (Layout, "faults_with"),
    (Layout, "cost_at_sight"),
    (Layout, "cost_with"),
    (Layout, "take"),
    (FreeRoom, "of_group"),
    (Glue, "offsets"),
    (Glue, "joined"),
    (Insertion, "best"),
    (Hindrance, "of"),
    (MetLeads, "runs"),
    (LeadWays, "least"),
    (Asked, "of_ways"),
)
"""What is listened to: of a layout that is made or changed it is what that costs and what is wrong with it."""


@contextmanager
def heard() -> Iterator[dict[str, list[int]]]:
    """By part and question, how often it was asked meanwhile and the sum of the answers; no layout is known from before."""
    found: dict[str, list[int]] = {}
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(KNOWN, "_found", {})
        patch.setattr(KNOWN, "kept", None)
        for owner, name in PARTS:
            sums = found[f"{owner.__name__} {name.strip('_')}"] = [0, 0]
            patch.setattr(owner, name, _listening(getattr(owner, name), sums))
        yield found


def _listening(asked: Callable[..., Any], sums: list[int]) -> Callable[..., Any]:
    def listening(part: Any, *words: Any, **named: Any) -> Any:
        answer = asked(part, *words, **named)
        said = (
            (part.cost, part.hard, part.missed, part.broken) if answer is None and isinstance(part, Layout) else answer
        )
        sums[0] += 1
        sums[1] = crc32(repr(_short(said)).encode(), sums[1])
        return answer

    return listening


def _short(said: Any) -> Any:
    """The same with its bits, of which there are thousands, by their remainder."""
    if isinstance(said, int):
        return said % _PRIME
    if isinstance(said, dict):
        return [(key, _short(value)) for key, value in said.items()]
    return [_short(each) for each in said] if isinstance(said, list | tuple) else said


def in_words(found: dict[str, list[int]]) -> str:
    """A line for each part that was asked something."""
    return "".join(f"{name}: {count} times, {total:08x}\n" for name, (count, total) in found.items() if count)
