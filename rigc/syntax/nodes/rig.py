"""The whole file, the rig block, scenarios, and the notes that are printed."""

from __future__ import annotations

from typing import TYPE_CHECKING

from rigc.source import Span
from rigc.syntax.nodes.node import Amount, Node, Text, Word

if TYPE_CHECKING:
    from rigc.syntax.nodes.signal import Endpoint


class File(Node):
    """A file: its statements in order."""

    FORM = "{statements|\n}"
    statements: tuple[Node, ...]
    span: Span


class Language(Node):
    """The version of the language that the file is written in."""

    FORM = "language {version}"
    version: Word
    span: Span


class Use(Node):
    """Another file, relative to this one, or `stock/...` for what ships with rigc."""

    FORM = "use {path}"
    path: Text
    span: Span


class Note(Node):
    """A remark that is printed for the crew."""

    FORM = "note {text}"
    text: Text
    span: Span


class Rig(Node):
    """The rig of the file."""

    FORM = "rig {name}[ {title}] {items}"
    name: Word
    title: Text | None
    items: tuple[Node, ...]
    span: Span


class Revision(Node):
    """`revision {letter} {date}[ {text}]`"""

    FORM = "revision {letter} {date}[ {text}]"
    letter: Word
    date: Word
    text: Text | None
    span: Span


class Class(Node):
    """`class {kind}`"""

    FORM = "class {kind}"
    kind: Word
    span: Span


class Client(Node):
    """`client {code}`"""

    FORM = "client {code}"
    code: Text
    span: Span


class Drawn(Node):
    """`drawn by {who}`"""

    FORM = "drawn by {who}"
    who: Text
    span: Span


class Checked(Node):
    """`checked by {who}`"""

    FORM = "checked by {who}"
    who: Text
    span: Span


class Frozen(Node):
    """This revision was released; the seal is what its documents were made of."""

    FORM = "frozen {date} by {who}[ seal {seal}]"
    date: Word
    who: Text
    seal: Text | None
    span: Span


class Follows(Node):
    """The earlier revision and the file that holds it."""

    FORM = "follows {letter} {path}"
    letter: Word
    path: Text
    span: Span


class Change(Node):
    """What this revision changes, by which cause, and the names and lead numbers that it touches."""

    FORM = "change {number} {cause} {text}[ because {reason}][ touches {touches|, }]"
    number: Word
    cause: Word
    text: Text
    reason: Text | None
    touches: tuple[Word, ...] | None
    span: Span


class Marker(Node):
    """`marker {characters} characters`"""

    FORM = "marker {characters} characters"
    characters: Word
    span: Span


class ShowLength(Node):
    """`show {amount}`"""

    FORM = "show {amount}"
    amount: Amount
    span: Span


class Label(Node):
    """How a label reads: {id}, {here} and {far} are filled in."""

    FORM = "label {template}"
    template: Text
    span: Span


class Limit(Node):
    """`limit {what} {amount}[ source {source}]`"""

    FORM = "limit {what} {amount}[ source {source}]"
    what: Word
    amount: Amount
    source: Text | None
    span: Span


class Scenario(Node):
    """A place or way in which the rig is used."""

    FORM = "scenario {name}[ {title}] {items}"
    name: Word
    title: Text | None
    items: tuple[Node, ...]
    span: Span


class Mains(Node):
    """A mains voltage and frequency, or ranges of them."""

    FORM = "mains {low}[..{high}][ within {tolerance}][ {hertz_low}][..{hertz_high}]"
    low: Amount
    high: Amount | None
    tolerance: Amount | None
    hertz_low: Amount | None
    hertz_high: Amount | None
    span: Span


class Country(Node):
    """Two letters of ISO 3166-1."""

    FORM = "country {code}"
    code: Word
    span: Span


class Selector(Node):
    """`selector {supply} {voltage}`"""

    FORM = "selector {supply} {voltage}"
    supply: Word
    voltage: Amount
    span: Span


class Transformer(Node):
    """A step transformer that stands before a supply."""

    FORM = "transformer {primary} to {secondary} {rating} before {supply}"
    primary: Amount
    secondary: Amount
    rating: Amount
    supply: Word
    span: Span


class GroundLift(Node):
    """`lift {at} {position}`"""

    FORM = "lift {at} {position}"
    at: Endpoint
    position: Word
    span: Span


class Amps(Node):
    """The amps and desks that this scenario uses."""

    FORM = "amps {names|, }"
    names: tuple[Word, ...]
    span: Span
