"""Quote: what the material costs, as far as prices are stated, with room for the work."""

from __future__ import annotations

from rigc.analysis.stores.offer import Offer
from rigc.analysis.tests.build_work import BuildWork
from rigc.model.rig import Rig
from rigc.reports.content import Cell, Column, NoSheet, Paragraph, Row, Sheet, Table
from rigc.reports.figure_cell import figure_cell
from rigc.traced.figure import Figure

NAME, TITLE = "quote", "Quote"

_COLUMNS = (
    Column("item"),
    Column("what it is", key="title"),
    Column("quantity", number=True),
    Column("sum", number=True),
    Column("currency"),
    Column("note", least_mm=40),
)


def quote(rig: Rig, offer: Offer, work: BuildWork) -> Sheet | NoSheet:
    """Item, quantity, sum, currency, note; then the sums, and what is not in them."""
    if not offer.items and work.price is None:
        return NoSheet(NAME, TITLE, "No price is stated of anything that is not somebody's already.")
    rows = [
        Row(
            (
                Cell(each.name, strong=True),
                Cell(each.what),
                Cell(str(each.count)),
                figure_cell(each.price),
                Cell(each.price.unit),
                Cell(""),
            )
        )
        for each in offer.items
    ]
    rows += [
        Row(
            (
                Cell("material in all", strong=True),
                *(Cell(""),) * 2,
                figure_cell(each, strong=True),
                Cell(each.unit),
                Cell(""),
            ),
            total=True,
        )
        for each in offer.sums
    ]
    table = Table(
        "items",
        "Material",
        _COLUMNS,
        tuple(rows),
        empty="no price is stated of anything that is not somebody's already",
    )
    return Sheet(NAME, TITLE, "client", (table, _work(rig, work), _reading(offer)))


def _work(rig: Rig, work: BuildWork) -> Table:
    """The minutes that a build takes, and what they cost; where no rate is stated the builder writes it in."""
    rate = "" if rig.head.rate is None else f"{rig.head.rate.typed} an hour"
    columns = (
        Column("work"),
        Column("takes", "min", number=True),
        Column("rate", least_mm=30),
        Column("sum", least_mm=30),
    )
    row = Row((Cell("bench work, one hand", strong=True), figure_cell(work.minutes), Cell(rate), _sum(work.price)))
    return Table("work", "Work", columns, (row,))


def _sum(price: Figure | None) -> Cell:
    return Cell("") if price is None else Cell(f"{figure_cell(price).text} {price.unit}", strong=True)


def _reading(offer: Offer) -> Paragraph:
    lines = [
        "Prices are as stated in the source. What has an owner is brought, not sold. Tax, carriage, spares, labels, strip and waste are "
        "not in the sums."
    ]
    if offer.unpriced:
        lines.append(f"No price is known of {', '.join(offer.unpriced)}.")
    return Paragraph("reading", tuple(lines), heading="How to read it")


PLACE = 10
SHEET = quote
