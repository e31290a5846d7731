"""Names and numbers -> the words in which a finding or a sheet lists them."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import TypeVar

T = TypeVar("T")


def listed(names: Iterable[object], joined_by: str = "and") -> str:
    """The names in quotes, commas between, `and` (or another word) before the last."""
    return joined((f"'{name}'" for name in names), joined_by)


_MOST_NAMED = 12
_SHOWN = 8


def listed_few(names: Iterable[object]) -> str:
    """As `listed`; of more than a line can hold the first, and how many more there are. All are among what the finding is about."""
    every = list(names)
    if len(every) <= _MOST_NAMED:
        return listed(every)
    shown = ", ".join(f"'{name}'" for name in every[:_SHOWN])
    return f"{shown} and {len(every) - _SHOWN} more"


def runs_of(parts: Iterable[T], follows: Callable[[T, T], bool]) -> list[list[T]]:
    """The parts in their order, those together of which each `follows` the one before it."""
    runs: list[list[T]] = []
    for part in parts:
        if runs and follows(runs[-1][-1], part):
            runs[-1].append(part)
        else:
            runs.append([part])
    return runs


def joined(parts: Iterable[object], joined_by: str = "and") -> str:
    """The same of parts that need no quotes."""
    words = [str(part) for part in parts]
    if len(words) < 2:
        return "".join(words)
    return f"{', '.join(words[:-1])} {joined_by} {words[-1]}"


def of_any(said: str, name: str, instead: str = "''") -> str:
    """What is said of a thing, with other words where its name stands in quotes."""
    return said.replace(f"'{name}'", instead)
