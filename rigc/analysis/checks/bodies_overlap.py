"""Two things take the same room, or one reaches over the deck's edge or into a part that is kept free.

Why it matters: the board cannot be built as planned.
What to do: move one of them by the figure that is told. Bodies may touch; to lift a unit out, leave 5 mm beside it.
Source: geometry on stated sizes.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.placement import Outline, Placement
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.model.deck import Deck
from rigc.model.neighbours import neighbours
from rigc.model.rectangle import Rectangle
from rigc.model.rig import Rig

KIND = Kind(
    "D01",
    "bodies-overlap",
    Level.ERROR,
    __doc__,
    "no footprint overlaps another on its side of the deck, leaves the deck or reaches into a keep-out",
    "geometry on stated sizes",
)
_HAIR_MM = 1e-6


def bodies_overlap(rig: Rig, placement: Placement) -> Iterator[Diagnostic]:
    """One finding for each two things that overlap, each thing that leaves its deck, each keep-out that is entered."""
    bodies = tuple(placement.outlines.values())
    rectangles = [Rectangle(body.x_mm, body.y_mm, body.width_mm, body.depth_mm) for body in bodies]
    for one, other in neighbours(rectangles):
        if (bodies[one].deck, bodies[one].under) == (bodies[other].deck, bodies[other].under):
            yield from _overlap(rig, bodies[one], bodies[other], rectangles[one], rectangles[other])
    for body, rectangle in zip(bodies, rectangles, strict=True):
        deck = rig.decks.get(body.deck or "")
        if deck is not None:
            yield from _off_deck(rig, body, rectangle, deck)
            yield from _kept_free(rig, body, rectangle, deck)
    yield from _unknown(rig, placement)


def _overlap(rig: Rig, one: Outline, other: Outline, here: Rectangle, there: Rectangle) -> Iterator[Diagnostic]:
    across, along = here.overlap(there)
    if min(across, along) <= _HAIR_MM:
        return
    where = " under the deck" if one.under else ""
    yield KIND.at(
        rig.places[other.thing].span,
        f"'{one.thing}' and '{other.thing}' overlap by {across:g} x {along:g} mm{where}",
        subject=(other.thing, one.thing),
        label=f"'{other.thing}' stands here",
        also=(Label(rig.places[one.thing].span, f"'{one.thing}' stands here"),),
        numbers=(Number("across", across, "mm"), Number("along", along, "mm")),
        help=_aside(other.thing, there, here),
    )


def _aside(thing: str, moved: Rectangle, still: Rectangle) -> str:
    """The shortest way out, as an instruction."""
    ways = {
        "left": moved.right_mm - still.x_mm,
        "right": still.right_mm - moved.x_mm,
        "to the front": moved.rear_mm - still.y_mm,
        "to the rear": still.rear_mm - moved.y_mm,
    }
    way = min(ways, key=lambda each: ways[each])
    return f"move '{thing}' {ways[way]:g} mm {way}"


def _off_deck(rig: Rig, body: Outline, rectangle: Rectangle, deck: Deck) -> Iterator[Diagnostic]:
    if deck.width_mm is None or deck.depth_mm is None:
        return
    width, depth = deck.width_mm.value, deck.depth_mm.value
    sides = {
        "left": -rectangle.x_mm,
        "right": rectangle.right_mm - width,
        "front": -rectangle.y_mm,
        "rear": rectangle.rear_mm - depth,
    }
    beyond = {side: over for side, over in sides.items() if over > _HAIR_MM}
    if beyond:
        yield KIND.at(
            rig.places[body.thing].span,
            f"'{body.thing}' leaves the deck: "
            + ", ".join(f"{over:g} mm at the {side}" for side, over in beyond.items()),
            subject=(body.thing, deck.name),
            label="stands here",
            also=(Label(deck.width_mm.span, f"the deck is {width:g} x {depth:g} mm"),),
            numbers=tuple(Number(side, over, "mm") for side, over in beyond.items()),
            help=_inwards(body, rectangle, width, depth, beyond),
        )


def _inwards(body: Outline, rectangle: Rectangle, width: float, depth: float, beyond: dict[str, float]) -> str:
    if rectangle.width_mm > width or rectangle.depth_mm > depth:
        return f"'{body.thing}' is larger than the deck: choose a larger deck, or turn it"
    opposite = {"left": "right", "right": "left", "front": "to the rear", "rear": "to the front"}
    return f"move '{body.thing}' " + " and ".join(f"{over:g} mm {opposite[side]}" for side, over in beyond.items())


def _kept_free(rig: Rig, body: Outline, rectangle: Rectangle, deck: Deck) -> Iterator[Diagnostic]:
    for number, area in enumerate(deck.keep_outs, start=1):
        free = Rectangle(area.x_mm, area.y_mm, area.width_mm, area.depth_mm)
        across, along = rectangle.overlap(free)
        if min(across, along) > _HAIR_MM:
            named = "a keep-out" if area.what == "keep-out" else f"the keep-out '{area.what}'"
            yield KIND.at(
                rig.places[body.thing].span,
                f"'{body.thing}' reaches {across:g} x {along:g} mm into {named}",
                subject=(body.thing, deck.name, str(number)),
                label="stands here",
                also=(Label(area.span, "kept free"),),
                numbers=(Number("across", across, "mm"), Number("along", along, "mm")),
                help=_aside(body.thing, rectangle, free),
            )


def _unknown(rig: Rig, placement: Placement) -> Iterator[Diagnostic]:
    for place in rig.places.values():
        if placement.outline(place.thing) is None:
            yield KIND.cant_check(
                place.span,
                f"whether '{place.thing}' has room is not known: its width and depth are not stated",
                subject=(place.thing,),
                help=f"measure '{place.thing}' and state its `body`",
            )
    for deck in rig.decks.values():
        if deck.width_mm is None and any(body.deck == deck.name for body in placement.outlines.values()):
            yield KIND.cant_check(
                deck.declared,
                f"whether things leave '{deck.name}' is not known: its size is not stated",
                subject=(deck.name,),
                help="state the deck's `size`",
            )


CHECK = bodies_overlap
