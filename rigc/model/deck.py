"""Decks, cases, and what stands where. All in mm; the origin is the deck's front-left corner, x right, y away from the player."""

from __future__ import annotations

from rigc.model.fact import Choice, Quantity
from rigc.model.things import Area
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
    price: Choice | None = None
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


class Hint(Record):
    """A wish where a thing shall stand: `beside` another on a `side` with a `gap_mm`, in a `row`, or within reach of a `foot`."""

    thing: str
    kind: str
    word: str
    other: str | None
    gap_mm: float | None
    span: Span

    @property
    def words(self) -> str:
        """Where it is wished: `to the left of 'plumb' with a gap of 10 mm`."""
        if self.kind == "row":
            return f"in the {self.word} row"
        if self.kind == "reach":
            return f"within reach of the {self.word}" + ("" if "foot" in self.word else " foot")
        sides = {"left": "to the left of", "right": "to the right of", "front": "in front of", "behind": "behind"}
        gap = "" if self.gap_mm is None else f" with a gap of {self.gap_mm:g} mm"
        return f"{sides.get(self.word, self.word)} '{self.other}'{gap}"


def deck_meant(decks: dict[str, Deck]) -> Deck | None:
    """The deck that is meant where none is named: the first that is not of the generic stock, else the first."""
    own = [deck for deck in decks.values() if not deck.declared.source.name.startswith("stock/")]
    return next(iter((*own, *decks.values())), None)
