"""Fit -> the table of decks, and the smallest rectangle with the layout that proves it."""

from __future__ import annotations

from rigc.analysis.laying.fit import DeckFit, Fit
from rigc.model.rig import Rig
from rigc.reports.content import Cell, Column, Paragraph, Row, Table


def deck_table(fit: Fit) -> Table:
    """One row a deck: whether it takes all, what it leaves out and what is left over of it."""
    columns = (
        Column("deck"),
        Column("width", "mm", number=True),
        Column("depth", "mm", number=True),
        Column("takes"),
        Column("left out"),
        Column("free on top", "cm²", number=True),
        Column("below"),
    )
    return Table("decks", "Decks and what they take", columns, tuple(map(_deck, fit.decks)), "no deck has a size")


def smallest_table(fit: Fit) -> Table:
    """Where all stand on the smallest rectangle."""
    found = fit.smallest
    size = "" if found is None else f": {found.width / 10:g} x {found.depth / 10:g} mm"
    columns = (Column("thing"), Column("x", "mm", number=True), Column("y", "mm", number=True), Column("side"))
    rows = () if found is None else tuple(_spot(*each) for each in found.at)
    return Table("smallest", f"The smallest rectangle found{size}", columns, rows, "no layout was found")


def fit_note(rig: Rig, fit: Fit) -> Paragraph:
    """What is counted, what could not be, and how to try decks of the generic stock."""
    lines = (
        "Each thing counts with its plugs, the air round them and the room that feet need round its switches, in one "
        "orientation; things that share that room, staggered, may do with less.",
    )
    unsized = (f"Not counted, for want of a body: {', '.join(fit.unsized)}.",) if fit.unsized else ()
    stocked = any(deck.declared.source.name.startswith("stock/") for deck in rig.decks.values())
    more = (
        ()
        if stocked
        else ('Every deck that the rig and what it uses declare is tried: for generic sizes, `use "stock/decks.rig"`.',)
    )
    return Paragraph("counted", lines + unsized + more)


def _deck(deck: DeckFit) -> Row:
    left = ", ".join(f"{name} (lacks {short / 10:g} mm)" for name, short in deck.left_out)
    texts = (
        deck.deck,
        f"{deck.width_mm:g}",
        f"{deck.depth_mm:g}",
        "not all" if deck.left_out else "all",
        left,
        f"{deck.free_mm2 / 100:.0f}",
        ", ".join(deck.below),
    )
    return Row(tuple(map(Cell, texts)))


def _spot(name: str, x: int, y: int, under: bool) -> Row:
    return Row(tuple(map(Cell, (name, f"{x / 10:g}", f"{y / 10:g}", "under" if under else "on top"))))
