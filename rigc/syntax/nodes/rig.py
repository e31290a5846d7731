"""The whole file, the rig block, scenarios, and the notes that are printed."""

from __future__ import annotations

from typing import TYPE_CHECKING

from rigc.syntax.nodes.node import Amount, Node, Text, Word

if TYPE_CHECKING:
    from rigc.syntax.nodes.signal import Endpoint


class File(Node):
    """A file: its statements in order."""

    statements: tuple[Node, ...]

    def __str__(self) -> str:
        return "\n".join(map(str, self.statements))


class Language(Node):
    """The version of the language that the file is written in."""

    version: Word


class Use(Node):
    """Another file, relative to this one, or `stock/...` for what ships with rigc."""

    path: Text


class Note(Node):
    """A remark that is printed for the crew."""

    text: Text


class Rig(Node):
    """The rig of the file."""

    name: Word
    title: Text | None
    items: tuple[Node, ...]


class Revision(Node):
    letter: Word
    date: Word
    text: Text | None


class Class(Node):
    kind: Word


class Client(Node):
    code: Text


class Drawn(Node):
    who: Text


class Checked(Node):
    who: Text


class Frozen(Node):
    """This revision was released; the seal is what its documents were made of."""

    date: Word
    who: Text
    seal: Text | None


class Follows(Node):
    """The earlier revision and the file that holds it."""

    letter: Word
    path: Text


class Change(Node):
    """What this revision changes, by which cause, and the names and lead numbers that it touches."""

    number: Word
    cause: Word
    text: Text
    reason: Text | None
    touches: tuple[Word, ...] | None


class Marker(Node):
    characters: Word


class ShowLength(Node):
    amount: Amount


class WorkRate(Node):
    """What an hour at the bench costs."""

    amount: Amount


class Label(Node):
    """How a label reads: {id}, {here} and {far} are filled in."""

    template: Text


class Limit(Node):
    what: Word
    amount: Amount
    source: Text | None


class Scenario(Node):
    """A place or way in which the rig is used."""

    name: Word
    title: Text | None
    items: tuple[Node, ...]


class Mains(Node):
    """A mains voltage and frequency, or ranges of them."""

    low: Amount
    high: Amount | None
    tolerance: Amount | None
    hertz_low: Amount | None
    hertz_high: Amount | None


class Country(Node):
    """Two letters of ISO 3166-1."""

    code: Word


class Selector(Node):
    supply: Word
    voltage: Amount


class Transformer(Node):
    """A step transformer that stands before a supply."""

    primary: Amount
    secondary: Amount
    rating: Amount
    supply: Word


class GroundLift(Node):
    at: Endpoint
    position: Word


class Amps(Node):
    """The amps and desks that this scenario uses."""

    names: tuple[Word, ...]
