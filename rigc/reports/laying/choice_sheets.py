"""Several layouts, or one that keeps what stood before -> tables that tell them apart, with statements to paste."""

from __future__ import annotations

from rigc.analysis.laying.alternatives import Alternative
from rigc.analysis.laying.kept_places import Kept, Move
from rigc.analysis.laying.place_statement import place_statement
from rigc.diagnostics.figures import short
from rigc.model.deck import Place
from rigc.reports.content import Cell, Column, Paragraph, Row, Sheet, Table
from rigc.reports.laying.objective_table import millimetres
from rigc.reports.laying.statements import chosen_statements


def alternatives_sheet(found: tuple[Alternative, ...]) -> Sheet:
    """One column a layout: what it costs by each term; which is better at what; and the statements of each."""
    columns = (Column("term"), *(Column(f"layout {number}", "mm", number=True) for number in range(1, len(found) + 1)))
    names = dict.fromkeys(term.name for each in found for term in each.objective.terms)
    rows = [Row((Cell(name), *(Cell(_cost(each, name)) for each in found))) for name in names]
    if found:
        sums = (Cell(millimetres(each.objective.cost)) for each in found)
        rows.append(Row((Cell("in all"), *sums), total=True))
    table = Table(
        "alternatives",
        "What each layout costs, in millimetres of audio lead, by the rig's own weights",
        columns,
        tuple(rows),
        "nothing is open: every place is stated",
    )
    blocks = (
        Paragraph(f"layout-{number}", (f"# layout {number}", *chosen_statements(each.rig)), kind="statements")
        for number, each in enumerate(found, start=1)
    )
    return Sheet("alternatives", "Alternatives for places", "builder", (table, _better(found), *blocks))


def kept_sheet(kept: Kept, before: str) -> Sheet:
    """What stays, what moves and what is new, and the statements."""
    columns = (
        Column("thing"),
        Column("stood at", "mm"),
        Column("stands at", "mm"),
        Column("moves", "mm", number=True),
    )
    rows = [Row(tuple(map(Cell, _move(move)))) for move in kept.moves]
    rows += [Row(tuple(map(Cell, (name, "", _spot(kept.rig.places[name]), "new")))) for name in kept.new]
    moved = sum(not move.stays for move in kept.moves)
    caption = f"Places beside those of {before}: {moved} of {len(kept.moves)} move, {len(kept.new)} new"
    table = Table("moves", caption, columns, tuple(rows), "nothing has a place")
    return Sheet(
        "places-against",
        "Places against a revision",
        "builder",
        (table, Paragraph("statements", chosen_statements(kept.rig), kind="statements")),
    )


def _cost(each: Alternative, name: str) -> str:
    return millimetres(sum(term.cost for term in each.objective.terms if term.name == name))


def _better(found: tuple[Alternative, ...]) -> Table:
    columns = (Column("layout"), Column("better at"))
    rows = (
        Row((Cell(f"layout {number}"), Cell(", ".join(each.better_at) or "all in all")))
        for number, each in enumerate(found, start=1)
    )
    caption = "What each has less of than layout 1, and layout 1 than all others"
    return Table("better", caption, columns, tuple(rows), "there is one layout, or none")


def _move(move: Move) -> tuple[str, str, str, str]:
    if move.now is None:
        return move.thing, _spot(move.before), "", "no room"
    far = abs(move.now.x_mm - move.before.x_mm) + abs(move.now.y_mm - move.before.y_mm)
    turned = " turned" if far == 0 and not move.stays else ""
    return move.thing, _spot(move.before), _spot(move.now), f"{short(far)}{turned}" if not move.stays else "stays"


def _spot(place: Place) -> str:
    return place_statement(place).partition("at ")[2].replace(" mm", "", 1)
