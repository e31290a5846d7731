"""PackLives -> the table of supplies that give from a battery."""

from __future__ import annotations

from rigc.analysis.power.pack_lives import PackLife, PackLives
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.figure_cell import figure_cell
from rigc.traced.term import known


def pack_table(lives: PackLives) -> Table | None:
    """A row for each supply with a battery; None if there are none."""
    if not lives.all:
        return None
    columns = (
        Column("supply"),
        Column("battery"),
        Column("energy, as stated", "Wh", number=True),
        Column("gives", "W", number=True),
        Column("efficiency"),
        Column("takes of it", "W", number=True),
        Column("life, if full", "h", number=True),
        Column(f"shows of {lives.all[0].show:.3g} h", number=True, key="shows"),
        Column("other source"),
    )
    return Table("packs", "Supplies on batteries", columns, tuple(map(_row, lives.all)))


def _row(life: PackLife) -> Row:
    efficiency = known(life.intake.efficiency)
    only = life.pack.only
    return Row(
        (
            Cell(life.supply, strong=True),
            Cell(life.pack.kind),
            figure_cell(life.energy),
            figure_cell(life.gives),
            Cell("?" if efficiency is None else f"{efficiency:g} %", mark="usual" if life.intake.usual else ""),
            figure_cell(life.intake.watts),
            figure_cell(life.life),
            figure_cell(life.lasts, strong=only and life.shows == 0),
            Cell("none: charge before the show" if only else "mains"),
        )
    )
