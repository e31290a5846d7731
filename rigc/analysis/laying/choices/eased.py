"""A layout in which something is in the way -> one in which nothing is, by other plugs, or with a thing on the other side of the deck; as
few of both as can be.

First plugs that take less room are thought everywhere; of these only those stay without which something would be in the way
where all stand then. If they don't do, one thing at a time goes to the other side, with the usual plugs and with the others.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.laying.board_of_rig import Sides
from rigc.analysis.laying.choices.other_plugs import other_plugs
from rigc.analysis.laying.choices.standing import either_side
from rigc.analysis.laying.choices.task import Task, begun
from rigc.analysis.laying.search.annealing import Watch
from rigc.analysis.laying.search.board import Board
from rigc.analysis.laying.search.found import Found, as_it_is
from rigc.analysis.laying.search.ground import At
from rigc.analysis.laying.search.known import KNOWN
from rigc.analysis.laying.search.layout import Layout
from rigc.analysis.laying.search.left_out import left_out
from rigc.analysis.laying.search.own_order import in_own_order
from rigc.analysis.laying.search.standing.room import made_room
from rigc.analysis.leads.leads import Leads
from rigc.analysis.results import Results
from rigc.model.rig import Rig
from rigc.model.stock import ChosenPlug
from rigc.record import Record

_THINGS = 3  # so many are tried on the other side, the worst in the way first
_AGAIN = 4  # so many plugs are tried as usual by laying all anew,
_SHORT = 4  # each with so much less than the whole takes
_MOST = 2  # searches of the whole, at most: after those nothing more is tried


class Eased(Record):
    """The task with the plugs and sides that let all stand, the layout, the plugs that were changed for it and the things that went to the
    other side, each with whether it hangs there."""

    task: Task
    found: Found
    plugs: tuple[ChosenPlug, ...] = ()
    sides: tuple[tuple[str, bool], ...] = ()


def eased(task: Task, found: Found, steps: int, watch: Watch | None = None, stated: bool = False) -> Eased:
    """With so many steps for each try. Nothing changes where nothing is in the way and no wish is missed, or no try helps; for a wish
    only plugs are changed. With `stated` even what the rig says of plugs and sides is changed: that is advice."""
    lacks = bool(found.hard and left_out(task.board, found.at))
    if not (lacks or found.missed):
        return Eased(task, found)
    plugs, spent = plugs_to_try(task, stated), 0
    for sides, others in _tries(task, found, plugs, stated):
        rig = with_plugs(task.rig, others)
        usual = task.otherwise(task.rig, sides) if sides else task
        made = task.otherwise(rig, sides) if others else usual
        start = begun(made.board, task.board, found.at) if lacks else None
        tried, taken = _tried(made.board, start, steps, watch)
        spent += taken
        if not tried.hard and tried.rank[:2] < found.rank[:2]:
            return _as_few(usual, made, tried, others, sides, steps)
        if tried.stopped:
            return Eased(task, found.replace(stopped=True))
        if spent >= _MOST * steps:
            break
    return Eased(task, found)


def plugs_to_try(task: Task, stated: bool = False) -> tuple[ChosenPlug, ...]:
    """The other plugs, by the things that have them, in the order of the board's own."""
    board = task.board
    place = {board.items[item].name: place for place, item in enumerate(in_own_order(board).items)}
    plugs = other_plugs(task.rig, Results(task.rig).get(Leads), stated)
    return tuple(sorted(plugs, key=lambda each: (place.get(each.port.thing, len(place)), each.port.jack)))


def _tried(board: Board, start: tuple[At, ...] | None, steps: int, watch: Watch | None) -> tuple[Found, int]:
    """What is found, and the steps that it took. Where something was in the way all is laid anew only if all have room, as is seen from that
    `start`."""
    if start is None:
        found = KNOWN.search(board, steps, watch=watch)
        return found, found.steps
    if made_room(board, start) is None:
        return as_it_is(Layout(board, list(start))), 0
    found = KNOWN.search(board, steps, watch=watch)
    return found, found.steps


def _tries(
    task: Task, found: Found, plugs: tuple[ChosenPlug, ...], stated: bool
) -> Iterator[tuple[Sides, tuple[ChosenPlug, ...]]]:
    if plugs:
        yield {}, plugs
    if not found.hard:
        return
    layout = Layout(task.board, list(found.at))
    may = {thing.name for thing in task.things if either_side(task.rig, thing, task.deck, stated)}
    items = [number for number in in_own_order(task.board).items if task.board.items[number].name in may]
    worst = sorted(items, key=lambda item: -layout.fault_of(item))[:_THINGS]
    sides = [{task.board.items[item].name: not task.board.items[item].under} for item in worst]
    yield from ((each, ()) for each in sides)
    if plugs:
        yield from ((each, plugs) for each in sides)


def with_plugs(rig: Rig, plugs: tuple[ChosenPlug, ...]) -> Rig:
    """The rig with these plugs, beside those chosen before for other jacks."""
    ports = {each.port for each in plugs}
    kept = tuple(each for each in rig.chosen_plugs if each.port not in ports)
    made: Rig = rig.replace(chosen_plugs=(*kept, *plugs))
    return made


def _as_few(usual: Task, made: Task, tried: Found, plugs: tuple[ChosenPlug, ...], sides: Sides, steps: int) -> Eased:
    """With the usual plug wherever nothing is in the way of it where all stand; then where all can stand otherwise, one after the other."""
    board, at, kept = _where_they_stand(usual.board, made.board, tried.at, plugs, tried.missed)
    for each in kept[:_AGAIN]:
        if each not in kept:
            continue
        again = KNOWN.search(_plugged(board, usual.board, *_socket(board, each)), steps // _SHORT)
        if not again.hard and again.missed <= tried.missed:
            rest = tuple(other for other in kept if other is not each)
            board = _plugged(board, usual.board, *_socket(board, each))
            board, at, kept = _where_they_stand(usual.board, board, again.at, rest, again.missed)
    return _told(usual, board, at, kept, sides, tried.steps)


def with_usual_plugs(usual: Task, made: Task, tried: Found, plugs: tuple[ChosenPlug, ...], sides: Sides) -> Eased:
    """With the usual plug wherever nothing is in the way of it where all stand."""
    board, at, kept = _where_they_stand(usual.board, made.board, tried.at, plugs, tried.missed)
    return _told(usual, board, at, kept, sides, tried.steps)


def _told(
    usual: Task, board: Board, at: tuple[At, ...], kept: tuple[ChosenPlug, ...], sides: Sides, steps: int
) -> Eased:
    told = tuple(each.replace(spares=_spared(usual.board, board, at, each)) for each in kept)
    task = usual.otherwise(with_plugs(usual.rig, told), sides) if told else usual
    found: Found = as_it_is(Layout(task.board, list(at))).replace(steps=steps)
    return Eased(task, found, told, tuple(sides.items()))


def _where_they_stand(
    usual: Board, board: Board, at: tuple[At, ...], plugs: tuple[ChosenPlug, ...], missed: int
) -> tuple[Board, tuple[At, ...], tuple[ChosenPlug, ...]]:
    """The board with the usual plugs where nothing is in their way, where all stand, and the other plugs that are left."""
    kept: list[ChosenPlug] = []
    for each in plugs:
        item, number = _socket(board, each)
        if item < 0:
            continue
        back = _plugged(board, usual, item, number)
        layout = Layout(back, list(at))
        if layout.hard or layout.broken or layout.missed > missed:
            kept.append(each)
        else:
            board = back
    return board, at, tuple(kept)


def _spared(usual: Board, board: Board, at: tuple[At, ...], plug: ChosenPlug) -> str:
    """What would be in the way of the usual plug."""
    item, number = _socket(board, plug)
    layout = Layout(_plugged(board, usual, item, number), list(at))
    names = [board.items[other].name for other in layout.beside(item) if layout.fault_between(item, other)]
    if names:
        return ", ".join(names)
    return "the edge of the deck" if layout.alone(item, layout.at[item]) else "a wish or the way of a lead"


def _socket(board: Board, plug: ChosenPlug) -> tuple[int, int]:
    """The item with that jack and the number of its socket; -1 where it is not on this deck."""
    for item, it in enumerate(board.items):
        if it.name == plug.port.thing:
            for number, socket in enumerate(it.shapes[0].sockets):
                if socket.jack == plug.port.jack:
                    return item, number
    return -1, -1


def _plugged(board: Board, other: Board, item: int, number: int) -> Board:
    """The board with that socket as the other board has it, in all turns."""
    shapes = tuple(
        shape.replace(
            sockets=(*shape.sockets[:number], usual.sockets[number], *shape.sockets[number + 1 :]),
        )
        for shape, usual in zip(board.items[item].shapes, other.items[item].shapes, strict=True)
    )
    items = (*board.items[:item], board.items[item].replace(shapes=shapes), *board.items[item + 1 :])
    made: Board = board.replace(items=items)
    return made
