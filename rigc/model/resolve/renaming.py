"""Statements and other names for things -> the same statements with those names, as if they had always been called so."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from rigc.model.resolve import FAMILIES, mentions
from rigc.source import Span
from rigc.syntax import nodes
from rigc.syntax.nodes import Node, Word
from rigc.syntax.reworded import Part, reworded


def renamed(
    statements: tuple[Node, ...], names: Mapping[str, str], reserved: frozenset[str], end: Span
) -> tuple[Node, ...]:
    """Every thing of a name in `names` bears the other name, where it is declared and wherever it is named.

    The words keep their places in the sources. Names of cables, plug kinds and other families stay.
    """
    if not names:
        return statements
    places = {place_of(word) for word in thing_words(statements, reserved, end) if word.text in names}

    def change(part: Part) -> Part:
        if isinstance(part, Word) and place_of(part) in places:
            return Word(names[part.text], part.span)
        return part

    changed: tuple[Node, ...] = reworded(statements, change)
    return changed


def thing_words(statements: tuple[Node, ...], reserved: frozenset[str], end: Span) -> Iterator[Word]:
    """Every word that names a thing: at its declaration, where it is mentioned, behind `like`, and in `accept`."""
    yield from mentions(statements, reserved, end)["thing"]
    for statement in statements:
        if FAMILIES.get(type(statement), ("",))[0] == "thing":
            yield statement.name  # type: ignore[attr-defined]
            like = getattr(statement, "like", None)
            if like is not None:
                yield like
        elif isinstance(statement, nodes.Accept) and isinstance(statement.target, nodes.Endpoint):
            yield statement.target.thing


def place_of(word: Word) -> tuple[int, int]:
    """By which a word is known among all that the sources hold."""
    return id(word.span.source), word.span.start
