"""Names -> what they declare: unknown ones, ones declared twice, reserved ones; with the nearest declared name."""

from __future__ import annotations

from collections.abc import Collection, Iterable

from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Report
from rigc.diagnostics.mend import Delete, Mend, Replace
from rigc.diagnostics.near import nearest
from rigc.diagnostics.wording import listed
from rigc.source import Span
from rigc.syntax.nodes import Word

NOWHERE = "declared nowhere"
UNKNOWN = Kind(
    "unknown-name",
    Level.ERROR,
    """A name is used that nothing declares.

    Why it matters: a typing slip must never make a new thing on a sheet.
    What to do: correct the name, or declare it.
    Source: the language reference, grammar/README.md.
    """,
    "a name is declared before it means anything",
    "the language reference, grammar/README.md",
)
RESERVED = Kind(
    "reserved-name",
    Level.ERROR,
    """A reserved word of the language names a thing.

    Why it matters: 'others from mill5' would no longer mean what it says.
    What to do: choose another name; a jack or an outlet may bear any word.
    Source: the language reference, grammar/README.md.
    """,
    "a reserved word never names a declared thing",
    "the language reference, grammar/README.md",
)
MISUSED = Kind(
    "misused-name",
    Level.ERROR,
    """A name is declared, but as something that can't stand at this place.

    Why it matters: a unit can't feed another, a cable can't be placed, a power lead is not made of audio cable.
    What to do: use a name of the kind that belongs there.
    Source: the language reference, grammar/README.md.
    """,
    "each place of a statement wants a certain kind of name",
    "the language reference, grammar/README.md",
)
SAID_TWICE = Kind(
    "said-twice",
    Level.ERROR,
    """A fact that a thing has once is stated twice; a line stands twice in a block, or a name twice in a list.

    Why it matters: rigc can't know which of the two is true, or what a second one is to add.
    What to do: delete one of them. Notes, and what is kept free for later, may stand twice.
    Source: the language reference, grammar/README.md.
    """,
    "one fact is stated once",
    "the language reference, grammar/README.md",
)
TAKEN = Kind(
    "name-taken",
    Level.ERROR,
    """Two things or two leads bear the same name or number, or a retired number is used again.

    Why it matters: a label in the truck would point to two leads; a number once given belongs to that lead for ever.
    What to do: give a fresh name or number; gaps are fine.
    Source: common practice, no source.
    """,
    "names and numbers are given once and never again",
    "common practice, no source",
)

UNCLEAR = Kind(
    "unclear-jack",
    Level.ERROR,
    """A statement names a thing that has several jacks which could be meant, or none of the kind that is wanted.

    Why it matters: a lead goes into one jack; guessing which would put it on the sheet as if it were known.
    What to do: name the jack behind a dot, or declare which two jacks are a stereo pair.
    Source: the language reference, grammar/README.md.
    """,
    "a jack is named where a thing has more than one that fits",
    "the language reference, grammar/README.md",
)
LOOSE_LEAD = Kind(
    "loose-lead",
    Level.ERROR,
    """A lead is stated between two jacks that no chain, loop, MIDI, control or power statement joins.

    Why it matters: either the number is on the wrong line, or a connection is missing from the design.
    What to do: correct the lead's ends, or add the connection.
    Source: the language reference, grammar/README.md.
    """,
    "a lead belongs to a stated connection",
    "the language reference, grammar/README.md",
)


_CALLED = {
    "amplifier": "amp", "guitar": "instrument", "bass": "instrument", "mixer": "desk", "pa": "desk", "foh": "desk",
    "psu": "supply", "brick": "supply", "pedalboard": "deck", "board": "deck",
}  # fmt: skip
"""What people call a thing by its kind; common speech, no source."""
_FEW = 8
_MOST_COMPARED = 300_000
"""Names with which those that nothing declares are compared, in all: to find what was meant takes some microseconds for each."""


class Scope:
    """The declared names of one family (things, cables, scenarios ...), and where they were found to be `mentioned`."""

    def __init__(self, family: str, reserved: frozenset[str], report: Report) -> None:
        self.family = family
        self.reserved = reserved
        self.report = report
        self.declared: dict[str, tuple[str, Word]] = {}
        self.mentioned: list[Word] = []
        self._compared = 0

    def declare(self, kind: str, name: Word) -> bool:
        """Takes a name up; False after a finding when it is taken or reserved."""
        before = self.declared.get(name.text)
        if before is not None:
            self.report(twice(f"'{name.text}'", name, before[1], "give one of them another name"))
            return False
        if name.text in self.reserved:
            self.report(
                RESERVED.at(
                    name.span,
                    f"'{name.text}' is a word of the language and can't name {article(kind)}",
                    label="a reserved word",
                    help=f"call it for example {name.text}-1",
                )
            )
        self.declared[name.text] = (kind, name)
        return True

    def find(self, name: Word, kinds: Iterable[str], wanted: str, fitting: Collection[str] | None = None) -> str | None:
        """The name, when it is declared as one of `kinds`; None after a finding. `wanted` says in words what belongs there.

        `fitting` are the names to offer instead, where not each name of these kinds would do.
        """
        allowed = tuple(kinds)
        if name.text in self.declared:
            kind, first = self.declared[name.text]
            if not allowed or kind in allowed:
                self.mentioned.append(name)
                return name.text
            self.report(
                MISUSED.at(
                    name.span,
                    f"'{name.text}' is {article(kind)}; {wanted} goes here",
                    subject=(name.text,),
                    label=f"{wanted} goes here",
                    also=(Label(first.span, "declared here"),),
                    help=self._there_are(allowed, fitting) or f"name {wanted}",
                )
            )
            return None
        self.report(self._unknown(name, allowed, wanted, fitting))
        return None

    def _unknown(self, name: Word, kinds: tuple[str, ...], wanted: str, fitting: Collection[str] | None) -> Diagnostic:
        if (dashed := self._with_dash(name)) is not None:
            return dashed
        near = self._near(name.text, kinds, fitting) or self._only_one(name.text, kinds, fitting)
        also = (Label(self.declared[near][1].span, f"'{near}' is declared here"),) if near else ()
        first, _, count = name.text.rpartition("-")
        if near and near == first and count.isdigit():  # `lant-2` is a second one, not the one that there is
            return UNKNOWN.at(
                name.span,
                f"nothing declares '{name.text}'; {wanted} goes here",
                subject=(name.text,),
                label=NOWHERE,
                also=also,
                help=f"declare '{name.text}', as a block that is `like {near}` if it is the same; or write '{near}'",
            )
        return UNKNOWN.at(
            name.span,
            f"nothing declares '{name.text}'; {wanted} goes here",
            subject=(name.text,),
            label=f"did you mean '{near}'?" if near else NOWHERE,
            also=also,
            help=("" if near else self._there_are(kinds, fitting))
            or f"declare '{name.text}'" + ("" if near else ", or correct the name"),
            mends=corrected(name, near) if near else (),
        )

    def _near(self, typed: str, kinds: tuple[str, ...], fitting: Collection[str] | None) -> str:
        """The name that was meant; none once too many were compared."""
        self._compared += len(self.declared)
        return nearest(typed, self._fitting(kinds, fitting)) if self._compared <= _MOST_COMPARED else ""

    def _only_one(self, typed: str, kinds: tuple[str, ...], fitting: Collection[str] | None) -> str:
        """The one thing of a kind, where it is called by what it is: `amp`."""
        kind = _CALLED.get(typed, typed)
        names = self._fitting((kind,), fitting) if self._compared <= _MOST_COMPARED else []
        return names[0] if len(names) == 1 and (not kinds or kind in kinds) else ""

    def _with_dash(self, name: Word) -> Diagnostic | None:
        """`di-thru` for `di.thru`: a thing and its jack joined by a hyphen."""
        parts = [name.text.rpartition("-")[::2]] if self.family == "thing" and "-" in name.text else []
        for thing, jack in parts:
            if (
                thing in self.declared and jack[:1].isalpha()
            ):  # `lant-2` names another thing: no jack begins with a digit
                right = f"{thing}.{jack}"
                return UNKNOWN.at(
                    name.span,
                    f"nothing declares '{name.text}'; a jack stands behind a dot",
                    subject=(name.text,),
                    label=f"did you mean '{right}'?",
                    also=(Label(self.declared[thing][1].span, f"'{thing}' is declared here"),),
                    help=f"declare '{name.text}'",
                    mends=corrected(name, right),
                )
        return None

    def _fitting(self, kinds: tuple[str, ...], fitting: Collection[str] | None) -> list[str]:
        return [
            other
            for other, (kind, _) in self.declared.items()
            if (not kinds or kind in kinds) and (fitting is None or other in fitting)
        ]

    def _there_are(self, kinds: tuple[str, ...], fitting: Collection[str] | None) -> str:
        """The names to choose from, where they are few."""
        names = self._fitting(kinds, fitting) if self._compared <= _MOST_COMPARED else ()
        return f"name one that is declared: {listed(names, 'or')}" if 0 < len(names) <= _FEW else ""


def corrected(name: Word, right: str, said: str = "") -> tuple[Mend, ...]:
    """The mend that writes another name in place of this one; `said` is how it is told where that is more than the name."""
    return (Mend(f"write '{said or right}'", (Replace(name.span, right),)),)


def corrected_text(span: Span, right: str) -> tuple[Mend, ...]:
    """The mend that writes another text between the quotes of this one."""
    written = '"' + right.replace("\\", "\\\\").replace('"', '\\"').replace("\n", "\\n") + '"'
    return (Mend(f"write {written}", (Replace(span, written),)),)


def twice(what: str, again: Word, first: Word, help: str) -> Diagnostic:
    """The finding that a name or number is given a second time."""
    return TAKEN.at(
        again.span,
        f"{what} is given twice",
        subject=(again.text,),
        label="given again here",
        also=(Label(first.span, "first given here"),),
        help=help,
    )


def stated_twice(what: str, again: Word, first: Word) -> Diagnostic:
    """As `twice`, of what two lines of blocks say where one is wanted: either may go."""
    lines = {each.span.source.line(each.span.line).strip(): each for each in (first, again)}
    if len(lines) == 1:
        return twice(what, again, first, "").replace(mends=(Mend("delete the second line", (Delete(again.span),)),))  # type: ignore[no-any-return]
    mends = tuple(Mend(f"delete '{line}'", (Delete(each.span),)) for line, each in lines.items())
    return twice(what, again, first, "").replace(mends=mends)  # type: ignore[no-any-return]


def article(kind: str) -> str:
    """The kind with its article."""
    return f"an {kind}" if kind[0] in "aeio" else f"a {kind}"
