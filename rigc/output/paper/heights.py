"""A block -> the parts that it has on a page, each with its height in mm, as our style sets them. Estimates: the browser has the last word."""

from __future__ import annotations

from rigc.output.paper.setting import POINT, Look, lines, longest, widest, width
from rigc.output.svg import drawn_height
from rigc.record import Record
from rigc.reports.content import Block, Cell, Drawing, Paragraph, Row, Table

RULE = 0.25
GAP = 2.5
"""By how much the gap behind a table grows with the height of its rows."""
ROW = 6.5
"""The least height of a row of a plain table, in mm."""
_BAR = 13.5  # mm of a bar, and what parts it from its figure
_SOME, _MANY = 8, 11  # columns
_SQUEEZED = 1.15  # of a page's width
_PROSE = 45.0  # mm: a column of sentences need be no wider
_TEXT = Look(10 * POINT)
_TEXT_LINE = 10 * POINT * 1.35


class Page(Record):
    """What a page gives its text, in mm; whether it lies across, and whether it is read at arm's length."""

    wide: float
    high: float
    across: bool = False
    stage: bool = False
    beside: bool = False  # a part of a page, at the side of a drawing


class Part(Record):
    """Of a block what is never broken: its height, and that of the head that is repeated above it where it begins a page.

    A row is no lower than the height that rows are given and `over`; None is no row. What rows are given more than `ROW` they, and the
    gap behind a table (`gap`), have more. `joined` to the part before, it stands on
    one page with it. `turned`, it stands on a page that lies across. `below` it is blank so far, which the end of a page takes off.
    """

    natural: float
    head: float = 0.0
    joined: bool = False
    over: float | None = None
    turned: bool = False
    gap: bool = False
    below: float = 0.0
    rows: float = (
        0  # of the table, its head and the gap behind it included, at the side of a drawing, which is `drawn` high
    )
    drawn: float = 0.0

    def high(self, row: float) -> float:
        """Its height where rows are given so much, in mm."""
        if self.drawn:
            return max(self.drawn, self.natural + self.rows * (row - ROW))
        if self.over is None:
            return self.natural + (GAP * (row - ROW) if self.gap else 0.0)
        return max(self.natural + row - ROW, row + self.over)


class Setting(Record):
    """How a table is set: its letters, its lines and rows in mm, what stands beside a cell's text."""

    look: Look
    line: float
    over: float  # what its rows are given more than those of a plain one
    above: float
    beside: float
    beside_number: float
    left: float  # of what stands beside it


def setting(table: Table, page: Page) -> Setting:
    """As `sheet.css` says it of a table of so many columns."""
    dense = is_dense(table, page)
    written = any(column.least_mm for column in table.columns)
    size = (12 if page.stage else 8.5 if dense else 9 if page.beside else 9.5 if written else 10) * POINT
    look = Look(size, narrow=dense or written or page.beside)
    if page.stage:
        return Setting(look, size * 1.2, 1.5, 1.2, 3.8, 3.8, 1.4)
    return (
        Setting(look, size * 1.2, -0.5, 0.8, 1.8, 2.9, 0.9)
        if dense
        else Setting(look, size * 1.2, 0.0, 1.2, 2.8, 4.8, 1.4)
    )


def _caption(page: Page) -> Look:
    return Look((13 if page.stage else 11.5) * POINT, strong=True)


def is_dense(table: Table, page: Page) -> bool:
    """Whether it is set in small, narrow letters: it has many columns, or would break its cells in others."""
    count = len(table.columns)
    if count < _SOME or page.stage or page.beside:
        return count > _MANY
    how = Setting(Look(10 * POINT), 12 * POINT, 0.0, 1.2, 2.8, 4.8, 1.4)
    return count > _MANY or sum(_wants(table, place, how)[1] for place in range(count)) > _SQUEEZED * page.wide


def fits(table: Table, page: Page) -> bool:
    """Whether a table goes on such a page without being squeezed: few of its cells break more than once, hardly one of a dense table."""
    how = setting(table, page)
    least, most = zip(*(_wants(table, place, how) for place in range(len(table.columns))), strict=True)
    broken = 1.25 if is_dense(table, page) else 1.3
    return bool(sum(least) <= page.wide - 8 and sum(min(each, _PROSE) for each in most) <= broken * page.wide)


def parts(block: Block, page: Page) -> tuple[Part, ...]:
    """What a block has on pages like this one."""
    if isinstance(block, Table) and block.landscape and not page.across:
        across = page.replace(wide=page.high + 4, high=page.wide - 3, across=True)
        return tuple(part.replace(turned=True) for part in parts(block, across))
    if isinstance(block, Table):
        return _table(block, page) if block.rows else (Part(_TEXT_LINE + 4.5, below=4.0),)
    if isinstance(block, Drawing):
        return (_drawing(block, page),)
    return _paragraph(block, page)


def pair(drawing: Drawing, table: Block, page: Page) -> Part:
    """A drawing and the table at its side, which are kept together."""
    room = page.wide - 5
    left, right = (page.replace(wide=room * share / 12, beside=True) for share in (5, 7))
    told = parts(table, right)
    drawn = sum(part.natural for part in parts(drawing, left))
    return Part(sum(part.high(ROW) for part in told), rows=len(told) + GAP, drawn=drawn)


def _drawing(drawing: Drawing, page: Page) -> Part:
    turned = drawing.landscape and not page.across
    across = page.across or turned
    most, room = (159.5, page.high + 4 if turned else page.wide) if across else (244.0, page.wide)
    scale = min(1.0, room / drawing.width_mm, most / drawn_height(drawing))
    told = lines(drawing.caption, _TEXT, room) * _TEXT_LINE + 2 if drawing.caption else 0.0
    title = lines(drawing.title, _caption(page), room) * _caption(page).size * 1.3 + 2
    below = 1.5 if across else 5.0
    return Part(title + drawn_height(drawing) * scale + told + below, turned=turned, below=below)


def _paragraph(paragraph: Paragraph, page: Page) -> tuple[Part, ...]:
    two = page.across and (paragraph.kind == "caution" or (paragraph.kind == "text" and len(paragraph.lines) > 1))
    room = (page.wide - 8) / 2 if two else min(page.wide, 190.0)
    text = Look(12 * POINT) if page.stage else _TEXT
    high = text.size * 1.35
    counts = [lines(line, text, room) for line in paragraph.lines]
    heading = 7.3 if paragraph.heading or paragraph.kind in ("caution", "note") else 0.0
    edges = 3.4 if paragraph.kind == "caution" else 2.4 if paragraph.kind == "note" else 0.0
    below = 2.0 if page.across else 4.0
    if two or paragraph.kind in ("caution", "note"):
        return (Part((_longer(counts) if two else sum(counts)) * high + heading + edges + below, below=below),)
    count = sum(counts)
    first = Part(heading + min(count, 2) * high)
    return (first, *(Part(high) for _ in range(count - 2)), Part(below, joined=True, below=below))


def _longer(counts: list[int]) -> int:
    """Of two columns the lines of the longer one: no line of a paragraph stands alone at the end of a column, or at its head."""
    total, found, before = sum(counts), sum(counts), 0
    for count in counts:
        for part in (0, *range(2, count - 1), count):
            found = min(found, max(before + part, total - before - part))
        before += count
    return found


def _table(table: Table, page: Page) -> tuple[Part, ...]:
    how = setting(table, page)
    widths = column_widths(table, page, how)
    named = _caption(page)
    caption = lines(table.caption, named, sum(widths) - 27) * named.size * 1.3 + 2
    head = Look(how.look.size * 0.9, strong=True, narrow=how.look.narrow)
    heads = [
        lines(column.head, head, wide - _beside(table, place, how)) + bool(column.unit)
        for place, (column, wide) in enumerate(zip(table.columns, widths, strict=True))
    ]
    top = caption + max(ROW + how.over, max(heads) * head.size * 1.2 + how.above + 0.8)
    looks = _looks(how)
    rooms = [wide - _beside(table, place, how) for place, wide in enumerate(widths)]
    found = []
    for number, each in enumerate(table.rows):
        tall = max(
            lines(_told(cell), looks[_is_strong(cell, place, each)], room)
            for place, (cell, room) in enumerate(zip(each.cells, rooms, strict=True))
        )
        high = tall * how.line + how.above + RULE
        joined = 0 < number < 5 or number >= len(table.rows) - 4 > 0
        first = 0.0 if number else top
        found.append(Part(high + first, top - first, joined, how.over + first))
    return (*found, Part(5.0, joined=True, gap=True, below=5.0))


def column_widths(table: Table, page: Page, how: Setting) -> list[float]:
    """How wide a browser makes each column (CSS 2.2, 17.5.2.2: between the least and the most that its cells want), in mm."""
    tick = (8 if page.stage else 7) if table.tick else 0
    least, most = zip(*(_wants(table, place, how) for place in range(len(table.columns))), strict=True)
    room = page.wide - tick
    if sum(most) <= room:
        whole = page.beside or any(column.least_mm for column in table.columns)
        full = max((1.0 if whole else 0.6) * page.wide - tick, sum(most))
        return [each * full / sum(most) for each in most]
    if sum(least) >= room:
        return list(least)
    share = (room - sum(least)) / (sum(most) - sum(least))
    return [low + (high - low) * share for low, high in zip(least, most, strict=True)]


def _wants(table: Table, place: int, how: Setting) -> tuple[float, float]:
    column = table.columns[place]
    head = Look(how.look.size * 0.9, strong=True, narrow=how.look.narrow)
    least = max(longest(column.head, head), width(column.unit, how.look))
    most = max(width(column.head, head), width(column.unit, how.look))
    looks = _looks(how)
    for row in table.rows:
        cell = row.cells[place]
        look = looks[_is_strong(cell, place, row)]
        full = widest(_told(cell), look)
        if full > most:
            most = full
        if full > least:  # what can't be broken is no wider than the whole
            whole = column.number or (place == 0 and len(cell.text) <= 24)
            least = max(least, full if whole else max(longest(cell.text, look), _mark(cell, look)))
    beside = _beside(table, place, how)
    beside += _BAR if column.bar else 0.0
    return max(least + beside, column.least_mm), max(most + beside, column.least_mm)


def _beside(table: Table, place: int, how: Setting) -> float:
    """What stands beside a cell's text: nothing left of the first one, which a box to tick is where there is one."""
    first = place == 0 and not table.tick
    return (how.beside_number if table.columns[place].number else how.beside) - how.left * first


def _looks(how: Setting) -> tuple[Look, Look]:
    """Of cells, and of those that are stressed."""
    return Look(how.look.size, False, how.look.narrow), Look(how.look.size, True, how.look.narrow)


def _is_strong(cell: Cell, place: int, row: Row) -> bool:
    return cell.strong or row.total or (place == 0 and bool(cell.text))


def _told(cell: Cell) -> str:
    """The text with its mark behind it; the frame of a mark is as wide as two narrow letters."""
    return f"{cell.text} .{cell.mark}." if cell.mark else cell.text


def _mark(cell: Cell, look: Look) -> float:
    return width(f".{cell.mark}.", look) if cell.mark else 0.0
