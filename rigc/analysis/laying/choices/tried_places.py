"""A rig as it is tried and one that differs little, with its places -> the same places, as far as nothing is in the way there now; what has none
goes where it has room, and nothing is laid anew but for a wish: of what is tried only counts what is wrong."""

from __future__ import annotations

from rigc.analysis.laying.choices.task import Task, task_of
from rigc.analysis.laying.chosen_places import laid
from rigc.analysis.laying.kept_places import still_open
from rigc.analysis.laying.search.board import Board
from rigc.analysis.laying.search.found import as_it_is
from rigc.analysis.laying.search.ground import At
from rigc.analysis.laying.search.known import KNOWN
from rigc.analysis.laying.search.layout import Layout
from rigc.analysis.laying.search.left_out import left_out
from rigc.analysis.laying.search.standing.room import made_room, moved
from rigc.diagnostics.diagnostic import Diagnostic
from rigc.model.rig import Rig

_ANEW = 1_000  # steps


def tried_places(rig: Rig, near: Rig) -> tuple[Rig, tuple[Diagnostic, ...]]:
    """The rig with places, those of `near` where they do, and what found none."""
    bare: Rig = rig.replace(chosen_plugs=still_open(rig, near))
    task = task_of(bare)
    if task is None:
        return bare, ()
    if not task.free:
        return bare, task.told
    task = _on_the_same_sides(task, near)
    board = task.board.loose
    at, opened, lacking = _as_there(board, near)
    if opened:
        at = made_room(board, at, (*opened, *lacking)) or at
    elif out := [item for item in left_out(board, at) if item not in lacking]:
        at = moved(board, at, out)
    return laid(task.replace(board=board), at if lacking else _as_wished(board, at))


def _as_wished(board: Board, at: tuple[At, ...]) -> tuple[At, ...]:
    """What misses a wish may be nearer to it by now: all is laid anew then, by few steps."""
    here = as_it_is(Layout(board, list(at)))
    if not here.missed:
        return at
    there = KNOWN.search(board, _ANEW)
    return there.at if there.rank < here.rank else at


def _on_the_same_sides(task: Task, near: Rig) -> Task:
    """What was chosen to be on another side of the deck than is usual, unless that is wished by now."""
    wished = {name for hint in task.rig.hints if hint.kind == "stands" for name in hint.things}
    sides = {
        item.name: place.under
        for item in task.board.items
        if item.fixed is None
        and item.name not in wished
        and (place := near.places.get(item.name)) is not None
        and place.chosen
        and place.under != item.under
    }
    return task.otherwise(task.rig, sides) if sides else task


def _as_there(board: Board, near: Rig) -> tuple[tuple[At, ...], list[int], list[int]]:
    """Where all stand there; what has no place by now, and what had none there: these stand off the deck."""
    at: list[At] = []
    opened: list[int] = []
    lacking: list[int] = []
    for number, item in enumerate(board.items):
        place = near.places.get(item.name)
        turns = [shape.turned for shape in item.shapes]
        if item.fixed is not None:
            at.append((*item.fixed, 0))
        elif place is not None and place.chosen and place.under == item.under and place.turned in turns:
            at.append((round(10 * place.x_mm), round(10 * place.y_mm), turns.index(place.turned)))
        else:
            at.append((0, 3 * board.depth, 0))
            (lacking if place is None else opened).append(number)
    return tuple(at), opened, lacking
