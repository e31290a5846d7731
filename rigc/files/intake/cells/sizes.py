"""Three sizes in one cell (`70 x 120 x 55 mm`, `2.76" x 4.75" x 2.1"`, `70(W) x 120(D) x 55(H) mm`) -> width x depth x height."""

from __future__ import annotations

import re

from rigc.files.intake.cells.amounts import Amount, amount, unit_of
from rigc.files.intake.cells.numbers import NUMBER
from rigc.files.intake.cells.unclear import Unclear

ORDER = r"\b([wdhlb])\w*\s*[x×/*]\s*([wdhlb])\w*\s*[x×/*]\s*([wdhlb])(?:idth|epth|eight|ength|readth)?\b"
"""A pattern for the order of the three, as a heading tells it."""
_LETTER = re.compile(r"\(?(?<![a-z])([wdhlb])(?:idth|epth|eight|ength|readth)?(?![a-z])\)?[.:]?", re.IGNORECASE)


def size(typed: str, heading: str, unit: str, decimal_commas: bool) -> Amount:
    """The three sizes; `heading` may tell their order where the cell does not, and `unit` is the one that it tells, if any. Raises `Unclear`."""
    parts = re.split(r"\s*[x×*]\s*", typed.strip(), flags=re.IGNORECASE)
    if len(parts) != 3:
        do = "write three sizes with their unit, such as 70 x 120 x 55 mm"
        raise Unclear("it is not width x depth x height", do)
    letters = _order([_LETTER.search(part) for part in parts], heading)
    bare = [" ".join(_LETTER.sub(" ", part).split()) for part in parts]
    last = unit_of(re.sub(rf"^{NUMBER}\s*", "", bare[2]), "mm")
    read = [amount(part, "mm", unit or last, decimal_commas) for part in bare]
    ordered = [read[letters.index(each)] for each in "wdh"]
    return Amount(sharing(" x ", [each.text for each in ordered]), any(each.about for each in ordered))


def sharing(sign: str, amounts: list[str]) -> str:
    """The amounts joined, the unit only behind the last where all have the same."""
    parts = [each.split() for each in amounts]
    if all(len(each) == 2 and each[1] == parts[0][1] for each in parts):
        return sign.join(each[0] for each in parts) + f" {parts[0][1]}"
    return sign.join(amounts)


def _order(marks: list[re.Match[str] | None], heading: str) -> str:
    """Which of the three is which, as the cell says it; else as the heading does; else as everybody should: `wdh`."""
    told = re.search(ORDER, heading.lower())
    if any(marks):
        letters = "".join(each[1].lower() if each else "?" for each in marks)
    else:
        letters = "".join(told.groups()) if told else "wdh"
    letters = letters.replace("b", "w")
    if sorted(letters) != ["d", "h", "w"]:
        said = " x ".join(letters.upper())
        raise Unclear(
            f"which of {said} is width, seen by the player, can't be told",
            "write width x depth x height, and so in the heading",
        )
    return letters
