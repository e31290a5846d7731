"""Names that found no room in a drawing -> lines under it: no name is dropped."""

from __future__ import annotations

from rigc.reports.drawings.means.lettering import text_width
from rigc.reports.drawings.shapes import LETTERS, Label

_ROW = LETTERS + 1.6


def left_over(names: list[str], left: float, top: float, right: float) -> tuple[Label, ...]:
    """All of them, as many on a line as there is room for."""
    lines: list[str] = []
    for name in names:
        longer = f"{lines[-1]}; {name}" if lines else f"Without room above: {name}"
        if lines and left + text_width(longer, LETTERS) > right:
            lines.append(name)
        elif lines:
            lines[-1] = longer
        else:
            lines.append(longer)
    return tuple(Label(left, top + _ROW * at, line, level="top") for at, line in enumerate(lines))
