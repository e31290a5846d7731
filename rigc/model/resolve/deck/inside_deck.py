"""outside-body: keep-outs, holes, tiers, drop lines and rooms kept free of a deck lie on it, and lanes below one."""

from __future__ import annotations

from rigc.diagnostics.diagnostic import Label
from rigc.model.deck import Deck, deck_meant
from rigc.model.resolve.context import Context
from rigc.model.slips.outside_body import OUTSIDE_BODY
from rigc.model.things import Area
from rigc.source import Span
from rigc.syntax import nodes


def check_deck(context: Context, deck: Deck) -> None:
    """Reports what lies beyond the deck's edges; nothing is judged where its size is not stated."""
    if deck.width_mm is None or deck.depth_mm is None:
        return
    width, depth = deck.width_mm.value, deck.depth_mm.value
    for area in deck.keep_outs:
        far = (area.x_mm + area.width_mm, area.y_mm + area.depth_mm)
        if area.x_mm < 0 or area.y_mm < 0 or far[0] > width or far[1] > depth:
            _told(context, deck, area.span, f"a keep-out of '{deck.name}' reaches to {far[0]:g}, {far[1]:g} mm")
    for hole in deck.holes:
        if not (0 <= hole.x_mm <= width and 0 <= hole.y_mm <= depth):
            _told(context, deck, hole.span, f"a hole of '{deck.name}' lies at {hole.x_mm:g}, {hole.y_mm:g} mm")
    for tier in deck.tiers:
        if tier.front_mm < 0 or tier.rear_mm > depth:
            said = f"the tier '{tier.name}' runs from {tier.front_mm:g} to {tier.rear_mm:g} mm"
            _told(context, deck, tier.span, said)
    beyond = [line for line in deck.drops_mm if not 0 <= line <= depth]
    if beyond:
        lines = " and ".join(f"{line:g}" for line in beyond)
        _told(context, deck, deck.declared, f"'{deck.name}' states drop lines at y = {lines} mm")


def check_rooms(context: Context, decks: dict[str, Deck], rooms: tuple[Area, ...]) -> None:
    """Reports rooms kept free that lie beyond the deck of their block. `rooms` are those with a place, in their order."""
    stated = [
        (decks.get(block.deck.text) if block.deck is not None else deck_meant(decks))
        for block in context.of(nodes.PlaceBlock)
        for item in block.items
        if isinstance(item, nodes.ReserveRoom) and item.at is not None
    ]
    for deck, room in zip(stated, rooms, strict=True):
        if deck is not None and deck.width_mm is not None and deck.depth_mm is not None:
            far = (room.x_mm + room.width_mm, room.y_mm + room.depth_mm)
            if room.x_mm < 0 or room.y_mm < 0 or far[0] > deck.width_mm.value or far[1] > deck.depth_mm.value:
                said = f"this room goes from {room.x_mm:g}, {room.y_mm:g} mm to {far[0]:g}, {far[1]:g} mm"
                _told(context, deck, room.span, said)


def check_lanes(context: Context, decks: dict[str, Deck], lanes: tuple[tuple[str, float], ...]) -> None:
    """Reports lanes that lie below none of the decks that things stand on; nothing where the depth of one is not stated.

    `lanes` are those of the leads blocks, in their order.
    """
    named = [block.deck.text for block in context.of(nodes.PlaceBlock) if block.deck is not None]
    meant = deck_meant(decks)
    used = [deck for deck in decks.values() if deck is meant or deck.name in named]
    depths = [deck.depth_mm.value for deck in used if deck.depth_mm is not None]
    if not used or len(depths) < len(used):
        return
    deepest = max(used, key=lambda deck: deck.depth_mm.value if deck.depth_mm is not None else 0.0)
    stated = [item for block in context.of(nodes.LeadsBlock) for item in block.items if isinstance(item, nodes.Lane)]
    for node, (_, y) in zip(stated, lanes, strict=True):
        if not 0 <= y <= max(depths):
            _lane(context, node, y, deepest, max(depths))


def _lane(context: Context, node: nodes.Lane, y: float, deck: Deck, depth: float) -> None:
    context.report(
        OUTSIDE_BODY.at(
            node.span,
            f"this lane of {node.signal} leads lies at y = {y:g} mm, on a deck {depth:g} mm deep",
            subject=(deck.name,),
            label="beyond the deck",
            also=(Label(deck.declared, f"'{deck.name}' is declared here"),),
            help=f"write a place in y between 0 and {depth:g} mm, counted from the front edge",
        )
    )


def _told(context: Context, deck: Deck, span: Span, said: str) -> None:
    assert deck.width_mm is not None and deck.depth_mm is not None
    context.report(
        OUTSIDE_BODY.at(
            span,
            f"{said}, on a deck of {deck.width_mm.value:g} × {deck.depth_mm.value:g} mm",
            subject=(deck.name,),
            label="beyond the deck",
            help="measure it again from the front-left corner: x to the right, y to the rear",
        )
    )
