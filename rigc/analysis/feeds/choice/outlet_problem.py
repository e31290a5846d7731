"""OutletProblem: units without a feed, outlets to choose from, and what binds the choice."""

from __future__ import annotations

from rigc.analysis.feeds.power_tap import Tap
from rigc.model.jacks import Port
from rigc.model.things import Unit
from rigc.record import Record

RESERVE = "reserve: "  # in front of a reservation's text; no unit's name has a colon


class Site(Record):
    """An outlet with the `taps` that its settings make (one where the source states it) and the units stated on it.

    `look` is equal for outlets that give the same. `common` is empty where the outlet is isolated. Only an outlet that is
    not joined in series or parallel is `open` to a further unit.
    """

    outlet: Port
    taps: tuple[Tap, ...]
    look: tuple[object, ...]
    common: str
    tenants: tuple[Unit, ...]
    open: bool


class Ceiling(Record):
    """What a supply may give in all (W, or mA if not `watts`), and what the stated feeds take of it."""

    watts: bool
    most: float
    taken: float


class OutletProblem(Record):
    """Units to place (reservations last); sites in order of declaration; who may share; who are neighbours in the chain; where
    the last choice pinned a unit; ceilings by supply; outlets to keep free by supply ("" for any).

    `lengths_mm` is the least a lead from outlet to unit covers, sideways and depthways; from deck to
    deck, or between the board and what stands beside it, it is far. A pair without an entry counts 0.
    """

    units: tuple[Unit, ...]
    sites: tuple[Site, ...]
    sharers: dict[str, frozenset[str]]
    neighbours: frozenset[frozenset[str]]
    turned: frozenset[str]
    sized: frozenset[str]
    pins: dict[str, Port]
    lengths_mm: dict[tuple[str, Port], int]
    ceilings: dict[str, Ceiling]
    spare: dict[str, int]
