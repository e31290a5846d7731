"""The formula of a reason, reckoned anew from the digits that it prints: which of its equations are false, and which are not arithmetic.

An equation is true where the printed operands, put into a pocket calculator, give the printed result to its last digit.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterator
from contextlib import suppress
from itertools import pairwise
from typing import NamedTuple

# What a unit is in the base units, so that `16.6 µV / 77.5 mV` and `4.2 H × 768.9 pF` can be reckoned as they stand.
_UNITS = {
    "MΩ": 1e6, "kΩ": 1e3, "Ω": 1.0, "mΩ": 1e-3, "H": 1.0, "mH": 1e-3, "µF": 1e-6, "nF": 1e-9, "pF": 1e-12,
    "kHz": 1e3, "Hz": 1.0, "µT": 1e-6, "m²": 1.0, "cm²": 1e-4, "mm²": 1e-6, "V": 1.0, "mV": 1e-3, "µV": 1e-6,
    "m": 1.0, "mm": 1e-3, "%": 0.01, "dB": 1.0, "A": 1.0, "mA": 1e-3, "W": 1.0, "VA": 1.0, "kg": 1.0, "g": 1e-3,
    "ms": 1e-3, "µs": 1e-6, "s": 1.0, "h": 1.0, "EUR": 1.0,
}  # fmt: skip
_UNIT = "|".join(sorted(_UNITS, key=len, reverse=True))
_TOKEN = re.compile(
    rf"\s*(?:(?P<number>\d+(?:\.\d+)?)|(?P<unit>(?:{_UNIT})(?![\w²]))|(?P<word>log10|the (?:least|highest) of|of|\|\||, |[+−×·/()|√π^]))"
)
_LABEL = re.compile(
    rf"(?<=\d) (?!of |(?:{_UNIT})(?![\w²]))(?:on [A-Z]\w+|[a-z]{{2,}}[a-z-]*(?: use)?)(?= [+−=]|$)"
)  # `2 on A3 + 8 flat-angle`
_CHOICE = re.compile(r"(?:the )?(least|highest|shorter) of ((?:[\d.]+(?:, )?)+)")
_RESULT = re.compile(rf"(?:≥ )?(?P<number>[+−]?\d+(?:\.\d+)?)(?: ?(?P<unit>{_UNIT})(?![\w²]))?")


class NotArithmetic(Exception):
    """A side of an equation that is told in words."""


class Equation(NamedTuple):
    """One `left = right` of a formula, and whether it is true."""

    left: str
    right: str
    true: bool


class _Sum:
    """Reads and reckons one side; `units` tells whether units count, else each is as much as 1."""

    def __init__(self, text: str, *, units: bool) -> None:
        self.tokens: list[tuple[str, str]] = []
        self.units, self.at, at = units, 0, 0
        while at < len(text.rstrip()):
            token = _TOKEN.match(text, at)
            if token is None:
                raise NotArithmetic(text)
            self.tokens.append((token.lastgroup or "", token.group(token.lastgroup or 0)))
            at = token.end()

    def whole(self) -> float:
        value = self._terms()
        if self.at < len(self.tokens):
            raise NotArithmetic
        return value

    def _next(self, *words: str) -> str:
        if self.at < len(self.tokens) and self.tokens[self.at][1] in words:
            self.at += 1
            return self.tokens[self.at - 1][1]
        return ""

    def _terms(self) -> float:
        value = self._beside()
        while sign := self._next("+", "−"):
            value += self._beside() * (1 if sign == "+" else -1)
        return value

    def _beside(self) -> float:
        value = self._factors()
        while self._next("||"):
            other = self._factors()
            value = value * other / (value + other)
        return value

    def _factors(self) -> float:
        value = self._factor()
        while self.at < len(self.tokens):
            if self._next("/"):
                value /= self._factor()
            elif self._next("×", "·", "of") or self.tokens[self.at][1] in ("√", "π", "log10", "("):
                value *= self._factor()
            else:
                break
        return value

    def _factor(self) -> float:
        value = self._root()
        return value ** self._factor() if self._next("^") else value

    def _root(self) -> float:
        if self._next("−"):
            return -self._factor()
        if choice := self._next("the least of", "the highest of"):
            values = [self._terms()]
            while self._next(", "):
                values.append(self._terms())
            return max(values) if "highest" in choice else min(values)
        if self._next("π"):
            return math.pi
        if self._next("√"):
            return math.sqrt(self._factor())
        if self._next("log10"):
            return math.log10(self._factor())
        for opening, closing in (("(", ")"), ("|", "|")):
            if self._next(opening):
                value = self._terms()
                if not self._next(closing):
                    raise NotArithmetic
                return abs(value) if opening == "|" else value
        return self._number()

    def _number(self) -> float:
        if self.at == len(self.tokens) or self.tokens[self.at][0] != "number":
            raise NotArithmetic
        value = float(self.tokens[self.at][1])
        self.at += 1
        if self.at < len(self.tokens) and self.tokens[self.at][0] == "unit":
            value *= _UNITS[self.tokens[self.at][1]] if self.units else 1.0
            self.at += 1
        return value


def _true(left: str, right: re.Match[str]) -> bool:
    """Whether `left` comes to `right`, within half of its last digit: with all units reckoned, or with none."""
    digits, unit = right["number"], right["unit"]
    places = len(digits.partition(".")[2])
    half = 0.5 * 10.0**-places
    if unit == "kHz":  # a corner is told to three figures
        half = max(half, 0.5 * 10.0 ** (len(digits.partition(".")[0]) - 3))
    told = float(digits.replace("−", "-"))
    for units in (True, False):
        scale = _UNITS.get(unit or "", 1.0) if units else 1.0
        value = _reckoned(left, units=units)
        if abs(value - told * scale) <= half * scale * (1 + 1e-9) + abs(value) * 1e-12:
            return True
    return False


def _reckoned(text: str, *, units: bool) -> float:
    choice = _CHOICE.fullmatch(text.strip())
    if choice is None:
        return _Sum(text, units=units).whole()
    values = [float(each) for each in choice[2].split(", ")]
    return max(values) if choice[1] == "highest" else min(values)


def unread(formula: str) -> list[str]:
    """The sides with a digit in them that are followed by ` = ` and could not be reckoned."""
    read = {each.left for each in equations(formula)}
    sides = [side for part in formula.split("; ") for side in _sides(part)[:-1]]
    return [side for side in sides if re.search(r"\d", side) and not any(left in side for left in read)]


def _sides(part: str) -> list[str]:
    return _LABEL.sub("", part).split(" = ")


def equations(formula: str) -> Iterator[Equation]:
    """Each equation of a formula of which both sides are numbers; a pair of sums `a, b = c, d` is two."""
    for part in formula.split("; "):
        for left, right in pairwise(_sides(part)):
            lefts, rights = [left.rpartition(": ")[2]], [right]
            if "," in lefts[0] and lefts[0].count(", ") == right.count(", "):
                lefts, rights = lefts[0].split(", "), right.split(", ")
            with suppress(NotArithmetic):
                yield from [_equation(*pair) for pair in zip(lefts, rights, strict=True)]


def _equation(left: str, right: str) -> Equation:
    result = _RESULT.match(right)
    if result is None or not re.search(r"\d", left):
        raise NotArithmetic
    return Equation(left, result.group(), _true(left, result))
