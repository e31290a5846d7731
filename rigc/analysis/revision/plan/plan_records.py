"""What a rework is made of: the record of each kind of change between the board that is there and the one that is
designed.

Every record bears the number of the `change` of the rig block that it belongs to (None where no change names it)
and whether it is `done` already, as an as-built block says.
"""

from __future__ import annotations

from typing import Protocol

from rigc.analysis.power.supply_totals import SupplyTotal
from rigc.analysis.revision.board import BoardAdaptor, BoardFeed, BoardPlace, BoardStrips
from rigc.model.jacks import Port
from rigc.record import Record


class Piece(Protocol):
    """What all pieces have."""

    @property
    def change(self) -> int | None:
        """The number of the change that it belongs to."""

    @property
    def done(self) -> bool:
        """Whether the board has it already."""


class AdaptorPlan(Record):
    """An adaptor that comes (`before` None), goes (`after` None) or is used otherwise."""

    mark: str
    before: BoardAdaptor | None
    after: BoardAdaptor | None
    change: int | None = None
    done: bool = False


class OutletState(Record):
    """An outlet on one of the two boards: whom it feeds, at which setting in V, with how much of its limit; leads by
    number.

    `load_ma` and `percent` are None where a current is not known.
    """

    units: tuple[str, ...]
    volts: float | None
    load_ma: float | None
    percent: float | None
    leads: tuple[str, ...]
    how: str


class OutletPlan(Record):
    """An outlet whose units, setting or load change; `set_otherwise`: its voltage switch is to be set."""

    outlet: Port
    before: OutletState
    after: OutletState
    set_otherwise: bool
    change: int | None = None
    done: bool = False


class SupplyPlan(Record):
    """A supply from which another current or power is taken; None on the board where it is not in use."""

    supply: str
    before: SupplyTotal | None
    after: SupplyTotal | None


class FeedPlan(Record):
    """A unit that is fed otherwise than before, from now on, or no longer."""

    unit: str
    before: BoardFeed | None
    after: BoardFeed | None
    change: int | None = None
    done: bool = False


class UnitPlan(Record):
    """A unit or supply that comes, goes, moves, is held otherwise, or is replaced: `replaces` is what its block states, else a guess,
    made from its loop, chain or place. `fixing` is how it is held from now on beside strips, `refixed` whether it was not before."""

    name: str
    there_before: bool
    there_after: bool
    before: BoardPlace | None
    after: BoardPlace | None
    replaces: str | None = None
    replaced_by: str | None = None
    fixing: str | None = None
    refixed: bool = False
    change: int | None = None
    done: bool = False


class StripPlan(Record):
    """The strip under one unit, on its base and on the deck: what is peeled off and what is laid, in mm. `peel`: old
    pieces come off the deck, which stays. `stays`: the unit was on the board before, so its base is at hand only when it is off."""

    unit: str
    before: BoardStrips | None
    after: BoardStrips | None
    on_unit: bool
    on_deck: bool
    peel: bool = True
    stays: bool = False
    change: int | None = None
    done: bool = False


class LabelPlan(Record):
    """A label of a lead's end (0, 1) or of an adaptor (None): `destroy` comes off, `text` is printed; either may be
    empty."""

    mark: str
    end: int | None
    destroy: str
    text: str
    change: int | None = None
    done: bool = False


class ProgramPlan(Record):
    """A preset (by `number`) or song (by `title`, the number None) to enter anew, with its settings before and after;
    `about` names the loops in it that hold other units now."""

    number: int | None
    title: str
    before: tuple[str, ...] | None
    after: tuple[str, ...] | None
    about: tuple[str, ...] = ()
    change: int | None = None
    done: bool = False


class ChannelPlan(Record):
    """A unit whose MIDI channel is set otherwise; None where it has none."""

    unit: str
    before: int | None
    after: int | None
    change: int | None = None
    done: bool = False


class SparePlan(Record):
    """How many spares of a kind are carried, before and after."""

    what: str
    before: int
    after: int
    change: int | None = None
    done: bool = False


class FittingPlan(Record):
    """A `deck`, `hole`, `passage` for leads, `jack` of a panel, `case`, `selector`, `lift` or `transformer` that comes (`before` empty), goes (`after`
    empty) or is otherwise: in words, lengths in mm. `on` is the deck, panel or scenario that it belongs to; `mains`: a
    mains part is opened or moved for it; `beforehand`: it belongs to a deck that comes; `leads` are those of a passage.
    """

    kind: str
    name: str
    before: str
    after: str
    on: str = ""
    mains: bool = False
    beforehand: bool = False
    leads: tuple[str, ...] = ()
    change: int | None = None
    done: bool = False


class Retest(Record):
    """A test by its number, at one or more points, with the limit in words: of the expected reading, else of the
    test; `changes` are those that make it due."""

    test: int
    points: tuple[str, ...]
    expected: str
    changes: tuple[int, ...] = ()


THROWN = "the bin"
"""Where a lead ends that is of no use any more: it is not kept for the way back."""


class Step(Record):
    """One thing to do at the bench: `phase` (of `PHASES`) orders the steps, `action` is a key of
    `facts.rework.MINUTES`; `what` are the things or numbers that it is done to, `start` and `end` where from and
    where to."""

    phase: int
    action: str
    what: tuple[str, ...]
    start: str = ""
    end: str = ""
    minutes: float = 0.0
    change: int | None = None
    done: bool = False
