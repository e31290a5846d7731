"""Rules -> their list, and the page of one: found by walking the modules that declare them."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from functools import cache
from importlib import import_module
from textwrap import dedent

from rigc.diagnostics.diagnostic import Kind
from rigc.diagnostics.near import nearest
from rigc.discover import walk

HOMES = ("rigc.syntax", "rigc.model", "rigc.analysis", "rigc.output", "rigc.compile")
"""Modules and packages in which rules are declared: as a `Kind`, or a tuple of them, with a name of its own."""

FACT = re.compile(r"\{([a-z_]+)\.[A-Z][^{}]*\}")
"""A fact that a page quotes, by its module and name."""


class UnknownRule(Exception):
    """No rule has this name; `near` is the nearest one there is, or empty."""

    def __init__(self, rule: str, near: str) -> None:
        super().__init__(f"there is no rule '{rule}'" + (f"; did you mean '{near}'?" if near else ""))
        self.near = near


@cache
def all_kinds(homes: tuple[str, ...] = HOMES, word: str = "Kind(") -> tuple[Kind, ...]:
    """Every declared rule, by name; found once, for the source of every module is read. Only modules that hold `word` are
    imported: explaining a rule needs no parser."""
    values = (value for home in homes for module in walk(home, word) for value in vars(module).values())
    found = {kind.name: kind for kind in _kinds(values)}
    return tuple(found[code] for code in sorted(found))


def rule_names() -> tuple[str, ...]:
    """The name of every rule, in order."""
    return tuple(kind.name for kind in all_kinds())


@cache
def renamed() -> dict[str, str]:
    """The names of today by those that rules had before."""
    return {once: kind.name for kind in all_kinds() for once in kind.once}


def listing(kinds: Iterable[Kind]) -> str:
    """One line for each rule: name, usual level, and the first sentence of its page."""
    rows = [(kind.name, kind.level.word, _first_sentence(kind)) for kind in kinds]
    widths = [max((len(row[at]) for row in rows), default=0) for at in range(2)]
    lines = [
        "  ".join((*(word.ljust(width) for word, width in zip(row, widths, strict=False)), row[2])) for row in rows
    ]
    return "".join(f"{line.rstrip()}\n" for line in lines)


def page(kinds: Iterable[Kind], rule: str) -> str:
    """The page of the rule with this name, or that had it before, in any letter case. Raises `UnknownRule`."""
    kinds = tuple(kinds)
    named = {name: kind for kind in kinds for name in kind.once} | {kind.name: kind for kind in kinds}
    if rule.lower() not in named:
        raise UnknownRule(rule, nearest(rule.lower(), named) or "")
    kind = named[rule.lower()]
    text = [f"{kind.name} ({kind.level.word})", "", *text_of(kind).splitlines()]
    if kind.rule and kind.page:
        text += ["", f"Rule: {kind.rule}"]
    if "Source:" not in (kind.page or ""):
        text += [f"Source: {kind.source}"]
    return "".join(f"{line}\n" for line in text)


def _kinds(values: Iterable[object]) -> Iterator[Kind]:
    for value in values:
        if isinstance(value, Kind):
            yield value
        elif isinstance(value, tuple):
            yield from (each for each in value if isinstance(each, Kind))


def _first_sentence(kind: Kind) -> str:
    """All of it, however many lines of the page it takes."""
    paragraph = " ".join(text_of(kind).partition("\n\n")[0].split())
    return re.split(r"\.(?=\s+[A-Z])", paragraph, maxsplit=1)[0].rstrip(".")


def text_of(kind: Kind) -> str:
    """The page of a rule, without the indentation that a text inside a module has from its second line on. A fact in braces,
    `{paths.LATENCY_APART_MS}`, is told with its unit: a docstring can't be an f-string."""
    first, _, rest = (kind.page or kind.rule).strip().partition("\n")
    return FACT.sub(_fact, f"{first}\n{dedent(rest)}".strip())


def _fact(told: re.Match[str]) -> str:
    return told[0].format(**{told[1]: import_module(f"rigc.facts.{told[1]}")})
