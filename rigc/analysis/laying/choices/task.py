"""A rig with open places -> what is to be laid."""

from __future__ import annotations

from rigc.analysis.deck.unplaced import open_rooms, own_deck, unplaced
from rigc.analysis.laying.board_of_rig import Sides, board_of
from rigc.analysis.laying.not_placed import no_body
from rigc.analysis.laying.search.board import Board
from rigc.analysis.laying.search.ground import At
from rigc.analysis.leads.leads import Leads
from rigc.analysis.results import Results
from rigc.diagnostics.diagnostic import Diagnostic
from rigc.model.deck import Deck, LaterRoom
from rigc.model.rig import Rig
from rigc.model.things import Thing
from rigc.record import Record


class Task(Record):
    """What is to be laid: on its `board` the `things` without a place are free, and the rooms are the last items. `told` is what can't be
    laid, for want of a body."""

    rig: Rig
    deck: Deck
    things: tuple[Thing, ...]
    rooms: tuple[LaterRoom, ...]
    board: Board
    told: tuple[Diagnostic, ...]

    @property
    def free(self) -> tuple[int, ...]:
        """The items that have no place."""
        return tuple(number for number, item in enumerate(self.board.items) if item.fixed is None)

    def otherwise(self, rig: Rig, sides: Sides) -> Task:
        """The same for the rig with other plugs, and with things on other sides of the deck than is usual."""
        board = board_of(rig, self.deck, Results(rig).get(Leads), self.things, rooms=self.rooms, sides=sides)
        return Task(rig, self.deck, self.things, self.rooms, board, self.told)

    def on(self, deck: Deck) -> Task:
        """The same things on another deck of that name."""
        decks = {name: deck if name == deck.name else each for name, each in self.rig.decks.items()}
        rig: Rig = self.rig.replace(decks=decks)
        board = board_of(rig, deck, Results(rig).get(Leads), self.things, rooms=self.rooms)
        return Task(rig, deck, self.things, self.rooms, board, self.told)


def task_of(rig: Rig) -> Task | None:
    """What has no place yet; None where everything has one."""
    deck, things = own_deck(rig), unplaced(rig)
    rooms = open_rooms(rig)
    if deck is None or not (things or rooms):
        return None
    sized = tuple(thing for thing in things if thing.width_mm is not None and thing.depth_mm is not None)
    told = tuple(no_body(thing, deck) for thing in things if thing not in sized)
    board = board_of(rig, deck, Results(rig).get(Leads), sized, rooms=rooms)
    return Task(rig, deck, sized, rooms, board, told)


def begun(board: Board, before: Board, at: tuple[At, ...]) -> tuple[At, ...]:
    """A layout of a board `before`, of the same things, as one to begin with on a board on which a thing has other plugs, sides or turns."""
    places = {item.name: place for item, place in zip(before.items, at, strict=True)}
    return tuple(
        (*(item.fixed or places[item.name][:2]), min(places[item.name][2], len(item.shapes) - 1))
        for item in board.items
    )
