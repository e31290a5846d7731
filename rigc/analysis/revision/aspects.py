"""A revision -> all that can be said of it, one aspect each: what two revisions are compared by, and what a seal stands for."""

from __future__ import annotations

from rigc.analysis.results import Results
from rigc.analysis.revision.compared.aspect import Aspect, Key
from rigc.discover import members
from rigc.record import Record


class Aspects(Record):
    """All aspects by their key, kind after kind. Where the source gives one twice the last counts."""

    by_key: dict[Key, Aspect]


def aspects(results: Results) -> Aspects:
    """Asks every kind; findings and what is recorded of the built board are no aspects of a design."""
    makers = members("rigc.analysis.revision.compared.aspects", "ASPECTS")
    return Aspects({each.key: each for made in makers for each in results.call(made)})


COMPUTE = aspects
