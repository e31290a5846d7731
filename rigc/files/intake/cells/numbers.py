"""A number as people type it -> a number as the language has it: decimal commas, thousands, fractions of an inch."""

from __future__ import annotations

import re
from decimal import Decimal
from fractions import Fraction

from rigc.files.intake.cells.unclear import Unclear

_SIGNS = {"¼": "1/4", "½": "1/2", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8"}
_PARTS = "".join(_SIGNS)
NUMBER = rf"[+\-−]?(?:\d+[ -]\d+/\d+|\d+/\d+|\d+ ?[{_PARTS}]|[{_PARTS}]|\d(?:[\d.,'’]*\d)?|[.,]\d+)"
"""A pattern for all that `number` reads."""


def number(typed: str, decimal_commas: bool) -> str:
    """The number, with a decimal point. Raises `Unclear` for one that can be read in two ways; `decimal_commas` tells whether the sheet has them."""
    sign = "-" if typed[0] in "-−" else ""
    text = re.sub(r"^[.,]", "0.", typed.lstrip("+-−"))
    if "/" in text or any(each in text for each in _PARTS):
        return sign + _fraction(text)
    if re.search(r"['’]", text) and not re.fullmatch(r"\d{1,3}(?:['’]\d{3})+(?:[.,]\d+)?", text):
        raise _two_ways(typed)
    text = re.sub(r"['’]", "", text)
    commas, points = text.count(","), text.count(".")
    if commas and points:
        decimal, other = (",", ".") if text.rfind(",") > text.rfind(".") else (".", ",")
        if text.count(decimal) > 1 or not re.fullmatch(rf"\d{{1,3}}(?:\{other}\d{{3}})+\{decimal}\d+", text):
            raise _two_ways(typed)
        return sign + _plain(text.replace(other, "").replace(decimal, "."))
    if commas + points > 1:
        if not re.fullmatch(r"\d{1,3}(?:[.,]\d{3})+", text):
            raise _two_ways(typed)
        return sign + re.sub(r"[.,]", "", text)
    if (commas or (points and decimal_commas)) and re.fullmatch(r"[1-9]\d{0,2}[.,]\d{3}", text):
        raise _two_ways(typed)
    return sign + _plain(text.replace(",", "."))


def has_decimal_comma(text: str) -> bool:
    """Whether a text holds a number whose comma can only be a decimal one."""
    return re.search(r"(?<![\d.,])\d+,(?:\d{1,2}|\d{4,})(?![\d.,])", text) is not None and "," not in re.sub(
        r"\d,\d", "", text
    )


def _fraction(text: str) -> str:
    for sign, spelled in _SIGNS.items():
        text = text.replace(sign, f" {spelled}")
    whole, _, part = re.sub(r"[ -]+", " ", text.strip()).rpartition(" ")
    above, _, below = part.partition("/")
    if int(below) not in (2, 4, 8, 16, 32, 64):
        raise Unclear(f"'{text.strip()}' is no whole number of its parts", "write it with a decimal point")
    value = Fraction(int(whole or 0)) + Fraction(int(above), int(below))
    return _plain(str(Decimal(value.numerator) / Decimal(value.denominator)))


def _plain(text: str) -> str:
    whole, point, rest = text.partition(".")
    return (whole.lstrip("0") or "0") + point + rest


def _two_ways(typed: str) -> Unclear:
    return Unclear(
        f"'{typed}' can be read as a decimal or with thousands",
        "write it without a sign between its thousands, with a decimal point",
    )
