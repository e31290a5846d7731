"""A fact whose quantity measures another thing -> the statement of its block that people mean by the same word with such a quantity."""

from __future__ import annotations

import re

from rigc.syntax.said.items import UNITS, kind_of
from rigc.syntax.said.thesaurus import thesaurus, words_of
from rigc.syntax.worked_lines import LIKE_A_UNIT, worked_lines

_NO_MORE = re.compile(r"[ \t]*(?:(?:measured|leaflet|assumed)\b[^\n]*)?(?:#[^\n]*)?(?:\n|\Z)")
_OPENED = re.compile(r"^[ \t]*([a-z-]+)\b[^{}\n]*\{", re.MULTILINE)


def other_statement(text: str, start: int, end: int, unit: str) -> tuple[int, int, str] | None:
    """`takes 30 mA` in a unit block: for the quantity that stands from `start` to `end` of the text, the place of the word before it and the word that is meant.
    Nothing where the line says more, or no such statement is known."""
    line = text.rfind("\n", 0, start) + 1
    head = re.fullmatch(r"[ \t]*([a-z-]+)[ \t]+", text[line:start])
    opened = _OPENED.findall(text[:line])
    if head is None or not opened or not _NO_MORE.match(text, end):
        return None
    rows = worked_lines().get(opened[-1], ()) + (worked_lines()["unit"] if opened[-1] in LIKE_A_UNIT else ())
    alone = re.compile(rf"([a-z-]+) [\d.]+ ({UNITS})(?: .*)?")
    fits = {found[1] for row in rows if (found := alone.fullmatch(row)) and kind_of(found[2]) == kind_of(unit)}
    said = thesaurus().get(words_of(head[1]), ())
    ours = next((each for each in said if each in fits and each != head[1]), "")
    return (line + head.start(1), line + head.end(1), ours) if ours else None
