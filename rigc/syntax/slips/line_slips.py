"""A line of which all that must be said is there, in another order, with a small word too many, or without one: what reads is told -> the wording.

Nothing that was typed gets lost but words that say nothing, and nothing is put in but words of the language: no number, no name, no text.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator

from rigc.diagnostics.mend import Mend
from rigc.diagnostics.near import nearest
from rigc.diagnostics.wording import joined
from rigc.syntax.mistake import Mistake, Wording
from rigc.syntax.words import BETWEEN
from rigc.syntax.worked_lines import lines_like

_NUMBER = r"[+-]?\d+(?:\.\d+)?"
_UNIT = (
    r"(?:%|°C?|(?:[pnuµμmckMG]?(?:VA|V|Ah|A|Wh|W|H|F|Hz|ohm|Ω|Ω|m|g|Pa)|m?s|in|ft|lb|oz|min|h|psi|deg|dBu?|bpm|awg|[A-Z]{3})"
    r"(?:/m|/ft|2)?(?![A-Za-z0-9-]))"
)
_SIZED = rf"{_NUMBER}(?:[ \t]*{_UNIT})?(?![A-Za-z0-9-])"
_SPREAD = rf"(?:[ \t]*(?:\+-|\+/-|±)[ \t]*{_SIZED})?"
_END = r"[a-z][\w-]*(?:\.[\w-]+)?"
_KEYED = r"(?:peak|max|sensitivity|up|captive|slack|made|premade|gap|raised|source|because|by|in|seal|until|channel|turned|at)"
_PARTS = (
    rf'"(?:\\.|[^"\\])*"|\d{{4}}-\d\d-\d\d|{_SIZED}(?:[ \t]*(?:x|,|\.\.)[ \t]*{_SIZED})*{_SPREAD}'
    rf"|{_END}(?:[ \t]*(?:->|=>)[ \t]*{_END})+|{_END}(?:[ \t]*(?:,|\.\.)[ \t]*{_END})+|{_END}|[A-Za-z0-9][\w-]*|->|=>|\.\.|[^\s\w]"
)
_PART = re.compile(_PARTS)
"""What stays together when a line is put in order: a quantity with its unit, a text, a date, a list of names, a way of several stops, a word."""
_PHRASE = re.compile(
    rf"{_KEYED}[ \t]+(?:{_SIZED}|\d+|\"[^\"]*\"|\d{{4}}-\d\d-\d\d)(?![\w.]|[ \t]*,)|{_SIZED}[ \t]+(?:dc|ac)\b|{_PARTS}"
)
"""The same, with a word and the number or text that belongs to it as one."""
_IDLE = frozenset(
    ("a", "an", "the", "is", "are", "has", "have", "be", "yes", "type", "kind", "set", "value", "no.", "nr", "number", "fed", "powered", "used", "long")
)  # fmt: skip
"""Words that say nothing beside the others of a line; common speech, no source."""
_SIGNS = frozenset("[]()<>=:;|/*&+.,!")
_BETWEEN = BETWEEN | {"before", "as", "than", "via", "onto", "holds"}
_LEAST_STEM = 4
_LONGEST = 160
_MOST_PARTS = 11
_MOST_IN_TWO = 7
"""Parts of a line in which two things are put right at once."""
_MOST_TRIED = 4_000
"""Readings for one line."""
OUT_OF_ORDER = "the parts of this line are out of order"
_Edit = Callable[[tuple[str, ...]], Iterator[tuple[str, ...]]]
_MOST_TOLD = 2
_MOST_NAMED = 4


def as_it_reads(m: Mistake) -> Wording | None:
    """`haze program 4`, `limit 85 % load`, `latching switch at 33, 20 mm`, `battery door 30 x 50 mm`."""
    code = m.code.strip()
    if len(code) > _LONGEST or "{" in code or "}" in code or not re.search(r"[a-z]", code):
        return None
    phrases, line = tuple(_PHRASE.findall(code)), tuple(_PART.findall(code))
    likes = lines_like(m.block, code)
    if not likes or len(line) > _MOST_PARTS:
        return None
    small = _small_words(m, likes)
    found = m.tries.sought(
        (m.block, code, m.ends),
        lambda: (_that_read(m, phrases, small) if phrases != line else []) or _that_read(m, line, small),
    )
    if not found:
        return None
    if len(found) > _MOST_TOLD and (words := _one_word_each(line, found)):
        shown = [f"`{text}`" for text in found[:_MOST_NAMED]]
        return Wording(
            f"a word is missing in this line: {joined(words, 'or')}",
            "the line is not read from here on",
            f"write {joined(shown, 'or')}",
        )
    mends = tuple(mend for text in found[:_MOST_TOLD] for mend in _in_its_place(m, text, f"write {text}"))
    return Wording(_message(m, line, found[0]), "the line is not read from here on", mends=mends)


def _in_its_place(m: Mistake, text: str, words: str) -> tuple[Mend, ...]:
    """The mend by which `text` stands in place of all that the line says, behind its indent and before its comment."""
    start = m.line_start + len(m.code) - len(m.code.lstrip())
    return m.instead(start, start + len(m.code.strip()), text, words)


def _one_word_each(line: tuple[str, ...], found: list[str]) -> tuple[str, ...]:
    """The words of which each by itself makes the line read; none where they read for another reason."""
    more = [[part for part in _PART.findall(text) if part not in line] for text in found]
    return tuple(dict.fromkeys(each[0] for each in more)) if all(len(each) == 1 for each in more) else ()


def _message(m: Mistake, line: tuple[str, ...], right: str) -> str:
    parts = _PART.findall(right)
    more = [part for part in line if part not in parts]
    less = [part for part in parts if part not in line]
    if len(more) == 1 and not less:
        return f"'{more[0]}' is one word too many in this line"
    if len(less) == 1 and not more:
        return f"'{less[0]}' is missing in this line"
    if not more and not less:
        return OUT_OF_ORDER
    return f"'{m.line.strip()}' is not how this is written" if m.ends else f"'{m.word}' can't stand here"


def _small_words(m: Mistake, likes: tuple[str, ...]) -> tuple[str, ...]:
    """The words and arrows of the language in worked lines like this one, and those that were expected where reading stopped."""
    words = {each for each in m.literals.values() if re.fullmatch(r"[a-z][a-z-]*|->|\.\.", each)}
    worked = (word for line in likes for word in re.findall(r"[a-z][a-z-]*|->", re.sub(r'"[^"]*"', "", line)))
    return tuple(dict.fromkeys(word for word in worked if word in words))


def _that_read(m: Mistake, line: tuple[str, ...], small: tuple[str, ...]) -> list[str]:
    """The nearest lines that read: with one thing put right, else with two."""
    plain: tuple[_Edit, ...] = (
        lambda parts: _joined(m, parts),
        _without_idle,
        _listed,
        lambda parts: _other_words(parts, small),
    )
    added: tuple[_Edit, ...] = () if m.ends else (lambda parts: _with_a_word(parts, small),)
    seen, near, left = {line}, list[tuple[str, ...]](), _MOST_TRIED

    def tried(edits: tuple[_Edit, ...], parts: tuple[str, ...]) -> list[str]:
        nonlocal left
        here = [each for edit in edits for each in edit(parts) if each not in seen][:left]
        left -= len(here)
        seen.update(here)
        near.extend(here)
        return _readable(m, line, here)

    for edits in (*((each,) for each in plain), (_moved,), added):
        if found := tried(edits, line):
            return found
    first = tuple(near) if len(line) <= _MOST_IN_TWO else ()
    turned = [each for each in first if len(each) == len(line) < _MOST_IN_TWO]
    for edits, lines in ((plain, first), ((_moved,), turned), (added, first)):
        for each in lines:
            if found := tried(edits, each):
                return found
    return []


def _readable(m: Mistake, line: tuple[str, ...], lines: list[tuple[str, ...]]) -> list[str]:
    """Those that read, of these the ones with the fewest words put in; no word that is put in may stand for a name."""
    found = [parts for parts in dict.fromkeys(lines) if m.reads(_text(parts)) and not _names_put_in(m, line, parts)]
    least = min(map(len, found), default=0)
    return list(dict.fromkeys(_text(parts) for parts in found if len(parts) == least))


def _text(parts: tuple[str, ...]) -> str:
    return re.sub(r" (?=[,.])|(?<=\.) ", "", " ".join(parts))


def _names_put_in(m: Mistake, line: tuple[str, ...], parts: tuple[str, ...]) -> bool:
    """Whether one of the words that are put in is read as a name: then any other would do as well."""
    new = [
        at for at, part in enumerate(parts) if re.fullmatch("[a-z-]+", part) and (part not in line or part in _SIDES)
    ]
    return any(m.reads(_text((*parts[:at], _ANY_NAME, *parts[at + 1 :]))) for at in new)


_SIDES = ("left", "right", "front", "rear", "up")
_ANY_NAME = "zz-zz"


def _joined(m: Mistake, parts: tuple[str, ...]) -> Iterator[tuple[str, ...]]:
    """Two words that are one with a hyphen, and one that is two without."""
    words = set(m.literals.values())
    for at, part in enumerate(parts):
        if at and f"{parts[at - 1]}-{part}" in words:
            yield (*parts[: at - 1], f"{parts[at - 1]}-{part}", *parts[at + 1 :])
        apart = part.split("-")
        if len(apart) > 1 and part not in words and all(each in words for each in apart):
            yield (*parts[:at], *apart, *parts[at + 1 :])


def _without_idle(parts: tuple[str, ...]) -> Iterator[tuple[str, ...]]:
    for at, part in enumerate(parts):
        if part in _IDLE or part in _SIGNS or (part in _BETWEEN and part != "in"):
            yield (*parts[:at], *parts[at + 1 :])
    without = tuple(part for part in parts if part not in _IDLE and part not in _SIGNS)
    if without != parts:
        yield without


_TO = frozenset(("to", "-", "till", "until", "up"))
_AND = frozenset(("and", "&", "+", "plus", "/", "or"))


def _listed(parts: tuple[str, ...]) -> Iterator[tuple[str, ...]]:
    """`8.5 V to 9.9 V` as a range, `plume and reed` and `DE US` as a list."""
    for at in range(1, len(parts)):
        before, part, *behind = parts[at - 1 :]
        if behind and part in _TO and before[0].isdigit() and behind[0][0].isdigit():
            yield (*parts[: at - 1], f"{before}..{behind[0]}", *behind[1:])
        if behind and part in _AND:
            yield (*parts[: at - 1], f"{before}, {behind[0]}", *behind[1:])
        if before[0].isalnum() and part[0].isalnum():
            yield (*parts[: at - 1], f"{before}, {part}", *parts[at + 1 :])


def _other_words(parts: tuple[str, ...], small: tuple[str, ...]) -> Iterator[tuple[str, ...]]:
    """Another of the small words in place of one, and a word of the language in place of one that begins as it does: `reversed for oak`."""
    for at, part in enumerate(parts):
        for word in small:
            stem = next(
                (at for at, (one, other) in enumerate(zip(part, word, strict=False)) if one != other), len(word)
            )
            alike = stem >= _LEAST_STEM and stem * 2 > len(part) and abs(len(part) - len(word)) < _LEAST_STEM
            if word != part and (alike or (part in _BETWEEN and word in _BETWEEN)):
                yield (*parts[:at], word, *parts[at + 1 :])


def _moved(parts: tuple[str, ...]) -> Iterator[tuple[str, ...]]:
    """One part, or two that follow each other, at another place."""
    for length in (1, 2):
        for at in range(len(parts) - length + 1):
            rest = (*parts[:at], *parts[at + length :])
            for to in range(len(rest) + 1):
                if to != at:
                    yield (*rest[:to], *parts[at : at + length], *rest[to:])


def _with_a_word(parts: tuple[str, ...], small: tuple[str, ...]) -> Iterator[tuple[str, ...]]:
    for at in range(len(parts) + 1):
        for word in small:
            if word == "->" or not any(part.startswith(word) for part in parts):
                yield (*parts[:at], word, *parts[at:])


_CHOSEN: dict[str, dict[str, str]] = {
    "unpowered": {
        "mutes": "silent dead off nothing none no quiet stops blocks mute muted cuts",
        "passes": "through thru pass passing on bypass bypassed wire yes",
        "latches": "holds remembers latch latching stays keeps",
    },
    "clock": {
        "follows": "slave in receive receives received listens sync synced synchronised input follow external",
        "sends": "master out send output generates internal",
    },
    "path": {
        "transformer": "isolated iso galvanic isolating trafo",
        "straight": "direct wire wired through thru parallel passive dry",
        "buffer": "active buffered amplifier driven",
    },
    "phantom": {
        "gives": "on yes supplies provides source gets delivers",
        "none": "off no without",
        "needs": "wants requires required takes",
        "bears": "ok okay tolerates withstands survives safe tolerant",
        "never": "forbidden dangerous damages",
    },
    "ground": {"isolated": "floating none lifted", "negative": "minus", "positive": "plus"},
    "base": {"flat": "smooth plain even", "textured": "rough rubber structured", "screws": "screwed bumpy"},
    "class": {
        "gigging": "club pub gig gigs local live stage weekend",
        "touring": "tour road pro professional",
        "studio": "recording",
        "home": "bedroom practice living",
        "fly": "flight flying air",
    },
    "control": {"relay": "mechanical", "opto": "photo led", "contact": "switch footswitch latching momentary button"},
    "loop": {"empty": "bypassed nothing none unused free"},
    "switch": {"latching": "toggle on-off stomp", "momentary": "push tap non-latching unlatching"},
    "expression": {"linear": "lin", "log": "logarithmic"},
    "mates": {"itself": "same self", "loop": "hook"},
    "mute": {"ring": "continue go trail on", "stop": "cut off end"},
    "source": {"keyboard": "piano synth synthesizer organ keys", "microphone": "mic mike vocal", "line": "laptop player computer"},
}  # fmt: skip
"""By the word of a statement, what people say for the words among which it chooses; common speech, no source."""


def _chosen(m: Mistake) -> Wording | None:
    """`clock slave`, `unpowered silent`: where one of few words goes."""
    head = m.code.split()[0] if m.before.strip() else m.block
    ours = next((word for word, said in _CHOSEN.get(head, {}).items() if m.word.lower() in said.split()), "")
    if not ours or ours not in {m.literals.get(name) for name in m.expected}:
        return None
    return Wording(f"'{m.word}' is no word of this statement", f"did you mean '{ours}'?", mends=m.write(ours))


_MOST_CHOICES = 7


def one_of_few(m: Mistake) -> Wording | None:
    """Where one of few words goes and another stands, or none: the line with each of them."""
    choices = [word for name, word in m.literals.items() if name in m.expected and re.fullmatch(r"[a-z][a-z-]*", word)]
    others = m.expected - {name for name, word in m.literals.items() if word in choices} - {"__DOT", "_DOTS", "COMMA"}
    if not 1 < len(choices) <= _MOST_CHOICES or any(
        name in ("NAME", "NUMBER", "STRING", "_NL", "MARK", "DATE") for name in others
    ):
        return None
    if nearest(m.word, choices):
        return None
    before = m.before.strip()
    if not before:
        return None
    shown = [f"{before} {word}" for word in choices]
    said = f"'{m.word}' can't stand behind '{before}'" if not m.ends else f"this line breaks off behind '{before}'"
    return Wording(said, "one of few words goes here", f"write `{'`, `'.join(shown[:-1])}` or `{shown[-1]}`")


def with_a_remark(m: Mistake) -> Wording | None:
    """`heel room 10 mm`, `lead 4 m of black stage-coax`: without one word, or two that follow each other, the line reads; they go into a comment."""
    code = m.code.strip()
    parts = tuple(_PART.findall(code))
    if len(code) > _LONGEST or len(parts) > _MOST_PARTS or "{" in code or "->" in code:
        return None
    words = set(_small_words(m, lines_like(m.block, code)))
    for length in (1, 2):
        for at in range(1, len(parts) - length + 1):
            gone = parts[at : at + length]
            if not all(
                re.fullmatch(r"[a-z][a-z-]*", each) and each not in words and not _declared(m, each) for each in gone
            ):
                continue
            text = _text((*parts[:at], *parts[at + length :]))
            if m.reads(text):
                said = " ".join(gone)
                whole = f"{text}  # {said}"
                mends = _in_its_place(m, whole, f"make a comment of it: {whole}")
                return Wording(f"'{said}' means nothing in this line", "the line is not read from here on", mends=mends)
    return None


_DECLARES = (
    "unit|amp|desk|supply|instrument|source|listener|mains-strip|cable|plug|strip|deck|panel|case|scenario|output|input"
)


def _declared(m: Mistake, name: str) -> bool:
    return bool(re.search(rf"^[ \t]*(?:{_DECLARES})[ \t]+{re.escape(name)}\b", m.span.source.text, re.M))


_LACKED = (("zz-zz", "___"), ("7 zz", "___"), ('"zz"', '"___"'), ("Z9", "___"), ("2026-01-01", "year-month-day"))
"""What may be missing and only the builder knows: a name, a quantity, a text, a mark, a date; with how it is left open."""


def as_it_lacks(m: Mistake) -> Wording | None:
    """`selector 115 V`, `tier 260..320 mm raised 20 mm`: one name, quantity, text or date is missing, here or further on."""
    code = m.code.strip()
    parts = tuple(_PART.findall(code))
    if not parts or len(code) > _LONGEST or len(parts) > _MOST_PARTS or "{" in code:
        return None
    for at in range(len(parts) + 1):
        for typed, shown in _LACKED:
            if m.reads(_text((*parts[:at], typed, *parts[at:]))):
                whole = _text((*parts[:at], shown, *parts[at:]))
                likes = lines_like(m.block, code)
                return Wording(
                    f"something is missing in '{code if len(code) < _SHOWN else m.code.split()[0]}'",
                    "the line is not read from here on",
                    f"fill in what it lacks: {whole}{f'; as in {likes[0]}' if likes else ''}",
                )
    return None


_SHOWN = 60


def _hyphen_left_out(m: Mistake) -> Wording | None:
    """`battery door 30 x 50 mm at 18, 30 mm`, where another wording would take `door` for a kind of battery."""
    first = re.match(r"[ \t]*([a-z]+)[ \t]+([a-z]+)\b", m.code)
    if first is None or f"{first[1]}-{first[2]}" not in m.literals.values():
        return None
    whole = f"{first[1]}-{first[2]}"
    text = f"{whole}{m.code[first.end() :]}".rstrip()
    if not m.reads(text):
        return None
    start = m.line_start + first.start(1)
    mends = m.instead(start, m.line_start + first.end(), whole, f"write {text}")
    return Wording(
        f"'{first[1]} {first[2]}' is one word here, with a hyphen", "the line is not read from here on", mends=mends
    )


def two_lines(m: Mistake) -> Wording | None:
    """`vents rear and left`: what is said twice is two lines."""
    found = re.match(r"[ \t]*(,|and\b|&|\+)[ \t]*([a-z-]+)[ \t]*\Z", m.code[len(m.before.rstrip()) :])
    if found is None or not m.before.strip():
        return None
    first, second = m.before.strip(), f"{m.before.split()[0]} {found[2]}"
    if not (m.reads(first) and m.reads(second)):
        return None
    indent = m.line[: len(m.line) - len(m.line.lstrip())]
    start, end = m.line_start + len(m.before.rstrip()), m.line_start + len(m.code.rstrip())
    mends = m.instead(start, end, f"\n{indent}{second}", f"write two lines: `{first}` and `{second}`")
    return Wording(f"'{found[1]}' stands between two facts", "one fact a line", mends=mends)


LINE_SLIPS: tuple[Callable[[Mistake], Wording | None], ...] = (_hyphen_left_out, _chosen)
