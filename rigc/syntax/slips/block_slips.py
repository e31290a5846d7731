"""A block of which several lines are those of another kind of block: its first word is the slip, and is told once -> the wording."""

from __future__ import annotations

import re
from collections.abc import Callable

from rigc.diagnostics.mend import Mend, Replace
from rigc.diagnostics.wording import joined
from rigc.source import Span
from rigc.syntax.mistake import Mistake, Wording

_ALIKE = (
    ("instrument", "source", "amp", "desk", "listener", "unit", "supply", "mains-strip"),
    ("cable", "plug", "strip"),
)
"""Blocks that begin alike, so that the one word may stand for the other."""
_TELLING = frozenset(("microphone", "keyboard", "line", "headphones", "outlet", "sockets"))
"""Words of which one is enough."""
_MOST_WAYS = 2
_FEW = 3


def _block_of_another_kind(m: Mistake) -> Wording | None:
    """`instrument vocal { microphone ... phantom ... }`."""
    family = next((each for each in _ALIKE if m.block in each), ())
    opened = _opening(m) if family else None
    if opened is None:
        return None
    heads = m.blocks()
    said = _first_words(m, opened)
    strange = {word for word in said if word not in heads[m.block]}
    if m.line.split()[:1] and m.line.split()[0] not in strange:
        return None
    if not strange & _TELLING and (len(strange) < 2 or m.block == "instrument"):
        return None  # who states the jacks of an instrument means an instrument
    fitting = [each for each in family if each in heads and each != m.block and said <= heads[each]]
    if not fitting or not strange:
        return None
    word = Span(m.span.source, opened.start(1), opened.end(1))
    mends = tuple(Mend(f"write {each} {opened[2]}", (Replace(word, each),)) for each in fitting[:_MOST_WAYS])
    lacking = [f"'{each}'" for each in sorted(strange)]
    shown = (
        joined(lacking, "and")
        if len(lacking) <= _FEW
        else f"{', '.join(lacking[:_FEW])} and {len(lacking) - _FEW} more"
    )
    return Wording(
        f"'{opened[2]}' is written as {_article(m.block)}, which has no {shown}",
        f"{_article(fitting[0])} has",
        mends=mends,
    )


def _article(block: str) -> str:
    return f"{'an' if block[0] in 'aeiou' and block != 'unit' else 'a'} {block}"


def _opening(m: Mistake) -> re.Match[str] | None:
    """The first words of the block around, in the text of the source."""
    shape = re.compile(rf"^[ \t]*({re.escape(m.block)})[ \t]+([a-z][\w-]*)\b[^{{}}\n]*\{{", re.M)
    found = list(shape.finditer(m.span.source.text, 0, m.span.start))
    return found[-1] if found else None


def _first_words(m: Mistake, opened: re.Match[str]) -> frozenset[str]:
    text = m.span.source.text[opened.end() :]
    inside = text[: end.start()] if (end := re.search(r"^[ \t]*\}", text, re.M)) else text
    return frozenset(found[1] for found in re.finditer(r"^[ \t]*([A-Za-z][\w-]*)", inside, re.M))


BLOCK_SLIPS: tuple[Callable[[Mistake], Wording | None], ...] = (_block_of_another_kind,)
