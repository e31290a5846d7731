"""RailTape: decks in use -> where the tape on their rails lies, seen from above: `board.tape-1`, `board.tape-1.x`."""

from __future__ import annotations

import math
from collections.abc import Iterable

from rigc.facts import fastening
from rigc.model.deck import Deck, Rail
from rigc.model.geometry.rectangle import Rectangle
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.traced.figure import Figure, Several, known_figure
from rigc.traced.given import at_place, ours, stated
from rigc.traced.reason import PRACTICE
from rigc.traced.term import Term
from rigc.traced.units import MILLIMETRES

_RULE = "tape is a little shorter than the deck is wide, and centred on it"


class TapeSize(Record):
    """A piece of tape in mm: where it begins from the deck's left edge, its length across the deck, its width; `size` is both."""

    x: Figure
    length: Figure
    width: Figure
    size: Several


class RailTape(Record):
    """The tapes by deck, in the order of the rails, in mm: shorter than the deck is wide, and centred on it.

    A deck of unknown width has none. `kinds` tells by deck of each tape which strip it is: what the source says, else the first in
    stock that is as wide and whose partner is another tape, None without one; `faces` on how many faces of the rail it lies.
    `sizes` are the figures of each.
    """

    tapes: dict[str, tuple[Rectangle, ...]]
    kinds: dict[str, tuple[str | None, ...]]
    faces: dict[str, tuple[int, ...]]
    sizes: dict[str, tuple[TapeSize, ...]]

    def of(self, deck: str) -> tuple[Rectangle, ...]:
        """The tapes of one deck."""
        return self.tapes.get(deck, ())

    def below(self, deck: str) -> tuple[Rectangle, ...]:
        """Those that lie on the underside of their rails too."""
        return tuple(tape for tape, faces in zip(self.of(deck), self.faces.get(deck, ()), strict=True) if faces > 1)

    def only(self, decks: Iterable[str]) -> RailTape:
        """The tape of these decks."""
        kept = [name for name in decks if name in self.tapes]
        return RailTape(
            {name: self.tapes[name] for name in kept},
            {name: self.kinds[name] for name in kept},
            {name: self.faces[name] for name in kept},
            {name: self.sizes[name] for name in kept},
        )

    @property
    def each(self) -> tuple[tuple[str, int, Rectangle, str | None, int], ...]:
        """Every tape: its deck, its number there from 1, where it lies, its kind, on how many faces."""
        return tuple(
            (deck, number, *one)
            for deck, tapes in self.tapes.items()
            for number, one in enumerate(zip(tapes, self.kinds[deck], self.faces[deck], strict=True), 1)
        )


def rail_tape(rig: Rig) -> RailTape:
    """The tape of every taped rail, for all decks on which something has its place."""
    first = rig.deck.name if rig.deck is not None else ""
    used = {place.deck or first for place in rig.places.values()}
    decks = [deck for deck in rig.decks.values() if deck.name in used]
    taped = {deck.name: _taped(deck) for deck in decks}
    sizes = {
        deck.name: tuple(_size(deck, rail, number) for number, rail in enumerate(taped[deck.name], 1)) for deck in decks
    }
    return RailTape(
        {name: tuple(map(_lies, rails, sizes[name])) for name, rails in taped.items()},
        {name: tuple(rail.strip or _in_stock(rig, rail) for rail in rails) for name, rails in taped.items()},
        {name: tuple(2 if rail.both_faces else 1 for rail in rails) for name, rails in taped.items()},
        sizes,
    )


def _taped(deck: Deck) -> tuple[Rail, ...]:
    if deck.width_mm is None:
        return ()
    return tuple(rail for rail in deck.rails if rail.tape_front_mm is not None and rail.tape_rear_mm is not None)


def _in_stock(rig: Rig, rail: Rail) -> str | None:
    """The first strip in stock that is as wide as the tape and whose partner is another tape."""
    width_mm = (rail.tape_rear_mm or 0.0) - (rail.tape_front_mm or 0.0)
    for strip in rig.stock.strips.values():
        if strip.mates == "loop" and strip.width_mm is not None and math.isclose(strip.width_mm.value, width_mm):
            return strip.name
    return None


def _size(deck: Deck, rail: Rail, number: int) -> TapeSize:
    assert deck.width_mm is not None
    name, shorter = f"{deck.name}.tape-{number}", ours(fastening.TAPE_SHORTER_MM)
    length = _figure(f"{name}.length", stated(f"{deck.name} width", deck.width_mm) - shorter)
    width = _figure(f"{name}.width", _edge(rail, rail.tape_rear_mm) - _edge(rail, rail.tape_front_mm))
    size = Several(name, (length, width), written="{} × {}", formulas="{} long; {} wide", rule=_RULE, source=PRACTICE)
    return TapeSize(_figure(f"{name}.x", shorter / 2), length, width, size)


def _edge(rail: Rail, y_mm: float | None) -> Term:
    span = f"{rail.tape_front_mm or 0:g}..{rail.tape_rear_mm or 0:g} mm"
    return at_place("tape on the rail", y_mm or 0.0, rail.span, span)


def _figure(name: str, value: Term) -> Figure:
    return known_figure(name, value, MILLIMETRES, rule=_RULE, source=PRACTICE)


def _lies(rail: Rail, size: TapeSize) -> Rectangle:
    return Rectangle(float(size.x), rail.tape_front_mm or 0.0, float(size.length), float(size.width))


COMPUTE = rail_tape
