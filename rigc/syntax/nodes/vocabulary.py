"""The words of the language by what they do, read off the grammar: what colours a rig asks here, and keeps no list of its own."""

from __future__ import annotations

import re
from functools import cache

from rigc.record import Record
from rigc.syntax.nodes.written import rules

_WORD = re.compile(r'"([a-z][a-z-]*)"')
_FIRST = re.compile(r'\s*!?\(?"([a-z][a-z-]*)"')
_NAMING = re.compile(r'\s*"([a-z][a-z-]*)"\s+\[?(?:NAME|names|name_list)\b')


class Vocabulary(Record):
    """Each word stands in one of the first four, in the order of the alphabet.

    `blocks` open a block, `heads` begin a statement, `values` are what a fact may be, `links` all other words. `naming` are those of
    the blocks and heads behind which a name stands, whatever word that is: `input in`.
    """

    blocks: tuple[str, ...]
    heads: tuple[str, ...]
    values: tuple[str, ...]
    links: tuple[str, ...]
    naming: tuple[str, ...]

    @property
    def words(self) -> tuple[str, ...]:
        """Every word of the language."""
        return tuple(sorted({*self.blocks, *self.heads, *self.values, *self.links}))


@cache
def vocabulary() -> Vocabulary:
    """The words of the grammar that this rigc reads."""
    blocks: set[str] = set()
    heads: set[str] = set()
    values: set[str] = set()
    every: set[str] = set()
    naming: set[str] = set()
    for name, text in rules().items():
        found = _WORD.findall(text)
        every.update(found)
        if name.endswith("_word"):
            values.update(found)
        elif first := _FIRST.match(text):
            (blocks if '"{"' in text else heads).add(first[1])
            if named := _NAMING.match(text):
                naming.add(named[1])
    heads -= blocks
    values -= blocks | heads
    links = every - blocks - heads - values
    return Vocabulary(*(tuple(sorted(each)) for each in (blocks, heads, values, links, naming)))
