"""Names with the places where each might stand -> where all of them stand: none on another, on a line or on an outline.

Point-feature labelling with candidate places (Christensen, Marks, Shieber: An empirical study of algorithms for point-feature
label placement, 1995, from memory): of each name the cheapest places that are free of what is drawn; of these one for each name
by tabu search. The same names always get the same places.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from functools import partial
from itertools import islice
from typing import Any

from rigc.analysis.kept import NOTHING_KEPT, Kept
from rigc.reports.drawings.means.choosing import Choice, Choosing, Stand, in_trouble
from rigc.reports.drawings.means.label_box import Room
from rigc.reports.drawings.means.led_far import led
from rigc.reports.drawings.means.paper import Paper, way_of
from rigc.reports.drawings.means.wish import FEW, KEPT, Wish, cost_of, in_small_letters
from rigc.reports.drawings.shapes import HAIR, Circle, Line, Polyline, Shape, Symbol

_MORE = 120  # so many free places of a name are compared that finds none among the first
_HOPELESS = 30  # where more names found no place the paper is full: no order finds room for all
_ROUNDS = 4  # so often all is placed anew for the sake of those that found no place

Ways = tuple[tuple[Line, tuple[Choice, ...]], ...]
Struck = tuple[Line, Choice] | None


class Ground:
    """What is drawn, and within which room names may stand. Where the names stood when they were placed on the same ground is `kept`."""

    def __init__(self, room: Room, kept: Kept = NOTHING_KEPT) -> None:
        self._room = room
        self._kept = kept
        self._put: list[tuple[Shape | Choice, ...]] = []  # all that was put here, in order
        self._entered = 0  # so much of it is looked up by squares
        self._paper = Paper(room)

    def drawn(self, shapes: Iterable[Shape]) -> None:
        """Shapes in the order in which they are drawn: a box that is filled covers the lines below it. Nothing is written on a
        line, a ring or a hatched ground; a leader may cross a line."""
        self._put.append(tuple(shapes))

    def _enter(self) -> None:
        """What was put here since, as far as it is in the way of names."""
        for some in self._put[self._entered :]:
            for each in some:
                if isinstance(each, Choice):
                    self._paper.settle()
                    self._paper.put(each)
                else:
                    self._paper.draw(each)
        self._entered = max(self._entered, len(self._put))
        self._paper.settle()

    def place(self, wishes: Iterable[Wish]) -> tuple[Choice | None, ...]:
        """A choice for each wish, None where there is no room for it at all; what is placed stays."""
        wanted = tuple(wishes)
        found = self._kept.answer("names", (self._room, self._put, wanted), lambda: self._placed(wanted), _choices)
        self._put.append(tuple(choice for choice in found if choice is not None))
        return found

    def struck(self, ways: Iterable[Ways]) -> tuple[Struck, ...]:
        """Of each the first stroke that keeps off all letters and whose name finds a place, one after the other; what is found stays."""
        wanted = tuple(ways)

        what = (self._room, self._put, wanted)
        places = self._kept.answer("strokes", what, lambda: self._find_strokes(wanted), _numbered)
        found = tuple(
            None if place is None else (each[place[0]][0], place[1]) for each, place in zip(wanted, places, strict=True)
        )
        self._put += [(choice, stroke) for stroke, choice in filter(None, found)]
        return found

    def _find_strokes(self, wanted: tuple[Ways, ...]) -> tuple[tuple[int, Choice] | None, ...]:
        self._enter()
        found: list[tuple[int, Choice] | None] = []
        for ways in wanted:
            wishes = [(number, Wish(partial(iter, choices))) for number, (_, choices) in enumerate(ways)]
            wishes += [(number, in_small_letters(wish)) for number, wish in wishes]
            found.append(None)
            for number, wish in wishes:
                stroke = ways[number][0]
                if not self._paper.is_clear((stroke.x1, stroke.y1, stroke.x2, stroke.y2)):
                    continue
                stand = min(self._free(wish, KEPT), key=cost_of, default=None)
                if stand is not None:
                    self._stay((stand,))
                    self._paper.draw(stroke)
                    self._paper.settle()
                    found[-1] = (number, stand.choice)
                    break
        self._entered = len(self._put) + sum(each is not None for each in found)  # who asked puts them here
        return tuple(found)

    def _placed(self, wanted: tuple[Wish, ...]) -> tuple[Choice | None, ...]:
        """Who found no place is placed first in the next round (Joslin and Clements: Squeaky wheel optimization, 1999, from memory);
        from the third round on its leader may have a knee."""
        self._enter()
        first: tuple[int, ...] = ()
        found = self._round(wanted, first, bent=False)
        for turn in range(_ROUNDS):
            if None not in found:
                break
            lost = [at for at, stand in enumerate(found) if stand is None]
            if len(lost) > _HOPELESS:
                break
            first = tuple(dict.fromkeys((*lost, *first)))
            self._leave(found)
            again = self._round(wanted, first, bent=turn > 0)
            if again.count(None) > len(lost):
                self._leave(again)
                self._stay(found)
            else:
                found = again
        self._entered = len(self._put) + 1  # who asked puts them here
        return tuple(None if stand is None else stand.choice for stand in found)

    def _round(self, wanted: tuple[Wish, ...], first: tuple[int, ...], bent: bool) -> list[Stand | None]:
        """A place for each wish, first for these, one after the other, then for all others together; what is placed stays."""
        found: list[Stand | None] = [None] * len(wanted)
        self._follow(first, wanted, found, bent)
        others = [at for at in range(len(wanted)) if at not in first]
        stands = self._compared([wanted[at] for at in others])
        chosen = Choosing(stands).chosen()
        if 0 < chosen.count(None) <= _HOPELESS:
            more = zip(others, stands, chosen, strict=True)
            stands = [known if stand else list(self._free(wanted[at], _MORE)) for at, known, stand in more]
            chosen = Choosing(stands).chosen()
        self._stay(chosen)
        for at, stand in zip(others, chosen, strict=True):
            found[at] = stand
        self._follow((at for at in others if found[at] is None), wanted, found, bent)
        return found

    def _compared(self, wanted: list[Wish]) -> list[list[Stand]]:
        """The places of each that are compared: few of those whose cheapest is in nobody's way, more of all others."""
        free = [self._free(wish, KEPT) for wish in wanted]
        stands = [list(islice(each, FEW)) for each in free]
        cheapest = [min(each, key=cost_of, default=None) for each in stands]
        for at in in_trouble(cheapest):
            stands[at] += free[at]
        return stands

    def _free(self, wish: Wish, most: int) -> Iterator[Stand]:
        return self._paper.free(wish.choices(), most)

    def _follow(self, some: Iterable[int], wanted: tuple[Wish, ...], found: list[Stand | None], bent: bool) -> None:
        for at in some:
            found[at] = led(self._paper, wanted[at], bent)
            self._stay((found[at],))

    def _stay(self, stands: Iterable[Stand | None]) -> None:
        for stand in filter(None, stands):
            self._paper.put(stand.choice)

    def _leave(self, stands: Iterable[Stand | None]) -> None:
        for stand in filter(None, stands):
            self._paper.take_away(stand.choice)


def _choices(told: list[Any]) -> tuple[Choice | None, ...]:
    return tuple(None if each is None else _choice(each) for each in told)


def _numbered(told: list[Any]) -> tuple[tuple[int, Choice] | None, ...]:
    return tuple(None if each is None else (each[0], _choice(each[1])) for each in told)


def _choice(told: list[Any]) -> Choice:
    return Choice._make(tuple(field) if isinstance(field, list) else field for field in told)


def labelled(ground: Ground, named: Sequence[tuple[str, Wish]]) -> tuple[list[Shape], list[str]]:
    """The labels with their leaders, and the names for which there is no room."""
    chosen = ground.place(wish for _, wish in named)
    shapes: list[Shape] = []
    for (_, wish), choice in zip(named, chosen, strict=True):
        if choice is not None:
            drawn = (*_leader_shapes(choice), *(wish.sign(choice.x, choice.y) if wish.sign else (choice.label,)))
            shapes += (Symbol(wish.title, drawn),) if wish.title else drawn
    return shapes, [name for (name, _), choice in zip(named, chosen, strict=True) if choice is None]


def _leader_shapes(choice: Choice) -> tuple[Shape, ...]:
    """Its leader with a dot where it starts; nothing where it has none."""
    points = way_of(choice)
    if not points:
        return ()
    straight = len(points) == 2
    drawn = Line(*points[0], *points[1], width_mm=HAIR) if straight else Polyline(points, width_mm=HAIR)
    within = (
        () if choice.sign_mm is None else (Line(*points[-1], choice.x, choice.y, width_mm=HAIR),)
    )  # the sign covers it
    return (drawn, Circle(*points[0], 0.35, fill="solid", width_mm=HAIR), *within)
