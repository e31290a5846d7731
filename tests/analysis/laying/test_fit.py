"""Which decks take a rig: the smallest rectangle is proved by a layout that has no fault."""

from __future__ import annotations

import pytest

from laying.rigs_to_place import board_and_rig
from rigc.analysis.laying.fit import fit
from rigc.analysis.laying.search.layout import Layout
from rigc.analysis.leads.leads import Leads


@pytest.mark.parametrize("name", ["back-bedroom", pytest.param("long-haul", marks=pytest.mark.long)])
def test_the_smallest_rectangle_bears_its_layout(name: str) -> None:
    board, rig, made = board_and_rig(name)
    found = fit(rig, made.get(Leads))
    assert [(deck.deck, deck.left_out) for deck in found.decks] == [(deck, ()) for deck in rig.decks]
    assert found.smallest is not None
    places = {thing: (x, y, 0) for thing, x, y, _ in found.smallest.at}
    proof = board.replace(width=found.smallest.width, depth=found.smallest.depth, weighed=False, tapes=())
    layout = Layout(proof, [places[item.name] for item in board.items])
    assert layout.hard == 0
    assert found.smallest.width * found.smallest.depth < board.width * board.depth
    # a rectangle can't be smaller than what stands on it
    bodies = sum(item.shapes[0].width * item.shapes[0].depth for item in board.items if not item.under)
    assert bodies < found.smallest.width * found.smallest.depth
