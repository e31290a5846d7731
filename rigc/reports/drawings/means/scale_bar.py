"""The scale of a drawing -> the bar that shows it: true even on a copy that was made smaller."""

from __future__ import annotations

from rigc.reports.drawings.means.lettering import text_width
from rigc.reports.drawings.shapes import LETTERS, Box, Label, Line, Shape

BAR_HEIGHT = 12.5
"""What a scale bar needs under a drawing, in mm."""

_BARS = (1000, 500, 200, 100, 50, 20, 10, 600, 300, 150, 60, 30)
"""The first of these that fits and is a whole number of half millimetres on paper: nobody measures a third of one."""


def scale_bar(scale: float, width: float, y: float) -> tuple[Shape, ...]:
    """The bar of a drawing at 1:scale that is `width` mm wide, its upper edge at `y`, and the text that says how to trust it."""
    fitting = [bar for bar in _BARS if bar / scale <= min(60.0, width / 2)] or [min(_BARS)]
    length = next((bar for bar in fitting if (2 * bar / scale).is_integer()), fitting[0])
    part = length / scale / 4
    cells = tuple(Box(5 + part * at, y, part, 1.5, fill="solid" if at % 2 == 0 else "white") for at in range(4))
    ends = tuple(Line(5 + part * at, y - 0.8, 5 + part * at, y + 1.5) for at in (0, 2, 4))
    texts = {at: _real(length * at / 4, last=at == 4) for at in (0, 2, 4)}
    if (text_width(texts[2], LETTERS) + text_width(texts[4], LETTERS)) / 2 + 0.5 > 2 * part:
        del texts[2]
    numbers = tuple(Label(5 + part * at, y + 2.6, text, anchor="middle", level="top") for at, text in texts.items())
    told = f"1:{scale:g} where the bar measures {length / scale:g} mm"
    return (*cells, *ends, *numbers, Label(5, y + 6.8, told, level="top"))


def _real(length: float, last: bool) -> str:
    return f"{length:g} mm" if last else f"{length:g}"
