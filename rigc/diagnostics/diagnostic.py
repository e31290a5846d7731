"""Kind: what can be wrong; Diagnostic: one finding of a kind, at a place, in the user's own words and numbers."""

from __future__ import annotations

import re
from collections.abc import Callable
from enum import IntEnum

from rigc.diagnostics.mend import Mend
from rigc.record import Record
from rigc.source import Span


class Level(IntEnum):
    """How bad it is, worst first."""

    ERROR = 0  # the rig will not work, or something may be damaged
    WARNING = 1  # works, but a careful builder would not ship it
    REMARK = 2  # worth a line
    CANT_CHECK = 3  # a fact is missing

    @property
    def word(self) -> str:
        """The word that is printed."""
        return ("error", "warning", "remark", "can't-check")[self]


class Label(Record):
    """A further place, and what is to be seen there."""

    span: Span
    text: str


class Number(Record):
    """A figure that a finding compares, in the unit named beside it."""

    name: str
    value: float
    unit: str


MAY_BE = "may be"
"""The name of the figure to which a judged one may come by what its facts may be off by: its limit is in doubt."""


class Acceptance(Record):
    """The builder's signed reason for leaving a finding as it is."""

    reason: str
    by: str
    until: str
    span: Span


class Diagnostic(Record):
    """One finding.

    `subject` names the things it is about (names, `name.jack` or lead numbers, most telling first): it is what `accept`
    refers to and what the fingerprint is made of, so that a finding keeps its identity when lines move. `mends` are the ways to put
    it right that are edits of the text, best first; `help` is what is no edit: a measurement, a purchase, work at the bench. `otherwise`
    is told where there is neither: what is left when no edit works.

    `wants` are the facts for want of which a rule can't be judged, in words that are the same wherever the fact is missing;
    `asks_for` are those for which this finding asks (one that ends in `...` stands for all that begin so), and `follow` are the
    can't-checks that are folded under it, since they want nothing else.
    """

    kind: Kind
    level: Level
    span: Span | None
    message: str
    subject: tuple[str, ...] = ()
    label: str = ""
    also: tuple[Label, ...] = ()
    numbers: tuple[Number, ...] = ()
    note: str = ""
    help: str = ""
    accepted: Acceptance | None = None
    mends: tuple[Mend, ...] = ()
    wants: tuple[str, ...] = ()
    asks_for: tuple[str, ...] = ()
    follow: tuple[Diagnostic, ...] = ()
    otherwise: str = ""

    @property
    def advice(self) -> str:
        """What to do, in one line: each mend's words, then the help, as alternatives; else what is left."""
        return "; or ".join(filter(None, (*(mend.words for mend in self.mends), self.help))) or self.otherwise

    @property
    def fingerprint(self) -> str:
        """Sixteen hexadecimal digits that stay when the finding's line moves."""
        import hashlib  # its import costs more than most checks, and few runs need it

        text = "\n".join((self.kind.name, *self.subject)) if self.subject else f"{self.kind.name}\n{self.message}"
        return hashlib.sha256(text.encode("utf-8", "surrogatepass")).hexdigest()[:16]


class Kind(Record):
    """A rule: the name by which it is known, its usual level, its page (the docstring of the module that finds it).

    `rule` is the condition in one line and `source` where it comes from; both are printed under each finding. `once` are names
    that it had before: an `accept` in a rig of that time still bears one. The first `about` of a finding's subjects tell what is
    wrong, those behind them by whose doing: with other doers it is the same trouble still. 0 stands for all.
    """

    name: str
    level: Level
    page: str | None
    rule: str
    source: str
    once: tuple[str, ...] = ()
    about: int = 0

    def at(
        self,
        span: Span | None,
        message: str,
        *,
        subject: tuple[str, ...] = (),
        label: str = "",
        also: tuple[Label, ...] = (),
        numbers: tuple[Number, ...] = (),
        note: str = "",
        help: str = "",
        mends: tuple[Mend, ...] = (),
        wants: tuple[str, ...] = (),
        asks_for: tuple[str, ...] = (),
        otherwise: str = "",
        level: Level | None = None,
    ) -> Diagnostic:
        """A finding of this kind at `span`; `level` only where a rule has two. Each name of `subject` is kept once, and none that is empty."""
        return Diagnostic(
            self,
            self.level if level is None else level,
            span,
            message,
            tuple(dict.fromkeys(filter(None, subject))),
            label,
            also,
            numbers,
            note,
            help,
            None,
            mends,
            wants,
            asks_for,
            (),
            otherwise,
        )

    def cant_check(
        self,
        span: Span | None,
        message: str,
        *,
        subject: tuple[str, ...] = (),
        help: str = "",
        mends: tuple[Mend, ...] = (),
        wants: tuple[str, ...] = (),
        asks_for: tuple[str, ...] = (),
    ) -> Diagnostic:
        """The finding that this rule could not be judged because a fact is missing."""
        return self.at(
            span,
            message,
            subject=subject,
            help=help,
            mends=mends,
            wants=wants,
            asks_for=asks_for,
            level=Level.CANT_CHECK,
        )


_LINE_NUMBER = re.compile(r"\blines? \d")


def tells_line(finding: Diagnostic) -> bool:
    """Whether its words tell the number of a line, which another edit moves."""
    texts = (finding.message, finding.label, finding.note, finding.advice, *(label.text for label in finding.also))
    return any(map(_LINE_NUMBER.search, texts))


Report = Callable[[Diagnostic], None]
