"""Front page: what is open, the key figures, the rig from above, and the index of the folder."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from rigc.analysis.deck.placement import Placement
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.kept import Kept
from rigc.analysis.leads.leads import Leads
from rigc.analysis.leads.plugs.plug_bodies import PlugBodies
from rigc.analysis.mains.mains_loads import MainsLoads
from rigc.analysis.results import Results
from rigc.analysis.routes.route_paths import RoutePaths
from rigc.analysis.stores.head_count import HeadCount
from rigc.analysis.tests.build_work import BuildWork
from rigc.analysis.weight.case_loads import CaseLoad, CaseLoads
from rigc.diagnostics.diagnostic import Diagnostic, Level
from rigc.model.rig import Rig
from rigc.reports.content import Block, Cell, Column, Document, Drawing, NoSheet, Row, Sheet, Table
from rigc.reports.drawings.pictures.plan_within import plans_within
from rigc.reports.figure_cell import figure_cell
from rigc.reports.front.cautions import rest
from rigc.reports.weight.limit_table import at_least

PICTURE_WIDTH, PICTURE_HEIGHT = 183.0, 112.0
"""What the picture of the rig may take of the page, in mm."""

_OPEN = (Column("what", least_mm=24), Column("finding"))
_SIGNED = (Column("signed by", key="by"), Column("until"))
_INDEX = (Column("sheet", key="code"), Column("title"), Column("for", key="reader"), Column("revision"))
_LEFT_OUT = (Column("left out", key="sheet"), Column("why"))


def front_page(
    results: Results, findings: tuple[Diagnostic, ...], folder: tuple[Document, ...], left_out: tuple[NoSheet, ...]
) -> Sheet:
    """`folder` are the other documents, in order; `left_out` the sheets that have nothing to say of this rig."""
    blocks: list[Block] = [
        _open(findings),
        results.call(_figures),
        *results.call(_picture),
        _index(folder),
        *((_left_out(left_out),) if left_out else ()),
        rest(results.get(Rig), results.get(PowerAssignment), folder),
    ]
    return Sheet("front-page", "Front page", "everybody", tuple(_pointing(block, folder) for block in blocks))


def _open(findings: tuple[Diagnostic, ...]) -> Table:
    """What may go wrong, the worst first: errors that stand, errors signed for, and warnings, among them the limits that a spread or a guess leaves in doubt."""
    rows = [
        *_rows(findings, "ERROR", Level.ERROR, accepted=False),
        *_rows(findings, "ERROR accepted", Level.ERROR, accepted=True),
        *_rows(findings, "warning", Level.WARNING, accepted=False),
        *_rows(findings, "warning accepted", Level.WARNING, accepted=True),
    ]
    missing = sum(each.level is Level.CANT_CHECK for each in findings)
    if missing:
        told = f"{missing} rule{' is' if missing == 1 else 's are'} not judged for want of facts"
        where = Cell(f"{told}: see missing and assumed facts", sheet="missing-and-assumed-facts")
        rows.append(Row((Cell("can't check", strong=True), where, Cell(""), Cell(""))))
    signed = any(row.cells[2].text for row in rows)
    shown = rows if signed else [row.replace(cells=row.cells[:2]) for row in rows]
    columns = (*_OPEN, *_SIGNED) if signed else _OPEN
    return Table("open", "What is open", columns, tuple(shown), empty="nothing: no error, no warning")


def _rows(findings: Iterable[Diagnostic], word: str, level: Level, *, accepted: bool) -> Iterator[Row]:
    for each in findings:
        if each.level is level and (each.accepted is not None) is accepted:
            by, until = ("", "") if each.accepted is None else (each.accepted.by, each.accepted.until)
            first = Cell("", mark=word.upper()) if level is Level.ERROR else Cell(word, strong=True)
            yield Row((first, Cell(each.message), Cell(by), Cell(until)))


def _picture(
    rig: Rig, placement: Placement, plugs: PlugBodies, leads: Leads, paths: RoutePaths, kept: Kept
) -> tuple[Drawing, ...]:
    return plans_within(rig, placement, plugs, leads, paths, PICTURE_WIDTH, PICTURE_HEIGHT, kept)


def _figures(loads: CaseLoads, mains: MainsLoads, count: HeadCount, work: BuildWork) -> Table:
    """One row, and one more for each further case: mass and what is left to each limit, then what there is once."""
    limits = tuple(
        Column(f"left to {each.most.text} kg, {each.limit.whose}", "kg", number=True, key=f"left_{each.limit.name}")
        for each in (loads.all[0].margins if loads.all else ())
    )
    cased = any(load.case for load in loads.all)
    columns = (
        *((Column("case"),) if cased else ()),
        Column("mass with its case" if cased else "mass", "kg", number=True, key="mass"),
        *limits,
        Column("all supplies take", "VA", number=True, key="takes"),
        Column("units", number=True),
        Column("supplies", number=True),
        Column("leads on board", number=True, key="leads"),
        Column("leads of the stage", number=True, key="stage_leads"),
        Column("to build it anew, one hand", "min", number=True, key="build", least_mm=22),
    )
    once = (mains.volt_amperes, count.units, count.supplies, count.leads, count.stage_leads, work.minutes)
    told = tuple(figure_cell(each, strong=True) for each in once)
    masses = tuple(_masses(load, cased) for load in loads.all) or ((Cell("?"),),)
    rows = tuple(Row((*mass, *(told if at == 0 else (Cell(""),) * len(told)))) for at, mass in enumerate(masses))
    return Table("figures", "Key figures", columns, rows)


def _masses(load: CaseLoad, cased: bool) -> tuple[Cell, ...]:
    left = tuple(
        Cell(each.left.text, strong=True, mark="FAIL") if each.passed else figure_cell(each.left)
        for each in load.margins
    )
    case = (Cell(load.case or "none"),) if cased else ()
    return (*case, at_least(load.mass.whole_known, strong=True), *left)


def _index(folder: tuple[Document, ...]) -> Table:
    """A row for each sheet, with a box to tick when it lies in the folder in the revision that is named."""
    rows = tuple(
        Row(
            (
                Cell(each.code, strong=True, sheet=each.sheet.name),
                Cell(each.sheet.title),
                Cell(each.sheet.reader),
                Cell(each.title.revision),
            )
        )
        for each in folder
    )
    return Table("index", "What is in the folder", _INDEX, rows, tick=True)


def _left_out(sheets: tuple[NoSheet, ...]) -> Table:
    rows = tuple(Row((Cell(each.title), Cell(each.reason))) for each in sheets)
    return Table("left_out", "What is not in the folder, and why", _LEFT_OUT, rows)


def _pointing(block: Block, folder: tuple[Document, ...]) -> Block:
    """The cells that point to a sheet say its code; those that point to one that is left out point nowhere."""
    if not isinstance(block, Table):
        return block
    codes = {each.sheet.name: each.code for each in folder}

    def told(cell: Cell) -> Cell:
        if not cell.sheet:
            return cell
        code = codes.get(cell.sheet, "")
        text = cell.text if code in ("", cell.text) else f"{cell.text} {code}".strip()
        pointing: Cell = cell.replace(text=text, sheet=cell.sheet if code else "")
        return pointing

    rows = tuple(row.replace(cells=tuple(map(told, row.cells))) for row in block.rows)
    table: Table = block.replace(rows=rows)
    return table
