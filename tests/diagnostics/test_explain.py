"""Rules, listed and explained."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from rigc.diagnostics.diagnostic import Kind, Level
from rigc.diagnostics.explain import FACT, UnknownRule, all_kinds, listing, page
from rigc.discover import walk
from rigc.facts.fact import Fact
from rigc.facts.paths import LATENCY_APART_MS

FACTS = [value for module in walk("rigc.facts") for value in vars(module).values() if isinstance(value, Fact)]

PAGE = """A supply feeds units that together draw more than it gives.

Why it matters: its voltage sags, or it shuts down.
What to do: feed a unit from elsewhere.
Source: arithmetic on declared values.
"""
OVERLOAD = Kind("overloaded-supply", Level.ERROR, PAGE, "load <= rating", "arithmetic on declared values")
BARE = Kind("not-understood", Level.CANT_CHECK, None, "a statement is one of the language's", "the grammar")
KINDS = (OVERLOAD, BARE)


@pytest.mark.parametrize("name", ["overloaded-supply", "Overloaded-SUPPLY"])
def test_a_page_by_name_in_any_case(name: str) -> None:
    assert page(KINDS, name) == ("overloaded-supply (error)\n\n" + PAGE + "\nRule: load <= rating\n")


def test_a_page_that_is_indented_in_its_module_is_not_when_printed() -> None:
    first, _, rest = PAGE.partition("\n")
    inside = f"{first}\n" + "".join(f"    {line}\n" if line else "\n" for line in rest.splitlines())
    assert page([OVERLOAD.replace(page=inside)], "overloaded-supply") == page(KINDS, "overloaded-supply")


def test_a_rule_without_a_page_tells_what_it_has() -> None:
    assert page(KINDS, "not-understood") == (
        "not-understood (can't-check)\n\na statement is one of the language's\nSource: the grammar\n"
    )


@pytest.mark.parametrize(("typed", "near"), [("overload-supply", "overloaded-supply"), ("zzz", "")])
def test_an_unknown_rule_names_the_nearest(typed: str, near: str) -> None:
    with pytest.raises(UnknownRule) as caught:
        page(KINDS, typed)
    assert caught.value.near == near
    assert str(caught.value) == f"there is no rule '{typed}'" + (f"; did you mean '{near}'?" if near else "")


def test_the_list_is_aligned() -> None:
    assert listing(KINDS) == (
        "overloaded-supply  error        A supply feeds units that together draw more than it gives\n"
        "not-understood     can't-check  a statement is one of the language's\n"
    )


RULES = """
from rigc.diagnostics.diagnostic import Kind, Level
ONE = Kind("two", Level.ERROR, None, "", "")
ALL = (ONE, Kind("one", Level.ERROR, None, "", ""), "no rule")
"""


def test_rules_are_found_alone_and_in_tuples_each_once(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    package = tmp_path / "house_of_rules"
    (package / "room").mkdir(parents=True)
    (package / "__init__.py").touch()
    (package / "room" / "__init__.py").touch()
    (package / "room" / "rules.py").write_text(RULES)
    (package / "parser.py").write_text("raise AssertionError('nothing is declared here')\n")
    monkeypatch.syspath_prepend(str(tmp_path))
    assert [kind.name for kind in all_kinds(("house_of_rules", "no_such_module"))] == ["one", "two"]


def test_no_rule_is_missed_by_looking_into_few_modules() -> None:
    assert all_kinds() == all_kinds(word="")


def test_every_rule_of_rigc_can_be_explained() -> None:
    kinds = all_kinds()
    for kind in kinds:
        assert page(kinds, kind.name).startswith(f"{kind.name} (")


def test_a_page_tells_a_fact_as_it_is_with_its_unit() -> None:
    told = page(
        [
            OVERLOAD.replace(
                page="Late by {paths.LATENCY_APART_MS}, {paths.LATENCY_APART_MS.value:g}; write {id}.\n\nSource: us."
            )
        ],
        OVERLOAD.name,
    )
    fact = LATENCY_APART_MS
    assert f"Late by {fact.value:g} ms, {fact.value:g}; write {{id}}." in told


ONE_OF_MANY = {("paths-cancel", "440 Hz"), ("weak-strip", "150 mm")}
"""Numbers of the trade in pages that only happen to be those of a fact about something else."""


@pytest.mark.parametrize("kind", all_kinds(), ids=lambda kind: kind.name)
def test_no_page_repeats_the_number_of_a_fact_by_hand(kind: Kind) -> None:
    """A number with the unit of a fact and its value is written as that fact, so that it can't part from it; statements are examples."""
    facts = {str(fact) for fact in FACTS if fact.unit}
    told = re.findall(
        r"(?<![\w.·-])(−?\d+(?:\.\d+)? [^\W\d_]+|−?\d+(?:\.\d+)? [%°]C?)",
        " ".join(re.sub("`[^`]*`", "", kind.page or "").split()),
    )
    assert {(kind.name, each) for each in told if each in facts} - ONE_OF_MANY == set()


def test_every_fact_that_a_page_quotes_is_there() -> None:
    for kind in all_kinds():
        assert not FACT.search(page([kind], kind.name)), kind.name
