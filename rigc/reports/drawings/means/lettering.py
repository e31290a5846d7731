"""Text -> how wide it will be on paper, so that labels can be kept clear of each other."""

from __future__ import annotations

from functools import cache

from rigc.reports.drawings.means import letter_widths

EM_PER_CAPITAL = 1 / 0.698
"""The size of the sheets' typeface over the height of its capitals, as the font states it."""

_REGULAR, _STRONG = (
    {sign: width / 1000 for width, signs in table.items() for sign in signs}
    for table in (letter_widths.REGULAR, letter_widths.BOLD)
)
_FOREIGN = 1.05  # what the typeface lacks comes from the machine's fonts: about as wide as it is high, or less
_KERNED = 1.01  # pairs that stand apart a little


@cache
def text_width(text: str, size_mm: float, strong: bool = False) -> float:
    """The width of a line of text in mm, rather too wide than too narrow; `size_mm` is the height of a capital."""
    widths = _STRONG if strong else _REGULAR
    return sum(widths.get(sign, _FOREIGN) for sign in text) * size_mm * EM_PER_CAPITAL * _KERNED
