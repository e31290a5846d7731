"""Several layouts, or one that keeps what stood before -> tables that tell them apart, with statements to paste."""

from __future__ import annotations

from rigc.analysis.laying.alternatives import Alternative
from rigc.analysis.laying.kept_places import Kept, Move
from rigc.analysis.laying.place_statement import place_statement
from rigc.analysis.laying.proved_places import Proved
from rigc.diagnostics.figures import short
from rigc.model.deck import Place
from rigc.reports.content import Cell, Column, Paragraph, Row, Sheet, Table
from rigc.reports.laying.better_words import better_words
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


def proved_sheet(proved: Proved) -> Sheet:
    """What is proved of a layout, and its statements."""
    columns = (Column("what"), Column("costs", "mm", number=True), Column("how it is known"))
    rows = tuple(Row(tuple(map(Cell, row))) for row in _proved(proved))
    caption = "What this layout costs and what every other costs at least, in millimetres of audio lead, by the rig's own weights"
    return Sheet(
        "places-proved",
        "Places and what is proved of them",
        "builder",
        (
            Table("proved", caption, columns, rows),
            Paragraph("statements", chosen_statements(proved.rig), kind="statements"),
        ),
    )


def _proved(proved: Proved) -> tuple[tuple[str, str, str], ...]:
    if proved.impossible:
        return (
            ("a layout that keeps all rules", "", "there is none: proved by the solver; what has no room is left out"),
        )
    mine = "this layout", millimetres(proved.cost), f"found by the {'solver' if proved.by_solver else 'search'}"
    if proved.within_percent < 0:
        return mine, ("every other, at least", "", "nothing is proved: give the solver more work")
    within = (
        "none costs less"
        if proved.within_percent == 0
        else f"this one is within {proved.within_percent} % of the best possible"
    )
    return mine, ("every other, at least", millimetres(proved.bound), f"proved by the solver: {within}")


def _cost(each: Alternative, name: str) -> str:
    return millimetres(sum(term.cost for term in each.objective.terms if term.name == name))


def _better(found: tuple[Alternative, ...]) -> Table:
    columns = (Column("layout"), Column("better at"))
    rows = (
        Row((Cell(f"layout {number}"), Cell("; ".join(map(better_words, each.better_at)) or "all in all")))
        for number, each in enumerate(found, start=1)
    )
    caption = "What each does better than layout 1, and layout 1 than every other, at least"
    return Table("better", caption, columns, tuple(rows), "there is one layout, or none")


def _move(move: Move) -> tuple[str, str, str, str]:
    if move.now is None:
        return move.thing, _spot(move.before), "", "no room"
    far = abs(move.now.x_mm - move.before.x_mm) + abs(move.now.y_mm - move.before.y_mm)
    turned = " turned" if far == 0 and not move.stays else ""
    return move.thing, _spot(move.before), _spot(move.now), f"{short(far)}{turned}" if not move.stays else "stays"


def _spot(place: Place) -> str:
    return place_statement(place).partition("at ")[2].replace(" mm", "", 1)
