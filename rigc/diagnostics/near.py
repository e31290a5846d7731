"""The nearest of some names to what was typed; the only place that judges nearness."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable


def nearest(typed: str, names: Iterable[str]) -> str:
    """The name most like `typed`, whatever its capitals, or an empty text when none is near.

    A number written with other leading noughts is the same number: `S2` means `S02` sooner than `S22`.
    """
    from difflib import get_close_matches  # only when something is wrong: the import costs a millisecond

    known = {name.lower(): name for name in names}
    wanted = _without_noughts(typed)
    same = next((lower for lower in known if _without_noughts(lower) == wanted), None)
    found = [same] if same is not None else get_close_matches(typed.lower(), known, n=1, cutoff=0.7)
    return known[found[0]] if found else ""


def _without_noughts(name: str) -> str:
    return re.sub(r"(?<!\d)0+(?=\d)", "", name.lower())


def spelled_alike(one: str, other: str) -> bool:
    """Whether two texts differ in capitals, accents, dashes and blanks alone."""
    return bare(one) == bare(other)


def bare(text: str) -> str:
    """A text without its capitals, accents, dashes and blanks."""
    letters = unicodedata.normalize("NFKD", text).casefold()
    return "".join(each for each in letters if unicodedata.category(each) not in ("Mn", "Pd", "Zs"))
