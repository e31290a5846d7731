"""How a node is written: its words, signs and fields in order, as its rule in `grammar/rig.lark` has them. Needs no lark."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache
from typing import Any

from rigc.record import Record
from rigc.resources import folder


class Field(Record):
    """Where a field stands. `between` stands between the items of a list; it is None where they are statements on lines of their own."""

    name: str
    between: str | None


Part = str | Field | tuple["Part", ...]
"""A word or sign of the language, a field, or what is left out when none of its fields is there."""

_TOKEN = re.compile(r'"[^"]*"|\w+|[][()]')
_NO_BLANK_BEFORE = (",", ":", ".", "..")
_NO_BLANK_BEHIND = (".", "..")


def written(node: Record) -> str:
    """The text of a node; parsing it gives an equal one."""
    text = ""
    glued = True
    for word in _words(parts(rule_of(type(node)), node.FIELDS), node):
        text += word if glued or word in _NO_BLANK_BEFORE else f" {word}"
        glued = word in _NO_BLANK_BEHIND
    return text


def opening(kind: type[Record]) -> str:
    """The words with which a statement begins, up to its first field: `mains-strip`, `fitted version`; empty if a field is first."""
    words = []
    for part in parts(rule_of(kind), kind.FIELDS):
        if not isinstance(part, str):
            break
        words.append(part)
    return " ".join(words)


def rule_of(kind: type[Record]) -> str:
    """The grammar's rule of a node's class: `FootSwitch` is of `foot_switch`."""
    return _rule(kind.__name__)


@cache
def _rule(name: str) -> str:
    return re.sub(r"(?<!^)(?=[A-Z])", "_", name).lower()


@cache
def rules() -> dict[str, str]:
    """What stands behind the colon of each rule of the grammar; also under the name that `->` gives to one of its choices."""
    grammar = (folder("grammar") / "rig.lark").read_text("utf-8")
    found = dict(re.findall(r"^[!?]?([a-z_]+): (.*)$", re.sub(r"\n +", " ", grammar), re.MULTILINE))
    renamed = [(name, choice) for rule in found.values() for choice, name in re.findall(r"([^|]*) -> (\w+)", rule)]
    return found | dict(renamed)


@cache
def parts(rule: str, names: tuple[str, ...]) -> tuple[Part, ...]:
    """The parts of a rule, whose fields bear these names in order."""
    return tuple(_read(iter(_TOKEN.findall(rules()[rule])), iter(names), ""))


def _read(tokens: Iterator[str], names: Iterator[str], end: str) -> Iterator[Part]:
    """The parts up to the bracket that ends them. A choice in round brackets is one field; `_NL` and braces go with the statements."""
    for token in tokens:
        if token == end:
            return
        if token == "[":
            yield tuple(_read(tokens, names, "]"))
        elif token == "_X":
            yield "x"
        elif token.startswith('"'):
            if token not in ('"{"', '"}"'):
                yield token.strip('"')
        elif token != "_NL":
            if token == "(":
                list(iter(tokens.__next__, ")"))
            yield Field(next(names), _between(token))


def _between(rule: str) -> str | None:
    body = rules().get(rule, "") if rule.endswith("_list") else ""
    sign = re.search(r'"([^"]*)"', body)
    if "_NL" in body:
        return None
    return " " if sign is None else ", " if sign[1] == "," else f" {sign[1]} "


def _words(these: tuple[Part, ...], node: Record) -> Iterator[str]:
    for part in these:
        if isinstance(part, str):
            yield part
        elif isinstance(part, tuple):
            if any(getattr(node, each.name) is not None for each in part if isinstance(each, Field)):
                yield from _words(part, node)
        else:
            value: Any = getattr(node, part.name)
            if not isinstance(value, tuple):
                yield str(value)
            elif part.between is None:
                yield "\n  ".join(("{", *(line for item in value for line in str(item).split("\n")))) + "\n}"
            elif value:
                yield part.between.join(map(str, value))
