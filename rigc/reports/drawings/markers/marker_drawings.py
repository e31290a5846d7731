"""Markers -> drawings at 1:1: blocks of markers of one size, side by side, both texts, and marks to cut along.

No frame is drawn, which would stay on a marker that is cut out: crosses stand at the corners, marks at the edges.
"""

from __future__ import annotations

from rigc.facts.bench import MARKER_MARGIN_MM
from rigc.record import Record
from rigc.reports.content import Drawing
from rigc.reports.drawings.markers.marker import LINE_GAP, Marker, size
from rigc.reports.drawings.shapes import HAIR, LARGE_LETTERS, LETTERS, Label, Line, Shape, Symbol

PAGE_WIDTH, PAGE_HEIGHT = 182.0, 96.0
"""What a drawing may take of a page in mm, cut marks included: two go on one, or one below a table."""
CUT_MARK = 3.0
_HEAD = 5.0  # for a block's size, above it
_GAP = 4.0

_TICK = 1.0  # an arm of a cross at the corners of markers

_Text = tuple[Marker, tuple[str, ...]]  # the marker, and the lines of one of its ends


class _Block(Record):
    """Markers of one size, as many to a row as go on a page; `y` is its upper edge, its head included."""

    size: str
    width_mm: float
    height_mm: float
    rows: tuple[tuple[_Text, ...], ...]
    y: float = 0.0

    @property
    def across(self) -> float:
        """Its width in mm, cut marks included."""
        return len(self.rows[0]) * self.width_mm + 2 * CUT_MARK

    @property
    def down(self) -> float:
        """Its height in mm, head and cut marks included."""
        return _HEAD + len(self.rows) * self.height_mm + 2 * CUT_MARK


def marker_drawings(found: tuple[Marker, ...]) -> tuple[Drawing, ...]:
    """The markers of each size, small ones first, in the order of the leads; as many blocks to a page as go on it."""
    pages = _pages(_blocks(found))
    return tuple(_drawing(number, len(pages), page) for number, page in enumerate(pages, 1))


def _blocks(found: tuple[Marker, ...]) -> list[_Block]:
    sizes = {size(marker): marker for marker in found}
    blocks = []
    for name, one in sorted(sizes.items(), key=lambda each: (each[1].height_mm, each[1].width_mm)):
        texts = [(marker, text) for marker in found if size(marker) == name for text in marker.texts]
        across = max(1, int((PAGE_WIDTH - 2 * CUT_MARK) // one.width_mm))
        rows = tuple(tuple(texts[at : at + across]) for at in range(0, len(texts), across))
        blocks.append(_Block(name, one.width_mm, one.height_mm, rows))
    return blocks


def _pages(blocks: list[_Block]) -> list[list[_Block]]:
    """Blocks are broken between rows where a page is full; a page holds one row at least."""
    pages: list[list[_Block]] = [[]] if blocks else []
    y = 0.0
    for block in blocks:
        rows = block.rows
        while rows:
            room = int((PAGE_HEIGHT - y - _HEAD - 2 * CUT_MARK) // block.height_mm)
            if room < 1 and pages[-1]:
                pages.append([])
                y = 0.0
                continue
            part = block.replace(rows=rows[: max(room, 1)], y=y)
            pages[-1].append(part)
            y += part.down + _GAP
            rows = rows[max(room, 1) :]
    return pages


def _drawing(number: int, count: int, page: list[_Block]) -> Drawing:
    markers = sum(len(row) for block in page for row in block.rows)
    sizes = ", ".join(dict.fromkeys(block.size for block in page))
    return Drawing(
        f"markers-{number}",
        "Markers at 1:1" + (f", sheet {number} of {count}" if count > 1 else ""),
        f"{markers} markers at 1:1, of {sizes} mm, with marks to cut along",
        max(PAGE_WIDTH, *(block.across for block in page)),  # the words under it need room, too
        page[-1].y + page[-1].down,
        tuple(shape for block in page for shape in _block(block)),
        scale=1.0,
        caption="Print at 100 % and measure the bar. Cut along the marks at the edges: the rows first, then the columns.",
    )


def _block(block: _Block) -> list[Shape]:
    top = block.y + _HEAD + CUT_MARK
    shapes: list[Shape] = [Label(CUT_MARK, block.y + LETTERS + 0.5, f"{block.size} mm", strong=True)]
    shapes += _cut_marks(block, top)
    for down, row in enumerate(block.rows):
        for across, (marker, lines) in enumerate(row):
            x, y = CUT_MARK + across * block.width_mm, top + down * block.height_mm
            shapes.append(Symbol(marker.mark, _marker(marker, lines), x, y))
    return shapes


def _cut_marks(block: _Block, top: float) -> list[Line]:
    across, down = len(block.rows[0]), len(block.rows)
    right, bottom = CUT_MARK + across * block.width_mm, top + down * block.height_mm
    columns = [CUT_MARK + column * block.width_mm for column in range(across + 1)]
    rows = [top + row * block.height_mm for row in range(down + 1)]
    marks = []
    for x in columns:
        marks += [Line(x, top - CUT_MARK, x, top - 0.8), Line(x, bottom + 0.8, x, bottom + CUT_MARK)]
    for y in rows:
        marks += [Line(0, y, CUT_MARK - 0.8, y), Line(right + 0.8, y, right + CUT_MARK, y)]
        for x in columns:
            marks.append(Line(max(x - _TICK, CUT_MARK), y, min(x + _TICK, right), y, "grey", width_mm=HAIR))
            marks.append(Line(x, max(y - _TICK, top), x, min(y + _TICK, bottom), "grey", width_mm=HAIR))
    return marks


def _marker(marker: Marker, lines: tuple[str, ...]) -> tuple[Shape, ...]:
    """A marker with its upper left corner at (0, 0): the number in its cell, the lines in the middle of the height."""
    middle = marker.height_mm / 2
    first = middle - (len(lines) - 1) * (LETTERS + LINE_GAP) / 2
    texts = (
        Label(marker.cell_mm + MARKER_MARGIN_MM.value, first + number * (LETTERS + LINE_GAP), line, level="middle")
        for number, line in enumerate(lines)
    )
    return (
        Label(marker.cell_mm / 2, middle, marker.mark, LARGE_LETTERS, "middle", "middle", strong=True),
        Line(marker.cell_mm, MARKER_MARGIN_MM.value, marker.cell_mm, marker.height_mm - MARKER_MARGIN_MM.value),
        *texts,
    )
