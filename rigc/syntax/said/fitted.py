"""A worked line and what somebody typed -> that line with the typed values in it, and no more of it than was typed or must be there."""

from __future__ import annotations

import re
from collections.abc import Callable

from rigc.record import Record
from rigc.syntax.said.items import Item, Line
from rigc.syntax.said.patterns import NAMED, Part, Pattern
from rigc.syntax.said.phrases import Phrase

_BLANK = "___"
_SAMPLES = {
    "name": "zz-zz",
    "names": "zz-zz",
    "end": "zz-zz.zz",
    "ends": "zz-zz.zz",
    "way": "zz-zz.zz -> zz-zy.zz",
    "text": '"zz"',
}
_SHOWN = {"end": "___.___", "ends": "___.___", "way": "___ -> ___", "text": '"___"', "date": "year-month-day"}
_JOINED = {"names": ", ", "ends": ", ", "marks": ", "}


class Fitted(Record):
    """`text` reads; `shown` has blanks where only the builder knows. `used` are the places of the items in it, `told` of the phrases that it says,
    `blanks` what is missing, `chosen` words of it that nobody typed; `head` whether its first word was said, `worded`
    whether it begins with one."""

    text: str
    shown: str
    used: frozenset[int]
    told: frozenset[int]
    blanks: int
    chosen: float
    head: bool
    worded: bool


class _Place(Record):
    part: Part
    text: str
    shown: str
    held: bool
    blank: bool = False


def fitted(
    pattern: Pattern,
    line: Line,
    phrases: tuple[Phrase, ...],
    free: frozenset[int],
    reads: Callable[[str], bool],
    strange: tuple[int, ...],
    called: dict[str, str],
) -> Fitted | None:
    """The worked line with the values at `free` places of the line in it; nothing where it does not come to read."""
    said = {word for phrase in phrases for ours in phrase.ours for word in ours.split()}
    used: dict[int, tuple[int, ...]] = _filled(pattern, line, phrases, free)
    typed = {word.lower() for word in line.words}
    places = [
        _place(part, at, used, line, said, typed, _jack_name(pattern, line, strange)) for at, part in enumerate(pattern)
    ]
    places = _with_said_words(places, phrases, reads)
    if not reads(_text(places)):
        return None
    left = tuple(at for at in sorted(free) if not any(at in ats for ats in used.values()))
    places, named = _with_strange_words(places, line, strange, (), called, False)
    places = _without_the_rest(places, reads)
    places, more = _with_strange_words(places, line, strange, left, called, True)
    if not reads(_text(places)):
        return None
    if any(each.part.kind == "jack" and each.held and ".." in each.text for each in places):
        named |= frozenset(at for at, each in enumerate(line.items) if not each.kind)
    places = _with_more_words(places, phrases, reads)
    if _word_for_a_name(places, reads):
        return None
    text = _text(places)
    shown = re.sub(r" (?=,)", "", " ".join(each.shown for each in places))
    words = {each.text for each in places if each.part.kind == "word"}
    told = frozenset(at for at, phrase in enumerate(phrases) if any(set(ours.split()) <= words for ours in phrase.ours))
    kept = frozenset(at for ats in used.values() for at in ats) | named | more
    chosen = sum(
        (0.4 if each.text in _JOINTS else 1.0)
        for each in places[1:]
        if each.part.kind in ("word", "sign") and not each.held
    )
    first = places[0]
    return Fitted(
        text,
        shown,
        kept,
        told,
        sum(each.blank for each in places),
        chosen,
        first.part.kind == "word" and first.held,
        first.part.kind == "word",
    )


_JOINTS = frozenset(
    ["of", "at", "to", "from", "with", "for", "and", "by", "in", "into", "on", "before", "holds", "through", "dc", "up"]
)


def _place(
    part: Part, at: int, used: dict[int, tuple[int, ...]], line: Line, said: set[str], typed: set[str], jack: str
) -> _Place:
    if part.kind in ("word", "sign"):
        return _Place(part, part.text, part.text, part.text in said or (part.text in typed and at + 1 in used))
    if at in used:
        text = _written(part, [line.items[each] for each in used[at]])
        return _Place(part, text, text, True)
    if part.kind == "jack" and jack:
        return _Place(part, jack, jack, True)
    if part.kind == "jack":
        number = (
            next(
                (
                    int(each.parts[0])
                    for each in line.items
                    if not each.kind and re.fullmatch(r"[1-9]\d?", each.parts[0])
                ),
                0,
            )
            if part.text in _RUNS
            else 0
        )
        text = f"{_RUNS[part.text]}1..{_RUNS[part.text]}{number}" if number > 1 else part.text
        return _Place(part, text, text, number > 1)
    one = [
        item
        for each, item in enumerate(line.items)
        if item.kind == part.kind == "length" and len(item.parts) == 1 and not any(each in ats for ats in used.values())
    ]
    if " x " in part.text and part.count == _OUTER_AND_INNER and one and at and line.words:
        return _Place(part, part.text, f"{_BLANK} x {one[0].parts[0]}", False, True)
    sample = _SAMPLES.get(part.kind, part.text)
    shown = _SHOWN.get(part.kind, "") or (
        re.sub(r"[+-]?\d+(?:\.\d+)?", _BLANK, part.text) if part.text[:1].isdigit() else _BLANK
    )
    return _Place(part, sample, shown, False, True)


_RUNS = {"in": "in", "out": "out", "o1": "o"}
"""Usual names of a jack, and how those of several begin."""
_MANY = 3
"""Numbers of a worked line from which on it shows a list of any length."""
_OUTER_AND_INNER = 2
_NO_JACKS = frozenset(
    [
        "ts",
        "trs",
        "xlr",
        "din",
        "mini-trs",
        "wireless",
        "left",
        "right",
        "front",
        "rear",
        "up",
        "mono",
        "stereo",
        "balanced",
        "isolated",
        "common",
        "dc",
        "ac",
    ]
)


def _jack_name(pattern: Pattern, line: Line, strange: tuple[int, ...]) -> str:
    """The word behind the first of a statement that has jacks: its name, where that means nothing else."""
    head = pattern[0].text
    first = next((at for at, word in enumerate(line.words) if word == head), None)
    named = sum(part.kind in ("jack", "way") for part in pattern) == 1
    start = NAMED.get(head, 0) + (first or 0)
    if first is None or not named or start >= len(line.words):
        return ""
    word = line.words[start]
    plain = re.fullmatch(r"[a-z][a-z0-9]{0,11}", word) and word not in _NO_JACKS
    held = [each for each in line.items if each.at == start]
    return word if plain and not held and (start in strange or len(word) <= _SHORT) else ""


_SHORT = 3
"""Signs of a word that is a jack's name though it means something elsewhere: `in`, `out`, `ch`."""


def _written(part: Part, items: list[Item]) -> str:
    if part.kind in ("name", "names", "end", "ends", "way", "mark", "marks"):
        return (" -> " if part.kind == "way" else _JOINED.get(part.kind, ", ")).join(each.parts[0] for each in items)
    numbers = [each for item in items for each in item.parts]
    if part.kind and not items[0].kind:
        numbers[-1] = f"{numbers[-1]} {_UNITLESS[part.kind]}"
    if part.count == 1 or len(numbers) == 1:
        return numbers[0]
    joint = ".." if part.ranged else " x " if " x " in part.text else ", "
    return joint.join(numbers)


def _takes(part: Part, item: Item) -> bool:
    if part.kind in ("name", "names", "way"):
        return item.kind == "name" and (part.kind == "way" or "." not in item.parts[0])
    if part.kind in ("end", "ends"):
        return item.kind == "name" and "." in item.parts[0]
    if part.kind in ("mark", "marks"):
        code = bool(re.fullmatch(r"[A-Z]{2}(?:, [A-Z]{2})*", part.text))
        same = re.sub(r"\d+", "1", part.text.split(",")[0]) == re.sub(r"\d+", "1", item.parts[0])
        return (
            item.kind == "mark"
            and (code == bool(re.fullmatch("[A-Z]{2}", item.parts[0])))
            and (code or same or part.text[1:] == "")
        ) or (item.kind in ("country", "colour") and code)
    if part.kind in ("text", "date"):
        return item.kind == part.kind
    if item.kind != part.kind or item.kind in ("name", "text", "date", "mark"):
        return False
    if part.ranged:
        return len(item.parts) == 1 or item.ranged
    if part.count >= _MANY and ", " in part.text:
        return not item.ranged
    return len(item.parts) == part.count and not (item.ranged and part.count > 1)


_UNITLESS = {
    "voltage": "V",
    "pace": "bpm",
    "share": "%",
    "angle": "deg",
    "inductance": "H",
    "frequency": "Hz",
    "time": "ms",
}
"""What is measured in one unit alone, so that a bare number is of it."""
_BEFORE = frozenset(
    (
        *("up", "peak", "max", "sensitivity", "slack", "made", "captive", "gap", "within", "raised", "of", "from", "on", "by", "at", "in", "into"),
        *("before", "turned", "through", "tape", "channel", "selector", "for", "price", "with", "left", "right", "front", "rear"),
    )
)  # fmt: skip
"""Words that tell where the value behind them goes."""
_SMALL = (
    "from",
    "of",
    "on",
    "in",
    "into",
    "by",
    "at",
    "before",
    "for",
    "channel",
    "left",
    "right",
    "front",
    "rear",
    "up",
)


def _filled(
    pattern: Pattern, line: Line, phrases: tuple[Phrase, ...], free: frozenset[int]
) -> dict[int, tuple[int, ...]]:
    """For each place of the pattern the items that stand there. What follows a word that says where it goes is given there first."""
    left = sorted(free)
    used: dict[int, tuple[int, ...]] = {}
    keyed = [
        at
        for at, part in enumerate(pattern)
        if at and pattern[at - 1].text in _BEFORE and part.kind not in ("word", "sign")
    ]
    ends = {word: phrase.end for phrase in phrases for ours in phrase.ours for word in ours.split()[-1:]}
    for at, word in enumerate(line.words):
        if word.lower() in _SMALL and word.lower() not in ends:
            ends[word.lower()] = at + 1
    for at in keyed:
        key = pattern[at - 1].text
        fit = [each for each in left if _takes(pattern[at], line.items[each])]
        behind = [each for each in fit if key in ends and line.items[each].at >= ends[key]]
        if behind and not (key in ("at",) and pattern[at].kind in ("name", "way")):
            several = pattern[at].kind in ("names", "ends", "marks")
            used[at] = tuple(behind) if several else (behind[0],)
            left = [each for each in left if each not in used[at]]
    later = sorted(
        (at for at, part in enumerate(pattern) if at not in used and part.kind not in ("word", "sign", "jack")),
        key=lambda at: (at in keyed, pattern[at - 1].text != "made", at),
    )
    for at in later:
        part = pattern[at]
        fit = [each for each in left if _takes(part, line.items[each])]
        if part.kind in ("names", "ends", "marks"):
            behind = [
                other
                for other in later
                if other > at and pattern[other].kind in ("name", "names") and part.kind == "names"
            ]
            fit = fit[:-1] if behind and len(fit) > 1 else fit
        elif part.kind == "way":
            fit = fit if len(fit) > 1 or any(each.text in ("holds", "through") for each in pattern[:at]) else []
        elif part.count > 1 and not fit:
            singles = [each for each in left if line.items[each].kind == part.kind and len(line.items[each].parts) == 1]
            every = [each for each in line.items if each.kind == part.kind and len(each.parts) == 1]
            fit = singles if len(singles) == len(every) == part.count else []
        else:
            fit = fit[:1]
        if part.count > 1 and fit and len(line.items[fit[0]].parts) > 1 and part.kind not in ("names", "ends"):
            fit = fit[:1]
        if not fit and part.kind in _UNITLESS and not part.ranged:
            fit = [each for each in left if line.items[each].kind == "" and len(line.items[each].parts) == part.count][
                :1
            ]
        if fit:
            used[at] = tuple(fit)
            left = [each for each in left if each not in fit]
    return used


_TAKES_FIGURES = ("note", "serial", "version", "fitted", "firmware", "was", "tuning")
"""Statements whose text may hold a number that was typed beside other words; in another it would be a fact of its own that gets lost."""


def _with_strange_words(
    places: list[_Place],
    line: Line,
    strange: tuple[int, ...],
    left: tuple[int, ...],
    called: dict[str, str],
    needed: bool,
) -> tuple[list[_Place], frozenset[int]]:
    """A word that means nothing here stands for a name that is missing; all of them, with the values that nothing else takes, for a text that is.
    What is not yet known to be needed is filled only behind a word that was typed."""
    words = list(strange)
    made = list(places)
    used: set[int] = set()
    for at, place in enumerate(places):
        if not place.blank or not (
            needed or (at and places[at - 1].held and places[at - 1].part.kind == "word" and at > 1)
        ):
            continue
        if place.part.kind == "name" and needed and not words and called and places[at - 1].text == "beneath":
            deck = next(iter(called.values()))
            made[at] = _Place(place.part, deck, deck, True)
            continue
        names = [each for each in words if re.fullmatch(r"[a-z][a-z0-9-]*", line.words[each])]
        if place.part.kind == "name" and names:
            text = called.get(line.words[names[0]], line.words[names[0]])
            made[at] = _Place(place.part, text, text, True)
            words.remove(names[0])
        elif place.part.kind == "text" and needed and (words or left):
            plain = [each for each in left if line.items[each].kind not in ("text", "name")]
            if plain and places[0].text not in _TAKES_FIGURES:
                continue
            row = sorted(
                [
                    *((each, 1, line.words[each]) for each in words),
                    *((line.items[each].at, 0, " x ".join(line.items[each].parts)) for each in plain),
                ]
            )
            if not row:
                continue
            text = f'"{" ".join(each for _, _, each in row)}"'
            made[at] = _Place(place.part, text, text, True)
            used.update(plain)
            words = []
    return made, frozenset(used)


def _with_said_words(places: list[_Place], phrases: tuple[Phrase, ...], reads: Callable[[str], bool]) -> list[_Place]:
    """Words that were said, in place of those of the worked line among which one is chosen."""
    made = list(places)
    for phrase in phrases:
        for ours in phrase.ours:
            words = ours.split()
            here = [each.text for each in made]
            if (len(words) > 1 and not set(words) & set(here)) or all(word in here for word in words):
                continue
            for word in words:
                if word in here:
                    continue
                flag = all(each.part.kind == "word" for each in made)
                for at in range(0 if flag and len(words) == 1 and not made[0].held else 1, len(made)):
                    if made[at].part.kind != "word" or made[at].held:
                        continue
                    tried = [*made[:at], _Place(Part("word", word), word, word, True), *made[at + 1 :]]
                    if reads(_text(tried)) and not reads(
                        _text([*made[:at], _Place(Part("word", "zz-zz"), "zz-zz", "", True), *made[at + 1 :]])
                    ):
                        made = tried
                        break
    return made


def _word_for_a_name(places: list[_Place], reads: Callable[[str], bool]) -> bool:
    """Whether a word of the language came to stand where a name does."""
    return any(
        reads(_text([*places[:at], _Place(Part("word", "zz-zz"), "zz-zz", "", True), *places[at + 1 :]]))
        for at, place in enumerate(places)
        if at and place.part.kind == "word" and places[at - 1].text in ("from", "with", "of", "on")
    )


def _with_more_words(places: list[_Place], phrases: tuple[Phrase, ...], reads: Callable[[str], bool]) -> list[_Place]:
    """Words that were said and may stand in the line beside the others."""
    made = list(places)
    if made[0].part.kind == "word" and not made[0].held:
        return made
    for phrase in phrases:
        words = phrase.ours[0].split()
        here = [each.text for each in made]
        new = [word for word in words if word not in here]
        if len(new) != 1 or (len(words) > 1 and words[0] not in here):
            continue
        for at in range(len(made), 0, -1):
            tried = [*made[:at], _Place(Part("word", new[0]), new[0], new[0], True), *made[at:]]
            if reads(_text(tried)) and not reads(
                _text([*made[:at], _Place(Part("word", "zz-zz"), "zz-zz", "", True), *made[at:]])
            ):
                made = tried
                break
    return made


def _without_the_rest(places: list[_Place], reads: Callable[[str], bool]) -> list[_Place]:
    """Without what nobody said, as far as the line reads without it; the longest runs first."""
    made = list(places)
    length = len(made)
    while length:
        for at in range(len(made) - length, -1, -1):
            run = made[at : at + length]
            if any(each.held and not _bare(run, number) for number, each in enumerate(run)) or all(
                each.part.kind in ("word", "jack") and at == 0 for each in run
            ):
                continue
            rest = [*made[:at], *made[at + length :]]
            if rest and reads(_text(rest)) and not (at == 0 and made[0].part.kind == "word"):
                made = rest
                break
        else:
            length -= 1
            continue
        length = min(length, len(made))
    return made


def _bare(run: list[_Place], at: int) -> bool:
    """Whether a word is held only because a small word like it was typed, while what would follow it was not."""
    return run[at].part.kind == "word" and run[at].text in _BEFORE and at + 1 < len(run) and run[at + 1].blank


def _text(places: list[_Place]) -> str:
    return re.sub(r" (?=,)", "", " ".join(each.text for each in places))
