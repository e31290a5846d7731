"""Documents -> how each is set on its pages: which way they lie, how high rows are, and which sheets of one hand go on one after the other.

A sheet begins on the page that the one before leaves half empty, where that spares a page or a page that is hardly used; no sheet
goes over to a page that it hardly uses where rows a little lower, or higher, keep it from that; the fewest pages win.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from rigc.analysis.kept import NOTHING_KEPT, Kept
from rigc.output.paper.heights import ROW, Page, Part, fits, is_dense, pair, parts
from rigc.record import Record
from rigc.reports.content import Block, Document, Drawing, Sheet, Table

# Least heights of a row in mm, the one that is wanted first: letters of 10 pt and a box to tick go into the lowest.
_ROWS = (ROW, 6.3, 6.1, 5.9, 5.7, 6.8, 7.1, 7.4, 7.7)
STAGE = ("wiring-sheet", "preset-sheet", "stage-hook-up", "crew-card", "fault-tree")
"""Sheets that are read at arm's length, in bad light."""
ALONE = ("label-sheet", "plan-full-size")
"""Sheets that are cut up."""
_FULL, _OVERFULL = 0.98, 1.02  # of a page's height: what surely goes on it by the estimate, and what may
_LOW = 0.5  # a page less used than this is one too many
_SPARE = 0.6  # of a page: what such a one costs
_ROOM = 0.66  # of a page: where more of it is used, no other sheet begins
_JOINED = 0.15  # of a page: what it costs that a sheet has no page of its own to begin on
_MOST = 4  # sheets, one after the other
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
    dense: tuple[str, ...] = ()


class _Way(NamedTuple):
    """A sheet, one way about, with rows of one height: of each part that is never broken the height that it needs, what of that is
    blank below it, the height of the head that is repeated above it, and whether it is turned; and the tables that are `dense` then."""

    sheet: Sheet
    page: Page
    row: float
    parts: tuple[tuple[float, float, float, bool], ...]
    dense: tuple[str, ...]


Measured = tuple[list[tuple[list[float], float, float, bool]], list[str]]
"""Of each part of a sheet what it needs with rows of each height, and the rest of `_Way.parts`; the tables that are dense."""


class _Run(NamedTuple):
    """What documents so far come to: the pages that they cost, without the last if that may yet be filled, and how they are set."""

    pages: float
    off: int  # by how many steps rows are other than wanted
    begun: int  # the place of the first document that stands on the last page, if another may begin there; else -1
    across: bool
    row: float
    used: tuple[float, float]  # of the last page, if pages hold what they surely do, and if they hold a little more
    before: _Run | None
    ways: tuple[_Way, ...] = ()

    @property
    def worth(self) -> tuple[float, int]:
        """What it comes to if no other sheet begins on its last page."""
        return self.pages + _SPARE * (min(self.used) < _LOW), self.off


def as_stated(documents: tuple[Document, ...]) -> tuple[Fit, ...]:
    """Each on pages of its own, as its sheet says."""
    return tuple(Fit(each, shares=each.number, stage=each.sheet.name in STAGE) for each in documents)


def fitted(
    documents: tuple[Document, ...],
    paper: str,
    own: frozenset[str],
    kept: Kept = NOTHING_KEPT,
    names: Sequence[str] = (),
) -> tuple[Fit, ...]:
    """One for each document. Those whose sheet is in `own` are laid out by a template of their own, and stay as they are. What is reckoned
    of a sheet alone is `kept` by the name that stands for it, if `names` are given."""
    runs: list[_Run] = [_Run(0.0, 0, -1, False, ROW, (1.0, 1.0), None)]
    for at, (document, name) in enumerate(zip(documents, names or [""] * len(documents), strict=True)):
        ways = () if document.sheet.name in own else _ways(document.sheet, paper, kept if name else NOTHING_KEPT, name)
        best = _cheapest(runs, at)
        if not ways:
            runs = [best._replace(pages=best.worth[0] + 1, used=(1.0, 1.0), begun=-1, before=best, ways=())]
            continue
        found = [_set(best, document, way, begun, named) for way in ways for begun, named in ((-1, False), (at, True))]
        found += [
            _set(run, document, way, run.begun, True)
            for run in runs
            if run.begun >= 0 and _goes_on(documents[run.begun : at + 1], run)
            for way in ways
            if way.row == run.row and way.sheet.landscape is run.across
        ]
        runs = _best(found)
    return tuple(_fits(documents, _cheapest(runs, len(documents))))


def _cheapest(runs: list[_Run], count: int) -> _Run:
    """Of those that have come to so many documents; a sheet that bears its name on its page for others has one that joins it."""
    return min((run for run in runs if run.begun != count - 1 or run.begun < 0), key=lambda run: run.worth)


def _goes_on(documents: tuple[Document, ...], run: _Run) -> bool:
    """Whether the last of these may begin on the page that the others have come to."""
    hands = {document.code[:1] for document in documents}
    whole = not any(document.sheet.name in ALONE for document in documents)
    return len(hands) == 1 and "" not in hands and whole and len(documents) <= _MOST and max(run.used) < _ROOM


def _best(runs: list[_Run]) -> list[_Run]:
    """The cheapest that ends there, and of those on whose last page another may begin the cheapest of each kind."""
    kept: dict[tuple[object, ...], _Run] = {}
    for run in runs:
        kind = (run.begun, run.across, run.row) if run.begun >= 0 else (run.begun,)
        if kind not in kept or run.worth < kept[kind].worth:
            kept[kind] = run
    return list(kept.values())


def _set(before: _Run, document: Document, way: _Way, begun: int, named: bool) -> _Run:
    """With one more document: on pages of its own, or on the last one of a run that others may join."""
    joins = named and before.begun == begun
    head = _NAMED / way.page.high if named else 0.0
    first = document.number == 1
    starts = before.used if joins else (0.0, 0.0)
    full, over = (
        _filled(way, first, share, start + head) for share, start in zip((_FULL, _OVERFULL), starts, strict=True)
    )
    pages = max(len(used) + _SPARE * sum(each < _LOW for each in used[:-1]) for used in (full, over))
    turned = (0.3 if document.sheet.landscape else 2.0) * (way.sheet.landscape != document.sheet.landscape)
    cost = before.pages - 1 + _JOINED if joins else before.worth[0]
    return _Run(
        cost + pages + turned,
        before.off + _ROWS.index(way.row),
        -1 if way.parts and way.parts[-1][3] else begun,
        way.sheet.landscape,
        way.row,
        (full[-1], over[-1]),
        before,
        (way,),
    )


def _fits(documents: tuple[Document, ...], last: _Run) -> Iterable[Fit]:
    runs: list[_Run] = []
    run: _Run | None = last
    while run is not None and run.before is not None:
        runs.insert(0, run)
        run = run.before
    firsts: list[int] = []
    for at, each in enumerate(runs):
        joins = at > 0 and each.begun >= 0 and each.begun == runs[at - 1].begun
        firsts.append(firsts[-1] if joins else at)
    for document, each, first in zip(documents, runs, firsts, strict=True):
        if not each.ways:
            yield Fit(document, shares=document.number, stage=document.sheet.name in STAGE)
            continue
        sharing = [one.code for one, its in zip(documents, firsts, strict=True) if its == first]
        names = " · ".join(sharing) if len(sharing) > 1 else ""
        yield _fit(document, each.ways[0], documents[first], names)


def _fit(document: Document, way: _Way, first: Document, names: str) -> Fit:
    return Fit(document.replace(sheet=way.sheet), way.row, first.number, names, way.page.stage, way.dense)


def _turns(sheet: Sheet) -> Iterable[Sheet]:
    """The sheet as it says, and turned where what it holds can stand so."""
    yield sheet
    narrow = _page("letter", across=False, stage=sheet.name in STAGE)
    if any(isinstance(each, Drawing) and (each.width_mm > narrow.wide or not sheet.landscape) for each in sheet.blocks):
        return
    if sheet.landscape and not all(fits(each, narrow) for each in sheet.blocks if isinstance(each, Table)):
        return
    turned = _turned(sheet)
    if not any(isinstance(each, (Table, Drawing)) and each.landscape for each in turned.blocks):
        yield turned


def _turned(sheet: Sheet) -> Sheet:
    turned: Sheet = sheet.replace(landscape=not sheet.landscape, blocks=tuple(map(_upright, sheet.blocks)))
    return turned


def _upright(block: Block) -> Block:
    told: Block = block.replace(landscape=False) if isinstance(block, Table) else block
    return told


def _page(paper: str, *, across: bool, stage: bool = False) -> Page:
    """What is left within the margins of `sheet.css`."""
    wide, high = (215.9, 279.4) if paper == "letter" else (210.0, 297.0)
    return Page(high - 20, wide - 30, True, stage) if across else Page(wide - 27, high - 24, False, stage)


def _ways(sheet: Sheet, paper: str, kept: Kept, name: str) -> tuple[_Way, ...]:
    """A sheet either way about, with rows of each height."""
    ways: list[_Way] = []
    measured: list[Measured] = kept.named(
        "set", f"{name}-{paper}", lambda: [_measured(each, paper) for each in _turns(sheet)], list
    )
    for each, (told, dense) in zip((sheet, _turned(sheet)), measured, strict=False):
        page = _page(paper, across=each.landscape, stage=each.name in STAGE)
        for at, row in enumerate(_ROWS):
            needs = tuple((high[at], below, head, lies) for high, below, head, lies in told)
            ways.append(_Way(each, page, row, needs, tuple(dense)))
    return tuple(ways)


def _measured(sheet: Sheet, paper: str) -> Measured:
    page = _page(paper, across=sheet.landscape, stage=sheet.name in STAGE)
    parts = [
        ([sum((part.high(row) for part in unit), 0.0) for row in _ROWS], unit[-1].below, unit[0].head, unit[0].turned)
        for unit in _units(_parts(sheet, page))
    ]
    tables = (block for block in sheet.blocks if isinstance(block, Table) and block.name not in sheet.beside)
    return parts, [table.name for table in tables if is_dense(table, page)]


def _parts(sheet: Sheet, page: Page) -> Iterable[Part]:
    for block in sheet.blocks:
        if isinstance(block, Drawing) and block.beside:
            yield pair(block, sheet.block(block.beside), page)
        elif block.name not in sheet.beside:
            yield from parts(block, page)


def _filled(way: _Way, first: bool, share: float, start: float) -> list[float]:
    """How much of each page is used, if this share of a page's height is what it takes by the estimate; `start` is used of the first already."""
    if not way.parts:
        return [start]
    high = way.page.high - (_FOOT if first else 0)
    used: list[float] = []
    at, most, turned = start * high, high * share, False
    for needed, below, head, lies in way.parts:
        if at and (at + needed - below > most or lies != turned):
            used.append(min(1.0, at / high))
            high = way.page.wide - 3 if lies else way.page.high
            at, most = head, high * share
        turned = lies
        at += needed
    return [*used, min(1.0, at / high)]


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
