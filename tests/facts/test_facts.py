"""Every number that rigc relies on says where it comes from."""

from __future__ import annotations

from rigc.discover import walk
from rigc.facts.fact import Fact

FACTS = {
    f"{module.__name__}.{name}{key}": fact
    for module in walk("rigc.facts")
    for name, value in vars(module).items()
    for key, fact in ([(f"[{key}]", each) for key, each in value.items()] if isinstance(value, dict) else [("", value)])
    if isinstance(fact, Fact)
}


def test_there_are_facts() -> None:
    """The walk finds facts of several subjects: else the next test would prove nothing."""
    assert len({name.rpartition(".")[0] for name in FACTS}) >= 3


def test_no_fact_lacks_a_source() -> None:
    """It has words for what it is, and a source that is more than a shrug."""
    assert [name for name, fact in FACTS.items() if min(len(fact.says.split()), len(fact.source.split())) < 2] == []
