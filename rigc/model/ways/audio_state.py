"""AudioState: which units and loops are on at once, on which wiring; what every figure of the signal path refers to."""

from __future__ import annotations

from rigc.model.wishes import When
from rigc.record import Record

ALL_OFF, ALONE, EVERYTHING, PRESET, UNPOWERED = "all off", "alone", "everything on", "preset", "unpowered"


class AudioState(Record):
    """A state of the signal path.

    `kind` is `all off`, `alone` (one unit on), `everything on`, `preset` or `unpowered` (the board has no power; amps and
    desks have). `loops` are the switched loops that are in, as (switcher, number). `when` tells which connections hold:
    those whose own `when` meets it. Two states of the same kind differ in their connections.
    """

    name: str
    kind: str
    on: frozenset[str]
    loops: frozenset[tuple[str, int]]
    when: When
    preset: int | None = None
