"""Findings with mends -> the same, each mend tried: what does not do what it says is not told."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Callable, Sequence
from functools import partial
from typing import TypeVar

from rigc.analysis.findings.known_findings import KnownFindings, known_findings
from rigc.analysis.kept import Kept
from rigc.analysis.leads.leads import Leads
from rigc.analysis.results import Beside, Results
from rigc.compile import Compiled, compile_rig, read_rig
from rigc.diagnostics.diagnostic import Diagnostic, Level
from rigc.diagnostics.mend import Mend
from rigc.edit.change import with_text
from rigc.edit.mended import CannotMend, mended
from rigc.edit.rewritten import rewritten
from rigc.loader import Loader
from rigc.record import Record
from rigc.source import Said, Source, alike
from rigc.syntax.nodes import File
from rigc.syntax.parsed import Lent, Parsed, Reader

T = TypeVar("T")

MOST_LINES = 20_000
"""So many lines of sources that say something are compiled at most to try the mends of one run; some two dozen mends of a touring rig."""
_MOST_KEPT = 8
"""Of so many trials the findings are kept: to keep one takes some fifth of what it takes."""

UNREADABLE = "malformed-statement"


class Tried(Record):
    """What a mend came to: the new texts by the names of their sources, and what speaks against it (nothing if it works)."""

    texts: dict[str, str]
    against: str

    @property
    def works(self) -> bool:
        """Whether the finding is gone, and nothing as bad has come."""
        return not self.against


class Bench:
    """A compiled rig on which mends are tried. It reads each file once, and keeps nothing of what it tries."""

    def __init__(
        self, made: Compiled, load: Loader, name: str, reader: Reader, on: str | None = None, effort: int | None = None
    ) -> None:
        self.made = made
        self.load = load
        self.name = name
        self.reader = reader
        self.on = on
        self.effort = effort
        self.reserved = reader.reserved
        self._parsed: dict[tuple[str, str, bytes], Parsed] = {}
        self._kept_trials = 0
        lines = sum(Said(source.text).text.count("\n") for source in made.sources)
        self.left = max(1, MOST_LINES // max(1, lines))

    def proved(self, finding: Diagnostic) -> Diagnostic:
        """The finding with those of its mends that work; where none does and nothing else is advised, with what speaks against them. When too
        many were tried, the rest are left out, and said to be."""
        if not finding.mends or finding.accepted is not None:
            return finding
        working: list[Mend] = []
        against: list[str] = []
        for mend in finding.mends:
            if self.left == 0:
                more = "`rigc mend` tries the ways to mend it"
                help = "; or ".join(filter(None, (finding.help, more)))
                cut: Diagnostic = finding.replace(mends=tuple(working), help=help)
                return cut
            self.left -= 1
            tried = self.tried(finding, mend)
            if tried.works:
                working.append(mend)
            else:
                against.append(f"to {mend.words} {tried.against}")
        if not working:
            working += self._first_that_works(finding, self._whole_lines(finding))
        told = bool(working) or bool(finding.help) or bool(finding.otherwise)
        left: Diagnostic = finding.replace(mends=tuple(working), help=finding.help if told else _nothing_does(against))
        return left

    def ways(self, finding: Diagnostic, tried: Callable[[tuple[Mend, ...]], list[T]]) -> list[T]:
        """What `tried` makes of the finding's own mends; where that is nothing, of those that write its whole line anew."""
        return tried(finding.mends) or tried(self._whole_lines(finding))

    def _whole_lines(self, finding: Diagnostic) -> tuple[Mend, ...]:
        """The mends that write the finding's line anew, for where each of its own leaves something wrong in that line; none is tried yet."""
        if finding.span is None or finding.span.source not in self.made.sources:
            return ()
        return rewritten(finding, self.reader, self.parse(finding.span.source))

    def tried(self, finding: Diagnostic, mend: Mend) -> Tried:
        """A mend works when the finding is gone and no error or warning has come; while names or quantities are wrong, none of those.
        What only stood behind a line that could not be read, and shows now that it can, has not come by the mend."""
        try:
            texts = mended(mend, self.made.sources, self._file)
        except CannotMend as fault:
            return Tried({}, f"can't be written: {fault}")
        beside = self.made.results
        after = self.after(texts) if beside is None else self._after_beside(texts, beside, mend)
        return Tried(texts, _against(finding, self.made, after, set(texts)))

    def after(self, texts: dict[str, str]) -> Compiled:
        """The rig with these texts in place of its own, by the names of their sources; nothing is advised on what is then found, and no place is
        sought for long: of a rig that could not be read only counts that it can be."""
        return compile_rig(self._with(texts), self.name, self, on=self.on, effort=0, advice=False)

    def _after_beside(self, texts: dict[str, str], beside: Results, mend: Mend) -> Compiled:
        """As `after`, of what no place is told: statements, things and results that the texts do not touch are those of the rig itself."""
        load, reader = self._with(texts), _Lending(self)
        read = read_rig(load, self.name, reader, self.made.known)
        known = None
        if self._kept_trials < _MOST_KEPT:
            self._kept_trials += 1
            known = partial(
                known_findings,
                kept=beside.get(Kept),
                sources=(*self.made.sources, *map(load, texts)),
                of=mend.words,
                like=beside.get(KnownFindings),
            )
        near = Beside(beside, known=known)
        return compile_rig(
            load, self.name, reader, on=self.on, effort=self.effort, advice=False, read=read, beside=near
        )

    def _first_that_works(self, finding: Diagnostic, mends: Sequence[Mend]) -> list[Mend]:
        for mend in mends[: self.left]:
            self.left -= 1
            if self.tried(finding, mend).works:
                return [mend]
        return []

    def on_top(self, tried: Tried) -> Bench:
        """A bench on which the mend is made; what is then found is advised on, which a trial does not do."""
        load = self._with(tried.texts)
        made = compile_rig(load, self.name, self, on=self.on, effort=self.effort)
        above = Bench(made, load, self.name, self.reader, self.on, self.effort)
        above._parsed = self._parsed
        return above

    def parse(self, source: Source, near: Parsed | None = None) -> Parsed:
        """As the reader does, each text once; what is no file of the rig, but one of its files mended, is only tried."""
        key = (source.name, source.origin, source.data)
        if key not in self._parsed:
            self._parsed[key] = self.reader.parse(source, near or self.own(source))
        return self._parsed[key]

    def own(self, source: Source) -> Parsed | None:
        """The file of the rig for which a mended one stands."""
        found = next((each for each in self.made.sources if each.name == source.name), None)
        return None if found is None or found is source else self.parse(found)

    def _file(self, source: Source) -> File:
        return self.parse(source).file

    def _with(self, texts: dict[str, str]) -> Loader:
        sources = {name: with_text(self.load(name), text) for name, text in texts.items()}

        def load(name: str) -> Source:
            found = self.load(name)
            return sources.get(found.name, found)

        return load


class _Lending:
    """Reads what is tried on a bench; the statements that a mend does not touch are those of the rig's own files."""

    def __init__(self, bench: Bench) -> None:
        self.reserved = bench.reserved
        self._bench = bench

    def parse(self, source: Source, near: Parsed | None = None) -> Parsed:
        """As the bench, but for a mended file, which is not read as a whole."""
        own = near or self._bench.own(source)
        if own is None or source in self._bench.made.sources:
            return self._bench.parse(source)
        return self._bench.reader.parse(source, Lent(own.file, own.findings, own.skipped))


def _nothing_does(against: Sequence[str]) -> str:
    """What is advised where no mend works: what was tried, and why it does not do."""
    return f"no single change that was tried mends it: {'; '.join(against)}. More than one thing must change together"


def _against(finding: Diagnostic, before: Compiled, after: Compiled, changed: set[str]) -> str:
    """What speaks against a mend that `changed` these sources, in words that follow it; nothing if it works."""
    shows = _Shown(before, after, changed) if finding.kind.name == UNREADABLE else None
    come = _come(before, after, shows)
    if come is not None:
        return f"would bring the {come.level.word} that {come.message}"
    return "" if _gone(finding, before, after) else "would not change it"


def _gone(finding: Diagnostic, before: Compiled, after: Compiled) -> bool:
    """Whether there are fewer of it now, by the names it bears and by the jacks of the leads it tells of."""
    mark = _by_ends(finding, before)
    was, now = (
        [each for each in made.findings if each.accepted is None and each.kind.name == finding.kind.name]
        for made in (before, after)
    )
    fewer = _times(finding, now) < _times(finding, was)
    return fewer and sum(_by_ends(each, after) == mark for each in now) < sum(
        _by_ends(each, before) == mark for each in was
    )


def _times(finding: Diagnostic, among: Sequence[Diagnostic]) -> int:
    return sum(each.fingerprint == finding.fingerprint for each in among)


def _by_ends(finding: Diagnostic, made: Compiled) -> tuple[str, ...]:
    """What tells a finding apart whatever numbers leads have: a mend that states a lead moves those that rigc gave."""
    if not finding.subject:
        return (finding.fingerprint,)
    return (finding.kind.name, *(_ends(name, made) for name in finding.subject))


def _ends(name: str, made: Compiled) -> str:
    """A lead's two jacks in place of its number; any other name as it is."""
    if made.results is None or not _LEAD.fullmatch(name):
        return name
    lead = made.results.get(Leads).of(name)
    return name if lead is None else f"{lead.start} -> {lead.end}"


def _come(before: Compiled, after: Compiled, shows: _Shown | None) -> Diagnostic | None:
    """An error or warning that has come. A rig that was not computed at all had others that nobody could see."""
    if before.results is None and after.results is not None:
        return None
    here, there = _errors_and_warnings(after), _errors_and_warnings(before)
    new = Counter(_mark(each, after) for each in here) - Counter(_mark(each, before) for each in there)
    come = (each for each in here if _mark(each, after) in new)
    return next((each for each in come if shows is None or not shows.only(each)), None)


class _Shown:
    """What was wrong before, and shows as a line can be read now: it lies elsewhere than in what the mend wrote."""

    def __init__(self, before: Compiled, after: Compiled, changed: set[str]) -> None:
        texts = {source.name: source.text for source in before.sources}
        pieces = {each.name: _Piece(texts.get(each.name, ""), each) for each in after.sources if each.name in changed}
        self.written = {name: piece.lines for name, piece in pieces.items()}
        self.gone = {name for piece in pieces.values() for name in piece.names_gone}

    def only(self, finding: Diagnostic) -> bool:
        """Whether no place of it is in a line that was written, and it does not miss a name that the mend took away."""
        spans = (finding.span, *(label.span for label in finding.also))
        return self.gone.isdisjoint(finding.subject) and not any(
            span is not None and span.line in self.written.get(span.source.name, ()) for span in spans
        )


class _Piece:
    """The lines of a source that a mend wrote, and the words that stood there before and do not now."""

    def __init__(self, old: str, new: Source) -> None:
        start, end = alike(old, new.text)
        first, last = new.position(start)[0], new.position(len(new.text) - end)[0]
        self.lines = range(first, last + 1)
        begins, ends = old.rfind("\n", 0, start) + 1, old.find("\n", len(old) - end)
        before = old[begins : ends if ends >= 0 else len(old)]
        now = "\n".join(map(new.line, self.lines))
        self.names_gone = set(_WORD.findall(before)) - set(_WORD.findall(now))


_WORD = re.compile(r"[A-Za-z][\w-]*")


def _errors_and_warnings(made: Compiled) -> list[Diagnostic]:
    bad = (Level.ERROR, Level.WARNING)
    return [each for each in made.findings if each.level in bad and each.accepted is None]


def _mark(finding: Diagnostic, made: Compiled) -> tuple[str, ...]:
    """What a finding is about, but for what may be another one after a mend, with the same found there: which outlet of a supply, which
    number of a lead, who does it."""
    if not finding.subject or made.results is None:
        return (finding.fingerprint,)
    if finding.span is not None and all(map(_LEAD.fullmatch, finding.subject)):
        return (finding.kind.name, finding.span.source.name, finding.span.text)
    supplies = made.results.rig.supplies
    names = (
        name.partition(".")[0] if name.partition(".")[0] in supplies else _ends(name, made)
        for name in finding.subject[: finding.kind.about or None]
    )
    return (finding.kind.name, *names)


_LEAD = re.compile(r"[A-Z]+[0-9]+[a-z]?")
