"""What somebody typed -> the lines of this language that say it."""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import cache

from rigc.record import Record
from rigc.syntax.said.fitted import Fitted, fitted
from rigc.syntax.said.items import Item, Line, line_of
from rigc.syntax.said.patterns import Pattern, patterns
from rigc.syntax.said.phrases import Phrase, understood
from rigc.syntax.said.thesaurus import stem
from rigc.syntax.worked_lines import LIKE_A_UNIT, words_told

_MOST_TRIED = 8
_MOST_LINES = 4
_LONGEST = 200
_VALUES = ("name", "text", "mark", "date", "country", "colour")


_COUNTED = ("power", "spares")
"""Blocks in which `one` and `a` are numbers."""


class Meant(Record):
    """Lines that say what was typed. `texts` read; `shown` have blanks where only the builder knows; `sure` is how much of what was typed they say,
    less what of it they leave out or add; `values` whether any value of it is in them, `foreign` whether some of it are words that are known and not of this language, `led` whether it begins with several that are one phrase."""

    texts: tuple[str, ...]
    shown: tuple[str, ...]
    blanks: int
    whole: bool
    sure: float
    values: bool
    foreign: bool
    led: bool


def meant(
    block: str,
    code: str,
    words: frozenset[str],
    known: dict[str, str],
    reads: Callable[[str], bool],
    before: tuple[str, ...] = (),
    called: dict[str, str] | None = None,
    jacks: dict[str, tuple[str, ...]] | None = None,
) -> Meant | None:
    """The lines of a block that say what stands in `code`. `words` are those of the language, `known` the names that the file declares, `before`
    names that the place of the line stands for, as the thing in whose block it is, `called` what people call a thing and its name, `jacks` the names of
    jacks by thing."""
    if len(code) > _LONGEST:
        return None
    if block in _COUNTED:
        code = re.sub(r"\b(?:one|a)\b", "1", code)
    typed = line_of(code, frozenset(known), jacks or {})
    line = Line((*(Item("name", (name,), 0) for name in before), *typed.items), typed.words, typed.respelled)
    heard = understood(line.words, _sayable(block, words))
    if heard.negated:
        return None
    free = frozenset(range(len(line.items)))
    left = heard.phrases
    found: list[Fitted] = []
    for _ in range(_MOST_LINES):
        best = _best(block, line, left, free, words, reads, heard.strange, called or {})
        if best is None:
            break
        if found and (not (best.used or best.told) or best.blanks or not (best.head or best.text.split()[0] in _USUAL)):
            break
        found.append(best)
        free -= best.used
        left = tuple(phrase for at, phrase in enumerate(left) if at not in best.told)
        if not free and not any(_weighty(phrase) for phrase in left):
            break
    if not found:
        return None
    found.sort(key=lambda each: min(each.used, default=len(line.items)))
    over = sum(_weighty(phrase) for phrase in left)
    texts, shown = (
        _with_source([each.text for each in found], reads),
        _with_source([each.shown for each in found], None),
    )
    blanks = sum(each.blanks for each in found)
    whole = not free and not over and not [at for at in heard.strange if line.words[at] not in " ".join(texts)]
    sure = sum(_score(each, 0, 0) for each in found) - 3 * len(free) - over
    mine = _sayable(block, words)
    ours = {stem(each) for each in mine} | mine
    first = bool(line.words) and 0 in heard.strange and line.words[0].lower() not in ours
    foreign = [
        any(word.lower() not in ours and stem(word) not in ours for word in line.words[each.start : each.end])
        for each in heard.phrases
    ]
    led = (
        bool(foreign)
        and foreign[0]
        and heard.phrases[0].start == 0
        and heard.phrases[0].end > 1
        and texts[0].split()[0] != line.words[0].lower()
    )
    values = any(each.used for each in found)
    return Meant(texts, shown, blanks, whole, sure, values, first or any(foreign) or line.respelled, led)


_SOURCES = ("assumed", "measured", "leaflet")


def _with_source(lines: list[str], reads: Callable[[str], bool] | None) -> tuple[str, ...]:
    """Where a fact comes from stands behind it."""
    plain = [each for each in dict.fromkeys(lines) if each.split()[0] not in _SOURCES]
    source = next((each for each in lines if each.split()[0] in _SOURCES), "")
    if not plain or not source or (reads is not None and not reads(f"{plain[0]} {source}")):
        return tuple(dict.fromkeys(lines))
    return tuple(f"{each} {source}" for each in plain)


@cache
def _sayable(block: str, words: frozenset[str]) -> frozenset[str]:
    """The words of the language that lines of this block hold."""
    told = words_told()
    mine = told.get(block, frozenset()) | (told["unit"] if block in LIKE_A_UNIT else frozenset())
    return (
        (mine & words)
        | _ALSO
        | (_SIGNALS if block in _OF_SIGNALS else frozenset())
        | (_KINDS if block == "panel" else frozenset())
    )


_OPENERS = frozenset(("unit", "supply", "instrument", "scenario", "deck"))
"""Words that open a block and that no line within one holds."""
_ALSO = frozenset(("note", "assumed", "measured", "leaflet", "shared"))
_SIGNALS = frozenset(("audio", "dc", "ac", "midi", "control"))
_KINDS = frozenset(("ts", "trs", "mini-trs", "xlr", "din"))
_OF_SIGNALS = ("leads", "spares", "cable", "")


_LIGHT = frozenset(
    [
        "of",
        "at",
        "to",
        "from",
        "with",
        "for",
        "and",
        "by",
        "in",
        "into",
        "on",
        "before",
        "is",
        "made",
        "holds",
        "up",
        "max",
        "peak",
        "nominal",
        "at",
        "on",
        "only",
    ]
)


def _weighty(phrase: Phrase) -> bool:
    return not any(ours in _LIGHT for ours in phrase.ours)


def _best(
    block: str,
    line: Line,
    phrases: tuple[Phrase, ...],
    free: frozenset[int],
    words: frozenset[str],
    reads: Callable[[str], bool],
    strange: tuple[int, ...],
    called: dict[str, str],
) -> Fitted | None:
    kinds = {line.items[at].kind for at in free}
    ranked = sorted(patterns(block, words), key=lambda each: -_promise(each, phrases, kinds))
    tries = [each for each in ranked[:_MOST_TRIED] if _promise(each, phrases, kinds) > 0]
    made = [
        each for pattern in tries if (each := fitted(pattern, line, phrases, free, reads, strange, called)) is not None
    ]
    made += _alone(phrases, reads)
    total, weight = len(free), len([phrase for phrase in phrases if _weighty(phrase)])
    only = _only(block, words)
    made = [
        each.replace(worded=each.worded and not any(each.text.startswith(f"{only.get(kind)} ") for kind in kinds))
        for each in made
    ]
    scored = [
        (each, _score(each, total - len(each.used), weight - len(each.told))) for each in made if each.used or each.told
    ]
    best = max(scored, key=lambda pair: pair[1], default=None)
    return best[0] if best is not None and best[1] > 0 else None


@cache
def _only(block: str, words: frozenset[str]) -> dict[str, str]:
    """What is measured in one statement of a block alone, with the first word of that."""
    heads: dict[str, set[str]] = {}
    for pattern in patterns(block, words):
        for part in pattern:
            if part.kind not in (*_VALUES, "", "word", "sign", "jack", "names", "end", "ends", "way", "marks"):
                heads.setdefault(part.kind, set()).add(pattern[0].text)
    return {kind: next(iter(each)) for kind, each in heads.items() if len(each) == 1}


def _promise(pattern: Pattern, phrases: tuple[Phrase, ...], kinds: set[str]) -> float:
    """How likely a pattern is, before it is tried."""
    own = {part.text for part in pattern if part.kind == "word"}
    head = pattern[0].text if pattern[0].kind == "word" else ""
    words = sum(
        max((1 + (ours.split()[0] == head)) * len(set(ours.split()) & own) / len(ours.split()) for ours in phrase.ours)
        for phrase in phrases
    )
    slots = [part for part in pattern if part.kind not in ("word", "sign")]
    values = len({part.kind for part in slots} & kinds)
    names = 0.5 if "name" in kinds and any(part.kind in ("names", "end", "ends", "way") for part in slots) else 0
    return 2 * words + values + names + (head in _USUAL and values) - 0.05 * len(pattern)


def _alone(phrases: tuple[Phrase, ...], reads: Callable[[str], bool]) -> list[Fitted]:
    """Phrases of the language that are a whole line."""
    return [
        Fitted(ours, ours, frozenset(), frozenset((at,)), 0, 0, True, True)
        for at, phrase in enumerate(phrases)
        for ours in phrase.ours
        if ours not in _LIGHT and reads(ours)
    ]


_USUAL = frozenset(
    (
        "needs",
        "accepts",
        "draws",
        "mass",
        "body",
        "latency",
        "mains",
        "outlet",
        "ceiling",
        "tempo",
        "takes",
        "size",
        "inside",
    )
)
"""Statements that values alone tell: `9 V 30 mA` in a unit block."""


_LEAST_MAINS = 60  # V


def _unlikely(text: str) -> bool:
    """Whether a voltage of the mains is said of what is fed by an outlet, or the other way round."""
    volts = re.search(r"\b(mains|needs|accepts|outlet [\w.]+|reserve) (?:\d[\d.]*\.\.)?(\d[\d.]*) V", text)
    return volts is not None and (volts[1] == "mains") != (float(volts[2]) > _LEAST_MAINS)


def _score(made: Fitted, unused: int, untold: int) -> float:
    head = made.text.split()[0]
    usual = 0 if made.head or not made.worded else 0.5 if head in _USUAL else -4
    return (
        2 * made.head
        + 0.5 * (0 in made.told)
        + usual
        - 6 * _unlikely(made.text)
        + 2 * len(made.told)
        + 2 * len(made.used)
        - 1.5 * unused
        - untold
        - 1.5 * made.blanks
        - 0.7 * made.chosen
    )
