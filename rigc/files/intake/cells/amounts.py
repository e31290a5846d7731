"""Amounts as people type them (`ca. 100`, `4 3/4"`, `100 mA max`, `80-100 mA`) -> amounts of the language."""

from __future__ import annotations

import re
from decimal import Decimal

from rigc.files.intake.cells.numbers import NUMBER, number
from rigc.files.intake.cells.unclear import Unclear
from rigc.record import Record

_INCH = dict.fromkeys(("in", "in.", "inch", "inches", '"', "″", "''", "”", "“", "zoll"), "in")
UNITS = {
    "mm": {**_INCH, **dict.fromkeys(("mm", "millimetres", "millimeters"), "mm"), **dict.fromkeys(("cm", "centimetres", "centimeters"), "cm"),
           **dict.fromkeys(("m", "metres", "meters"), "m"), **dict.fromkeys(("ft", "feet", "foot"), "ft")},
    "g": {**dict.fromkeys(("g", "gr", "gr.", "gram", "grams", "gramme", "grammes"), "g"), **dict.fromkeys(("kg", "kgs", "kilo", "kilos", "kilogram", "kilograms"), "kg"),
          **dict.fromkeys(("lb", "lb.", "lbs", "lbs.", "pound", "pounds"), "lb"), **dict.fromkeys(("oz", "oz.", "ounce", "ounces"), "oz")},
    "mA": {**dict.fromkeys(("ma", "milliamp", "milliamps", "milliampere", "milliamperes"), "mA"), **dict.fromkeys(("a", "amp", "amps", "ampere", "amperes"), "A"),
           **dict.fromkeys(("ua", "µa", "μa"), "uA")},
    "V": {**dict.fromkeys(("v", "volt", "volts"), "V"), "mv": "mV"},
    "ohm": {**dict.fromkeys(("ohm", "ohms", "ω", "r"), "ohm"), **dict.fromkeys(("k", "kohm", "kohms", "kω", "k ohm", "k ohms", "kiloohm"), "kohm"),
            **dict.fromkeys(("megohm", "meg", "megaohm", "meg ohm", "megohms"), "Mohm")},
    "ms": {**dict.fromkeys(("ms", "millisecond", "milliseconds", "msec"), "ms"), **dict.fromkeys(("s", "sec", "seconds"), "s"), **dict.fromkeys(("us", "µs", "μs"), "us")},
    "dBu": {"dbu": "dBu"},
}  # fmt: skip
"""For each unit of a column the spellings of units that may stand there, in small letters, and what the language calls them."""
_MEGA = dict.fromkeys(("M", "MΩ", "Mohm", "Mohms", "M ohm", "M ohms", "MOhm"), "Mohm")

_ABOUT = r"(?:ca|c|circa|about|around|approx|approximately|appr|roughly|est|estimated|typ|typical|typically|nominal)\b\.?|[~≈]"
_MOST = r"(?:max|maximum|peak|up to|at most|worst case)\b\.?|[<≤]=?"
_LEAST = r"(?:min|minimum|at least|more than|over|from)\b\.?|[>≥]=?"
_UNKNOWN = re.compile(
    r"\(?(?:\?+|[-–—]+|n/?a|tb[ac]|tbd|unknown|don'?t know|no idea|not known|k\.?\s?a\.?|\.\.\.|…|xxx?)\)?\.?",
    re.IGNORECASE,
)


class Amount(Record):
    """An amount of the language; `about` whether who wrote it was not sure."""

    text: str
    about: bool = False


def is_blank(text: str) -> bool:
    """Whether a cell says nothing, no sign that is seen, or that nobody knows."""
    return (
        not any(sign.isprintable() and not sign.isspace() for sign in text)
        or _UNKNOWN.fullmatch(text.strip()) is not None
    )


def unit_of(word: str, kind: str) -> str:
    """What the language calls a unit as it is spelled, of those that a column of the unit `kind` may have; empty if it is none."""
    word = " ".join(word.split())
    return (kind == "ohm" and _MEGA.get(word)) or UNITS.get(kind, {}).get(word.lower().replace("ω", "ω"), "")


def amount(typed: str, kind: str, default: str, decimal_commas: bool, *, most: bool = False) -> Amount:
    """One amount of a column whose unit is `kind`; `default` is the unit that its heading tells. A highest one is read only where `most` counts.

    Raises `Unclear`.
    """
    text, about = stripped(typed, most)
    within = re.fullmatch(r"(.*?)\s*(?:±|\+/?-|\+/−)\s*(.*)", text)
    if within:
        off = _share(within[2], decimal_commas) or _one(
            within[2], kind, _unit_in(within[1], kind) or default, decimal_commas
        )
        return Amount(f"{_one(within[1], kind, default or _unit_in(within[2], kind), decimal_commas)} +- {off}", about)
    twice = re.fullmatch(rf"({NUMBER})\s*(\D*?)\s*(?:-|–|—|\.\.\.?|to|bis)\s*({NUMBER})\s*(.*)", text)
    if twice and not re.fullmatch(rf"{NUMBER}\D*", text):
        return Amount(_between(twice, kind, default, decimal_commas), about)
    pounds = re.fullmatch(rf"({NUMBER})\s*lbs?\.?,?\s*({NUMBER})\s*oz\.?", text, re.IGNORECASE)
    if pounds:
        ounces = Decimal(number(pounds[1], decimal_commas)) * 16 + Decimal(number(pounds[2], decimal_commas))
        return Amount(f"{ounces.normalize():f} oz", about)
    return Amount(_one(text, kind, default, decimal_commas), about)


def stripped(typed: str, most: bool) -> tuple[str, bool]:
    """The text without words that say how sure it is, or (where `most` counts) the highest; and whether it is only about. Raises `Unclear`."""
    text = " ".join(typed.replace("\u00a0", " ").replace("\u202f", " ").split()).strip(" ;")
    about = highest = False
    while True:
        for pattern in (_ABOUT, _MOST):
            found = re.match(rf"\(?(?:{pattern})\)?:?\s*(?=\S)", text, re.IGNORECASE) or re.search(
                rf"(?<![^\W\d_])\s*\(?(?:{pattern})\)?$", text, re.IGNORECASE
            )
            if found:
                text = (text[: found.start()] + text[found.end() :]).strip()
                about, highest = about or pattern == _ABOUT, highest or pattern == _MOST
                break
        else:
            break
    if re.match(rf"(?:{_LEAST})\s*\d", text, re.IGNORECASE) or re.search(
        r"\d\D*\b(?:min|minimum)\.?$", text, re.IGNORECASE
    ):
        raise Unclear("the least is no measure of what it is", "write the amount itself")
    if highest and not most:
        raise Unclear("the most is no measure of what it is", "write the amount itself")
    return text, about


def _one(text: str, kind: str, default: str, decimal_commas: bool) -> str:
    found = re.fullmatch(rf"({NUMBER})\s*(.*)", text.strip())
    if found is None:
        if re.search(r"\d", text):
            raise Unclear("it is more than one amount", f"write one amount with its unit, such as {_such_as(kind)}")
        raise Unclear("it is no amount", f"write a number with its unit, such as {_such_as(kind)}")
    unit = unit_of(found[2], kind) if found[2] else default
    if not unit and re.search(r"\d", found[2]):
        raise Unclear("it is more than one amount", f"write one amount with its unit, such as {_such_as(kind)}")
    if not unit and not found[2]:
        raise Unclear(
            "it has no unit", f"write the unit behind it, such as {_such_as(kind)}, or into the heading of its column"
        )
    if not unit:
        raise Unclear(
            f"'{found[2]}' is no unit that fits here", f"write one amount with its unit, such as {_such_as(kind)}"
        )
    return f"{number(found[1], decimal_commas)} {unit}"


def _between(found: re.Match[str], kind: str, default: str, decimal_commas: bool) -> str:
    low = _one(f"{found[1]} {found[2]}", kind, unit_of(found[4], kind) or default, decimal_commas)
    high = _one(f"{found[3]} {found[4]}", kind, default or unit_of(found[2], kind), decimal_commas)
    (least, unit), (most, other) = low.split(), high.split()
    if unit != other or not Decimal(least) < Decimal(most):
        raise Unclear("it is more than one amount", f"write one amount with its unit, such as {_such_as(kind)}")
    return f"from {least} to {most} {unit}"


def _share(text: str, decimal_commas: bool) -> str:
    found = re.fullmatch(rf"({NUMBER})\s*%", text.strip())
    return f"{number(found[1], decimal_commas)} %" if found else ""


def _unit_in(text: str, kind: str) -> str:
    found = re.fullmatch(rf"{NUMBER}\s*(\D+)", text.strip())
    return unit_of(found[1], kind) if found else ""


def _such_as(kind: str) -> str:
    return {
        "mm": "70 mm",
        "g": "400 g",
        "mA": "100 mA",
        "V": "9 V",
        "ohm": "500 kohm",
        "ms": "3 ms",
        "dBu": "-20 dBu",
    }.get(kind, "1")
