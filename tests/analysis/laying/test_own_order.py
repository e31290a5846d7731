"""What is found does not hang on the order of the source, nor on names: the same places for the same things."""

from __future__ import annotations

import os
import random
import re
import subprocess
import sys
from pathlib import Path

import pytest
from cases import READER, ROOT

from laying.reordered import reordered
from laying.rigs_to_place import board_and_rig
from laying.small_boards import crowded, dealt, unit
from rigc.analysis.laying.search.board import Board, Wish
from rigc.analysis.laying.search.found import as_it_is
from rigc.analysis.laying.search.ground import At
from rigc.analysis.laying.search.known import Known
from rigc.analysis.laying.search.layout import Layout
from rigc.analysis.laying.search.left_out import put_back
from rigc.analysis.laying.search.own_order import in_own_order, nameless
from rigc.compile import compile_rig
from rigc.files.disk import Disk
from rigc.source import Source

STEPS = 900


@pytest.mark.parametrize("seed", range(12))
def test_the_same_layout_in_whatever_order_and_by_whatever_names(seed: int) -> None:
    board = crowded(seed) if seed % 2 else dealt(seed, 4 + seed)
    wishes = Wish("near_edge", (1,), "rear"), Wish("row", (0,), "front"), Wish("away", (0, 2), amount=300)
    board = board.replace(wishes=wishes)
    found = Known().search(board, STEPS)
    rested = Known().rest(board, found)
    for dealt_order in range(2):
        other, items = reordered(board, dealt_order, "other ")
        again = Known().search(other, STEPS)
        assert again.at == tuple(found.at[item] for item in items)
        assert again.rank == found.rank
        assert Known().rest(other, again).at == tuple(rested.at[item] for item in items)


def test_steps_that_a_beginning_took_end_the_search() -> None:
    """Ten things, of which making all stand takes more steps than there are: a round after it takes none, and had no end."""
    found = Known().search(dealt(6, 10), 300)
    assert found.hard and found.steps < 3000


@pytest.mark.parametrize("example", ["back-bedroom", "long-haul", "tide-line"])
def test_the_order_of_a_real_board_is_its_own(example: str) -> None:
    """With all that a rig can say; and what its first layout costs is the same, too."""
    board, _, _ = board_and_rig(example)
    ordered = in_own_order(board)
    at = _dealt_layout(board, 3)
    assert ordered.to_source(ordered.from_source(at)) == at
    for seed in range(3):
        other, items = reordered(board, seed, "other ")
        again = in_own_order(other)
        assert nameless(again.board) == nameless(ordered.board)
        assert tuple(items[item] for item in again.items) == ordered.items
        there = tuple(at[item] for item in items)
        assert as_it_is(Layout(other, list(there))).rank == as_it_is(Layout(board, list(at))).rank
        places, lacking = put_back(other, there)
        first, short = put_back(board, at)
        assert places == tuple(first[item] for item in items)
        assert {items[item]: far for item, far in lacking.items()} == short


def test_sound_gives_the_order_and_size_that_of_the_rest() -> None:
    """u0 plays into u1 and so on, and each is followed by what it plays into; of two things without a lead the larger is first."""
    board = dealt(7, 4)
    jacks = (("left", 300), ("right", 300))
    board = board.replace(items=(unit("small", 400, 500, jacks), *board.items, unit("large", 600, 800, jacks)))
    moved = [
        link.replace(
            start=link.start.replace(item=link.start.item + 1),
            end=link.end.replace(item=link.end.item + 1),
        )
        for link in board.links
    ]
    board = board.replace(links=tuple(reversed(moved)))
    names = [item.name for item in in_own_order(board).board.items]
    assert names == ["u0", "u1", "u2", "u3", "large", "small"]


def test_things_alike_in_all_go_by_their_names() -> None:
    """What else could tell them apart is the order of the source, which shall not."""
    jacks = (("left", 300), ("right", 300))
    board = Board(3000, 2000, 120, (), tuple(unit(name, 500, 600, jacks) for name in ("b", "c", "a")))
    assert [item.name for item in in_own_order(board).board.items] == ["a", "b", "c"]


@pytest.mark.parametrize("path", ["examples/tide-line/board.rig", "tests/reach/hints.rig", "tests/rigs/salt-pan.rig"])
def test_blocks_that_move_in_the_file_move_nothing_on_the_deck(path: str) -> None:
    """Without its places; blocks that name no thing of their own stay where they are."""
    text = _without_places(path)
    first = _places(path, text)
    assert any(place[-1] for place in first.values())
    for seed in range(2):
        assert _places(path, _blocks_moved(text, seed)) == first


@pytest.mark.parametrize("path", ["examples/tide-line/board.rig", "tests/reach/hints.rig"])
def test_the_same_bytes_in_whatever_order_sets_are_walked(path: str) -> None:
    words = ["show", "places", "--effort", str(STEPS), "--to", "json", "--stdin-name", path, "-"]
    told = {
        subprocess.run(
            [sys.executable, "-m", "rigc", *words],
            input=_without_places(path).encode(),
            capture_output=True,
            cwd=ROOT,
            env={**os.environ, "PYTHONPATH": str(ROOT), "PYTHONHASHSEED": seed, "XDG_CACHE_HOME": "/dev/null/none"},
        ).stdout
        for seed in ("1", "4242")
    }
    assert len(told) == 1 and told != {b""}


def _without_places(path: str) -> str:
    return re.sub(r"\nplace \{.*?\n\}\n", "\n", (ROOT / path).read_text("utf-8"), flags=re.DOTALL)


def _dealt_layout(board: Board, seed: int) -> tuple[At, ...]:
    dice = random.Random(seed)
    return tuple(
        (dice.randrange(0, board.width, 10), dice.randrange(0, board.depth, 10), dice.randrange(len(item.shapes)))
        for item in board.items
    )


def _places(path: str, text: str) -> dict[str, tuple[float, float, int, bool, bool]]:
    disk = Disk(ROOT / path, root=ROOT)
    name = Path(path).name
    made = compile_rig(lambda each: Source(name, text) if each == name else disk(each), name, READER, effort=STEPS)
    assert made.results is not None, [finding.message for finding in made.findings]
    places = made.results.rig.places
    return {name: (each.x_mm, each.y_mm, each.turned, each.under, each.chosen) for name, each in places.items()}


def _blocks_moved(text: str, seed: int) -> str:
    """The statements of the file in a dealt order, but for those that must come first."""
    statements, now, depth = [], "", 0
    for line in text.splitlines(keepends=True):
        now, words = now + line, line.partition("#")[0].strip()
        depth += words.count("{") - words.count("}")
        if words and not depth:
            statements.append(now)
            now = ""
    first = [each for each in statements if re.search(r"^(language|use|rig|follows)\b", each, re.MULTILINE)]
    rest = [each for each in statements if each not in first]
    return "".join((*first, *random.Random(seed).sample(rest, len(rest)), now))
