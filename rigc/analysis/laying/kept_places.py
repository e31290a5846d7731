"""A rig with open places and a layout from before -> places for what is new, with as few moves of the rest as are needed."""

from __future__ import annotations

from collections.abc import Collection

from rigc.analysis.deck.unplaced import as_stated
from rigc.analysis.laying.board_of_rig import board_of
from rigc.analysis.laying.choices.other_plugs import other_plugs
from rigc.analysis.laying.choices.task import Task, task_of
from rigc.analysis.laying.chosen_places import laid, searched, with_chosen_places
from rigc.analysis.laying.not_placed import search_stopped
from rigc.analysis.laying.search.annealing import Watch
from rigc.analysis.laying.search.board import Board
from rigc.analysis.laying.search.found import Found
from rigc.analysis.laying.search.ground import At
from rigc.analysis.laying.search.layout import Layout
from rigc.analysis.laying.wishes.why_missed import best_move, in_the_way
from rigc.analysis.laying.wishes.wished import missed
from rigc.analysis.laying.wishes.wishes_of_rig import wishes_for
from rigc.analysis.leads.leads import Leads
from rigc.analysis.results import Results
from rigc.diagnostics.diagnostic import Diagnostic
from rigc.model.deck import Deck, Place
from rigc.model.rig import Rig
from rigc.model.stock import ChosenPlug
from rigc.model.things import Thing
from rigc.record import Record


class Move(Record):
    """A thing that stood on the deck before: its place then and now (None: it has no room any more), which are the same where it stays."""

    thing: str
    before: Place
    now: Place | None

    @property
    def stays(self) -> bool:
        """Whether it stands as before."""
        return self.now is not None and _where(self.before) == _where(self.now)


class Kept(Record):
    """The rig with its places, what became of each thing that stood there before, the things that are new, and what was told of what found
    no place."""

    rig: Rig
    moves: tuple[Move, ...]
    new: tuple[str, ...]
    told: tuple[Diagnostic, ...] = ()


def kept_places(rig: Rig, before: Rig, effort: int | None, watch: Watch | None = None, advice: bool = True) -> Kept:
    """What is open in the rig stands where it stood before, as long as nothing is in its way there, no rule is broken and no wish missed
    that is new; only what does not is laid anew with what is new, and of the rest no more than that needs. The things of the rig
    `before` are called as they are called now."""
    bare: Rig = as_stated(rig).replace(chosen_plugs=still_open(rig, before))
    stood = {name: place for name, place in before.places.items() if name in rig.things and place.deck is None}
    task = task_of(bare)
    if task is None:
        return Kept(bare, _moves(stood, bare), tuple(name for name in bare.places if name not in stood))
    items = (task.board.items[number].name for number in task.free)
    opened = tuple(thing for name in items if isinstance(thing := rig.things.get(name), Thing))
    keeps = {
        thing.name: stood[thing.name].replace(thing=thing.name, chosen=True, span=thing.declared)
        for thing in opened
        if thing.name in stood
    }
    if not keeps:
        made, told = with_chosen_places(bare, effort, watch, advice)
    else:
        still, found = _laid_with(task, opened, keeps, before, effort, watch)
        if found.hard and not found.stopped:
            made, told = with_chosen_places(bare, effort, watch, advice)
        else:
            made, told = laid(still, found.at)
            told = (*told, search_stopped(task.deck, found.steps)) if found.stopped else told
    return Kept(made, _moves(stood, made), tuple(name for name in made.places if name not in stood), told)


def still_open(rig: Rig, before: Rig) -> tuple[ChosenPlug, ...]:
    """The plugs that were chosen before, where their jacks are still there and nobody states one by now."""
    leads = Results(as_stated(rig)).get(Leads)
    may = {(each.port, each.plug): each for each in other_plugs(rig, leads)}
    return tuple(each for each in before.chosen_plugs if (each.port, each.plug) in may)


def _laid_with(
    task: Task,
    opened: tuple[Thing, ...],
    keeps: dict[str, Place],
    before: Rig,
    effort: int | None,
    watch: Watch | None,
) -> tuple[Task, Found]:
    """The layout with as much kept as can be. Where wishes are missed for no thing in particular, all is laid anew, if that meets more."""
    was: _Faults | None = None
    while True:
        still = _task(task, opened, keeps)
        found = searched(still.board, effort, watch)
        was = _faults_before(before, task.deck, opened) if was is None and not found.stopped else was
        released = set() if found.stopped or was is None else _released(still, found, keeps, before, was)
        if released:
            keeps = {name: place for name, place in keeps.items() if name not in released}
            continue
        if (
            keeps
            and any(hint.key not in {each.key for each in before.hints} for hint in task.rig.hints)
            and found.missed
            and not found.stopped
        ):
            anew = searched(task.board, effort, watch)
            if (anew.hard, anew.missed) < (found.hard, found.missed):
                return task, anew
        return still, found


def _task(task: Task, opened: tuple[Thing, ...], keeps: dict[str, Place]) -> Task:
    """What is left to lay where so many things keep their places."""
    rig: Rig = task.rig.replace(places={**task.rig.places, **keeps})
    things = tuple(thing for thing in opened if thing.name not in keeps)
    board = board_of(rig, task.deck, Results(rig).get(Leads), things, rooms=task.rooms)
    return Task(rig, task.deck, things, task.rooms, board, task.told)


class _Faults(Record):
    """What is wrong in a layout, and of it with each thing: by how much it is in the way of others, or at the end of leads that break rules."""

    layout: Layout
    whole: int
    of: dict[str, int]


def _faults(board: Board, at: tuple[At, ...], names: Collection[str]) -> _Faults:
    """Also what is wrong between two of these things, which are free or stay where they were."""
    items = tuple(item.replace(fixed=None) if item.name in names else item for item in board.items)
    layout = Layout(board.replace(items=items), list(at))
    numbers = {item.name: number for number, item in enumerate(board.items) if item.name in names}
    faults = {name: layout.fault_of(number) for name, number in numbers.items()}
    for link, run in zip(board.links, layout.runs(), strict=True):
        for name, number in numbers.items():
            faults[name] += run[1] * (number in (link.start.item, link.end.item))
    return _Faults(layout, layout.hard + layout.broken, faults)


def _faults_before(before: Rig, deck: Deck, opened: tuple[Thing, ...]) -> _Faults:
    """Of the board as it stood: what was wrong there already is no reason to move a thing."""
    board = board_of(before, before.deck or deck, Results(before).get(Leads), ())
    at = tuple((*item.fixed, 0) for item in board.items if item.fixed is not None)
    return _faults(board, at, {thing.name for thing in opened})


def _released(task: Task, found: Found, keeps: dict[str, Place], before: Rig, was: _Faults) -> set[str]:
    """What is kept and can't be: of what has more wrong with it than it had, the one that is most in the way of others or at the end of
    leads that break rules; where nothing is, those that a new wish names that is missed, or that stand where it would be met. All where
    nothing tells what is wrong."""
    now = _faults(task.board, found.at, keeps)
    layout = now.layout
    if now.whole > was.whole:
        more = {name: fault for name, fault in now.of.items() if fault > was.of.get(name, 0)}
        return {max(more, key=lambda name: more[name])} if more else set(keeps)
    released: set[str] = set()
    old = {hint.key for hint in before.hints}
    names = tuple(item.name for item in task.board.items)
    under = frozenset(item.name for item in task.board.items if item.under)
    for hint, wish in wishes_for(task.rig, task.deck, names, under, frozenset(names)):
        if hint.key in old or not missed(task.board, wish, layout.at):
            continue
        mine = set(hint.named) & set(keeps)
        if not mine and (move := best_move(layout, wish)) is not None:
            mine = {names[other] for other in in_the_way(layout, *move)} & set(keeps)
        released |= mine
    return released


def _moves(stood: dict[str, Place], made: Rig) -> tuple[Move, ...]:
    return tuple(Move(name, place, made.places.get(name)) for name, place in stood.items())


def _where(place: Place) -> tuple[float, float, int, float, bool]:
    return place.x_mm, place.y_mm, place.turned, place.skew_deg, place.under
