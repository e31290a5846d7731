"""Text and an offset -> where one types: in which block, behind which words of the statement, and the word that is begun."""

from __future__ import annotations

import re

from rigc.record import Record

_MARKS = re.compile(r'"(?:\\.|[^"\\\n])*"?|#[^\n]*|[{}]')
_WORDS = re.compile(r'"(?:\\.|[^"\\\n])*"|[-=]>|\.\.|[.,:]|[^\s",.:=>-][^\s",:=>.]*')
_BEGUN = re.compile(r"[A-Za-z0-9µμΩ°%-]*\Z")
_HEAD = re.compile(r"[ \t]*([a-z][a-z-]*)(?:[ \t]+([A-Za-z0-9-]+))?")


class Spot(Record):
    """`block` is the word that opened the block (empty at the top level) and `name` its name; `before` is the statement up to the word
    that is begun, in `words`; `start` is the offset at which that word begins. `thing` is what stands before a dot. `within` is `text` in quotes, `comment`, or empty."""

    block: str
    name: str
    before: str
    words: tuple[str, ...]
    start: int
    thing: str = ""
    within: str = ""

    @property
    def last(self) -> str:
        """The word before the one that is begun; empty at the beginning of a statement."""
        return self.words[-1] if self.words else ""


def spot(text: str, offset: int) -> Spot:
    """Where one types at an offset of a text, however much of it can be read."""
    opened, within = _opened(text, offset)
    block, name = "", ""
    if opened >= 0:
        line = text.rfind("\n", 0, opened) + 1
        head = _HEAD.match(text, line)
        if head is not None:
            block, name = head[1], head[2] or ""
    begin = _statement_start(text, max(text.rfind("\n", 0, offset) + 1, opened + 1))
    typed = text[begin:offset]
    found = _BEGUN.search(typed)
    begun = found.group() if found and not within else ""
    before = typed[: len(typed) - len(begun)]
    words = tuple(_WORDS.findall(before))
    thing = ""
    if before.endswith(".") and not before.endswith("..") and len(words) > 1:
        thing = words[-2]
    return Spot(block, name, before, words, offset - len(begun), thing, within)


def _opened(text: str, offset: int) -> tuple[int, str]:
    """Where the brace of the block is that holds the offset (-1: none), and whether it lies in a text or a comment."""
    opened, within = -1, ""
    for mark in _MARKS.finditer(text):
        if mark.start() >= offset:
            break
        sign = mark.group()
        closed = len(sign) > 1 and sign.endswith('"') and sign[0] == '"'
        if sign[0] in '"#' and (offset < mark.end() or (offset == mark.end() and not closed)):
            within = "comment" if sign[0] == "#" else "text"
        elif sign == "{":
            opened = mark.start()
        elif sign == "}":
            opened = -1
    return opened, within


def _statement_start(text: str, line: int) -> int:
    """The beginning of the line, or of the first of those that end with an arrow and so go on in it."""
    while line > 0:
        before = text.rfind("\n", 0, line - 1) + 1
        if not text[before : line - 1].split("#")[0].rstrip().endswith(("->", "=>")):
            break
        line = before
    return line
