"""Wishes for places -> the table that tells which of them the places meet, and by how much others are missed; set weights as a line."""

from __future__ import annotations

from rigc.analysis.laying.weights import TERMS
from rigc.analysis.laying.wishes.place_wishes import PlaceWish, PlaceWishes
from rigc.analysis.laying.wishes.wish_words import by_how_much
from rigc.model.rig import Rig
from rigc.reports.content import Block, Cell, Column, Paragraph, Row, Table

_COLUMNS = (Column("of"), Column("wished"), Column("met"))


def wish_blocks(rig: Rig, wishes: PlaceWishes) -> tuple[Block, ...]:
    """Nothing where nothing is wished."""
    rows = tuple(map(_row, wishes.all))
    table = (Table("wishes", "Wishes for places, and whether they are met", _COLUMNS, rows),) if rows else ()
    return (*table, *_weights(rig))


def _row(wish: PlaceWish) -> Row:
    hint = wish.hint
    if wish.deck is None:
        met = "no: they stand on two decks"
    else:
        met = f"no: {by_how_much(hint, wish.deck, wish.missed)}" if wish.missed else "yes"
    return Row((Cell(", ".join(hint.things)), Cell(hint.words.replace("'", "")), Cell(met)))


def _weights(rig: Rig) -> tuple[Paragraph, ...]:
    if not rig.weights:
        return ()
    set_ = (f"{each.term} {each.share.value:g} % (usually {TERMS[each.term].value:g} %)" for each in rig.weights)
    line = f"In the choice of places this rig weighs {', '.join(set_)}, in parts of a millimetre of audio lead."
    return (Paragraph("weights", (line,), heading="Weights"),)
