"""Documents -> how each is set on its pages: which way they lie, how high rows are, and which short sheets of one hand share a page.

No sheet goes over to a page that it hardly uses where rows a little lower, or higher, keep it from that; the fewest pages win.
"""

from __future__ import annotations

from collections.abc import Iterable

from rigc.output.paper.heights import ROW, Page, Part, fits, is_dense, pair, parts
from rigc.record import Record
from rigc.reports.content import Block, Document, Drawing, Sheet, Table

# Least heights of a row in mm, the one that is wanted first: letters of 10 pt and a box to tick go into the lowest.
_ROWS = (ROW, 6.3, 6.1, 5.9, 5.7, 6.8, 7.1, 7.4, 7.7)
_LOWER = 5  # so many of them are not higher
STAGE = ("wiring-sheet", "preset-sheet", "stage-hook-up", "crew-card", "fault-tree")
"""Sheets that are read at arm's length, in bad light."""
_FULL, _OVERFULL = 0.975, 1.04  # of a page's height: what surely goes on it by the estimate, and what may
_LOW = 0.5  # a page less used than this is one too many
_SPARE = 0.6  # of a page: what such a one costs
_NAMED = 9.0  # mm: a sheet's name, where it shares a page
_FOOT = 13.0  # mm that the title block takes of the first page


class Fit(Record):
    """How a document is set. `shares` is the number of the document at whose page it stands, its own where it begins one;
    `names` are the codes of all that share it, where there are more. `dense` are the tables that are set in small, narrow letters."""

    document: Document
    row: float = ROW
    shares: int = 0
    names: str = ""
    stage: bool = False
    dense: frozenset[str] = frozenset()


class _Way(Record):
    sheet: Sheet
    row: float
    used: tuple[float, ...]  # of each page, its part
    loose: tuple[float, ...]  # the same, if pages hold a little more than they are thought to


def as_stated(documents: tuple[Document, ...]) -> tuple[Fit, ...]:
    """Each on pages of its own, as its sheet says."""
    return tuple(Fit(each, shares=each.number, stage=each.sheet.name in STAGE) for each in documents)


def fitted(documents: tuple[Document, ...], paper: str, own: frozenset[str]) -> tuple[Fit, ...]:
    """One for each document. Those whose sheet is in `own` are laid out by a template of their own, and stay as they are."""
    ways = [() if each.sheet.name in own else tuple(_ways(each, paper)) for each in documents]
    least: list[tuple[float, tuple[Fit, ...]]] = [(0.0, ())]
    for at in range(len(documents)):
        alone = _alone(documents[at], ways[at], paper)
        choices = [(least[at][0] + alone[0], (*least[at][1], alone[1]))]
        for begin in range(at - 1, -1, -1):
            group = documents[begin : at + 1]
            shared = _shared(group, ways[begin : at + 1])
            if not shared:
                break
            names = " · ".join(one.code for one in group)
            fits = (_fit(one, way, group[0], paper, names) for one, way in zip(group, shared, strict=True))
            low = sum(way.used[0] for way in shared) < _LOW
            choices.append((least[begin][0] + 1 + _SPARE * low, (*least[begin][1], *fits)))
        least.append(min(choices, key=lambda choice: choice[0]))
    return least[-1][1]


def _alone(document: Document, ways: tuple[_Way, ...], paper: str) -> tuple[float, Fit]:
    if not ways:
        return 1.0, Fit(document, shares=document.number, stage=document.sheet.name in STAGE)
    best = min(ways, key=lambda way: _cost(way, document.sheet))
    return _cost(best, document.sheet)[0] + _SPARE * (best.used[-1] < _LOW and len(best.used) == 1), _fit(
        document, best, document, paper
    )


def _fit(document: Document, way: _Way, first: Document, paper: str, names: str = "") -> Fit:
    stage = document.sheet.name in STAGE
    page = _page(paper, across=way.sheet.landscape, stage=stage)
    tables = (block for block in way.sheet.blocks if isinstance(block, Table) and block.name not in way.sheet.beside)
    dense = frozenset(table.name for table in tables if is_dense(table, page))
    return Fit(document.replace(sheet=way.sheet), way.row, first.number, names, stage, dense)


def _shared(documents: tuple[Document, ...], ways: list[tuple[_Way, ...]]) -> tuple[_Way, ...]:
    """How these sheets, one after the other, go on one page: all of one hand and whole, some of them short. Empty if they don't."""
    hands = {document.code[:1] for document in documents}
    if len(hands) > 1 or "" in hands:
        return ()
    for across in (False, True):
        high = _page("letter", across=across).high
        whole = [[way for way in each if len(way.used) == 1 and way.sheet.landscape is across] for each in ways]
        if all(whole) and any(each[0].used[0] < _LOW for each in whole):
            for row in _ROWS[:_LOWER]:
                told = tuple(way for each in whole for way in each if way.row == row)
                if len(told) == len(ways) and sum(way.used[0] + _NAMED / high for way in told) <= _FULL:
                    return told
    return ()


def _cost(way: _Way, stated: Sheet) -> tuple[float, int]:
    """In pages, then how far rows are from the height that is wanted; a page that is hardly used counts for more, and so does
    one that lies otherwise than the sheet says."""
    pages = max(len(used) + _SPARE * (used[-1] < _LOW and len(used) > 1) for used in (way.used, way.loose))
    turned = 0.3 if stated.landscape else 2.0
    return pages + turned * (way.sheet.landscape != stated.landscape), _ROWS.index(way.row)


def _turns(sheet: Sheet) -> Iterable[Sheet]:
    """The sheet as it says, and turned where what it holds can stand so."""
    yield sheet
    narrow = _page("letter", across=False)
    if any(isinstance(each, Drawing) and (each.width_mm > narrow.wide or not sheet.landscape) for each in sheet.blocks):
        return
    if sheet.landscape and not all(fits(each, narrow) for each in sheet.blocks if isinstance(each, Table)):
        return
    turned = sheet.replace(landscape=not sheet.landscape, blocks=tuple(map(_upright, sheet.blocks)))
    if not any(isinstance(each, (Table, Drawing)) and each.landscape for each in turned.blocks):
        yield turned


def _upright(block: Block) -> Block:
    told: Block = block.replace(landscape=False) if isinstance(block, Table) else block
    return told


def _page(paper: str, *, across: bool, stage: bool = False) -> Page:
    """What is left within the margins of `sheet.css`."""
    wide, high = (215.9, 279.4) if paper == "letter" else (210.0, 297.0)
    return Page(high - 20, wide - 30, True, stage) if across else Page(wide - 27, high - 24, False, stage)


def _ways(document: Document, paper: str) -> Iterable[_Way]:
    """Its sheet either way about, with rows of each height."""
    for sheet in _turns(document.sheet):
        page = _page(paper, across=sheet.landscape, stage=sheet.name in STAGE)
        units = tuple(_units(_parts(sheet, page)))
        for row in _ROWS:
            full, over = (_filled(units, page, row, document.number == 1, share) for share in (_FULL, _OVERFULL))
            yield _Way(sheet, row, full, over)


def _parts(sheet: Sheet, page: Page) -> Iterable[Part]:
    for block in sheet.blocks:
        if isinstance(block, Drawing) and block.beside:
            yield pair(block, sheet.block(block.beside), page)
        elif block.name not in sheet.beside:
            yield from parts(block, page)


def _filled(
    units: tuple[tuple[Part, ...], ...], page: Page, row: float, first: bool, share: float
) -> tuple[float, ...]:
    """How much of each page is used, if this share of a page's height is what it takes by the estimate."""
    used, at, turned = [0.0], 0.0, False
    high = page.high - (_FOOT if first else 0)
    for unit in units:
        needed = sum(part.high(row) for part in unit)
        if at and (at + needed > high * share or unit[0].turned != turned):
            at = unit[0].head
            used.append(0.0)
            high = page.wide - 3 if unit[0].turned else page.high
        turned = unit[0].turned
        at += needed
        used[-1] = min(1.0, at / high)
    return tuple(used)


def _units(told: Iterable[Part]) -> Iterable[tuple[Part, ...]]:
    """The parts that stand together."""
    unit: list[Part] = []
    for part in told:
        if unit and not part.joined:
            yield tuple(unit)
            unit = []
        unit.append(part)
    if unit:
        yield tuple(unit)
