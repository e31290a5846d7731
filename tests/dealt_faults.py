"""A good rig's text and a seed -> the text with one slip such as people make: what a finding's mends are tried on."""

from __future__ import annotations

import random
import re
from collections.abc import Callable

Slip = Callable[[random.Random, str], str]


def dealt_fault(text: str, seed: int) -> str:
    """The text with the slip that the seed deals; the same for the same seed, and never the text itself."""
    dice = random.Random(seed)
    while True:
        made = dice.choice(SLIPS)(dice, text)
        if made != text:
            return made


def _one(dice: random.Random, text: str, pattern: str, new: Callable[[re.Match[str]], str]) -> str:
    """One place of those that match, outside comments, replaced."""
    found = [each for each in re.finditer(pattern, text, re.M) if "#" not in _line(text, each.start())]
    if not found:
        return text
    place = dice.choice(found)
    return text[: place.start()] + new(place) + text[place.end() :]


def _line(text: str, at: int) -> str:
    return text[text.rfind("\n", 0, at) + 1 : at]


def _misspelt(dice: random.Random, text: str) -> str:
    def swapped(found: re.Match[str]) -> str:
        word, at = found[0], dice.randrange(1, len(found[0]) - 1)
        return word[:at] + word[at + 1] + word[at] + word[at + 2 :]

    return _one(dice, text, r"\b[a-z]{4,}\b", swapped)


def _left_out(dice: random.Random, text: str) -> str:
    return _one(dice, text, r"^  [a-z].*\n", lambda _: "")


def _said_twice(dice: random.Random, text: str) -> str:
    return _one(dice, text, r"^  [a-z].*\n", lambda found: found[0] * 2)


def _other_number(dice: random.Random, text: str) -> str:
    factor = dice.choice((0.1, 0.5, 0.8, 1.2, 2, 10))
    return _one(
        dice, text, r"(?<=[ x])\d+(?= ?(x|mm|mA|V|g|W|kohm|dBu))", lambda found: f"{float(found[0]) * factor:g}"
    )


def _other_unit(dice: random.Random, text: str) -> str:
    others = {"mA": "A", "mm": "cm", "g": "kg", "kohm": "ohm", "V": "mV", "kg": "g", "W": "mW"}
    return _one(dice, text, r"(?<=\d )(mA|mm|g|kohm|V|kg|W)\b", lambda found: others[found[1]])


def _polarity_turned(dice: random.Random, text: str) -> str:
    turned = {"centre-negative": "centre-positive", "centre-positive": "centre-negative"}
    return _one(dice, text, r"centre-(?:negative|positive)", lambda found: turned[found[0]])


def _other_outlet(dice: random.Random, text: str) -> str:
    return _one(dice, text, r"(?<=\.[a-z])\d\b", lambda _: str(dice.randrange(1, 9)))


def _moved(dice: random.Random, text: str) -> str:
    shift = dice.choice((-60, -20, -5, 5, 20, 60))
    return _one(dice, text, r"(?<= at )\d+(?=, )", lambda found: str(max(0, int(found[0]) + shift)))


def _without_sign(dice: random.Random, text: str) -> str:
    return _one(dice, text, r' -> |"|\{|, ', lambda _: " ")


def _left_in_chain(dice: random.Random, text: str) -> str:
    return _one(dice, text, r"(?<=-> )[a-z][\w.-]* -> ", lambda _: "")


SLIPS: tuple[Slip, ...] = (
    _misspelt, _left_out, _said_twice, _other_number, _other_unit, _polarity_turned, _other_outlet, _moved,
    _without_sign, _left_in_chain,
)  # fmt: skip
