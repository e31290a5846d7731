"""The grammar as tests use it: its text, its rules, its tables, and a short way to parse."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache
from typing import Any

from rigc.files.reader import CachedReader
from rigc.record import Record
from rigc.resources import folder
from rigc.source import Source
from rigc.syntax import nodes
from rigc.syntax.nodes import Node
from rigc.syntax.parse import Grammar, parse
from rigc.syntax.parsed import Parsed

TEXT = (folder("grammar") / "rig.lark").read_text("utf-8")


@cache
def grammar() -> Grammar:
    """The tables."""
    return CachedReader().grammar


class Uncached:
    """A reader that keeps nothing."""

    @property
    def reserved(self) -> frozenset[str]:
        """The words that can't name a thing."""
        return _reserved()

    def parse(self, source: Source, near: Parsed | None = None) -> Parsed:  # noqa: ARG002
        """The file as written."""
        return parse(source, grammar())


@cache
def _reserved() -> frozenset[str]:
    return grammar().tables.reserved


def parsed(text: str) -> Parsed:
    """The text as a file."""
    return parse(Source("board.rig", text), grammar())


def node_classes() -> dict[str, type[Node]]:
    """The node classes by name."""
    return {
        name: made
        for name, made in vars(nodes).items()
        if isinstance(made, type) and issubclass(made, Node) and made is not Node
    }


def rules() -> set[str]:
    """The rules that become nodes: no lists, no words, none that is dissolved; and the names given behind `->`."""
    heads = re.findall(r"^([a-z][a-z_]*):", TEXT, re.MULTILINE)
    renamed = re.findall(r"-> ([a-z_]+)\b(?!\")", TEXT)
    return {rule for rule in (*heads, *renamed) if not rule.endswith(("_list", "_word"))}


def class_name(rule: str) -> str:
    """The node class of a rule."""
    return "".join(part.capitalize() for part in rule.split("_"))


def within(value: Any) -> Iterator[Node]:
    """A node and all nodes in it."""
    if isinstance(value, tuple):
        for each in value:
            yield from within(each)
    elif isinstance(value, Record):
        if isinstance(value, Node):
            yield value
        for field in value.FIELDS:
            yield from within(getattr(value, field))
