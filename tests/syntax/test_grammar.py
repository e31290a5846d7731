"""The grammar and the nodes belong together: a class for each rule, and what the parser builds is what they declare."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

import pytest
from derivations import derived, rig_texts
from grammars import TEXT, class_name, node_classes, parsed, rules, within
from hypothesis import HealthCheck, given, settings
from lark import Lark

from rigc.syntax import nodes
from rigc.syntax.nodes import Node
from rigc.syntax.nodes.written import Field, Part, parts, rule_of

NO_NODES = {"Amount", "Spread", "UpTo"}
"""Rules whose class is a leaf, or a part of one."""

few = settings(max_examples=4, deadline=None, database=None, derandomize=True, suppress_health_check=list(HealthCheck))


def test_each_rule_has_a_class_and_each_class_a_rule() -> None:
    assert {class_name(rule) for rule in rules()} - NO_NODES == set(node_classes())


def test_the_grammar_is_strict() -> None:
    """No two terminals can match the same text in one place, and no rule is ambiguous (lark checks it)."""
    Lark(TEXT, parser="lalr", start="file", maybe_placeholders=True, strict=True)


@pytest.mark.parametrize("made", node_classes().values(), ids=lambda made: made.__name__)
def test_a_field_stands_for_each_part_of_its_rule(made: type[Node]) -> None:
    """In order; one that its rule has in square brackets may be absent, and no other."""
    named = list(_fields(parts(rule_of(made), made.FIELDS), False))
    assert [name for name, _ in named] == [*made.FIELDS[:-1]]
    told = made.__annotations__
    assert {name: "None" in told[name] for name, _ in named} == dict(named)


def _fields(these: Iterable[Part], optional: bool) -> Iterator[tuple[str, bool]]:
    for part in these:
        if isinstance(part, Field):
            yield part.name, optional
        elif isinstance(part, tuple):
            yield from _fields(part, True)


@pytest.mark.parametrize("rule", [name for name in derived() if name in rules() or name.startswith("_")])
def test_random_rigs_read_as_they_print(rule: str) -> None:
    """Random rigs that hold a certain rule: they parse, and what is printed parses to the same nodes."""

    @few
    @given(rig_texts(rule))
    def one(text: str) -> None:
        read = parsed(text)
        assert [finding.message for finding in read.findings] == []
        kinds = {type(node).__name__ for node in within(read.file)}
        assert class_name(rule) in kinds or class_name(rule) in NO_NODES or rule.startswith("_")
        again = parsed(str(read.file))
        assert again.findings == ()
        assert again.file == read.file
        assert all(_of_its_types(node) for node in within(read.file))

    one()


def _of_its_types(node: Node) -> bool:
    """Whether each field holds what its annotation says."""
    for field in node.FIELDS:
        value, told = getattr(node, field), type(node).__annotations__.get(field, "Span")
        if value is None:
            held = "None" in told
        elif isinstance(value, tuple):
            inner = told.removeprefix("tuple[").split(",")[0]
            held = told.startswith("tuple[") and all(isinstance(each, getattr(nodes, inner)) for each in value)
        elif field == "span":
            held = told == "Span"
        else:
            kinds = [vars(nodes)[name] for name in told.split(" | ") if name != "None"]
            held = any(isinstance(value, kind) for kind in kinds)
        if not held:
            return False
    return True
