"""The search measures as the cable list does, but for ways round what hangs below the deck; what it remembers of a layout is what it
would find anew."""

from __future__ import annotations

import random

import pytest

from placing.rigs_to_place import board_and_rig, by_hand
from rigc.analysis.computations.cable_lengths import CableLengths
from rigc.analysis.computations.cable_routes import CableRoutes
from rigc.analysis.placing.dice import Dice
from rigc.analysis.placing.layout import Layout
from rigc.analysis.placing.moves import some_change
from rigc.analysis.results import Results
from rigc.model.deck import Place


def straight_lengths(results: Results) -> dict[str, int]:
    """Finished length of each lead that neither goes round a hanging body nor beneath one, in tenths of a millimetre."""
    routes = results.get(CableRoutes).routes
    return {
        mark: length.finished
        for mark, length in results.get(CableLengths).lengths.items()
        if mark in routes and not routes[mark].more and not routes[mark].dip
    }


@pytest.mark.parametrize(("name", "audio_mm"), [("back-bedroom", 1200), ("long-haul", 17_080)])
def test_the_hand_layouts_are_without_fault_and_as_long_as_in_the_cable_list(name: str, audio_mm: int) -> None:
    board, _, made = board_and_rig(name)
    layout = Layout(board, by_hand(name))
    assert layout.faults == 0
    lengths = straight_lengths(made)
    found = {link.mark: length for link, (length, _) in zip(board.links, layout.runs(), strict=True)}
    assert len(lengths) > len(found) / 2
    assert {mark: found[mark] for mark in lengths} == lengths
    assert sum(found[link.mark] for link in board.links if link.signal == "audio") == 10 * audio_mm


@pytest.mark.parametrize("seed", range(6))
def test_lengths_of_random_layouts_are_those_of_the_cable_list(seed: int) -> None:
    """Overlapping or not: every lead that has a way is as long as the rig's own cable list makes it."""
    board, rig, _ = board_and_rig("long-haul")
    dice = random.Random(seed)
    at = [
        (10 * dice.randint(0, 800), 10 * dice.randint(0, 350), dice.randrange(len(item.shapes))) for item in board.items
    ]
    places = {
        item.name: Place(
            item.name, x / 10, y / 10, item.shapes[shape].turned, item.under, None, None, None, "", rig.end
        )
        for item, (x, y, shape) in zip(board.items, at, strict=True)
    }
    lengths = straight_lengths(Results(rig.replace(places=places)))
    found = {link.mark: length for link, (length, _) in zip(board.links, Layout(board, at).runs(), strict=True)}
    assert lengths and all(found[mark] == length for mark, length in lengths.items())


def test_changes_are_reckoned_as_a_layout_made_anew() -> None:
    board, _, _ = board_and_rig("back-bedroom")
    layout, dice = Layout(board, by_hand("back-bedroom")), Dice(7)
    for _ in range(200):
        changes = some_change(layout, tuple(range(len(board.items))), dice)
        if changes:
            faults, at = layout.faults_with(changes)
            layout.take(changes, at, faults, layout.cost_with(at))
            anew = Layout(board, at)
            assert (layout.faults, layout.cost) == (anew.faults, anew.cost)


def test_dice_fall_alike_everywhere() -> None:
    # worked with the constants by a calculator of whole numbers: (1 * A + C), then once more for each throw
    factor, added = 6364136223846793005, 1442695040888963407
    state = (1 * factor + added) % 2**64
    throws = []
    for _ in range(5):
        state = (state * factor + added) % 2**64
        throws.append((state >> 33) * 6 >> 31)
    dice = Dice(1)
    assert [dice.below(6) for _ in range(5)] == throws
