"""A name too long for its place -> lines that fit, broken behind a hyphen, a dot or a space where there is one."""

from __future__ import annotations

from rigc.reports.drawings.means.lettering import text_width
from rigc.reports.drawings.shapes import LETTERS

_BEHIND = "-. _"


def broken(text: str, width: float, strong: bool = False) -> tuple[str, ...]:
    """The text in as few lines of at most `width` mm as go; nothing of it is left out but spaces at a break."""
    lines: list[str] = []
    rest = text
    while text_width(rest, LETTERS, strong) > width and len(rest) > 1:
        most = next(
            (length for length in range(len(rest) - 1, 0, -1) if text_width(rest[:length], LETTERS, strong) <= width), 1
        )
        cut = next((at for at in range(most, 0, -1) if rest[at - 1] in _BEHIND), most)
        lines.append(rest[:cut].rstrip())
        rest = rest[cut:].lstrip()
    return (*lines, rest)
