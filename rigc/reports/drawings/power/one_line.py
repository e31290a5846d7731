"""PowerAssignment -> the power one-line: mains, supplies, outlets, leads, units, on as many drawings as pages are needed."""

from __future__ import annotations

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.leads.leads import Leads
from rigc.analysis.mains.mains_loads import MainsLoads
from rigc.analysis.power.supply_totals import SupplyTotal, SupplyTotals
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.reports.content import Drawing
from rigc.reports.drawings.means.lettering import text_width
from rigc.reports.drawings.power.broken import broken
from rigc.reports.drawings.power.outlet_shapes import ROW, columns, outlet_shapes
from rigc.reports.drawings.shapes import LETTERS, THICK, Box, Label, Line, Shape
from rigc.reports.power.outlet_rows import OutletRow, outlet_rows
from rigc.traced.figure import Lacking

WIDTH = 250.0
"""Of a landscape page, in mm."""
_PAGE = 155.0  # of a landscape page, its caption besides, in mm
_TOP, _GAP, _FOOT = 12.0, 8.0, 12.0
_MOST_ROWS = int((_PAGE - _TOP - _FOOT) // ROW)
_MAINS_X, _SUPPLY_X, _OUTLET_X = 6.0, 14.0, 58.0
_WORDS, _LINE = _OUTLET_X - _SUPPLY_X - 4, 5.0  # room for words in a supply's box, and from line to line
_LEGEND_WIDTH = 178.0  # of an upright page, in mm
_LEAST = 5  # rows of a supply's box, for its own lines of text


class Part(Record):
    """A supply, or as much of it as a page holds; `told` is what stands in its box under its name, line by line; `mains` is whether it takes
    mains."""

    supply: str
    rows: tuple[OutletRow, ...]
    told: tuple[str, ...] = ()
    mains: bool = True

    @property
    def named(self) -> tuple[str, ...]:
        """The supply's name in as many lines as its box needs."""
        return broken(self.supply, _WORDS, strong=True)

    @property
    def height(self) -> float:
        """Of its box, in mm."""
        return max(_LEAST * ROW, len(self.rows) * ROW, 5 + _LINE * (len(self.named) + len(self.told)))


def one_lines(
    rig: Rig, power: PowerAssignment, totals: SupplyTotals, mains: MainsLoads, leads: Leads
) -> tuple[Drawing, ...]:
    """A page holds as many supplies as fit, in order of declaration; one that no page holds whole goes on on the next."""
    pages: list[list[Part]] = [[]]
    for total in totals.all:
        for part in _parts(total, mains, outlet_rows(rig, power, leads, total.supply)):
            if pages[-1] and _height([*pages[-1], part]) > _PAGE:
                pages.append([])
            pages[-1].append(part)
    drawn = [page for page in pages if page]
    return tuple(_drawing(page, number, len(drawn)) for number, page in enumerate(drawn, 1))


def _height(page: list[Part]) -> float:
    return _TOP + sum(part.height + _GAP for part in page) - _GAP + _FOOT


def _parts(total: SupplyTotal, mains: MainsLoads, rows: tuple[OutletRow, ...]) -> list[Part]:
    """Cut where an outlet begins that works with none before it, as far as a page reaches."""
    told, plugged = _figures(total, mains), total.supply in mains.all
    if len(rows) <= _MOST_ROWS:
        return [Part(total.supply, rows, told, plugged)]
    parts, left = [], rows
    while left:
        cut = min(_MOST_ROWS, len(left))
        if cut < len(left):
            cut = next((at for at in range(cut, 0, -1) if _begins(left, at)), cut)
        parts.append(left[:cut])
        left = left[cut:]
    return [
        Part(total.supply, part, (*told, *_elsewhere(part, rows, at, len(parts))), plugged)
        for at, part in enumerate(parts, 1)
    ]


def _begins(rows: tuple[OutletRow, ...], at: int) -> bool:
    joined = rows[at].joined
    return bool(rows[at].outlet) and (not joined or rows[at - 1].joined != joined)


def _figures(total: SupplyTotal, mains: MainsLoads) -> tuple[str, ...]:
    load = mains.all.get(total.supply)
    most = "ceiling not stated" if total.ceiling is None else f"of {total.most.text} {total.unit}"
    if load is None:
        takes = "from its battery"
    else:
        takes = "VA not known" if isinstance(load.volt_amperes, Lacking) else f"takes {load.volt_amperes.text} VA"
    lines = (f"gives {total.taken.text} {total.unit}", most, takes)
    return tuple(line for text in lines for line in broken(text, _WORDS))


def _elsewhere(part: tuple[OutletRow, ...], rows: tuple[OutletRow, ...], at: int, count: int) -> tuple[str, ...]:
    """Which part of a supply this is, and which commons other parts share."""
    beyond = {row.common for row in rows if row.common and row not in part}
    shared = [common for common in dict.fromkeys(row.common for row in part) if common in beyond]
    told = (f"part {at} of {count}", *(f"goes on: {common}" for common in shared))
    return tuple(line for text in told for line in broken(text, _WORDS))


def _drawing(page: list[Part], number: int, count: int) -> Drawing:
    shapes: list[Shape] = []
    to = columns(tuple(row for part in page for row in part.rows), _OUTLET_X)
    y = _TOP
    last = None
    for part in page:
        feed = y + _LEAST * ROW / 2
        last = feed if part.mains else last
        shapes += _supply(part, y, feed)
        shapes += outlet_shapes(part.supply, part.rows, _OUTLET_X, y, WIDTH - 1, to)
        y += part.height + _GAP
    if last is not None:
        shapes.append(Label(_MAINS_X - 4, 7, "mains", strong=True))
        shapes.append(Line(_MAINS_X, 9, _MAINS_X, last, pattern="dash-dot", width_mm=THICK))
    words = _legend(tuple(row for part in page for row in part.rows), any(part.mains for part in page))
    shapes += (Label(2, y - _GAP + 6 + 4.5 * at, text) for at, text in enumerate(words))
    told = f" ({number} of {count})" if count > 1 else ""
    return Drawing(
        "one-line" if count == 1 else f"one-line-{number}",
        f"Power one-line{told}",
        _described(page),
        _wide(shapes),
        y - _GAP + _FOOT,
        tuple(shapes),
        caption="No wiring diagram: mains leads, inlets and earths are made by a competent person to the local code.",
    )


def _legend(rows: tuple[OutletRow, ...], mains: bool) -> list[str]:
    """What lines and signs are, of those that are drawn; in two lines where one is too long."""
    used = [row for row in rows if row.used]
    commons = [row.common for row in rows if row.common and row.outlet]
    there = {
        "solid: DC": any(not row.ac for row in used),
        "dashed: AC": any(row.ac for row in used),
        "dash-dot: mains": mains,
        "dotted: nothing plugged in": len(used) < len(rows),
        "bar: one common": len(set(commons)) < len(commons),
        "dot: Y lead": any(not row.outlet for row in used),
        "crossed lines: + and − change places": any(row.turned and not row.joined for row in used),
    }
    lines = [""]
    for word in (word for word, drawn in there.items() if drawn):
        longer = f"{lines[-1]} · {word}" if lines[-1] else word
        if text_width(longer, LETTERS) > _LEGEND_WIDTH:
            lines.append(word)
        else:
            lines[-1] = longer
    return lines


def _wide(shapes: list[Shape]) -> float:
    """As far as its words and boxes reach: most go on an upright page."""
    words = (shape.x + text_width(shape.text, LETTERS) for shape in shapes if isinstance(shape, Label))
    boxes = (shape.x + shape.width for shape in shapes if isinstance(shape, Box))
    return round(max(*words, *boxes) + 1, 1)


def _supply(part: Part, y: float, feed: float) -> list[Shape]:
    plugged = [Line(_MAINS_X, feed, _SUPPLY_X, feed, pattern="dash-dot", width_mm=THICK)] if part.mains else []
    return [
        *plugged,
        Box(_SUPPLY_X, y, _OUTLET_X - _SUPPLY_X, part.height, width_mm=THICK),
        *(
            Label(_SUPPLY_X + 2, y + 6 + _LINE * at, text, strong=at < len(part.named))
            for at, text in enumerate((*part.named, *part.told))
        ),
    ]


def _described(page: list[Part]) -> str:
    """In words: every outlet and what it feeds."""
    parts = []
    for part in page:
        fed = [f"{row.outlet} ({row.setting}) {row.end}" for row in part.rows if row.outlet]
        parts.append(f"{part.supply}: {', '.join(fed)}")
    return "; ".join(parts)
