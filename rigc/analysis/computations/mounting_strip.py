"""MountingStrip: places, masses and strip stock -> the pieces of strip on units and deck, their hold, and what to order."""

from __future__ import annotations

from rigc.analysis.computations.rail_tape import RailTape
from rigc.analysis.mounting.laid_pieces import laid, shared_mm2, twins
from rigc.facts import fastening
from rigc.model.deck import Deck, Place
from rigc.model.rectangle import Rectangle
from rigc.model.rig import Rig
from rigc.model.stock import Strip
from rigc.model.things import Thing
from rigc.record import Record
from rigc.source import Span


class StripCount(Record):
    """How many strips a thing takes: one, one more for each of the widths in mm that it reaches (`by_width_mm`), and one more
    where it is heavy."""

    by_width_mm: tuple[float, ...]
    heavy: bool

    @property
    def strips(self) -> int:
        """All of them."""
        return 1 + len(self.by_width_mm) + self.heavy


class StrippedUnit(Record):
    """The strips under one thing: `pieces` and `deck_pieces` as they lie on the deck, seen from above; under a thing
    askew each is given by its own size about its own middle, and turned there by `skew_deg`.

    `centres_mm` are the middles of the strips across its base, from its left edge. `engaged_mm2` is None where the deck's size is unknown, `needed_mm2` where the strip's pull is; `tapes_met` is None on
    a flat plate. `covered` holds the areas of the base that a strip lies over. `fixing` is how it is held beside strips.
    """

    thing: str
    strip: str
    counted: StripCount
    piece_mm: float
    centres_mm: tuple[float, ...]
    pieces: tuple[Rectangle, ...]
    deck_pieces: tuple[Rectangle, ...]
    engaged_mm2: float | None
    needed_mm2: float | None
    tapes_met: int | None
    covered: tuple[str, ...]
    bridged: bool
    fixing: str | None
    span: Span
    skew_deg: float = 0.0

    @property
    def count(self) -> int:
        """How many strips lie under it."""
        return self.counted.strips


class Unstripped(Record):
    """A thing on the deck whose strips cannot be told, and which fact is missing."""

    thing: str
    missing: str
    span: Span


class MountingStrip(Record):
    """The strips of all things that stand on a deck's top, or hang from tape below it, in the order of their places."""

    units: tuple[StrippedUnit, ...]
    unknown: tuple[Unstripped, ...]

    def of(self, thing: str) -> StrippedUnit | None:
        """The strips of one thing."""
        return next((unit for unit in self.units if unit.thing == thing), None)


def mounting_strip(rig: Rig, tape: RailTape) -> MountingStrip:
    """Strips by the rule of `facts/fastening.py`; things under a deck whose rails are not taped below, bolted, screwed or in brackets get none
    (unless a strip is stated for the thing by its name)."""
    found = [_stripped(rig, tape, place) for place in rig.places.values() if _takes_strips(rig, place)]
    return MountingStrip(
        tuple(one for one in found if isinstance(one, StrippedUnit)),
        tuple(one for one in found if isinstance(one, Unstripped)),
    )


def strip_count(width_mm: float, mass_kg: float) -> StripCount:
    """How many strips a unit of that width and mass takes."""
    steps = (fastening.TWO_STRIPS_FROM_MM, fastening.THREE_STRIPS_FROM_MM, fastening.FOUR_STRIPS_FROM_MM)
    reached = tuple(step.value for step in steps if width_mm >= step.value)
    return StripCount(reached, mass_kg >= fastening.ONE_MORE_FROM_KG.value)


def needed_mm2(mass_kg: float, pull_kpa: float) -> float:
    """The strip area that holds a mass through the shock, for a working pull in kPa (kPa = 1000 N per 10^6 mm²)."""
    force_n = mass_kg * fastening.SHOCK_G.value * fastening.GRAVITY_M_PER_S2.value
    return force_n / pull_kpa * 1000


def _takes_strips(rig: Rig, place: Place) -> bool:
    deck = rig.decks.get(place.deck or "", rig.deck)
    below = deck is not None and any(rail.both_faces for rail in deck.rails)
    if (place.under and not below) or not isinstance(rig.things.get(place.thing), Thing):
        return False
    named = any(thing == place.thing for thing, _ in rig.mounting.strips)
    return named or rig.mounting.fixing_of(place.thing) is None


def _stripped(rig: Rig, tape: RailTape, place: Place) -> StrippedUnit | Unstripped:
    thing = rig.things[place.thing]
    assert isinstance(thing, Thing)
    strip = rig.stock.strips.get(rig.mounting.strip_of(place.thing) or "")
    deck = rig.decks.get(place.deck or "", rig.deck)
    missing = _missing(thing, strip, deck, place)
    if missing:
        return Unstripped(place.thing, missing, place.span)
    assert strip is not None and strip.width_mm is not None
    width_mm, depth_mm = _size(thing)
    counted = strip_count(width_mm, _mass(thing))
    centres = _centres(width_mm, counted.strips)
    piece_mm = max(depth_mm - fastening.PIECE_SHORTER_MM.value, 0.0)
    local = _pieces(centres, depth_mm, piece_mm, strip.width_mm.value)
    pieces, skew = laid(local, _size(thing), place), place.skew_deg
    ground = None if deck is None else _ground(deck, tape, place)
    return StrippedUnit(
        thing=place.thing,
        strip=strip.name,
        counted=counted,
        piece_mm=piece_mm,
        centres_mm=centres,
        pieces=pieces,
        deck_pieces=twins(pieces, _unlike(tape, deck, ground or (), strip), strip, place)
        if _on_tape(deck, place)
        else pieces,
        engaged_mm2=None if ground is None else sum(shared_mm2(piece, skew, one) for piece in pieces for one in ground),
        needed_mm2=needed_mm2(_mass(thing), strip.pull_kpa.value) if strip.pull_kpa else None,
        tapes_met=_tapes_met(pieces, skew, ground) if _on_tape(deck, place) else None,
        covered=_covered(thing, local),
        bridged=any(name == place.thing for name, _ in rig.mounting.bridged),
        fixing=rig.mounting.fixing_of(place.thing),
        span=place.span,
        skew_deg=skew,
    )


def _missing(thing: Thing, strip: Strip | None, deck: Deck | None, place: Place) -> str:
    if strip is None:
        return "its strip"
    if not thing.width_mm or not thing.depth_mm:
        return "its body"
    if not thing.mass_kg:
        return "its mass"
    if not strip.width_mm:
        return f"the width of the strip '{strip.name}'"
    if strip.mates is None and _on_tape(deck, place):
        return f"what the strip '{strip.name}' mates with"
    return ""


def _size(thing: Thing) -> tuple[float, float]:
    assert thing.width_mm is not None and thing.depth_mm is not None
    return thing.width_mm.value, thing.depth_mm.value


def _mass(thing: Thing) -> float:
    assert thing.mass_kg is not None
    return thing.mass_kg.value


def _centres(width_mm: float, count: int) -> tuple[float, ...]:
    """The middles of so many strips across a base of that width, evenly spread."""
    return tuple(width_mm * (number - 0.5) / count for number in range(1, count + 1))


def _pieces(centres: tuple[float, ...], depth_mm: float, piece_mm: float, strip_mm: float) -> tuple[Rectangle, ...]:
    front_mm = (depth_mm - piece_mm) / 2
    return tuple(Rectangle(at - strip_mm / 2, front_mm, strip_mm, piece_mm) for at in centres)


def _on_tape(deck: Deck | None, place: Place) -> bool:
    return deck is not None and bool(deck.rails) and place.tier is None


def _unlike(tape: RailTape, deck: Deck | None, ground: tuple[Rectangle, ...], strip: Strip) -> tuple[Rectangle, ...]:
    """The tapes that are not of the strip's own kind, to which a strip that mates with itself needs a twin."""
    own = {
        id(one) for name, _, one, kind, _ in tape.each if deck is not None and name == deck.name and kind == strip.name
    }
    return tuple(one for one in ground if id(one) not in own)


def _ground(deck: Deck, tape: RailTape, place: Place) -> tuple[Rectangle, ...] | None:
    """Where strips can engage: the tapes of the rails, or the whole plate (a raised tier is a plate); None if unknown."""
    if deck.width_mm is None or deck.depth_mm is None:
        return None
    if _on_tape(deck, place):
        return tape.below(deck.name) if place.under else tape.of(deck.name)
    return (Rectangle(0.0, 0.0, deck.width_mm.value, deck.depth_mm.value),)


def _tapes_met(pieces: tuple[Rectangle, ...], skew_deg: float, ground: tuple[Rectangle, ...] | None) -> int | None:
    if ground is None:
        return None
    return sum(any(shared_mm2(piece, skew_deg, tape) > 0 for piece in pieces) for tape in ground)


def _covered(thing: Thing, pieces: tuple[Rectangle, ...]) -> tuple[str, ...]:
    return tuple(
        area.what
        for area in thing.no_tape
        if any(piece.shared_mm2(Rectangle(area.x_mm, area.y_mm, area.width_mm, area.depth_mm)) > 0 for piece in pieces)
    )


COMPUTE = mounting_strip
