"""Random text of the rig language: a walk through the grammar's own rules, so that no statement can be forgotten."""

from __future__ import annotations

from collections.abc import Callable
from functools import cache
from typing import Any

from grammars import TEXT
from hypothesis import strategies as st
from lark import Lark
from lark.grammar import NonTerminal, Terminal

from rigc.source import Source, Span
from rigc.syntax.nodes import Text

Draw = Callable[[st.SearchStrategy[Any]], Any]
Token = tuple[str, str]
DEEP = 14

NOWHERE = Span(Source("", ""), 0, 0)
SAMPLES: dict[str, st.SearchStrategy[str]] = {
    "NAME": st.sampled_from(["plumb", "lant-2", "z", "o1", "s8", "rear-panel", "b52", "x", "x1", "mm"]),
    "MARK": st.sampled_from(["A", "A14", "D2a", "JP", "C8", "S22", "N1"]),
    "DATE": st.sampled_from(["2026-03-02", "1999-12-31", "2026-02-28"]),
    "NUMBER": st.sampled_from(["0", "1", "12", "8.7", "-20", "+4", "007", "1000000"]),
    "UNIT": st.sampled_from(["mm", "in", "V", "Hz", "kΩ", "%", "°", "pF/m", "mm2", "dBu", "µF", "EUR", "furlong"]),
    "STRING": st.text(st.characters(exclude_categories=("Cc", "Cs")), max_size=8).map(
        lambda value: str(Text(value, NOWHERE))
    )
    | st.just(r'"a \"b\" \\ \n c"'),
    "_NL": st.sampled_from(["\n", "\n\n", "  # a remark {\n", "\n  # a line of its own\n"]),
    "_X": st.just("x"),
    "_PLUS_MINUS": st.sampled_from(["+-", "±", "+/-"]),
}


@cache
def _lark() -> Lark:
    """The grammar's rules; nothing is parsed by it, so the parser is one that needs no tables."""
    return Lark(TEXT, parser="earley", start="file", maybe_placeholders=True)


@cache
def _expansions() -> dict[str, list[list[Any]]]:
    found: dict[str, list[list[Any]]] = {}
    for rule in _lark().rules:
        expansions = found.setdefault(rule.origin.name, [])
        if list(rule.expansion) not in expansions:
            expansions.append(list(rule.expansion))
    return found


@cache
def literals() -> dict[str, str]:
    """The grammar's fixed words and signs by their terminal."""
    return {each.name: each.pattern.value for each in _lark().terminals if each.name not in SAMPLES}


@cache
def derived() -> list[str]:
    """The names of all rules that a file can hold."""
    return sorted(name for name in _expansions() if not name.startswith("__"))


@cache
def _depths() -> dict[str, int]:
    """The least number of steps in which each rule comes to an end."""
    depths: dict[str, int] = {}
    while len(depths) < len(_expansions()):
        for name, expansions in _expansions().items():
            ends = [
                1 + max((depths[part.name] for part in parts if isinstance(part, NonTerminal)), default=0)
                for parts in expansions
                if all(isinstance(part, Terminal) or part.name in depths for part in parts)
            ]
            if ends:
                depths[name] = min((*ends, depths.get(name, DEEP * DEEP)))
    return depths


@cache
def _reaches(name: str) -> frozenset[str]:
    """The rules that can hold the rule of this name, and itself."""
    found = {name}
    while True:
        more = {
            origin
            for origin, expansions in _expansions().items()
            if any(part.name in found for parts in expansions for part in parts if isinstance(part, NonTerminal))
        } - found
        if not more:
            return frozenset(found)
        found |= more


@st.composite
def rig_texts(draw: Draw, holding: str = "file") -> str:
    """A random file that is well written; it holds the rule of that name at least once."""
    tokens = _tokens(draw, "file", holding, 0)
    words: list[str] = []
    for at, (kind, word) in enumerate(tokens):
        if kind == "IN" and at and tokens[at - 1][0] == "NUMBER":
            words.append("mm")  # without a unit before it, "in" is the inch
        words.append(word)
    return " ".join(words)


@st.composite
def token_soups(draw: Draw) -> str:
    """Words and signs of the language in any order."""
    fixed = st.sampled_from(sorted(literals().values()))
    soup = draw(st.lists(st.one_of(fixed, fixed, st.just("\n"), *SAMPLES.values()), max_size=40))
    between: str = draw(st.sampled_from([" ", ""]))
    return between.join(soup)


def _tokens(draw: Draw, name: str, holding: str, deep: int) -> list[Token]:
    expansions = _expansions()[name]
    wanted = _reaches(holding) if holding and holding != name else frozenset()
    carrying = [parts for parts in expansions if any(part.name in wanted for part in parts)] if wanted else expansions
    if deep > DEEP:
        ends = [(_steps(parts, holding) if wanted else 0, _length(parts)) for parts in carrying]
        carrying = [parts for parts, end in zip(carrying, ends, strict=True) if end == min(ends)]
    parts = draw(st.sampled_from(carrying))
    bearers = [at for at, part in enumerate(parts) if part.name in wanted]
    if deep > DEEP and bearers:
        bearers = [min(bearers, key=lambda at: _steps_to(holding)[parts[at].name])]
    bearer = draw(st.sampled_from(bearers)) if bearers else -1
    found: list[Token] = []
    for at, part in enumerate(parts):
        if isinstance(part, NonTerminal):
            found += _tokens(draw, part.name, holding if at == bearer else "", deep + 1)
        else:
            found.append((part.name, _word(draw, part.name)))
    return found


def _steps(parts: list[Any], holding: str) -> int:
    """The fewest steps from an expansion to the rule that is to be held."""
    return min(_steps_to(holding)[part.name] for part in parts if part.name in _steps_to(holding))


@cache
def _steps_to(holding: str) -> dict[str, int]:
    """How many steps each rule that can hold the rule of this name is away from it: past the depth, a list must not hold itself on."""
    steps = {holding: 0}
    while len(steps) < len(_reaches(holding)):
        for name in _reaches(holding) - steps.keys():
            below = [steps[part.name] for parts in _expansions()[name] for part in parts if part.name in steps]
            if below:
                steps[name] = 1 + min(below)
    return steps


def _length(parts: list[Any]) -> int:
    return max((_depths()[part.name] for part in parts if isinstance(part, NonTerminal)), default=0)


def _word(draw: Draw, terminal: str) -> str:
    sample = SAMPLES.get(terminal)
    return literals()[terminal] if sample is None else str(draw(sample))
