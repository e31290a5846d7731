"""Limits that the rig sets for itself."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.revision.compared.aspect import RULES, Aspect
from rigc.model.rig import Rig


def limits(rig: Rig) -> Iterator[Aspect]:
    """A limit is a rule of this rig."""
    for limit in rig.head.limits:
        yield Aspect("limit", limit.name, "", limit.amount.typed, limit.amount.value, RULES, span=limit.span)
        yield Aspect("limit", limit.name, "source", limit.source or "not said", limit.source, RULES, span=limit.span)


ASPECTS = limits
