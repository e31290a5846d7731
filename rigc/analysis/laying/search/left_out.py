"""A layout that may have faults -> what has to be left out so that the rest has none."""

from __future__ import annotations

from rigc.analysis.laying.search.board import Board
from rigc.analysis.laying.search.ground import At
from rigc.analysis.laying.search.layout import Layout


def left_out(board: Board, at: tuple[At, ...]) -> dict[int, int]:
    """Leaves out the item in whose way most is, until nothing is in the way of anything: those left out, each with what it lacks in
    tenths of a millimetre."""
    layout = Layout(board, list(at))
    standing = set(range(len(board.items)))
    short = {item: layout.fault_of(item) for item in standing if board.items[item].fixed is None}
    without_room: dict[int, int] = {}
    while short:
        worst = max(short, key=lambda item: short[item])
        if not short[worst]:
            break
        without_room[worst] = short.pop(worst)
        standing.remove(worst)
        for each in layout.beside(worst):
            if each in short:
                short[each] -= layout.fault_between(worst, each)
    return without_room
