"""A text without mistakes -> its nodes: the states that lark made of the grammar, gone through without lark.

Lark and its tables take longer to load than most files to read. What can't be read is left to `rigc.syntax.tables`, which tells where and why.
"""

from __future__ import annotations

import json
import re
from collections.abc import Callable
from typing import Any

from rigc.source import Source, Span
from rigc.syntax import nodes
from rigc.syntax.nodes import Text, Word

END = "$END"
WORD = "word"
"""Where in the order of the terminals the words of the language stand: before all that has no precedence."""
DISSOLVED, LIST, WORDS, NODE = range(4)
"""What becomes of a rule's parts: parts of the rule around it, a tuple, one `Word`, or the node class of its name."""

_RUN = re.compile(r"[A-Za-z0-9-]+")
_PASSED_OVER = re.compile(r"(?:[ \t]+|#[^\n]*)*")
_Match = Callable[[str, int], Any]
_Entry = tuple[Any, int | None, int | None, bool]
"""On the stack: what was read (of a terminal nothing yet), from where to where, and whether it is a terminal."""


class Automaton:
    """The states, ready to go through. `plain` is what `rigc.syntax.tables` wrote of them, in JSON:

    `states`: for each state what follows it, by the name of a terminal or rule: n + 1 to go to state n, -(r + 1) to close rule r;
    `rules`: name, what becomes of it, how many parts it has, which of them count (number, whether dissolved, how many absent ones
    before it), how many absent ones behind, whether one part alone stands for itself;
    `start` and `end`, two states; `words`: each word of the language and its terminal; `signs`: the other terminals and their expressions,
    in the order in which they are tried.
    """

    def __init__(self, plain: str) -> None:
        told = json.loads(plain)
        self._states: list[dict[str, int]] = told["states"]
        self._rules = [(*rule, _class_of(rule)) for rule in told["rules"]]
        self._start, self._end = told["start"], told["end"]
        self._words: dict[str, str] = told["words"]
        self._signs = [(name, None if name == WORD else re.compile(sign).match) for name, sign in told["signs"]]
        self._tried: list[tuple[tuple[str, _Match | None], ...] | None] = [None] * len(self._states)
        self._opened: dict[str, tuple[int, ...] | None] = {}

    def read(self, text: str, source: Source, base: int) -> tuple[Any, ...] | None:
        """The statements of a text of whole lines, which begins at an offset of the source; None where it holds a mistake."""
        made = _Made(text, source, base)
        return made.statements if self._goes([self._start], text, ends=True, made=made) else None

    def reads(self, opener: str, text: str) -> bool:
        """Whether a text of whole lines reads behind an opener (`unit x {`), which is gone through once; nothing is made of it."""
        if opener not in self._opened:
            stack = [self._start]
            self._opened[opener] = tuple(stack) if self._goes(stack, opener, ends=False) else None
        opened = self._opened[opener]
        return opened is not None and self._goes(list(opened), text, ends=True)

    def _goes(self, stack: list[int], text: str, *, ends: bool, made: _Made | None = None) -> bool:
        """Whether a text goes on from the states on a stack, which are then those behind it; it `ends` the file, or more follows it. What is `made`
        of it is made on the way."""
        states, rules, at = self._states, self._rules, 0
        while True:
            passed = _PASSED_OVER.match(text, at)
            at = at if passed is None else passed.end()
            if at >= len(text) and not ends:
                return True
            name, end = (END, at) if at >= len(text) else self._next(text, at, stack[-1])
            while (action := states[stack[-1]].get(name, 0)) < 0:
                rule = rules[-action - 1]
                del stack[len(stack) - rule[2] :]
                stack.append(states[stack[-1]][rule[0]] - 1)
                if made is not None:
                    made.close(rule)
                if name == END and stack[-1] == self._end:
                    return True
            if action == 0:
                return False
            stack.append(action - 1)
            if made is not None:
                made.entries.append((name, at, end, True))
            at = end

    def _next(self, text: str, at: int, state: int) -> tuple[str, int]:
        """The terminal that stands there in a state, and where it ends; one without a name where none does."""
        tried = self._tried[state]
        if tried is None:
            known = self._states[state]
            words = any(terminal in known for terminal in self._words.values())
            tried = tuple(each for each in self._signs if (words if each[0] == WORD else each[0] in known))
            self._tried[state] = tried
        for name, match in tried:
            if match is not None:
                found = match(text, at)
                if found is not None:
                    return name, found.end()
                continue
            run = _RUN.match(text, at)
            if run is not None:
                word = self._words.get(run[0])
                if word is not None and word in self._states[state]:
                    return word, run.end()
        return "", at


class _Made:
    """What a text is made into while it is gone through: the entries that no rule holds yet."""

    def __init__(self, text: str, source: Source, base: int) -> None:
        self._text, self._source, self._base = text, source, base
        self.entries: list[_Entry] = []

    def close(self, rule: Any) -> None:
        """The last entries, as many as the rule has parts, become one."""
        entries = self.entries
        first = len(entries) - rule[2]
        parts = entries[first:]
        del entries[first:]
        entries.append(_closed(rule, parts, self._text, self._source, self._base))

    @property
    def statements(self) -> tuple[Any, ...]:
        """Those of a text that ended."""
        (found,) = self.entries[-1][0]
        return found  # type: ignore[no-any-return]


def _class_of(rule: list[Any]) -> Any:
    name, becomes = rule[-1], rule[1]
    return getattr(nodes, "".join(part.capitalize() for part in name.split("_")), None) if becomes == NODE else None


def _closed(rule: Any, parts: list[_Entry], text: str, source: Source, base: int) -> _Entry:
    """The parts of a rule as one."""
    _, becomes, _, counted, absent, alone, _, made = rule
    start = end = None
    for each in parts:
        if each[1] is not None:
            start = each[1]
            break
    for each in reversed(parts):
        if each[2] is not None:
            end = each[2]
            break
    if becomes == WORDS:
        span = Span(source, base + (start or 0), base + (end or 0))
        return Word(" ".join(text[each[1] : each[2]] for each in parts), span), start, end, False
    held: list[Any] = []
    for number, dissolved, absent_before in counted:
        if absent_before:
            held += [None] * absent_before
        part = parts[number]
        if not dissolved:
            held.append(_leaf(part, text, source, base) if part[3] else part[0])
        elif held:
            held += part[0]
        else:
            held = part[0]  # a long list is not copied for each of its parts
    if absent:
        held += [None] * absent
    if alone and len(held) == 1:
        (only,) = held
        if isinstance(only, Word | Text):  # it lies where it stands, without what the rule has around it
            start, end = only.span.start - base, only.span.end - base
        return (only, None, None, False) if only is None else (only, start, end, False)
    if becomes == NODE:
        return made(*held, Span(source, base + (start or 0), base + (end or 0))), start, end, False
    return (held if becomes == DISSOLVED else tuple(held)), start, end, False


def _leaf(part: _Entry, text: str, source: Source, base: int) -> Word | Text:
    name, start, end, _ = part
    assert start is not None and end is not None
    span = Span(source, base + start, base + end)
    if name != "STRING":
        return Word(text[start:end], span)
    value = text[start + 1 : end - 1]
    if "\\" in value:
        value = value.replace("\\\\", "\0").replace('\\"', '"').replace("\\n", "\n").replace("\0", "\\")
    return Text(value, span)
