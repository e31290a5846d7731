"""The same board is searched once: what was found before is told again, in this process and in the next, and nothing else hangs on that."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial
from pathlib import Path

import pytest
from cases import READER

from laying.small_boards import crowded, dealt
from rigc.analysis.kept import Kept
from rigc.analysis.laying import chosen_places
from rigc.analysis.laying.search import annealing, known
from rigc.analysis.laying.search.board import Board
from rigc.analysis.laying.search.found import Found
from rigc.analysis.laying.search.ground import At
from rigc.analysis.laying.search.known import Known
from rigc.analysis.laying.search.rows import settling
from rigc.compile import compile_rig
from rigc.files.cache import Cache
from rigc.files.reader import CachedReader
from rigc.source import Source

BOARD = dealt(0, 3, turning=False)
EFFORT = 300
RIG = """language 1

rig two "Two" {
  revision A 2026-03-02 "first try"
}

unit marl "drive" {
  body 70 x 110 x 50 mm
  input in ts right 80 mm up 25 mm
  output out ts left 80 mm up 25 mm
}

unit hedge "echo" {
  body 70 x 110 x 50 mm
  input in ts right 80 mm up 25 mm
  output out ts left 80 mm up 25 mm
}

chain marl -> hedge

deck plank {
  size 400 x 200 mm
}
"""


@pytest.fixture
def searches(monkeypatch: pytest.MonkeyPatch) -> list[Board]:
    """The boards that are truly searched."""
    searched: list[Board] = []
    truly = annealing.search

    def counted(board: Board, *more: object, **named: object) -> Found:
        searched.append(board)
        return truly(board, *more, **named)  # type: ignore[arg-type]

    monkeypatch.setattr(annealing, "search", counted)
    return searched


def test_a_board_is_searched_once_whatever_its_things_are_called(searches: list[Board]) -> None:
    ours = Known()
    first = ours.search(BOARD, EFFORT)
    items = tuple(item.replace(name=f"other {item.name}") for item in BOARD.items)
    links = tuple(link.replace(mark=f"Z{link.mark}") for link in BOARD.links)
    assert ours.search(BOARD.replace(items=items, links=links), EFFORT) == first == annealing.search(BOARD, EFFORT)
    assert len(searches) == 2  # the one of `ours`, and that of this line


def test_another_board_effort_or_patience_is_searched_anew(searches: list[Board]) -> None:
    ours = Known()
    for board, effort, patience in (
        (BOARD, EFFORT, 0),
        (BOARD.replace(air=30), EFFORT, 0),
        (BOARD, 10, 0),
        (BOARD, EFFORT, 9),
    ):
        ours.search(board, effort, patience)
    assert len(searches) == 4


def test_the_next_process_reads_it_as_data(searches: list[Board], tmp_path: Path) -> None:
    first = Known(partial(Kept, Cache(tmp_path))).search(BOARD, EFFORT)
    assert Known(partial(Kept, Cache(tmp_path))).search(BOARD, EFFORT) == first
    assert len(searches) == 1
    (kept,) = tmp_path.glob("laid-*")
    Cache(tmp_path).write(kept.name, b"[[0, 0, 0]]")
    assert Known(partial(Kept, Cache(tmp_path))).search(BOARD, EFFORT) == first
    assert len(searches) == 2


def test_a_layout_settles_once_in_this_process_and_the_next(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    settled: list[Sequence[At]] = []
    truly = settling.at_rest

    def counted(board: Board, at: Sequence[At]) -> Found:
        settled.append(at)
        return truly(board, at)

    monkeypatch.setattr(settling, "at_rest", counted)
    board = crowded(12)
    found = annealing.search(board, EFFORT)
    assert not found.hard
    ours = Known(partial(Kept, Cache(tmp_path)))
    rested = ours.rest(board, found)
    items = tuple(item.replace(name=f"other {item.name}") for item in board.items)
    assert ours.rest(board.replace(items=items), found) == rested
    assert Known(partial(Kept, Cache(tmp_path))).rest(board, found) == rested
    assert len(settled) == 1
    ours.rest(board, rested)
    ours.rest(board.replace(air=board.air + 10), found)
    assert len(settled) == 3


def test_what_was_interrupted_is_not_kept(searches: list[Board], tmp_path: Path) -> None:
    ours = Known(partial(Kept, Cache(tmp_path)))

    def stop(_: int, __: int) -> None:
        raise KeyboardInterrupt

    assert ours.search(BOARD, 20 * EFFORT, watch=stop).stopped
    assert not list(tmp_path.glob("laid-*"))
    assert not ours.search(BOARD, 20 * EFFORT).stopped
    assert len(searches) == 2


def test_an_edit_beside_the_board_keeps_every_place(
    searches: list[Board], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    told = []
    for text, folder in ((RIG, "a"), (RIG.replace("first try", "second try"), "a"), (RIG, "b")):
        monkeypatch.setattr(known, "KNOWN", Known(partial(Kept, Cache(tmp_path / folder))))
        (tmp_path / folder).mkdir(exist_ok=True)
        monkeypatch.setattr(chosen_places, "KNOWN", known.KNOWN)
        made = compile_rig(lambda name, text=text: Source(name, text), "two.rig", READER, effort=EFFORT)
        told.append([(sheet.title, sheet.blocks) for sheet in made.sheets(("places",))])
    assert told[0] == told[1] == told[2] != []
    assert len(searches) == 2


def test_whoever_reads_with_a_cache_has_layouts_kept_there(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(known.KNOWN, "kept", None)
    CachedReader()
    assert known.KNOWN.kept is not None and known.KNOWN.kept().store is not None
