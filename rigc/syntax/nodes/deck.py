"""Decks, panels, cases, and what stands where."""

from __future__ import annotations

from rigc.source import Span
from rigc.syntax.nodes.node import Amount, Node, Text, Word


class Deck(Node):
    """`deck {name}[ like {like}][ {title}] {items}`"""

    FORM = "deck {name}[ like {like}][ {title}] {items}"
    name: Word
    like: Word | None
    title: Text | None
    items: tuple[Node, ...]
    span: Span


class Size(Node):
    """`size {width} x {depth}`"""

    FORM = "size {width} x {depth}"
    width: Amount
    depth: Amount
    span: Span


class Thickness(Node):
    """`thickness {amount}`"""

    FORM = "thickness {amount}"
    amount: Amount
    span: Span


class Angle(Node):
    """`angle {amount}`"""

    FORM = "angle {amount}"
    amount: Amount
    span: Span


class Clearance(Node):
    """`clearance {amount}`"""

    FORM = "clearance {amount}"
    amount: Amount
    span: Span


class Heel(Node):
    """`heel {amount}`"""

    FORM = "heel {amount}"
    amount: Amount
    span: Span


class Lid(Node):
    """`lid {amount}`"""

    FORM = "lid {amount}"
    amount: Amount
    span: Span


class Rail(Node):
    """A rail; its tape by width (in the middle) or from where to where, its kind of strip, on its upper face or on both."""

    FORM = "rail {front}..{rear}[ tape {tape}][..{tape_rear}][ of {strip}][ {faces}]"
    front: Amount
    rear: Amount
    tape: Amount | None
    tape_rear: Amount | None
    strip: Word | None
    faces: BothFaces | None
    span: Span


class BothFaces(Node):
    """`on both faces`"""

    FORM = "on both faces"
    span: Span


class Drop(Node):
    """Lines across the deck where a lead may pass through it."""

    FORM = "drop {lines|, }"
    lines: tuple[Amount, ...]
    span: Span


class Hole(Node):
    """`hole {diameter} at {x}, {y}[ {purpose}]`"""

    FORM = "hole {diameter} at {x}, {y}[ {purpose}]"
    diameter: Amount
    x: Amount
    y: Amount
    purpose: Text | None
    span: Span


class KeepOut(Node):
    """`keep-out {width} x {depth} at {x}, {y}[ {text}]`"""

    FORM = "keep-out {width} x {depth} at {x}, {y}[ {text}]"
    width: Amount
    depth: Amount
    x: Amount
    y: Amount
    text: Text | None
    span: Span


class Tier(Node):
    """`tier {name} {front}..{rear} raised {height}`"""

    FORM = "tier {name} {front}..{rear} raised {height}"
    name: Word
    front: Amount
    rear: Amount
    height: Amount
    span: Span


class DeckFeet(Node):
    """`feet {inset} in`"""

    FORM = "feet {inset} in"
    inset: Amount
    span: Span


class BareMetal(Node):
    """`bare metal`"""

    FORM = "bare metal"
    span: Span


class Insulating(Node):
    """`insulating`"""

    FORM = "insulating"
    span: Span


class Panel(Node):
    """`panel {name}[ on {deck}][ {title}] {items}`"""

    FORM = "panel {name}[ on {deck}][ {title}] {items}"
    name: Word
    deck: Word | None
    title: Text | None
    items: tuple[Node, ...]
    span: Span


class PanelJack(Node):
    """`jack {name} {jack}[ {bushing}] at {x}, {y}[ up {height}]`"""

    FORM = "jack {name} {jack}[ {bushing}] at {x}, {y}[ up {height}]"
    name: Word
    jack: Word
    bushing: Word | None
    x: Amount
    y: Amount
    height: Amount | None
    span: Span


class PanelInlet(Node):
    """`inlet {name} {kind} at {x}, {y}[ up {height}]`"""

    FORM = "inlet {name} {kind} at {x}, {y}[ up {height}]"
    name: Word
    kind: Word
    x: Amount
    y: Amount
    height: Amount | None
    span: Span


class Case(Node):
    """`case {name}[ {title}] {items}`"""

    FORM = "case {name}[ {title}] {items}"
    name: Word
    title: Text | None
    items: tuple[Node, ...]
    span: Span


class CaseHolds(Node):
    """`holds {decks|, }`"""

    FORM = "holds {decks|, }"
    decks: tuple[Word, ...]
    span: Span


class Inside(Node):
    """`inside {width} x {depth} x {height}`"""

    FORM = "inside {width} x {depth} x {height}"
    width: Amount
    depth: Amount
    height: Amount
    span: Span


class Join(Node):
    """`join {first} to {second} by {leads|, }`"""

    FORM = "join {first} to {second} by {leads|, }"
    first: Word
    second: Word
    leads: tuple[Word, ...]
    span: Span


class PlaceBlock(Node):
    """`place[ on {deck}] {items}`"""

    FORM = "place[ on {deck}] {items}"
    deck: Word | None
    items: tuple[Node, ...]
    span: Span


class At(Node):
    """`{thing} at {x}, {y}[ {turned}][ on {tier}]`"""

    FORM = "{thing} at {x}, {y}[ {turned}][ on {tier}]"
    thing: Word
    x: Amount
    y: Amount
    turned: Turned | None
    tier: Word | None
    span: Span


class Under(Node):
    """`{thing} under at {x}, {y}[ {turned}][ jacks {jacks}]`"""

    FORM = "{thing} under at {x}, {y}[ {turned}][ jacks {jacks}]"
    thing: Word
    x: Amount
    y: Amount
    turned: Turned | None
    jacks: Word | None
    span: Span


class Turned(Node):
    """`turned {angle}`"""

    FORM = "turned {angle}"
    angle: Amount
    span: Span


class Beside(Node):
    """`{thing} {side} of {other}[ gap {gap}]`"""

    FORM = "{thing} {side} of {other}[ gap {gap}]"
    thing: Word
    side: Word
    other: Word
    gap: Amount | None
    span: Span


class Row(Node):
    """`{thing} row {row}`"""

    FORM = "{thing} row {row}"
    thing: Word
    row: Word
    span: Span


class Reach(Node):
    """`{thing} within reach of {foot}`"""

    FORM = "{thing} within reach of {foot}"
    thing: Word
    foot: Word
    span: Span


class ReserveRoom(Node):
    """`reserve {width} x {depth} at {x}, {y}[ {text}]`"""

    FORM = "reserve {width} x {depth} at {x}, {y}[ {text}]"
    width: Amount
    depth: Amount
    x: Amount
    y: Amount
    text: Text | None
    span: Span
