"""MountingStrip: places, masses and strip stock -> the pieces of strip on units and deck, and their hold: `plumb.strips`,
`.strip-count`, `.strips-laid`, `.strip-length`, `.strip-width`, `.centres`, `.centre-1`, `.on-deck`, `.engaged`, `.needed`."""

from __future__ import annotations

from functools import partial
from math import floor, prod
from typing import Any

from rigc.analysis.mounting.laid_pieces import laid, on_deck, shared_mm2, spots, twins
from rigc.analysis.mounting.rail_tape import RailTape, TapeSize
from rigc.diagnostics.figures import nearest_tenth, plain
from rigc.facts import fastening
from rigc.facts.weight import GRAVITY_M_PER_S2
from rigc.model.deck import Deck, Place
from rigc.model.fact import Quantity
from rigc.model.geometry.rectangle import Rectangle
from rigc.model.rig import Rig
from rigc.model.stock import Strip
from rigc.model.things import Thing
from rigc.record import Record
from rigc.source import Span
from rigc.traced.figure import Answer, AnyFigure, Basis, Figure, Several, figure, known_figure
from rigc.traced.given import at_place, mentioned, ours, stands, stated, unstated
from rigc.traced.means import becomes, highest, total, worked
from rigc.traced.reason import AS_STATED, PRACTICE, STATED
from rigc.traced.shown import Shown, exactly, places
from rigc.traced.term import Term, Traced, known, number
from rigc.traced.units import COUNT, MILLIMETRES

_SQUARE_CENTIMETRES = exactly("cm²", 2)
_CENTRE = places("mm", 1)
_CUT = "strips by the width and mass of the unit, each a little shorter than it is deep"
_FREE = "none over a battery door, a vent or a trim where the others hold"
_SPREAD = "strips are spread evenly over the width"
_TWINS = (
    "twins of the strips on a plate; on rails pieces as wide as the tape where a strip crosses it, none where tape is the "
    "partner"
)
_HELD = "the area in which its strips lie over tape (on rails) or plate"
_NEEDED = "needed = mass × deceleration × g / pull (1 kPa = 1000 N per m²)"
_PHYSICS = "physics: force = mass × acceleration; the deceleration as its fact says; the pull is the stock's"
_STEPS = (fastening.TWO_STRIPS_FROM_MM, fastening.THREE_STRIPS_FROM_MM, fastening.FOUR_STRIPS_FROM_MM)
_BY_WIDTH_AND_MASS = tuple(map(ours, (*_STEPS, fastening.ONE_MORE_FROM_KG)))
_SHORTER, _SHOCK = ours(fastening.PIECE_SHORTER_MM), ours(fastening.SHOCK_G)
_GRAVITY = ours(GRAVITY_M_PER_S2)
_HAIR_CM2 = 1e-8
KEPT_FREE = ("battery-door", "vent", "trim")
"""The parts of a base over which no strip may lie."""


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

    There are so many as `counted` says, each `piece_mm` long (`size` tells both) and `width_mm` wide; `centres` are the middles of
    the strips across its base, from its left edge, in mm. `on_deck` tells of the deck's pieces in words. The `engaged` area, in
    cm², is lacking where the deck's size is unknown, the `needed` one where the strip's pull is; `tapes_met` is None on
    a flat plate. `covered` holds the areas of the base that a strip lies over. `fixing` is how it is held beside strips.
    """

    thing: str
    strip: str
    counted: Figure
    piece_mm: Figure
    size: Several
    width_mm: Figure
    centres: Several
    pieces: tuple[Rectangle, ...]
    deck_pieces: tuple[Rectangle, ...]
    on_deck: Answer
    engaged: AnyFigure
    needed: AnyFigure
    tapes_met: int | None
    covered: tuple[str, ...]
    bridged: bool
    fixing: str | None
    span: Span
    skew_deg: float = 0.0

    @property
    def count(self) -> int:
        """How many strips lie under it."""
        return int(self.counted)

    @property
    def engaged_cm2(self) -> Term | None:
        """The area in which its strips lie over tape or plate; None where the deck's size is not known."""
        return known(self.engaged)

    @property
    def needed_cm2(self) -> Term | None:
        """The area that holds it; None where the strip's pull is not known."""
        return known(self.needed)

    @property
    def too_small(self) -> bool:
        """Whether less strip engages than is needed, as far as both are known."""
        engaged, needed = self.engaged_cm2, self.needed_cm2
        return engaged is not None and needed is not None and float(engaged) < float(needed) - _HAIR_CM2


class Unstripped(Record):
    """A thing on the deck whose strips cannot be told, and which fact is missing."""

    thing: str
    missing: str
    span: Span
    lacking: tuple[AnyFigure, ...]


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
    reached = tuple(step.value for step in _STEPS if width_mm >= step.value)
    return StripCount(reached, mass_kg >= fastening.ONE_MORE_FROM_KG.value)


def needed_cm2(
    mass_kg: Any,
    pull_kpa: Any,
    shock_g: float = fastening.SHOCK_G.value,
    gravity_m_per_s2: float = GRAVITY_M_PER_S2.value,
) -> Any:
    """The strip area that holds a mass through the shock, for a working pull in kPa (1 kPa = 0.1 N per cm²); of terms a term."""
    return mass_kg * shock_g * gravity_m_per_s2 / pull_kpa * 10


def strip_middle(width_mm: Any, at: int, count: Any) -> Any:
    """How far from the left the middle of a strip lies, the first `at` 1, of so many evenly spread across a base; of terms a term."""
    return width_mm * (at - 0.5) / count


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
        return Unstripped(place.thing, missing, place.span, _lacking(place, missing))
    assert strip is not None and strip.width_mm is not None
    assert thing.width_mm is not None and thing.depth_mm is not None and thing.mass_kg is not None
    name, across = thing.name, stated(f"{thing.name} width", thing.width_mm)
    piece_mm = _piece(thing)
    by_rule = _counted(thing, across)
    middles = _centres(thing, across, by_rule)
    base, skew = (thing.width_mm.value, thing.depth_mm.value), place.skew_deg
    local = _pieces(tuple(map(float, middles)), base[1], float(piece_mm), strip.width_mm.value)
    ground = None if deck is None else _ground(deck, tape, place)
    needed = _needed(thing, strip)
    clear = _clear(thing, place, local, ground, known(needed), _on_tape(deck, place))
    local, middles = tuple(local[at] for at in clear), tuple(middles[at] for at in clear)
    counted = _laid(thing, by_rule, int(by_rule) - len(clear))
    size = Several(
        f"{name}.strips", (counted, piece_mm), written="{} × {}", formulas="{}; {} long", rule=_CUT, source=PRACTICE
    )
    centres, width_mm = _centres_told(name, middles), _strip_width(name, strip.name, strip.width_mm)
    pieces = laid(local, base, place)
    on_tape = _on_tape(deck, place)
    deck_pieces = twins(pieces, _unlike(tape, deck, ground or (), strip), strip, place) if on_tape else pieces
    tapes_met = _tapes_met(pieces, skew, ground) if on_tape else None
    facts = () if deck is None else _ground_facts(deck, tape, place)
    at = partial(_at, place)
    return StrippedUnit(
        thing=name,
        strip=strip.name,
        counted=counted,
        piece_mm=piece_mm,
        size=size,
        width_mm=width_mm,
        centres=centres,
        pieces=pieces,
        deck_pieces=deck_pieces,
        on_deck=Answer(
            f"{name}.on-deck",
            lambda: on_deck(deck_pieces, skew, tapes_met),
            lambda: _where(place, pieces, on_deck(deck_pieces, skew, tapes_met)),
            at,
            size,
            centres,
            width_mm,
            *(facts if on_tape else ()),
            rule=_TWINS,
            source=PRACTICE,
            unit="mm" if deck_pieces else "",
            label=f"the deck's pieces under {name}",
        ),
        engaged=figure(
            f"{name}.engaged",
            unstated("the size of its deck") if ground is None else total(_overlaps(pieces, skew, ground)) / 100,
            _SQUARE_CENTIMETRES,
            size,
            at,
            width_mm,
            *facts,
            rule=_HELD,
            source="arithmetic on stated places",
        ),
        needed=needed,
        tapes_met=tapes_met,
        covered=_covered(thing, local),
        bridged=any(each == name for each, _ in rig.mounting.bridged),
        fixing=rig.mounting.fixing_of(name),
        span=place.span,
        skew_deg=skew,
    )


def _centres_told(name: str, middles: tuple[Figure, ...]) -> Several:
    return Several(
        f"{name}.centres",
        middles,
        written=", ".join("{}" for _ in middles),
        formulas="; ".join("{}" for _ in middles),
        rule=_SPREAD,
        source=PRACTICE,
    )


def _strip_width(name: str, strip: str, width_mm: Quantity) -> Figure:
    width = stated(f"the width of strip {strip}", width_mm)
    return known_figure(f"{name}.strip-width", width, MILLIMETRES, rule=AS_STATED, source=STATED)


def _needed(thing: Thing, strip: Strip) -> AnyFigure:
    """The area of strip that holds its mass."""
    mass = stated(f"{thing.name} mass", thing.mass_kg)
    area = needed_cm2(mass, stated(f"the pull of {strip.name}", strip.pull_kpa), _SHOCK, _GRAVITY)
    return figure(f"{thing.name}.needed", area, _SQUARE_CENTIMETRES, rule=_NEEDED, source=_PHYSICS)


def _lacking(place: Place, missing: str) -> tuple[AnyFigure, ...]:
    fields: tuple[tuple[str, Shown], ...] = (
        ("strips", MILLIMETRES),
        ("engaged", _SQUARE_CENTIMETRES),
        ("needed", _SQUARE_CENTIMETRES),
    )
    return tuple(
        figure(
            f"{place.thing}.{field}",
            unstated(missing),
            shown,
            mentioned(place.thing, "placed", place.span),
            rule="what is missing is not guessed",
            source=PRACTICE,
        )
        for field, shown in fields
    )


def _clear(
    thing: Thing,
    place: Place,
    local: tuple[Rectangle, ...],
    ground: tuple[Rectangle, ...] | None,
    needed: Term | None,
    on_tape: bool,
) -> tuple[int, ...]:
    """The ranks of the strips that are laid: those over a part that is kept free are left out where the others hold the thing, on as many
    rails as it takes."""
    free = [area.room for area in thing.no_tape if area.what in KEPT_FREE]
    every = tuple(range(len(local)))
    clear = tuple(at for at in every if not any(local[at].shared_mm2(room) > 0 for room in free))
    if clear == every or not clear or ground is None or needed is None:
        return every
    assert thing.width_mm is not None and thing.depth_mm is not None
    pieces = laid(tuple(local[at] for at in clear), (thing.width_mm.value, thing.depth_mm.value), place)
    engaged = known(total(_overlaps(pieces, place.skew_deg, ground)))
    held = engaged is not None and float(engaged) / 100 >= float(needed) - _HAIR_CM2
    return clear if held and (not on_tape or (_tapes_met(pieces, place.skew_deg, ground) or 0) > 1) else every


def _laid(thing: Thing, by_rule: Figure, left_out: int) -> Figure:
    """How many are laid of those that its width and mass ask for."""
    if not left_out:
        return by_rule
    over = " and ".join(dict.fromkeys(area.what for area in thing.no_tape if area.what in KEPT_FREE))
    value: Term = by_rule - at_place(f"over its {over}", left_out, None, shown=COUNT)
    return known_figure(f"{thing.name}.strips-laid", value, COUNT, rule=_FREE, source=PRACTICE)


def _counted(thing: Thing, across: Term) -> Figure:
    """How many its width and mass ask for."""
    assert thing.mass_kg is not None
    count = strip_count(float(across), thing.mass_kg.value)
    reached = ", ".join(f"≥ {plain(step)}" for step in count.by_width_mm)
    more = f", {len(count.by_width_mm)} more for {reached} mm wide" if reached else ""
    more += f", 1 more for ≥ {plain(fastening.ONE_MORE_FROM_KG.value)} kg" if count.heavy else ""
    return known_figure(
        f"{thing.name}.strip-count",
        worked(
            f"1{more}",
            lambda width_mm, mass_kg, *_: strip_count(width_mm, mass_kg).strips,
            across,
            stated(f"{thing.name} mass", thing.mass_kg),
            *_BY_WIDTH_AND_MASS,
            moves="++" + "-" * len(_BY_WIDTH_AND_MASS),
        ),
        COUNT,
        rule=_CUT,
        source=PRACTICE,
    )


def _piece(thing: Thing) -> Figure:
    assert thing.depth_mm is not None
    left = stated(f"{thing.name} depth", thing.depth_mm) - _SHORTER
    value = left if left >= 0 else highest(left, number(0))
    if not float(value).is_integer():
        value = becomes(value, _whole)
    return known_figure(f"{thing.name}.strip-length", value, MILLIMETRES, rule=_CUT, source=PRACTICE)


def _whole(length_mm: float) -> float:
    """What is cut with scissors is so many whole millimetres, no longer than it may be."""
    return float(floor(length_mm + 1e-6))


def _centres(thing: Thing, across: Term, counted: Figure) -> tuple[Figure, ...]:
    """The middles of so many strips across a base of that width, evenly spread."""
    return tuple(
        known_figure(
            f"{thing.name}.centre-{at}", strip_middle(across, at, counted), _CENTRE, rule=_SPREAD, source=PRACTICE
        )
        for at in range(1, int(counted) + 1)
    )


def _where(place: Place, pieces: tuple[Rectangle, ...], twins_told: str) -> str:
    by = plain(place.turned + place.skew_deg)
    turned = f", turned by {by}°" if by != "0" else ""
    at = ", ".join(f"({nearest_tenth(x)}, {nearest_tenth(y)})" for x, y in spots(pieces, place.skew_deg))
    have = "middles" if place.skew_deg else "corners"
    return f"strips below {place.thing} have their {have} at {at}{turned}: {twins_told}"


def _overlaps(pieces: tuple[Rectangle, ...], skew_deg: float, ground: tuple[Rectangle, ...]) -> list[Traced]:
    """The areas in mm² in which pieces lie over the ground: each as width × depth, askew as it is; equal ones once with their number."""
    counts: dict[tuple[float, ...], int] = {}
    for piece in pieces:
        for one in ground:
            area = shared_mm2(piece, skew_deg, one)
            if area > 0:
                sides = (area,) if skew_deg else piece.overlap(one)
                counts[sides] = counts.get(sides, 0) + 1
    areas: list[Any] = [prod(map(number, sides), start=count if count > 1 else 1) for sides, count in counts.items()]
    return areas


def _at(place: Place) -> tuple[Basis, ...]:
    return (stands(place),)


def _ground_facts(deck: Deck, tape: RailTape, place: Place) -> tuple[Basis, ...]:
    """What the ground on which strips can engage is made of."""
    if _on_tape(deck, place):
        return tuple(each for size in _tapes_for(tape, deck, place) for each in (size.size, size.x))
    return (stated(f"{deck.name} width", deck.width_mm), stated(f"{deck.name} depth", deck.depth_mm))


def _tapes_for(tape: RailTape, deck: Deck, place: Place) -> tuple[TapeSize, ...]:
    sizes = tape.sizes.get(deck.name, ())
    faces = tape.faces.get(deck.name, ())
    return tuple(size for size, count in zip(sizes, faces, strict=True) if count > 1 or not place.under)


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
    return tuple(area.what for area in thing.no_tape if any(piece.shared_mm2(area.room) > 0 for piece in pieces))


COMPUTE = mounting_strip
