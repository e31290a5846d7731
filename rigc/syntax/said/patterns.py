"""The worked lines of the language reference -> what each is made of: its words, and the places of names, numbers and texts."""

from __future__ import annotations

import re
from functools import cache

from rigc.record import Record
from rigc.syntax.said.items import UNITS, kind_of
from rigc.syntax.worked_lines import LIKE_A_UNIT, worked_lines


class Part(Record):
    """A part of a worked line: a word of the language (`kind` is `word` or `sign`), or what stands for something of the builder's: a quantity by what it
    measures (`kind` empty for a plain number), `text`, `name`, `names`, `end`, `ends`, `way`, `jack`, `mark`, `marks`, `date`. `count` numbers."""

    kind: str
    text: str
    count: int = 1
    ranged: bool = False


Pattern = tuple[Part, ...]
_N = r"[+-]?\d+(?:\.\d+)?"
_U = rf"(?:[ ]*(?:{UNITS})(?![\w.]))?"
_END = r"[a-z][\w-]*(?:\.\w+)?"
_PART = re.compile(
    rf'(?P<text>"[^"]*")|(?P<date>\d{{4}}-\d\d-\d\d)|(?P<size>{_N}{_U}(?:[ ]*(?:x|,|\.\.)[ ]*{_N}{_U})*)'
    rf"|(?P<way>{_END}(?: -> {_END})+)|(?P<run>[a-z]\w*\.\.[a-z]\w*)|(?P<marks>[A-Z]\w*(?:, [A-Z]\w*)*)|(?P<names>{_END}(?:, {_END})*)|(?P<sign>[^\s])"
)
NAMED = {
    "input": 1, "output": 1, "outlet": 1, "inlet": 1, "usb": 1, "jack": 1, "level": 1, "impedance": 1, "phantom": 1, "pair": 1, "midi": 2, "expression": 2, "control": 2, "path": 1,
}  # fmt: skip
"""By the first word of a statement, which part of it is the name of a jack, which may be any word."""
_BEFORE_NAMES = ("beneath",)
JACKS = {"output": "out", "outlet": "o1", "send": "s1..s4", "return": "r1..r4", "level": "in"}
"""Usual names of jacks, where worked lines show a run of several."""
_MORE = {
    "unit": ("mains 100..240 V 50..60 Hz", "phantom out needs 48 V"),
    "source": ("mains 100..240 V 50..60 Hz", "takes 40 VA", "fuse T 1 A", "draws 90 mA"),
    "supply": ('battery "lithium pack" 5200 mAh at 3.7 V only', "ceiling 1500 mA"),
    "rig": ("limit lift 23 kg", "limit capacitance 700 pF"),
    "cable": ("conductor 0.22 mm2 stranded",),
    "plug": ("fits barrel 5.5 x 2.1 mm",),
    "deck": ("rail 0..45 mm tape 2..42 mm",),
}
"""Further ways in which lines of the reference may be filled, which its tables tell in words."""
_ENDINGS_OF_FACTS = re.compile(r" \+-.*| (?:measured|leaflet|assumed)\b.*")


@cache
def patterns(block: str, words: frozenset[str]) -> tuple[Pattern, ...]:
    """The worked lines of a block (of the top level under an empty text) taken apart; `words` are those of the language."""
    lines = worked_lines()
    rows = lines.get(block, ()) + (lines["unit"] if block in LIKE_A_UNIT else ())
    rows += (
        *_MORE.get(block, ()),
        *(_MORE["unit"] if block in LIKE_A_UNIT else ()),
        *(('note "___"',) if block else ()),
    )
    plain = dict.fromkeys(_ENDINGS_OF_FACTS.sub("", row) or row for row in rows if ":" not in row)
    return tuple(_taken_apart(row, words, block) for row in plain)


def _taken_apart(row: str, words: frozenset[str], block: str) -> Pattern:
    parts: list[Part] = []
    head = row.split()[0]
    for found in _PART.finditer(row):
        kind, text = found.lastgroup or "", found.group()
        at = len(parts)
        if (
            head in NAMED
            and at == NAMED[head]
            and kind in ("names", "run", "way")
            and not (head == "midi" and block == "midi")
        ):
            parts.append(Part("jack", JACKS.get(head, text)) if kind != "way" else Part("way", text))
        elif kind == "run":
            parts.append(Part("jack", JACKS.get(parts[-1].text if parts else "", text)))
        elif kind == "size":
            numbers = re.findall(_N, text)
            unit = re.findall(rf"(?:{UNITS})(?!\w)", re.sub(r"(?<=\d)[ ]*x[ ]*(?=[\d-])", " ", text))
            parts.append(Part(kind_of(unit[-1]) if unit else "", text, len(numbers), ".." in text))
        elif kind == "names":
            ends = text.split(", ")
            if (
                len(ends) == 1
                and text in words
                and "." not in text
                and (not parts or parts[-1].text not in _BEFORE_NAMES)
            ):
                parts.append(Part("word", text))
            else:
                one = "end" if "." in ends[0] else "name"
                parts.append(Part(f"{one}s" if len(ends) > 1 else one, text, len(ends)))
        elif kind == "marks":
            parts.append(Part("marks" if "," in text else "mark", text))
        else:
            parts.append(Part(kind, text))
    return tuple(parts)
