"""A rig with things that have no stated place -> the same rig with places chosen for them, and what could not be done."""

from __future__ import annotations

from rigc.analysis.laying.choices.cheaper import cheaper
from rigc.analysis.laying.choices.eased import Eased, eased
from rigc.analysis.laying.choices.freed import freed
from rigc.analysis.laying.choices.larger import larger
from rigc.analysis.laying.choices.task import Task, task_of
from rigc.analysis.laying.not_placed import Otherwise, no_room, no_room_for_later, search_stopped
from rigc.analysis.laying.search.annealing import SOME, Watch
from rigc.analysis.laying.search.board import Board
from rigc.analysis.laying.search.found import Found
from rigc.analysis.laying.search.ground import At
from rigc.analysis.laying.search.known import KNOWN
from rigc.analysis.laying.search.left_out import left_out, put_back
from rigc.analysis.laying.search.standing.clash import clash
from rigc.analysis.laying.search.standing.room import has_room, made_room
from rigc.diagnostics.diagnostic import Diagnostic
from rigc.model.deck import Deck, Place
from rigc.model.rig import Rig
from rigc.model.things import Area, Thing

EFFORT = 20_000  # steps; a board of twenty things and fifty leads takes some four seconds.
_OF_MANY = 560_000  # so many by the number of leads, because with fewer a step is shorter,
_CHEAP = 3  # but so many times as many at most
_HALF = 2  # each try with other plugs, or with a thing on the other side, takes so much less
_RUNG = 4  # with more steps than are usual plugs and sides are chosen anew after four times as many, after sixteen times, and so on
_TRIES, _LEAST_TRY = 10, 1_000  # what would let all stand is tried with so much less, but with so many steps at least
_PATIENCE = 2  # times as many more while something is in the way of many things
_OF_ONE = 600  # steps for one open thing
_EACH_PAIR = 2_600  # and so many for each two of a few, which are laid by more than one search,
_OF_SOME = 510_000  # but so many at most, by the number of leads
_BESIDE_LEADS = 4  # and so many: each lead makes a step longer
_USUAL = 20  # things; with more to lay the steps are more by the square, because there are more ways,
_CROWD = 40  # and with more on the board fewer, because each takes longer


def with_chosen_places(
    rig: Rig, effort: int | None = None, watch: Watch | None = None, advice: bool = True
) -> tuple[Rig, tuple[Diagnostic, ...]]:
    """The rig with a place for everything that its deck can bear after so many steps of search, and the findings about
    the rest: a body that is not stated, no room, with what would do if `advice` is wanted."""
    task = task_of(rig)
    if task is None:
        return rig, ()
    if not task.free:
        return rig, task.told
    best = chosen_layout(task, effort, watch)
    task, found = best.task, best.found
    otherwise = Otherwise()
    if advice and found.hard and effort != 0 and not found.stopped and left_out(task.board, found.at):
        otherwise = _otherwise(task, found)
    made, told = laid(task, found.at, otherwise)
    return made, (*told, search_stopped(task.deck, found.steps)) if found.stopped else told


def _otherwise(task: Task, found: Found) -> Otherwise:
    """What would let all stand, each tried."""
    easier = eased(task, found, max(_LEAST_TRY, usual_effort(task.board) // _TRIES), stated=True)
    does = bool(easier.plugs or easier.sides) and has_room(easier.task.board)
    together = clash(task.board, found.at)
    return Otherwise(
        easier.plugs if does else (),
        easier.sides if does else (),
        freed(task, found, together),
        tuple(task.board.items[item].name for item in together),
        larger(task, found.at),
    )


def chosen_layout(task: Task, effort: int | None, watch: Watch | None = None) -> Eased:
    """The best layout after so many steps, with other plugs and sides where something is in the way in it, a wish is missed, or it costs less
    with them.

    More steps than are usual are never worse: what a fourth of them chose is kept beside what they find. So others are chosen anew only at each
    fourfold of the usual steps, in between all is laid on with what was chosen."""
    usual = usual_effort(task.board)
    if effort is None or effort <= usual:
        return _chosen(task, effort, watch)
    best, rung = _chosen(task, None, watch), _RUNG * usual
    while rung <= effort and not best.found.stopped:
        best, rung = _better(task, best, _chosen(task, rung, watch)), _RUNG * rung
    if best.found.stopped or rung == _RUNG * effort:
        return best
    return _better(task, best, Eased(task, searched(task.board, effort, watch)))


def _better(task: Task, one: Eased, other: Eased) -> Eased:
    """The one with less in the way, then with what shall be held or stand in front as it shall, then of less cost; the first where both are
    alike. It is stopped where the other one is."""
    best = min(one, other, key=lambda each: (each.found.hard > 0, _relaxed(task, each.task), each.found.rank))
    told: Eased = best.replace(found=best.found.replace(stopped=other.found.stopped))
    return told


def _relaxed(task: Task, other: Task) -> bool:
    return _is_held(task.board) and not _is_held(other.board)


def _is_held(board: Board) -> bool:
    return any(item.grip or item.foremost is not None for item in board.items)


def _chosen(task: Task, effort: int | None, watch: Watch | None) -> Eased:
    found = searched(task.board, effort, watch)
    if found.hard and not found.stopped and effort != 0:
        task, found = _held_less(task, found, effort, watch)
    if found.stopped or effort == 0:
        return Eased(task, found)
    steps = (usual_effort(task.board) if effort is None else effort) // _HALF
    made = cheaper(eased(task, found, steps, watch), steps, watch)
    rested: Eased = made.replace(found=KNOWN.rest(made.task.board, made.found))
    return rested


def _held_less(task: Task, found: Found, effort: int | None, watch: Watch | None) -> tuple[Task, Found]:
    """Where not all have room on enough tape of the rails, or at the front edge what belongs there, but all have it elsewhere, they stand
    elsewhere: what strips lack is told, and can be mended by a bridge plate."""
    if not _is_held(task.board):
        return task, found
    board = task.board.loose
    if made_room(board, found.at) is None:
        return task, found
    other = searched(board, effort, watch)
    return (task, found) if other.hard else (task.replace(board=board), other)


def searched(board: Board, effort: int | None, watch: Watch | None = None) -> Found:
    """The best layout after so many steps; as many as are usual, and more while something is in the way."""
    if effort is not None:
        return KNOWN.search(board, effort, watch=watch)
    usual = usual_effort(board)
    return KNOWN.search(board, usual, 0 if _open(board) <= SOME else _PATIENCE * min(usual, EFFORT), watch)


def laid(
    task: Task,
    at: tuple[At, ...],
    otherwise: Otherwise | None = None,
) -> tuple[Rig, tuple[Diagnostic, ...]]:
    """The rig with what stands there, and the findings about what has no room, with what would do `otherwise`."""
    rig, deck, rooms, board = task.rig, task.deck, task.rooms, task.board
    at, without_room = put_back(board, at)
    first_room = len(board.items) - len(rooms)
    chosen = {
        item.name: _place(rig, deck, board, number, at[number])
        for number, item in enumerate(board.items[:first_room])
        if item.fixed is None and number not in without_room
    }
    free = []
    for number, room in enumerate(rooms, start=first_room):
        x, y, _ = at[number]
        if number not in without_room:
            free.append(Area(room.what, x / 10, y / 10, room.width_mm, room.depth_mm, room.span, chosen=True))
    told = list(task.told)
    lacking = {board.items[number].name: short for number, short in without_room.items() if number < first_room}
    if lacking:
        told.append(no_room(rig, deck, lacking, otherwise or Otherwise()))
    told += (
        no_room_for_later(rooms[number - first_room], deck, short)
        for number, short in without_room.items()
        if number >= first_room
    )
    return rig.replace(places={**rig.places, **chosen}, reserved_rooms=(*rig.reserved_rooms, *free)), tuple(told)


def usual_effort(board: Board) -> int:
    """The steps of search where none are asked for; of a few things by the pairs that they make, so that one thing more on a laid board is
    placed at once, and of many with few leads more, because each is shorter; many have more ways to stand."""
    free = _open(board)
    if free <= SOME:
        pairs, most = free * (free - 1) // 2, _OF_SOME // (_BESIDE_LEADS + len(board.links))
        return max(_OF_ONE, min(_EACH_PAIR * pairs, most))
    steps = max(EFFORT * max(_USUAL, free) ** 2 // _USUAL**2, _OF_MANY // (_BESIDE_LEADS + len(board.links)))
    steps = min(steps, _CHEAP * EFFORT)
    return steps * _CROWD**2 // max(_CROWD, len(board.items)) ** 2


def _open(board: Board) -> int:
    return sum(item.fixed is None for item in board.items)


def _place(rig: Rig, deck: Deck, board: Board, number: int, at: At) -> Place:
    x, y, shape = at
    item = board.items[number]
    thing = rig.things[item.name]
    assert isinstance(thing, Thing)
    rear = y + item.shapes[shape].depth
    tier = next(
        (each.name for each in deck.tiers if not item.under and 10 * each.front_mm <= y and rear <= 10 * each.rear_mm),
        None,
    )
    span = next((hint.span for hint in rig.hints if item.name in hint.things), thing.declared)
    return Place(
        item.name,
        x / 10,
        y / 10,
        item.shapes[shape].turned,
        item.under,
        None,
        tier,
        None,
        f"{x / 10:g}, {y / 10:g} mm",
        span,
        chosen=True,
    )
