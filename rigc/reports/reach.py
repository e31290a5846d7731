"""Which sheets bear each statement of the language: a table that is proved by changing every statement, part by part."""

from __future__ import annotations

from functools import cache

from rigc.record import Record
from rigc.syntax import nodes


class Reach(Record):
    """The sheets that bear a part of a statement: they all differ when it is changed; and those that may follow it."""

    statement: str
    part: str
    bears: tuple[str, ...]
    follows: tuple[str, ...]


@cache
def reach() -> dict[tuple[str, str], Reach]:
    """The rows of the table by statement and part."""
    found = {}
    statement = ""
    for line in TABLE.strip().splitlines():
        names, bears, follows = (cell.split() for cell in line.split("|"))
        if len(names) == 2:
            statement = names[0]
        found[statement, names[-1]] = Reach(statement, names[-1], tuple(bears), tuple(follows))
    return found


def sheets_of(word: str) -> tuple[str, ...]:
    """The sheets that bear some part of the statements that begin with this word, in the order of the folder."""
    rules = _rules().get(word, frozenset())
    rows = (row for (statement, _), row in reach().items() if statement.partition("@")[0] in rules)
    return tuple(sorted({sheet for row in rows for sheet in row.bears}))


@cache
def _rules() -> dict[str, frozenset[str]]:
    """The grammar's rules by the word with which their statements begin."""
    found: dict[str, set[str]] = {}
    for name, kind in vars(nodes).items():
        if isinstance(kind, type) and issubclass(kind, nodes.Node) and kind.FORM:
            found.setdefault(kind.FORM.split()[0], set()).add(rule_of(name))
    return {word: frozenset(rules) for word, rules in found.items()}


def rule_of(name: str) -> str:
    """The grammar's rule of a node class by its name: `FootSwitch` is `foot_switch`."""
    return "".join(f"_{letter.lower()}" if letter.isupper() else letter for letter in name).lstrip("_")


NO_FACTS = {
    "language": "says how the file is read",
    "use": "brings in another file, whose statements have rows of their own",
    "sourced": "a fact with its provenance: each of them has its rows",
}
"""Statements that reach no sheet by themselves, and why."""

TABLE = """
draws amount | power-table |
"""
