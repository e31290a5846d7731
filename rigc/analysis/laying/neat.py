"""Where all stand -> how neat it looks: how many lines the front edges make, how even the gaps in each are, and how near the middle of
the deck it is."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import pairwise

from rigc.analysis.laying.search.board import Board

At = tuple[int, int, int]  # x, y, number of the shape


def neatness(board: Board, at: Sequence[At]) -> int:
    """What lines and gaps cost, in hundredths of a length; what hangs below is not looked at."""
    if not (board.line or board.gap or board.centring):
        return 0
    rows = _rows(board, at, range(len(at)))
    off = board.centring * off_middle(board, at, rows)
    return board.line * len(rows) + board.gap * uneven(board, at, rows) + off


def lines(board: Board, at: Sequence[At], items: Iterable[int]) -> int:
    """How many lines the front edges of these items make."""
    return len(_rows(board, at, items))


def uneven(board: Board, at: Sequence[At], rows: dict[int, list[int]] | None = None) -> int:
    """By how much the widest and the narrowest gap of each line differ, over all lines."""
    total = 0
    for row in (_rows(board, at, range(len(at))) if rows is None else rows).values():
        if len(row) < 3:
            continue
        row.sort(key=lambda item: at[item][0])
        gaps = [
            at[right][0] - at[left][0] - board.items[left].shapes[at[left][2]].width for left, right in pairwise(row)
        ]
        total += max(gaps) - min(gaps)
    return total


def off_middle(board: Board, at: Sequence[At], rows: dict[int, list[int]] | None = None) -> int:
    """How far the middle of each line is from that of the deck, over all lines of two things or more."""
    total = 0
    for row in (_rows(board, at, range(len(at))) if rows is None else rows).values():
        if len(row) > 1:
            left = min(at[item][0] for item in row)
            right = max(at[item][0] + board.items[item].shapes[at[item][2]].width for item in row)
            total += abs(left + right - board.width) // 2
    return total


def _rows(board: Board, at: Sequence[At], items: Iterable[int]) -> dict[int, list[int]]:
    rows: dict[int, list[int]] = {}
    for item in items:
        if not board.items[item].under:
            rows.setdefault(at[item][1], []).append(item)
    return rows
