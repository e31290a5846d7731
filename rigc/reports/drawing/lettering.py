"""Text -> how wide it will about be on paper, so that labels can be kept clear of each other."""

from __future__ import annotations

EM_PER_CAPITAL = 1 / 0.7
"""The size of a sans-serif font over the height of its capitals, which are 0.70 to 0.73 of it in the usual ones (from memory)."""

# Widths in parts of the font's size (set by hand for a wide sans-serif font, no source; a test holds them against what
# a browser prints): in a narrower font a label leaves some room.
_WIDTHS = {"ijl|'": 0.28, ".,:;· ": 0.32, "ftr()[]/-!": 0.41, "mwMW@%—Ω": 0.99, "+−×=": 0.84}
_EACH = {sign: width for signs, width in _WIDTHS.items() for sign in signs}
_OTHER, _CAPITAL, _STRONG = 0.64, 0.76, 1.12


def text_width(text: str, size_mm: float, strong: bool = False) -> float:
    """The width of a line of text in mm, rather too wide than too narrow; `size_mm` is the height of a capital."""
    ems = sum(_EACH.get(sign, _CAPITAL if sign.isupper() else _OTHER) for sign in text)
    return ems * size_mm * EM_PER_CAPITAL * (_STRONG if strong else 1.0)
