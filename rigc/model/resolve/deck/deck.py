"""Decks, cases and places as stated -> mm on a deck."""

from __future__ import annotations

from typing import Any

from rigc.diagnostics.diagnostic import Label
from rigc.diagnostics.near import nearest
from rigc.model.deck import Case, Deck, Hole, OffBoard, Place, Rail, Tier, deck_meant
from rigc.model.fact import Fact
from rigc.model.resolve.context import Context, Item, items_of
from rigc.model.resolve.deck.inside_deck import check_deck
from rigc.model.resolve.deck.turning import turning
from rigc.model.resolve.things.things import Laid, inherited, papers_of
from rigc.model.scope import SAID_TWICE, UNKNOWN, stated_twice, twice
from rigc.model.slips.wrong_quantity import WRONG_QUANTITY
from rigc.model.things import Area
from rigc.model.units.measures import (
    CLEARANCE,
    DECK_SIDE,
    HEEL,
    HOLE,
    INSET,
    INSIDE,
    LARGE_MASS,
    LID,
    OFFSET,
    PATCH,
    RAISED,
    SLOPE,
    THICKNESS,
    Measure,
)
from rigc.source import Span
from rigc.syntax import nodes
from rigc.syntax.nodes import Node, Word

AMOUNTS: dict[type[Node], tuple[str, Measure]] = {
    nodes.Thickness: ("thickness_mm", THICKNESS),
    nodes.Angle: ("angle_deg", SLOPE),
    nodes.Clearance: ("clearance_mm", CLEARANCE),
    nodes.Mass: ("mass_kg", LARGE_MASS),
    nodes.Heel: ("heel_mm", HEEL),
}
PLACEABLE = ("unit", "supply", "mains strip", "amp", "desk", "listener")


def decks(context: Context) -> dict[str, Deck]:
    """All decks by name."""
    blocks = {node.name.text: node for node in context.of(nodes.Deck)}
    found: dict[str, Deck] = {}
    laid = Laid()
    for name, block in blocks.items():
        fields: dict[str, Any] = {}
        items = inherited(context, block, blocks, laid=laid)
        for item in items:
            _deck_fact(context, item, fields)
        fields["papers"] = papers_of(context, items)
        deck = Deck(name, block.title.value if block.title else "", block.name.span, **fields)
        _rails_inside(context, deck)
        check_deck(context, deck)
        found[name] = deck
    return found


def _deck_fact(context: Context, item: Item, fields: dict[str, Any]) -> None:
    fact, known = item.fact, item.provenance
    if type(fact) in AMOUNTS:
        field, measure = AMOUNTS[type(fact)]
        fields[field] = context.amount(fact.amount, measure, known)
    elif isinstance(fact, nodes.Size):
        width, depth = context.shared(DECK_SIDE, fact.width, fact.depth, provenance=known)
        fields.update(width_mm=width, depth_mm=depth)
    elif isinstance(fact, nodes.Rail):
        fields["rails"] = (*fields.get("rails", ()), _rail(context, fact))
    elif isinstance(fact, nodes.Drop):
        lines = context.shared_values(OFFSET, *fact.lines)
        _each_line_once(context, fact, lines)
        fields["drops_mm"] = tuple(sorted({*fields.get("drops_mm", ()), *lines}))
    elif isinstance(fact, nodes.Hole):
        x, y = context.shared_values(OFFSET, fact.x, fact.y)
        purpose = fact.purpose.value if fact.purpose else ""
        hole = Hole(context.value(fact.diameter, HOLE), x, y, purpose, fact.span)
        fields["holes"] = (*fields.get("holes", ()), hole)
    elif isinstance(fact, nodes.KeepOut):
        fields["keep_outs"] = (*fields.get("keep_outs", ()), area(context, fact, fact, "keep-out"))
    elif isinstance(fact, nodes.Tier):
        front, rear = context.shared_values(OFFSET, fact.front, fact.rear)
        context.rising(fact.span, front, rear, "mm")
        tier = Tier(fact.name.text, front, rear, context.value(fact.height, RAISED), fact.span)
        fields["tiers"] = (*fields.get("tiers", ()), tier)
    elif isinstance(fact, nodes.DeckFeet):
        fields["feet_inset_mm"] = context.amount(fact.inset, INSET, known)
    elif isinstance(fact, nodes.BareMetal):
        fields.update(bare_metal=True, insulating=False)
    elif isinstance(fact, nodes.Insulating):
        fields.update(bare_metal=False, insulating=True)
    elif isinstance(fact, nodes.Note):
        fields["notes"] = (*fields.get("notes", ()), fact.text.value)


def _each_line_once(context: Context, fact: nodes.Drop, lines: list[float]) -> None:
    for at, line in enumerate(lines):
        if line in lines[:at] and not any(each.span is fact.lines[at].span for each in context.findings):
            context.report(
                SAID_TWICE.at(
                    fact.lines[at].span,
                    f"the drop line at {line:g} mm stands twice in this list",
                    label="the same again",
                    also=(Label(fact.lines[lines.index(line)].span, "first named here"),),
                    help="name each line once, or correct the number",
                )
            )


def _rail(context: Context, fact: nodes.Rail) -> Rail:
    front, rear = context.shared_values(OFFSET, fact.front, fact.rear)
    tape = context.shared_values(OFFSET, *(amount for amount in (fact.tape, fact.tape_rear) if amount is not None))
    if len(tape) == 1:
        tape = [(front + rear - tape[0]) / 2, (front + rear + tape[0]) / 2]
    tape_front, tape_rear = tape if tape else (None, None)
    if front >= rear or (
        tape_front is not None and tape_rear is not None and not front <= tape_front < tape_rear <= rear
    ):
        context.report(
            WRONG_QUANTITY.at(
                fact.span,
                f"a rail from {front:g} to {rear:g} mm can't bear that tape"
                if front < rear
                else f"a rail from {front:g} to {rear:g} mm has no width",
                label="this rail",
                help="write the rail from front to rear, and its tape no wider than the rail",
            )
        )
    strip = context.scopes["strip"].find(fact.strip, (), "a strip") if fact.strip is not None else None
    return Rail(front, rear, tape_front, tape_rear, fact.span, strip, fact.faces is not None)


def area(
    context: Context, fact: nodes.KeepOut | nodes.ReserveRoom, at: nodes.KeepOut | nodes.RoomAt, what: str
) -> Area:
    """A room of a deck."""
    width, depth = context.shared_values(PATCH, fact.width, fact.depth)
    x, y = context.shared_values(OFFSET, at.x, at.y)
    return Area(fact.text.value if fact.text else what, x, y, width, depth, fact.span)


def _rails_inside(context: Context, deck: Deck) -> None:
    if deck.depth_mm is None:
        return
    depth = deck.depth_mm.value
    for rail in deck.rails:
        if rail.front_mm < 0 or rail.rear_mm > depth:
            context.report(
                WRONG_QUANTITY.at(
                    rail.span,
                    f"this rail reaches to {rail.rear_mm:g} mm on a deck {depth:g} mm deep",
                    label="beyond the deck",
                    help="measure it again from the front edge",
                )
            )


def cases(context: Context) -> dict[str, Case]:
    """All cases by name."""
    found: dict[str, Case] = {}
    held: dict[str, Word] = {}
    for block in context.of(nodes.Case):
        fields: dict[str, Any] = {"inside_mm": None, "lid_mm": None, "mass_kg": None, "notes": (), "holds": ()}
        items = items_of(context, block.items, [])
        for item in items:
            fact = item.fact
            if isinstance(fact, nodes.Inside):
                fields["inside_mm"] = tuple(context.shared_values(INSIDE, fact.width, fact.depth, fact.height))
            elif isinstance(fact, nodes.Lid):
                fields["lid_mm"] = context.amount(fact.amount, LID, item.provenance)
            elif isinstance(fact, nodes.Mass):
                fields["mass_kg"] = context.amount(fact.amount, LARGE_MASS, item.provenance)
            elif isinstance(fact, nodes.Note):
                fields["notes"] = (*fields["notes"], fact.text.value)
            elif isinstance(fact, nodes.CaseHolds):
                fields["holds"] = (*fields["holds"], *_held(context, fact, held))
        fields["papers"] = papers_of(context, items)
        _lid_within(context, fields["lid_mm"], fields["inside_mm"])
        title = block.title.value if block.title else ""
        found[block.name.text] = Case(block.name.text, title, block.name.span, **fields)
    return found


def _lid_within(context: Context, lid: Fact[float] | None, inside: tuple[float, ...] | None) -> None:
    if lid is not None and inside is not None and lid.value >= inside[2] > 0:
        context.report(
            WRONG_QUANTITY.at(
                lid.span,
                f"a lid of {lid.value:g} mm leaves nothing of the {inside[2]:g} mm inside",
                label="of the height inside, so much is in the lid",
                help="measure the height inside with the lid closed, and what of it the lid holds",
            )
        )


def _held(context: Context, fact: nodes.CaseHolds, held: dict[str, Word]) -> tuple[str, ...]:
    """The decks that a case holds; one that is in a case already is told."""
    decks = []
    for word in fact.decks:
        name = context.scopes["deck"].find(word, (), "a deck")
        if name is not None and name in held:
            context.report(twice(f"the case of '{name}'", word, held[name], "name it in one case only"))
        elif name is not None:
            held[name] = word
            decks.append(name)
    return tuple(decks)


def places(context: Context, known_decks: dict[str, Deck]) -> dict[str, Place]:
    """Stated places by thing."""
    found: dict[str, Place] = {}
    for block in context.of(nodes.PlaceBlock):
        deck = context.scopes["deck"].find(block.deck, (), "a deck") if block.deck else None
        for node in block.items:
            if not isinstance(node, nodes.At | nodes.Under):
                continue
            place = _place(context, node, deck, known_decks)
            if place is not None and place.thing in found:
                context.report(
                    stated_twice(f"a place for '{place.thing}'", node.thing, Word(place.thing, found[place.thing].span))
                )
            if place is not None:
                found[place.thing] = place
    return found


def off_board(context: Context, stated: dict[str, Place]) -> dict[str, OffBoard]:
    """What is said to stand beside the board, by thing; a finding where it has a place on it, too, or a wish for one."""
    found: dict[str, OffBoard] = {}
    for node in (each for block in context.of(nodes.PlaceBlock) for each in block.items):
        if not isinstance(node, nodes.OffBoard):
            continue
        for word in node.things:
            name = context.scopes["thing"].find(word, PLACEABLE, "a unit or a supply")
            if name is None:
                continue
            other = found.get(name) or stated.get(name)
            if other is not None:
                what, first = f"a place for '{name}'", Word(name, other.span)
                alone = len(node.things) == 1
                again = Word(name, node.span) if alone else word
                context.report(
                    stated_twice(what, again, first)
                    if alone
                    else twice(what, again, first, "say it in one of the two lines")
                )
            found[name] = OffBoard(
                name, node.where.value if node.where else "", node.span if len(node.things) == 1 else word.span
            )
    return found


def _place(context: Context, node: Any, deck: str | None, known_decks: dict[str, Deck]) -> Place | None:
    thing = context.scopes["thing"].find(node.thing, PLACEABLE, "a unit or a supply")
    x, y = context.shared_chosen(OFFSET, node.x, node.y)
    tier = None
    if isinstance(node, nodes.At) and node.tier is not None:
        tier = _tier(context, node.tier, deck, known_decks)
    if thing is None or x is None or y is None:
        return None
    turned, skew = turning(context, node.turned, thing)
    under = isinstance(node, nodes.Under)
    jacks = node.jacks.text if isinstance(node, nodes.Under) and node.jacks else None
    return Place(
        thing,
        x.value,
        y.value,
        turned,
        under,
        deck,
        tier,
        jacks,
        f"{node.x}, {node.y}",
        node.span,
        skew,
        numbers=Span(node.span.source, node.x.span.start, node.y.span.end),
    )


def _tier(context: Context, name: Word, deck: str | None, known_decks: dict[str, Deck]) -> str | None:
    on = known_decks.get(deck) if deck else deck_meant(known_decks)
    names = [tier.name for tier in on.tiers] if on else []
    if name.text in names:
        return name.text
    near = nearest(name.text, names)
    context.report(
        UNKNOWN.at(
            name.span,
            f"the deck has no tier '{name.text}'",
            label=f"did you mean '{near}'?" if near else "a tier's name goes here",
            help=f"write '{near}'"
            if near
            else "declare the tier in the deck's block: tier NAME FRONT..REAR raised HEIGHT",
        )
    )
    return None
