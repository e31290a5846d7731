"""The worked lines of the language reference, by block: what a statement that went wrong is shown beside."""

from __future__ import annotations

import re
from functools import cache

from rigc.resources import folder

_HEADING = re.compile(r"^### (?:At the top level|In an? ([a-z-]+) block)\n(.*?)(?=^##|\Z)", re.MULTILINE | re.DOTALL)
_ROW = re.compile(r"^\| `([^`|]+)` \|", re.MULTILINE)
_SHOWN = re.compile(r"`([^`]*)`")
_WORD = re.compile(r"[a-z][a-z-]*")
LIKE_A_UNIT = ("amp", "desk", "supply", "listener", "source", "mains-strip")
"""Blocks that take facts of any thing, which the reference tells of a unit."""


_OF_NAMES = ("power", "place", "mounting", "leads")
"""Blocks whose lines begin with names, so that any of them shows how the others go."""


@cache
def worked_lines() -> dict[str, tuple[str, ...]]:
    """For each block the lines that the reference shows in it; for the top level under an empty text."""
    text = (folder("grammar") / "README.md").read_text("utf-8")
    return {block: tuple(_ROW.findall(told)) for block, told in _HEADING.findall(text)}


@cache
def words_told() -> dict[str, frozenset[str]]:
    """For each block the words that the reference shows in it, in its lines and in what they mean: all among which one is chosen."""
    text = (folder("grammar") / "README.md").read_text("utf-8")
    shown = {block: " ".join(_SHOWN.findall(told)) for block, told in _HEADING.findall(text)}
    return {block: frozenset(_WORD.findall(re.sub(r'"[^"]*"', "", told))) for block, told in shown.items()}


def as_in_the_reference(block: str, typed: str) -> str:
    """What to do, with the worked line that is most like what was typed; nothing where there is none."""
    line = worked_line(block, typed)
    return f"write it as in the language reference: {line}" if line else ""


_MOST_LIKE = 3


def lines_like(block: str, typed: str) -> tuple[str, ...]:
    """The worked lines of that block that share most words with what was typed, and those that begin with the same; none where they share
    nothing."""
    lines = worked_lines()
    rows = lines.get(block, ()) + (lines["unit"] if block in LIKE_A_UNIT else ())
    said = _WORD.findall(typed)
    shared = {row: len(_shared(row, said)) for row in rows}
    most = max(shared.values(), default=0)
    same = [row for row in rows if _WORD.findall(row)[:1] == said[:1]]
    near = [row for row in rows if shared[row] == most][:_MOST_LIKE] if most else []
    return tuple(dict.fromkeys((*near, *same)))


def worked_line(block: str, typed: str) -> str:
    """The worked line of that block that is most like what was typed: of those that begin with the same word, else of those
    that share any, the shortest."""
    lines = worked_lines()
    rows = lines.get(block, ()) + (lines["unit"] if block in LIKE_A_UNIT else ())
    said = _WORD.findall(typed)
    same = [row for row in rows if _WORD.findall(row)[:1] == said[:1]]
    best = max(same or rows, key=lambda row: (len(_shared(row, said)), -len(row)), default="")
    if _shared(best, said):
        return best
    return rows[0] if rows and block in _OF_NAMES else ""


def _shared(row: str, said: list[str]) -> set[str]:
    return set(_WORD.findall(row)) & set(said)
