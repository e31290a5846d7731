"""Decks, panels, cases, and what stands where."""

from __future__ import annotations

from rigc.syntax.nodes.node import Amount, Node, Text, Word


class Deck(Node):
    name: Word
    like: Word | None
    title: Text | None
    items: tuple[Node, ...]


class Size(Node):
    width: Amount
    depth: Amount


class Thickness(Node):
    amount: Amount


class Angle(Node):
    amount: Amount


class Clearance(Node):
    amount: Amount


class Heel(Node):
    amount: Amount


class Lid(Node):
    amount: Amount


class Rail(Node):
    """A rail; its tape by width (in the middle) or from where to where, its kind of strip, on its upper face or on both."""

    front: Amount
    rear: Amount
    tape: Amount | None
    tape_rear: Amount | None
    strip: Word | None
    faces: BothFaces | None


class BothFaces(Node):
    """The tape lies on the rail's upper and its lower face."""


class Drop(Node):
    """Lines across the deck where a lead may pass through it."""

    lines: tuple[Amount, ...]


class Hole(Node):
    diameter: Amount
    x: Amount
    y: Amount
    purpose: Text | None


class KeepOut(Node):
    width: Amount
    depth: Amount
    x: Amount
    y: Amount
    text: Text | None


class Tier(Node):
    name: Word
    front: Amount
    rear: Amount
    height: Amount


class DeckFeet(Node):
    inset: Amount


class BareMetal(Node):
    """The deck is bare metal: what touches it is joined."""


class Insulating(Node):
    """Nothing is joined through the deck."""


class Panel(Node):
    name: Word
    deck: Word | None
    title: Text | None
    items: tuple[Node, ...]


class PanelJack(Node):
    name: Word
    jack: Word
    bushing: Word | None
    x: Amount
    y: Amount
    height: Amount | None
    carries: Word | None


class PanelInlet(Node):
    name: Word
    kind: Word
    x: Amount
    y: Amount
    height: Amount | None


class Case(Node):
    name: Word
    title: Text | None
    items: tuple[Node, ...]


class CaseHolds(Node):
    decks: tuple[Word, ...]


class Inside(Node):
    width: Amount
    depth: Amount
    height: Amount


class Join(Node):
    first: Word
    second: Word
    leads: tuple[Word, ...]


class PlaceBlock(Node):
    deck: Word | None
    items: tuple[Node, ...]


class At(Node):
    thing: Word
    x: Amount
    y: Amount
    turned: Turned | None
    tier: Word | None


class Under(Node):
    thing: Word
    x: Amount
    y: Amount
    turned: Turned | None
    jacks: Word | None


class OffBoard(Node):
    """What belongs to the rig and stands beside the board."""

    things: tuple[Word, ...]
    where: Text | None


class Turned(Node):
    angle: Amount


class Beside(Node):
    thing: Word
    side: Word
    other: Word
    gap: Amount | None


class Row(Node):
    thing: Word
    row: Word


class OnSide(Node):
    thing: Word
    side: Word


class NearEdge(Node):
    thing: Word
    edge: Word


class Reach(Node):
    thing: Word
    foot: Word
    other: Word | None


class Stepped(Node):
    things: tuple[Word, ...]


class Clear(Node):
    thing: Word
    distance: Amount


class KnobsFree(Node):
    thing: Word


class JacksLook(Node):
    thing: Word
    side: Word


class Stands(Node):
    thing: Word
    how: Word
    ground: Word


class Together(Node):
    things: tuple[Word, ...]


class Away(Node):
    things: tuple[Word, ...]
    others: tuple[Word, ...]
    distance: Amount | None


class Symmetric(Node):
    things: tuple[Word, ...]


class Weigh(Node):
    what: Word
    share: Amount


class ReserveRoom(Node):
    width: Amount
    depth: Amount
    at: RoomAt | None
    text: Text | None


class RoomAt(Node):
    x: Amount
    y: Amount
