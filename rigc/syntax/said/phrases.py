"""The words of a line -> what this language says for them, by the longest phrases that are known."""

from __future__ import annotations

from rigc.record import Record
from rigc.syntax.said.thesaurus import IDLE, NEGATED, known_stems, longest, stem, thesaurus, words_of

_COMPOUND = 7
_LEAST_PART = 3


class Phrase(Record):
    """Words that mean something: what this language may say for them, and from which word to which they stand."""

    ours: tuple[str, ...]
    start: int
    end: int


class Understood(Record):
    """The phrases of a line in order, and the places of words that mean nothing here."""

    phrases: tuple[Phrase, ...]
    strange: tuple[int, ...]
    negated: bool


def understood(words: tuple[str, ...], sayable: frozenset[str]) -> Understood:
    """The phrases in these words for which this language has only `sayable` words, longest first; idle words within a phrase do not part it."""
    stems = [(at, each) for at, word in enumerate(words) for each in _taken_apart(word)]
    phrases: list[Phrase] = []
    strange: list[int] = []
    negated = False
    place = 0
    while place < len(stems):
        phrase, end = _longest_from(stems, place, sayable)
        if phrase:
            phrases.append(Phrase(phrase, stems[place][0], stems[end - 1][0] + 1))
            place = end
            continue
        at = stems[place][0]
        if words[at].lower() in NEGATED:
            negated = True
        elif words[at].lower() not in IDLE:
            strange.append(at)
        place += 1
    return Understood(tuple(phrases), tuple(dict.fromkeys(strange)), negated)


def _taken_apart(word: str) -> tuple[str, ...]:
    """The stems of a word: of one with hyphens, or of a compound of two that are known, each part."""
    told = words_of(word)
    if len(told) != 1 or told[0] in known_stems() or len(word) < _COMPOUND or word.lower() in IDLE:
        return told
    small = word.lower()
    for at in range(_LEAST_PART, len(small) - _LEAST_PART + 1):
        parts = (stem(small[:at]), stem(small[at:]))
        if parts in thesaurus() or all((part,) in thesaurus() for part in parts):
            return parts
    return told


def _longest_from(stems: list[tuple[int, str]], start: int, sayable: frozenset[str]) -> tuple[tuple[str, ...], int]:
    """What is said for the longest phrase that begins at this word, and where it ends."""
    best: tuple[tuple[str, ...], int] = ((), start)
    reached: list[tuple[tuple[str, ...], int]] = [((), start)]
    known = thesaurus()
    for _ in range(2 * longest()):
        further: list[tuple[tuple[str, ...], int]] = []
        for said, place in reached:
            if place >= len(stems):
                continue
            word = stems[place][1]
            grown = (*said, word)
            if any(key[: len(grown)] == grown for key in _beginning(grown[0])):
                further.append((grown, place + 1))
                ours = tuple(each for each in known.get(grown, ()) if sayable.issuperset(each.split()))
                if ours and (place + 1 > best[1] or not best[0]):
                    best = (ours, place + 1)
            if said and word in _IDLE_STEMS:
                further.append((said, place + 1))
        reached = further
        if not reached:
            break
    return best


_IDLE_STEMS = frozenset(stem(word) for word in IDLE) | IDLE


def _beginning(word: str) -> tuple[tuple[str, ...], ...]:
    if not _BY_FIRST:
        for key in thesaurus():
            _BY_FIRST.setdefault(key[0], []).append(key)
    return tuple(_BY_FIRST.get(word, ()))


_BY_FIRST: dict[str, list[tuple[str, ...]]] = {}
