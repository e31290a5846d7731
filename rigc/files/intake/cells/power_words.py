"""All that somebody knows of a unit's power in one cell (`9V DC 100mA centre neg, 2.1mm barrel`) -> its parts."""

from __future__ import annotations

import re

from rigc.files.intake.cells.amounts import Amount, amount, stripped
from rigc.files.intake.cells.numbers import NUMBER, number
from rigc.files.intake.cells.unclear import Unclear
from rigc.files.intake.cells.words import polarity
from rigc.record import Record

_CURRENT = rf"(?:(?:ca\.?|circa|about|approx\.?|typ\.?|max\.?|up to|[~≈<≤])\s*)?{NUMBER}\s*(?:(?:-|–|to)\s*{NUMBER}\s*)?(?:mA|ma|MA|A|amps?|milliamps?)\b(?:\s*\(?(?:max|peak|typ|approx)\b\.?\)?)?"
_VOLTS = rf"(?P<low>{NUMBER})\s*(?:v(?:olts?)?)?\s*(?:-|–|\.\.\.?|to)\s*(?P<high>{NUMBER})\s*v(?:olts?)?|(?P<volts>{NUMBER})\s*v(?:olts?)?"
_POLE = r"(?:cent(?:re|er)|ctr|tip)[\s:=-]*(?:neg(?:ative)?|pos(?:itive)?|minus|plus|[-−–+])(?:ve)?|(?:neg(?:ative)?|pos(?:itive)?|minus|plus|[-−–+](?:ve)?)[\s-]*(?:cent(?:re|er)|tip)|\bc[-+−](?!\w)"
_BARREL = rf"(?P<a>{NUMBER})\s*(?:mm)?\s*[x×/*]\s*(?P<b>{NUMBER})\s*(?:mm)?"


_ASIDE = ("power", "supply", "needs", "draws", "adapter", "adaptor", "psu", "regulated", "barrel", "plug", "and", "at")
"""Words between the parts that say nothing of their own."""


class Power(Record):
    """Parts of a unit's power as the language states them; empty where the cell does not say them."""

    needs: str = ""
    accepts: str = ""
    draws: Amount | None = None
    polarity: str = ""
    inlet: str = ""
    passive: bool = False


def power(typed: str, decimal_commas: bool, known: str = "") -> Power:
    """The parts of the cell. What has a polarity is dc, and `known` what cells beside it tell. Raises `Unclear` if anything in it is left that is none of them."""
    text = " ".join(typed.replace("\u00a0", " ").split())
    if re.fullmatch(r"(?:none|passive|no power|not needed|no)\.?", text, re.IGNORECASE):
        return Power(passive=True)
    found, text = _barrel(text, decimal_commas)
    pole, text = _cut(text, _POLE)
    current, text = _cut(text, _CURRENT)
    volts, text = _cut(text, _VOLTS)
    kind, text = _cut(text, r"(?<![a-z])(?:dc|ac|d\.c\.|a\.c\.)(?![a-z])|[⎓⏤]")
    again = re.search(rf"{_VOLTS}|{_CURRENT}", text, re.IGNORECASE)
    words = (each.strip(".:-|+") for each in re.split(r"[\s,;@/()]+", text))
    rest = [each for each in words if each and each.lower() not in _ASIDE]
    if again or rest:
        left = again[0] if again else " ".join(rest)
        raise Unclear(
            f"of its power '{left}' is not understood",
            "write voltage, current, polarity and plug into columns of their own",
        )
    stated = _volts(volts, _kind(kind) or ("dc" if pole else known), decimal_commas)
    return Power(
        *stated,
        amount(current[0], "mA", "", decimal_commas, most=True) if current else None,
        polarity(pole[0]) if pole else "",
        found,
    )


def needs(typed: str, default: str, decimal_commas: bool, known: str = "") -> Power:
    """What a cell says of the voltage alone: `9`, `9 V dc`, `9VDC`, `9-18 V`. `known` is whether it is dc or ac, where cells beside it tell. Raises `Unclear`."""
    text, about = stripped(typed, False)
    if about:
        raise Unclear(
            "a voltage is not about so much", "write the voltage that stands beside its inlet, such as 9 V dc"
        )
    kind, rest = _cut(text, r"(?<![a-uw-z])(?:dc|ac|d\.c\.|a\.c\.)(?![a-z])|[⎓⏤]")
    if re.fullmatch(rf"{NUMBER}(?:\s*(?:-|–|\.\.\.?|to)\s*{NUMBER})?", rest.strip()) and default:
        rest = f"{rest.strip()} {default}"
    found = re.fullmatch(_VOLTS, rest.strip(), re.IGNORECASE)
    if found is None:
        raise Unclear(
            "it is not one voltage with its unit", "write the voltage that stands beside its inlet, such as 9 V dc"
        )
    return Power(*_volts(found, _kind(kind) or known, decimal_commas))


def window(typed: str, default: str, decimal_commas: bool) -> str:
    """From which to which voltage a unit works. Raises `Unclear`."""
    said = needs(typed, default, decimal_commas)
    if not said.accepts:
        raise Unclear("it is not from one voltage to another", "write the least and the most, such as 8.7..9.9 V")
    return said.accepts


def barrel(typed: str, decimal_commas: bool) -> str:
    """A unit's power inlet by its kind and size. Raises `Unclear`."""
    text = " ".join(typed.split())
    kind = text.lower().replace(" ", "-")
    if kind in ("mini-jack", "din", "snap", "usb"):
        return kind
    found, rest = _barrel(re.sub(r"\bbarrel\b", " ", text, flags=re.IGNORECASE), decimal_commas)
    if not found or re.search(r"\w", rest):
        raise Unclear("a barrel has an outer and an inner diameter", "write both, such as barrel 5.5 x 2.1 mm")
    return found


def _barrel(text: str, decimal_commas: bool) -> tuple[str, str]:
    found = re.search(_BARREL, text)
    if found is None:
        return "", text
    sizes = sorted((number(found["a"], decimal_commas), number(found["b"], decimal_commas)), key=float, reverse=True)
    return f"barrel {sizes[0]} x {sizes[1]} mm", f"{text[: found.start()]} {text[found.end() :]}"


def _cut(text: str, pattern: str) -> tuple[re.Match[str] | None, str]:
    found = re.search(pattern, text, re.IGNORECASE)
    return (None, text) if found is None else (found, f"{text[: found.start()]} {text[found.end() :]}")


def _kind(found: re.Match[str] | None) -> str:
    return "" if found is None else "ac" if found[0].lower().startswith("a") else "dc"


def _volts(found: re.Match[str] | None, kind: str, decimal_commas: bool) -> tuple[str, str]:
    """What it needs and what it accepts. Of a voltage alone it is not known whether it is of dc or ac."""
    if found is None:
        return "", ""
    if found["volts"] is None:
        return "", f"{number(found['low'], decimal_commas)}..{number(found['high'], decimal_commas)} V"
    if not kind:
        raise Unclear(
            "it does not say whether dc or ac",
            f"write {number(found['volts'], decimal_commas)} V dc or {number(found['volts'], decimal_commas)} V ac",
        )
    return f"{number(found['volts'], decimal_commas)} V {kind}", ""
