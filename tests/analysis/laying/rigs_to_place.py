"""The example rigs without their places: only the deck, and the hints that a test gives."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from cases import ROOT, results

from rigc.analysis.deck.unplaced import on_deck, own_deck
from rigc.analysis.laying.board_of_rig import board_of
from rigc.analysis.laying.search.board import Board
from rigc.analysis.laying.search.ground import At
from rigc.analysis.leads.leads import Leads
from rigc.analysis.results import Results
from rigc.model.rig import Rig


@cache
def board_and_rig(name: str) -> tuple[Board, Rig, Results]:
    """The board with everything free, the rig as its source has it, and what follows from that."""
    made = results(Path(ROOT / "examples" / name / "board.rig"))
    deck = own_deck(made.rig)
    assert deck is not None
    return board_of(made.rig.replace(places={}), deck, made.get(Leads), on_deck(made.rig)), made.rig, made


def by_hand(name: str) -> list[At]:
    """Where the source has everything."""
    board, rig, _ = board_and_rig(name)
    places = [rig.places[item.name] for item in board.items]
    return [
        (round(10 * place.x_mm), round(10 * place.y_mm), [shape.turned for shape in item.shapes].index(place.turned))
        for item, place in zip(board.items, places, strict=True)
    ]
