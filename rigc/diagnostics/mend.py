"""Mend: one way to put a finding right, in words and as edits of the text, so that what is advised is what can be done."""

from __future__ import annotations

from rigc.record import Record
from rigc.source import Span


class Replace(Record):
    """What stands at `span` becomes `text`; an empty span takes the text in front of what follows."""

    span: Span
    text: str


class Delete(Record):
    """The statement, or the line of a block, that begins at or holds `span` goes, with its line."""

    span: Span


class AddTo(Record):
    """`line` becomes the last line of a block: `("unit", "tern")`, `("preset", "5")`, or one without a name, `("power", "")`, of the rig's own file.

    A nameless block that the file lacks is made at its end.
    """

    block: str
    name: str
    line: str


class Add(Record):
    """`line` becomes a statement of its own at the end of the rig's own file; or, with `at_start`, before the first `use` or block."""

    line: str
    at_start: bool = False


Edit = Replace | Delete | AddTo | Add


class Mend(Record):
    """One way to put a finding right.

    `words` say it to a person, in the imperative, lower case, no full stop: `set 'weir8.b5' to 12 V`. `edits` do it, all of them
    together. A mend never states a fact that only a measurement can give.
    """

    words: str
    edits: tuple[Edit, ...]
