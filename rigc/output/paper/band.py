"""What stands above each printed page -> the three texts of that band, none over another, whatever the names are."""

from __future__ import annotations

from rigc.output.paper.setting import POINT, Look, width
from rigc.record import Record

LEFT, MIDDLE, RIGHT, FIELD = (
    Look(13 * POINT, strong=True),
    Look(10 * POINT),
    Look(15 * POINT, strong=True),
    Look(8 * POINT),
)
"""As `sheet.css` sets the band, and the title block at the foot of the first page."""
CUT = "…"
_GAP = 3.0  # mm between two of them
_MOST_LEFT, _MOST_LARGE, _MOST_RIGHT = 0.45, 0.65, 0.25  # of the page's width
_LEAST = 8  # letters: a name of which fewer are left says nothing
_PUNCHED = 90.0  # mm from the far side of one hole to that of the other: 80 mm apart (ISO 838, from memory), 5 mm kept bare on both sides
_BETWEEN = 70.0  # mm between the two


class Band(Record):
    """Its texts, the middle one without the page's number, and how wide each is, in mm. The box of the middle one stands in the middle of
    the page (CSS Paged Media), so its text leans by `lean_mm` away from the wider of the others, to the right if positive."""

    left: str
    middle: str
    right: str
    left_mm: float
    middle_mm: float
    right_mm: float
    lean_mm: float


def band(
    left: str,
    right: str,
    warning: str,
    names: tuple[str, str],
    number: str,
    wide: float,
    punched: bool,
    large: bool = False,
) -> Band:
    """The band of pages so wide, in mm. `names` are the rig's and its code, of which the middle keeps what has room beside
    `warning` and the page's `number`, at its longest; the warning is never left out. `large`, the left text is as high as the right one. Where the band is `punched`, nothing stands where the
    holes come, unless there is a warning: such a page is not filed."""
    filed = punched and not warning
    most = (wide - _PUNCHED) / 2 if filed else (_MOST_LARGE if large else _MOST_LEFT) * wide
    right = cut(right, RIGHT, min(most, _MOST_RIGHT * wide))
    right_mm = round(width(right, RIGHT) + _GAP, 1)
    needed = width(f"{warning} · {number}" if warning else number, MIDDLE)
    look = RIGHT if large else LEFT
    left = cut(left, look, min(most, wide - right_mm - needed - _GAP))
    left_mm = round(width(left, look) + _GAP, 1)
    lean = 0.0 if filed else left_mm - right_mm
    room = _BETWEEN if filed else wide - left_mm - right_mm
    for told in _ways(warning, names, room - width(f" · {number}", MIDDLE)):
        middle = " · ".join(filter(None, told))
        if width(f"{middle} · {number}", MIDDLE) <= room:
            break
    box = wide - 2 * min(left_mm, right_mm) - abs(lean) + 1  # over the others' edges, so that its line joins theirs
    return Band(left, middle, right, left_mm, round(box, 1), right_mm, round(lean, 1))


def _ways(warning: str, names: tuple[str, str], room: float) -> tuple[tuple[str, ...], ...]:
    """What the middle may say, the most first."""
    name, code = names
    short = cut(name, MIDDLE, room - (width(f"{warning} · ", MIDDLE) if warning else 0.0))
    cuts = ((warning, short),) if len(short) > _LEAST else ()
    return (warning, name, code), (warning, name), *cuts, (warning, code), (warning,)


def cut(text: str, look: Look, room: float) -> str:
    """As much of a text as has so much room, in mm; what is left out is told by dots."""
    used, kept, far = 0.0, 0, room - width(CUT, look)
    for at, letter in enumerate(text):
        used += width(letter, look)
        if used <= far:
            kept = at + 1
        if used > room:
            return text[:kept].rstrip() + CUT
    return text
