"""A layout in which something is in the way -> the stated places of which one alone, were it open, would let all stand."""

from __future__ import annotations

from rigc.analysis.laying.choices.task import Task, begun, task_of
from rigc.analysis.laying.search.found import Found
from rigc.analysis.laying.search.layout import Layout
from rigc.analysis.laying.search.own_order import in_own_order
from rigc.analysis.laying.search.standing.room import has_room, made_room

_TRIED = (
    3  # things at most: those first that are proved to clash, then those that are most in the way, then the largest
)


def freed(task: Task, found: Found, clash: tuple[int, ...]) -> tuple[str, ...]:
    """The things that stand there, by name; each is tried. `clash` are items that can't stand together."""
    layout, items = Layout(task.board, list(found.at)), task.board.items

    def rank(item: int) -> tuple[bool, int, int]:
        size = items[item].shapes[0]
        return item not in clash, -layout.fault_of(item), -size.width * size.depth

    fixed = sorted((each for each in in_own_order(task.board).items if items[each].fixed is not None), key=rank)
    return tuple(items[each].name for each in fixed[:_TRIED] if _does(task, found, items[each].name))


def _does(task: Task, found: Found, name: str) -> bool:
    places = {thing: place for thing, place in task.rig.places.items() if thing != name}
    open_task = task_of(task.rig.replace(places=places))
    if open_task is None or name not in [open_task.board.items[item].name for item in open_task.free]:
        return False  # a supply whose place is not stated may lie elsewhere
    board = open_task.board
    return made_room(board, begun(board, task.board, found.at)) is not None and has_room(board)
