"""outside-body: keep-outs, holes, tiers, drop lines and rooms kept free of a deck lie on it, lanes below one, and jacks of panels at it."""

from __future__ import annotations

from itertools import pairwise

from rigc.diagnostics.diagnostic import Label
from rigc.diagnostics.mend import Mend, Replace
from rigc.diagnostics.wording import joined, listed
from rigc.model.deck import Deck, Rail, deck_meant
from rigc.model.resolve.context import Context
from rigc.model.slips.interchanged import interchanged
from rigc.model.slips.outside_body import OUTSIDE_BODY
from rigc.model.things import Area, Panel, PanelJack
from rigc.model.units.measures import PANEL_AT
from rigc.model.wishes import LeadFacts
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
            _told(
                context,
                deck,
                area.span,
                f"a keep-out of '{deck.name}' reaches to {far[0]:g}, {far[1]:g} mm",
                _turned_round(deck, area.span, area.x_mm, area.y_mm, area.width_mm, area.depth_mm),
            )
    for hole in deck.holes:
        if not (0 <= hole.x_mm <= width and 0 <= hole.y_mm <= depth):
            _told(
                context,
                deck,
                hole.span,
                f"a hole of '{deck.name}' lies at {hole.x_mm:g}, {hole.y_mm:g} mm",
                _turned_round(deck, hole.span, hole.x_mm, hole.y_mm),
            )
    for tier in deck.tiers:
        if tier.front_mm < 0 or tier.rear_mm > depth:
            said = f"the tier '{tier.name}' runs from {tier.front_mm:g} to {tier.rear_mm:g} mm"
            _told(context, deck, tier.span, said)
    _room_left(context, deck, width, depth)
    _apart(context, deck)
    _under_tape(context, deck)
    beyond = [line for line in deck.drops_mm if not 0 <= line <= depth]
    if beyond:
        lines = " and ".join(f"{line:g}" for line in beyond)
        _told(context, deck, deck.declared, f"'{deck.name}' states drop lines at y = {lines} mm")


def check_through(context: Context, decks: dict[str, Deck], leads: tuple[LeadFacts, ...]) -> None:
    """Reports drop lines that stated leads go through and that no deck has; nothing is judged while a deck states none."""
    lines = [line for deck in decks.values() for line in deck.drops_mm]
    if not decks or not all(deck.drops_mm for deck in decks.values()):
        return
    if any(_covered(deck) for deck in decks.values()):
        return  # a line that is wrong, and told, may have been to be the one that a lead goes through
    nodes_by_mark = {
        node.mark.text: node.through
        for block in context.of(nodes.LeadsBlock)
        for node in block.items
        if isinstance(node, nodes.Lead) and node.through is not None
    }
    for lead in leads:
        for line, said in zip(lead.through_mm, nodes_by_mark[lead.mark].lines if lead.through_mm else (), strict=True):
            if line in lines:
                continue
            near = min(lines, key=lambda each: abs(each - line))
            typed = f"{near:g}" if said.unit is None else f"{near:g} mm"
            plain = said.unit is None or said.unit.text == "mm"
            context.report(
                OUTSIDE_BODY.at(
                    said.span,
                    f"{lead.mark} shall go through the deck at {line:g} mm, where {listed(decks)} "
                    f"{'has' if len(decks) == 1 else 'have'} no drop line",
                    subject=(lead.mark, *decks),
                    label=f"drop lines are at {joined(f'{each:g}' for each in lines)} mm",
                    mends=(Mend(f"write {near:g} mm, the nearest", (Replace(said.span, typed),)),) if plain else (),
                    help="" if plain else f"write {near:g} mm, the nearest",
                )
            )


def _room_left(context: Context, deck: Deck, width: float, depth: float) -> None:
    """A finding where the heel takes the whole deck, or its feet would stand beyond each other."""
    heel, feet = deck.heel_mm, deck.feet_inset_mm
    if heel is not None and heel.value >= depth:
        _told(context, deck, heel.span, f"a heel of {heel.typed} leaves nothing to stand on")
    if feet is not None and 2 * feet.value >= min(width, depth):
        _told(context, deck, feet.span, f"feet {feet.typed} in from each edge have no room between them")


def _apart(context: Context, deck: Deck) -> None:
    """A finding where two rails or two tiers lie in one another."""
    rails = [(rail.front_mm, rail.rear_mm, rail.span, "rail") for rail in deck.rails]
    tiers = [(tier.front_mm, tier.rear_mm, tier.span, f"tier '{tier.name}'") for tier in deck.tiers]
    for sort in (sorted(rails, key=lambda each: each[:2]), sorted(tiers, key=lambda each: each[:2])):
        for (_, rear, first, name), (front, end, span, other) in pairwise(sort):
            if front < rear and not any(each.span is span for each in context.findings):
                said = f"this {other} from {front:g} to {end:g} mm begins within the {name} that ends at {rear:g} mm"
                _in_one_another(context, span, said, (deck.name,), first, "measure both again from the front edge")


def _under_tape(context: Context, deck: Deck) -> None:
    """A finding for each drop line beneath the tape of a rail: no lead goes through where tape lies."""
    for line, rail in _covered(deck):
        context.report(
            OUTSIDE_BODY.at(
                rail.span,
                f"the drop line of '{deck.name}' at {line:g} mm lies beneath the tape of the rail from {rail.front_mm:g} to "
                f"{rail.rear_mm:g} mm",
                subject=(deck.name,),
                label="no lead goes through here",
                help="measure both again from the front edge: leads go through between the rails",
            )
        )


def _covered(deck: Deck) -> list[tuple[float, Rail]]:
    """The drop lines that lie beneath the tape of a rail, with that."""
    return [
        (line, rail)
        for line in deck.drops_mm
        for rail in deck.rails
        if rail.tape_front_mm is not None
        and rail.tape_rear_mm is not None
        and rail.tape_front_mm < line < rail.tape_rear_mm
    ]


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
                _told(
                    context,
                    deck,
                    room.span,
                    said,
                    _turned_round(deck, room.span, room.x_mm, room.y_mm, room.width_mm, room.depth_mm),
                )


def check_panels(context: Context, decks: dict[str, Deck], panels: dict[str, Panel]) -> None:
    """Reports jacks of panels that lie farther over an edge of their deck than a panel hangs over it, and two at one place."""
    over = -PANEL_AT.low
    for panel in panels.values():
        deck = decks.get(panel.deck) if panel.deck is not None else deck_meant(decks)
        first: dict[tuple[float, float, float | None], PanelJack] = {}
        for jack in panel.jacks:
            lies = f"'{panel.name}.{jack.name}' lies at {jack.x_mm:g}, {jack.y_mm:g} mm"
            if deck is not None and _beyond(deck, jack, over):
                _told(context, deck, jack.span, f"{lies}, more than {over:g} mm beyond an edge")
            height = jack.height_mm.value if jack.height_mm is not None else None
            other = first.setdefault((jack.x_mm, jack.y_mm, height), jack)
            if other is not jack:
                said = f"{lies}, and so does '{panel.name}.{other.name}'"
                help = "measure both again from the front-left corner: x to the right, y to the rear"
                _in_one_another(context, jack.span, said, (panel.name, jack.name), other.span, help)


def _beyond(deck: Deck, jack: PanelJack, over: float) -> bool:
    """Whether it lies so far over the right or the rear edge; the language holds it to the others."""
    if deck.width_mm is None or deck.depth_mm is None:
        return False
    return jack.x_mm > deck.width_mm.value + over or jack.y_mm > deck.depth_mm.value + over


def _in_one_another(context: Context, span: Span, said: str, subject: tuple[str, ...], first: Span, help: str) -> None:
    context.report(
        OUTSIDE_BODY.at(
            span, said, subject=subject, label="in one another", also=(Label(first, "with this"),), help=help
        )
    )


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


def _turned_round(
    deck: Deck, span: Span, x_mm: float, y_mm: float, width_mm: float = 0.0, depth_mm: float = 0.0
) -> tuple[Mend, ...]:
    """x and y the other way round, where it lies on the deck so."""
    assert deck.width_mm is not None and deck.depth_mm is not None
    fits = y_mm + width_mm <= deck.width_mm.value and x_mm + depth_mm <= deck.depth_mm.value
    return interchanged(span) if fits and min(x_mm, y_mm) >= 0 else ()


def _told(context: Context, deck: Deck, span: Span, said: str, mends: tuple[Mend, ...] = ()) -> None:
    assert deck.width_mm is not None and deck.depth_mm is not None
    context.report(
        OUTSIDE_BODY.at(
            span,
            f"{said}, on a deck of {deck.width_mm.value:g} × {deck.depth_mm.value:g} mm",
            subject=(deck.name,),
            label="beyond the deck",
            mends=mends,
            help="measure it again from the front-left corner: x to the right, y to the rear",
        )
    )
