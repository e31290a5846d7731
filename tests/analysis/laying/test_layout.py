"""The search measures as the cable list does; what it remembers of a layout is what it would find anew."""

from __future__ import annotations

import random

import pytest

from laying.rigs_to_place import board_and_rig, by_hand
from laying.small_boards import dealt
from rigc.analysis.laying.search.annealing import search
from rigc.analysis.laying.search.board import Item
from rigc.analysis.laying.search.layout import Layout
from rigc.analysis.laying.search.moves import Dice, some_change
from rigc.analysis.leads.lengths.cable_lengths import CableLengths
from rigc.analysis.leads.lengths.cable_routes import CableRoutes
from rigc.analysis.results import Results
from rigc.model.deck import Place


def listed_lengths(results: Results) -> dict[str, int]:
    """Finished length of each lead that is routed, in tenths of a millimetre."""
    routes, lengths = results.get(CableRoutes).routes, results.get(CableLengths).lengths
    return {mark: length.finished for mark, length in lengths.items() if mark in routes}


@pytest.mark.parametrize(("name", "audio_mm"), [("back-bedroom", 1200), ("long-haul", 17_480)])
def test_the_hand_layouts_are_without_fault_and_as_long_as_in_the_cable_list(name: str, audio_mm: int) -> None:
    whole, _, made = board_and_rig(name)
    board = whole.replace(links=tuple(link.replace(joint=False) for link in whole.links))
    layout = Layout(board, by_hand(name))
    assert layout.faults == 0
    lengths = listed_lengths(made)
    found = {link.mark: length for link, (length, *_) in zip(board.links, layout.runs(), strict=True)}
    assert lengths
    assert {mark: found[mark] for mark in lengths} == lengths
    assert sum(found[link.mark] for link in board.links if link.signal == "audio") == 10 * audio_mm


@pytest.mark.parametrize("lanes", [(), (("audio", 120.0), ("audio", 260.0), ("dc", 300.0))])
@pytest.mark.parametrize("seed", range(6))
def test_lengths_of_random_layouts_are_those_of_the_cable_list(seed: int, lanes: tuple[tuple[str, float], ...]) -> None:
    """Overlapping or not, round what hangs or beneath it: every lead that has a way is as long as the rig's own cable list makes it, and
    what is known at once is never more. With chosen places the drop lines are chosen, too."""
    whole, given, _ = board_and_rig("long-haul")
    rig = given.replace(lead_wishes=given.lead_wishes.replace(lanes=lanes))
    links = tuple(
        link.replace(lanes=tuple(round(10 * y) for s, y in lanes if s == link.signal), joint=bool(seed % 3))
        for link in whole.links
    )
    board = whole.replace(links=links)
    dice = random.Random(seed)
    at = [
        (10 * dice.randint(0, 800), 10 * dice.randint(0, 350), dice.randrange(len(item.shapes))) for item in board.items
    ]
    places = {
        item.name: Place(
            item.name,
            x / 10,
            y / 10,
            item.shapes[shape].turned,
            item.under,
            None,
            None,
            None,
            "",
            rig.end,
            chosen=bool(seed % 3),
        )
        for item, (x, y, shape) in zip(board.items, at, strict=True)
    }
    results = Results(rig.replace(places=places))
    lengths, layout = listed_lengths(results), Layout(board, at)
    found = {link.mark: length for link, (length, *_) in zip(board.links, layout.runs(), strict=True)}
    assert lengths and all(found[mark] == length for mark, length in lengths.items())
    assert any(route.more or route.dip for route in results.get(CableRoutes).routes.values())


def test_changes_are_reckoned_as_a_layout_made_anew() -> None:
    board, _, _ = board_and_rig("back-bedroom")
    layout, dice = Layout(board, by_hand("back-bedroom")), Dice(7)
    for _ in range(200):
        changes = some_change(layout, tuple(range(len(board.items))), dice)
        if changes:
            hard, missed, at = layout.faults_with(changes)
            cost, broken = layout.cost_with(at, changes)
            layout.take(changes, at, hard, missed)
            assert (layout.cost, layout.broken) == (cost, broken)
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


def test_the_mirror_image_costs_the_same() -> None:
    """Left for right, on a board on which sound has no way to go: x becomes width - x - the thing's width."""
    board = dealt(4, 6, turning=False)
    at = search(board, 1_500).at
    mirrored = board.replace(items=tuple(_mirrored(item) for item in board.items))
    there = [(board.width - x - board.items[item].shapes[0].width, y, 0) for item, (x, y, _) in enumerate(at)]
    one, other = Layout(board, list(at)), Layout(mirrored, there)
    assert (one.faults, one.cost) == (other.faults, other.cost)


def _mirrored(item: Item) -> Item:
    shape = item.shapes[0]
    sockets = tuple(each.replace(x=shape.width - each.x, dx=-each.dx) for each in shape.sockets)
    turned: Item = item.replace(shapes=(shape.replace(sockets=sockets),))
    return turned
