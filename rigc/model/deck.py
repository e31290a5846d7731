"""Decks, cases, and what stands where. All in mm; the origin is the deck's front-left corner, x right, y away from the player."""

from __future__ import annotations

from rigc.diagnostics.wording import listed
from rigc.model.fact import Quantity
from rigc.model.things import Area, Paperwork
from rigc.record import Record
from rigc.source import Span


class Rail(Record):
    """A rail across the deck from `front_mm` to `rear_mm`; its tape lies from `tape_front_mm` to `tape_rear_mm` (None: no tape).

    `strip` is the kind of that tape, None where the source does not say; `both_faces`: it lies on the underside as well."""

    front_mm: float
    rear_mm: float
    tape_front_mm: float | None
    tape_rear_mm: float | None
    span: Span
    strip: str | None = None
    both_faces: bool = False


class Hole(Record):
    """A hole in the deck."""

    diameter_mm: float
    x_mm: float
    y_mm: float
    purpose: str
    span: Span

    @property
    def told(self) -> str:
        """Its size and what it is for: `12 mm for the mains inlet`."""
        return f"{self.diameter_mm:g} mm" + (f" for {self.purpose}" if self.purpose else "")


class Tier(Record):
    """A raised part of the deck over its whole width."""

    name: str
    front_mm: float
    rear_mm: float
    raised_mm: float
    span: Span


class Deck(Record):
    """A deck. Without rails it is a flat plate. `drops_mm` are the lines in y where a lead may pass through it. `bare_metal`:
    what touches it is joined by it; `insulating`: it is of wood, or coated; neither: nobody says."""

    name: str
    title: str
    declared: Span
    width_mm: Quantity | None = None
    depth_mm: Quantity | None = None
    thickness_mm: Quantity | None = None
    angle_deg: Quantity | None = None
    rails: tuple[Rail, ...] = ()
    drops_mm: tuple[float, ...] = ()
    holes: tuple[Hole, ...] = ()
    clearance_mm: Quantity | None = None
    mass_kg: Quantity | None = None
    keep_outs: tuple[Area, ...] = ()
    heel_mm: Quantity | None = None
    papers: Paperwork = Paperwork()
    tiers: tuple[Tier, ...] = ()
    feet_inset_mm: Quantity | None = None
    bare_metal: bool = False
    insulating: bool = False
    notes: tuple[str, ...] = ()


class Case(Record):
    """A case; `lid_mm` is the room above the deck, `holds` the decks that it says travel in it."""

    name: str
    title: str
    declared: Span
    inside_mm: tuple[float, float, float] | None
    lid_mm: Quantity | None
    mass_kg: Quantity | None
    notes: tuple[str, ...] = ()
    holds: tuple[str, ...] = ()
    papers: Paperwork = Paperwork()


class Place(Record):
    """Where a thing stands: the front-left corner of its outline after turning; `turned` is 0, 90, 180 or 270 degrees counter-clockwise.

    A treadle may stand askew: `skew_deg` is what it is turned beyond that. `tier` names the raised part it stands on; `jacks` is the side that the source says its jacks shall look to.
    `chosen`: the source states no place, the compiler chose this one; else `numbers` is where its x and y are written.
    """

    thing: str
    x_mm: float
    y_mm: float
    turned: int
    under: bool
    deck: str | None
    tier: str | None
    jacks: str | None
    typed: str
    span: Span
    skew_deg: float = 0.0
    chosen: bool = False
    numbers: Span | None = None


class OffBoard(Record):
    """A thing of the rig that stands beside the board, and where, in words."""

    thing: str
    where: str
    span: Span


class Hint(Record):
    """A wish where things shall stand, by its `kind`, which is the rule of the grammar that says it.

    `word` is what that rule leaves open: a side, a row, a foot, `on` or `beneath`. `others` are what the things are told from:
    the neighbour, what the other foot stands on, what to keep away from; of `stands` the deck or the tier. `amount_at` is where its
    distance is written.
    """

    things: tuple[str, ...]
    kind: str
    word: str
    others: tuple[str, ...]
    amount_mm: float | None
    span: Span
    amount_at: Span | None = None

    @property
    def named(self) -> tuple[str, ...]:
        """All things that it is about."""
        return self.things if self.kind == "stands" else (*self.things, *self.others)

    @property
    def key(self) -> tuple[tuple[str, ...], str, str, tuple[str, ...]]:
        """By what it is told from other wishes."""
        return self.things, self.kind, self.word, self.others

    @property
    def subjects(self) -> str:
        """The things: `'plumb' and 'tern'`."""
        return listed(self.things)

    @property
    def words(self) -> str:
        """What is wished: `to the left of 'plumb' with a gap of 10 mm`."""
        others = listed(self.others)
        amount = "" if self.amount_mm is None else f"{self.amount_mm:g} mm"
        gap = f" with a gap of {amount}" if amount else ""
        left_right = {"left": "to the left of", "right": "to the right of", "front": "in front of", "rear": "behind"}
        said = {
            "beside": f"{left_right.get(self.word, '')} {others}{gap}",
            "row": f"in the {self.word} row",
            "on_side": "in the middle" if self.word == "middle" else f"at the {self.word} side",
            "near_edge": f"near the {self.word} edge",
            "reach": f"within reach of the {self.word}" + (f" while the other is on {others}" if others else ""),
            "stepped": "in this order from left to right",
            "clear": f"with {amount} from its switches to any other",
            "knobs_free": "with its knobs free",
            "jacks_look": f"with its plugs to the {self.word}",
            "stands": f"{self.word} {others}",
            "together": "together",
            "away": f"away from {others}" + (f" by {amount}" if amount else ""),
            "symmetric": "symmetric about the middle of the deck" if self.things[1:] else "in the middle of the deck",
        }
        return said[self.kind]


class LaterRoom(Record):
    """Room for a later thing that is to be found: what it is for, and its size."""

    what: str
    width_mm: float
    depth_mm: float
    span: Span


class Weight(Record):
    """What of the objective for places counts otherwise in this rig: the term and its share in percent."""

    term: str
    share: Quantity
    span: Span


def deck_meant(decks: dict[str, Deck]) -> Deck | None:
    """The deck that is meant where none is named: the first that is not of the generic stock, else the first."""
    own = [deck for deck in decks.values() if not deck.declared.source.name.startswith("stock/")]
    return next(iter((*own, *decks.values())), None)
