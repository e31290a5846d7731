"""What the search for places is told of a rig, and what its parts answer on a dealt board, asserted whole.

Where a layout comes out the same all the same, a slip in one of these shows here. They are taken over with `--snapshot-update` where they
are changed on purpose.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import islice, takewhile

import pytest
from cases import ROOT, ExpectedByName, results
from syrupy.assertion import SnapshotAssertion

from laying.heard import heard, in_words
from laying.small_boards import crowded, panelled
from rigc.analysis.deck.unplaced import on_deck, own_deck
from rigc.analysis.laying.board_of_rig import board_of
from rigc.analysis.laying.search.board import Board
from rigc.analysis.laying.search.found import as_it_is
from rigc.analysis.laying.search.free_room import FreeRoom
from rigc.analysis.laying.search.glue import Glue, Group
from rigc.analysis.laying.search.ground import Ground
from rigc.analysis.laying.search.insertion import Insertion
from rigc.analysis.laying.search.layout import Layout
from rigc.analysis.laying.search.least_lengths import least_lengths
from rigc.analysis.laying.search.left_out import left_out, put_back
from rigc.analysis.laying.search.moves import Dice
from rigc.analysis.laying.search.rows.few import Few
from rigc.analysis.laying.search.rows.first_layout import first_layout
from rigc.analysis.laying.search.rows.hindrance import Hindrance
from rigc.analysis.laying.search.rows.met_leads import MetLeads
from rigc.analysis.laying.search.shelves import on_shelves
from rigc.analysis.leads.leads import Leads

RIGS = ["reach/board", "reports/askew", "rigs/odd-leads"]


@pytest.mark.parametrize("path", RIGS, ids=lambda path: f"told-{path.rpartition('/')[2]}")
def test_what_the_search_is_told(path: str, snapshot: SnapshotAssertion) -> None:
    """With all places taken out but the first two, which stay."""
    made = results(ROOT / "tests" / f"{path}.rig")
    deck = own_deck(made.rig)
    assert deck is not None
    kept = dict([*made.rig.places.items()][:2])
    things = tuple(each for each in on_deck(made.rig) if each.name not in kept)
    board = board_of(made.rig.replace(places=kept), deck, made.get(Leads), things)
    assert "".join(f"{line}\n" for line in _told(board)) == snapshot(extension_class=ExpectedByName)


def _told(board: Board) -> Iterator[str]:
    for name in board.FIELDS:
        value = getattr(board, name)
        if name == "items":
            for item in value:
                yield " ".join(str(getattr(item, field)) for field in item.FIELDS if field != "shapes")
                for shape in item.shapes:
                    yield "  " + " ".join(_flat(getattr(shape, field)) for field in shape.FIELDS)
        elif isinstance(value, tuple):
            yield from (f"{name}: {_flat(each)}" for each in value)
        else:
            yield f"{name}: {value}"


def _flat(value: object) -> str:
    """A record by its fields alone."""
    if isinstance(value, tuple):
        return f"({', '.join(map(_flat, value))})"
    return " ".join(_flat(getattr(value, field)) for field in value.FIELDS) if hasattr(value, "FIELDS") else str(value)


BOARDS = {**{f"parts-{seed}": crowded(seed) for seed in (3, 4, 6, 7, 9)}, "parts-panelled": panelled(4)}


@pytest.mark.parametrize("name", BOARDS)
def test_what_the_parts_of_the_search_answer(name: str, snapshot: SnapshotAssertion) -> None:
    """On a board as it is laid first: what is in whose way, what leads cost there, where each thing would go, and what hinders it."""
    assert "".join(f"{line}\n" for line in _answers(BOARDS[name])) == snapshot(extension_class=ExpectedByName)


def _answers(board: Board) -> Iterator[str]:
    items = range(len(board.items))
    first = first_layout(board)
    yield f"first: {first}"
    yield f"on shelves: {on_shelves(board, [*items], first)}"
    layout = Layout(board, first)
    lacking = left_out(board, tuple(first))
    yield f"lacks: {[layout.fault_of(item) for item in items]}, left out: {lacking}, cost {layout.cost}, missed {layout.missed}"
    yield f"put back: {put_back(board, tuple(first))}"
    yield f"runs: {layout.runs()}, crossings {layout.crossings}"
    yield f"least: {[(each.length, each.how) for each in least_lengths(board, [run[0] for run in layout.runs()])]}"
    room = FreeRoom(Ground(board))
    insertion, glue, leads = Insertion(room, Dice(1)), Glue(room), MetLeads(room.ground)
    hindrance = Hindrance(room, insertion.links)
    standing = {*items} - {*lacking}
    at = layout.at
    for item in items:
        others = standing - {item}
        for shape in range(len(board.items[item].shapes)):
            group: Group = ((item, 0, 0, shape),)
            free = room.of_group(group, at, others)
            ranked = sorted(insertion.ranked(group, free, at, others, 0.0))
            every, hindered = hindrance.of(group, at, others, leads.with_ends(others))
            yield f"{item} in shape {shape}: {free.bit_count()} free, {every.bit_count()} in all, in the way {_counts(hindered)}"
            yield f"  seems {[each[:4] for each in ranked[:3]]}, best {insertion.best([group], at, others, 0.0, 2)}"
        yield f"  leads met: {leads.runs(at, others, {item: at[item]})}"
    for number in range(len(board.links)):
        yield f"lead {number}: {[(each, glue.runs_over(number, each)) for each in glue.offsets(number)[:6]]}"


@pytest.mark.parametrize("seed", [0, 1, 2, 7, 9], ids=lambda seed: f"few-{seed}")
def test_how_rows_of_a_few_things_are_tried(seed: int, snapshot: SnapshotAssertion) -> None:
    """The first forty ways to hold the things of a dealt board together in rows: how far the search for places seldom comes."""
    board = crowded(seed)
    layout = Layout(board, first_layout(board))
    few = Few(Glue(FreeRoom(layout.ground)), tuple(range(len(board.items))), as_it_is(layout))
    with heard() as talk:
        steps = list(takewhile(lambda _: few.steps < 2_500, islice(few.run(), 40)))
    said = f"{steps}\n{few.found.at}, hard {few.found.hard}, cost {few.found.cost}\n"
    assert said + in_words(talk) == snapshot(extension_class=ExpectedByName)


def _counts(hindered: dict[int, int]) -> dict[int, str]:
    """How many places something is in the way at, and the sum of their numbers, so that another place is seen."""
    return {item: f"{bits.bit_count()} {bits % 1_000_003}" for item, bits in sorted(hindered.items())}
