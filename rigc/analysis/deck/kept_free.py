"""Keep-outs, reserved rooms, the heel's room and tiers -> the parts of a deck that a thing must not reach into."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.deck.placement import Outline
from rigc.model.deck import Deck
from rigc.model.geometry.rectangle import Rectangle
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.source import Span


class KeptFree(Record):
    """A part of a deck that is not free for a thing: what it is in words, a key that tells it from others, and why. `is_area`: a keep-out or a
    reserved room, which has a size and a place of its own."""

    room: Rectangle
    named: str
    key: str
    why: str
    span: Span
    is_area: bool = False


def kept_free(rig: Rig, deck: Deck, body: Outline) -> Iterator[KeptFree]:
    """Keep-outs hold on both sides of the deck; reserved rooms, the heel's room along the front and tiers on top. A thing may
    stand on its own tier."""
    for number, area in enumerate(deck.keep_outs, start=1):
        named = "a keep-out" if area.what == "keep-out" else f"the keep-out '{area.what}'"
        yield KeptFree(area.room, named, str(number), "kept free", area.span, True)
    if body.under:
        return
    for number, area in enumerate(rig.reserved_on(deck), start=1):
        named = "a reserved room" if area.what == "reserved" else f"the room reserved for '{area.what}'"
        yield KeptFree(area.room, named, f"reserved {number}", "kept free", area.span, True)
    if deck.width_mm is not None:
        if deck.heel_mm is not None:
            room = Rectangle(0.0, 0.0, deck.width_mm.value, deck.heel_mm.value)
            yield KeptFree(
                room, "the room for the heel", "heel", f"{deck.heel_mm.value:g} mm stay free", deck.heel_mm.span
            )
        for tier in deck.tiers:
            if tier.name != rig.places[body.thing].tier:
                room = Rectangle(0.0, tier.front_mm, deck.width_mm.value, tier.rear_mm - tier.front_mm)
                yield KeptFree(room, f"the tier '{tier.name}'", tier.name, f"raised {tier.raised_mm:g} mm", tier.span)
