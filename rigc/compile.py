"""compile_rig: every phase in order, on one screen. Sources in; findings and, on demand, documents out."""

from __future__ import annotations

import hashlib
import re
from collections.abc import Callable
from typing import TYPE_CHECKING

from rigc import __version__
from rigc.analysis.acceptance import accepted
from rigc.analysis.findings.findings import Findings
from rigc.analysis.findings.follow_on import folded
from rigc.analysis.findings.known_findings import known_findings
from rigc.analysis.half_written import only_lines, the_rest
from rigc.analysis.kept import NOTHING_KEPT, Kept
from rigc.analysis.laying.placed import placed
from rigc.analysis.results import Beside, Results
from rigc.analysis.revision.no_comparison import KIND as NO_COMPARISON
from rigc.analysis.revision.unfit_release import released
from rigc.diagnostics.diagnostic import Diagnostic, Level
from rigc.diagnostics.mend import Replace
from rigc.diagnostics.order import in_order
from rigc.gather import Gathered, gather
from rigc.loader import Loader
from rigc.model.resolve import KnownThings, Resolved, resolved
from rigc.model.resolve.record.built import NEITHER
from rigc.model.rig import Rig
from rigc.model.slips.stock_not_used import with_use_lines
from rigc.previous import Before, before, stood_before
from rigc.record import Record
from rigc.source import Source, Span
from rigc.syntax import nodes
from rigc.syntax.parsed import Reader

if TYPE_CHECKING:
    from rigc.reports.content import Document, Sheet, TitleBlock  # what is only checked needs none of the sheets


class Compiled:
    """A rig with its findings in order; its documents are made when asked for. `known` are the things that its blocks came to."""

    def __init__(
        self,
        findings: tuple[Diagnostic, ...],
        results: Results | None,
        sources: tuple[Source, ...],
        known: KnownThings | None = None,
    ) -> None:
        self.findings = findings
        self.results = results
        self.sources = sources
        self.known = KnownThings() if known is None else known

    @property
    def has_errors(self) -> bool:
        """Whether an error stands that was not accepted."""
        return any(finding.level is Level.ERROR and finding.accepted is None for finding in self.findings)

    def documents(self, sheet_names: tuple[str, ...] = (), draft: bool = False) -> tuple[Document, ...]:
        """The sheets of these names or codes (all if none are given) with their title blocks; none where there is no rig.

        Raises `NoSuchCode`.
        """
        if self.results is None:
            return ()
        from rigc.reports.folder import documents

        return documents(self.results, self._title(draft), sheet_names, self.findings)

    def loose(self, sheet_name: str, draft: bool = False) -> Document | None:
        """One sheet with its title block, without number and code, so that the others need not be made; None where there is no rig."""
        if self.results is None:
            return None
        from rigc.reports.content import Document

        (sheet,) = self.sheets((sheet_name,))
        return Document(sheet, self._title(draft).replace(sheet=sheet.title), 1, 1)

    def _title(self, draft: bool) -> TitleBlock:
        from rigc.reports.content import TitleBlock

        assert self.results is not None
        head = self.results.rig.head
        return TitleBlock(
            head.title,
            head.name,
            head.client,
            "",
            head.letter,
            head.date,
            head.drawn,
            head.checked,
            self.hash,
            draft,
            self.has_errors,
        )

    def sheets(self, names: tuple[str, ...]) -> tuple[Sheet, ...]:
        """The sheets and views of these names or codes as they are in themselves; none where there is no rig. Raises `NoSuchCode`."""
        if self.results is None:
            return ()
        from rigc.reports.folder import alone, is_name

        if all(is_name(name) for name in names):
            return alone(self.results, names)
        return tuple(each.sheet for each in self.documents(names))

    @property
    def hash(self) -> str:
        """Ten hexadecimal digits over the bytes of every file read, in the order of their names, and rigc's version."""
        digest = hashlib.sha256(__version__.encode())
        for source in sorted(self.sources, key=lambda each: each.name):
            digest.update(f"\0{source.name}\0{len(source.data)}\0".encode("utf-8", "surrogatepass") + source.data)
        return digest.hexdigest()[:10]


class Read(Record):
    """A rig that was read, before anything is computed: its statements, what they say, and what is wrong with them."""

    gathered: Gathered
    resolved: Resolved
    findings: tuple[Diagnostic, ...]
    known: KnownThings


def read_rig(load: Loader, name: str, reader: Reader, known: KnownThings | None = None) -> Read:
    """Reads the named file and what it uses, and resolves names and quantities; what is `known` of the same blocks is not made again.
    Raises `Unreadable` where the named file can't be read."""
    gathered = gather(load, name, reader)
    known = KnownThings() if known is None else known
    made = resolved(gathered.statements, reader.reserved, _end(load(name)), known)
    told = _not_following(made.findings, gathered)
    return Read(gathered, made, (*gathered.findings, *with_use_lines(told, load, reader, gathered.sources)), known)


def compile_rig(
    load: Loader,
    name: str,
    reader: Reader,
    *,
    on: str | None = None,
    effort: int | None = None,
    against: Callable[[Rig], Before] | None = None,
    advice: bool = True,
    half_written: bool = False,
    between: Callable[[], None] | None = None,
    read: Read | None = None,
    watch: Callable[[int, int], None] | None = None,
    kept: Kept = NOTHING_KEPT,
    beside: Beside | None = None,
) -> Compiled:
    """Compiles the file of that name. `on` is the day (ISO date) at which accepted findings are judged; else the revision's. `effort` is how many steps are
    spent on places for what has none (None: as many as are usual). `against` gives the revision to compare with, seen
    from this rig (None: the one that the rig follows, if any). Without `advice` the same is found, but no places are sought for what is in
    the way. A `half_written` rig is computed all the same where nothing else is wrong than lines that can't be read, without these
    and without what only follows from that. `between` is called before each computation, and may raise to stop. `watch` is told now and then how many steps of how many the search for
    places has taken.
    What was `read` already is not read again. What is `kept` of earlier runs is not made again. `beside` are the results of a rig that
    differs little: what reads no part that differs is taken from there.

    An error in reading or in names and quantities stops before anything is computed. Raises `Unreadable` where the
    named file can't be read.
    """
    read = read_rig(load, name, reader) if read is None else read
    gathered, rig, findings = read.gathered, read.resolved.rig, read.findings
    errors = any(finding.level is Level.ERROR for finding in findings)
    through = (
        half_written
        and errors
        and not any(finding.level is Level.ERROR for finding in read.resolved.findings)
        and only_lines(gathered)
    )
    if rig is None or (errors and not through):
        return Compiled(in_order(findings), None, gathered.sources)
    begun = begin(
        load,
        read,
        reader,
        effort=effort,
        against=against,
        advice=advice,
        between=between,
        watch=watch,
        kept=kept,
        beside=beside,
    )
    findings = (*_of_those_compared(findings, begun.findings), *begun.findings)
    results, rig = begun.results, begun.results.rig
    computed = results.get(Findings).all
    if not results.sound:
        results = results.alone()
        computed = results.get(Findings).all
    findings = (*findings, *(the_rest(computed, gathered) if through else computed))
    findings = accepted(findings, rig.accepts, on or rig.head.date)
    findings = folded(released(findings, rig.head))
    return Compiled(in_order(findings), results, begun.sources, read.known)


def _of_those_compared(findings: tuple[Diagnostic, ...], earlier: tuple[Diagnostic, ...]) -> tuple[Diagnostic, ...]:
    """The findings, without those on blocks of the revision that is followed, but called by another letter."""
    there = {letter for each in earlier if each.kind is NO_COMPARISON for letter in each.subject[1:]}
    return tuple(each for each in findings if each.label != NEITHER or not there & {*each.subject})


class Begun(Record):
    """What follows from a rig that was read, each value computed when it is first asked for; what was found on the way there, and
    the sources, those of the revision before too."""

    results: Results
    findings: tuple[Diagnostic, ...]
    sources: tuple[Source, ...]


def begin(
    load: Loader,
    read: Read,
    reader: Reader,
    *,
    effort: int | None = None,
    against: Callable[[Rig], Before] | None = None,
    advice: bool = True,
    between: Callable[[], None] | None = None,
    watch: Callable[[int, int], None] | None = None,
    kept: Kept = NOTHING_KEPT,
    beside: Beside | None = None,
) -> Begun:
    """The results of a rig before anything is asked of them; the rest as for `compile_rig`. What was read must hold a rig."""
    assert read.resolved.rig is not None
    first = read.resolved.rig
    near = None if beside is None or beside.goes_on or beside.results is None else beside.results.rig
    if against is None:
        earlier = before(load, read.gathered, first, reader, effort, kept=kept)
        stood = None if earlier.previous.results is None else earlier.previous.results.rig
        rig, lacking = placed(first, effort, watch, stood, advice, near)
    else:
        rig, lacking = placed(first, effort, watch, stood_before(load, read.gathered, first, reader, effort), advice)
        earlier = against(rig)
    sources = tuple(dict.fromkeys((*read.gathered.sources, *earlier.sources)))
    given: tuple[object, ...] = (kept, *(() if advice else _no_places()))
    if beside is None:
        given = (*given, known_findings(rig, earlier.previous, given, kept=kept, sources=sources))
    results = Results(rig, earlier.previous, given, between, beside)
    return Begun(results, (*lacking, *earlier.findings), sources)


def _no_places() -> tuple[object, ...]:
    from rigc.analysis.laying.place_finder import quiet_finder

    return (quiet_finder(),)


def _end(source: Source) -> Span:
    last = max(0, len(source.text.rstrip()) - 1)
    start = source.text.rfind("\n", 0, last) + 1
    return Span(source, start, max(start, last + 1))


def _not_following(told: tuple[Diagnostic, ...], gathered: Gathered) -> tuple[Diagnostic, ...]:
    """The findings on names, without those that only follow from a line that could not be read."""
    if not gathered.skipped and not gathered.findings:
        return told
    unread = {word for span in gathered.skipped for word in re.findall(r"[A-Za-z][\w-]*", span.text)}
    unread |= {word.lower() for word in unread}  # a name that is told to be written in small letters
    unread |= {
        f"{what.replace('-', ' ')} {number}"
        for span in gathered.skipped
        for what, number in re.findall(r"\b(change|field-note)[ \t]+(\d+)", span.text)
    }
    if any(finding.kind.name in ("unusable-file", "circle-of-files") for finding in gathered.findings):
        return tuple(
            finding
            for finding in told
            if finding.kind.name not in ("unknown-name", "misused-name", "unclear-jack", "loose-lead")
        )
    told = _of_blocks_of_their_kind(_of_whole_jacks(told, gathered), gathered)
    told = _of_whole_heads(_of_whole_blends(told, gathered), gathered)
    nameless = any(re.match(r'\s*[a-z-]+\s+"', span.text) for span in gathered.skipped)
    hidden = ("dead-end", *(("unknown-name",) if nameless else ()))
    return tuple(finding for finding in told if finding.kind.name not in hidden and not unread & _words(finding))


def _of_blocks_of_their_kind(told: tuple[Diagnostic, ...], gathered: Gathered) -> tuple[Diagnostic, ...]:
    """The findings without those in or on a block whose first word is told to be another: what it names is of the wrong kind for that reason."""
    heads = [
        edit.span
        for finding in gathered.findings
        for mend in finding.mends
        for edit in mend.edits
        if finding.kind.name == "malformed-statement"
        and isinstance(edit, Replace)
        and re.fullmatch("[a-z-]+", edit.text)
    ]
    blocks = [
        each
        for each in gathered.statements
        if hasattr(each, "name") and any((each.span.source, each.span.start) == (at.source, at.start) for at in heads)
    ]
    names = {str(each.name) for each in blocks}

    def follows(finding: Diagnostic) -> bool:
        at = finding.span
        within = at is not None and any(
            at.source is each.span.source and each.span.start <= at.start < each.span.end for each in blocks
        )
        return within or bool(names & _words(finding))

    return tuple(finding for finding in told if not blocks or not follows(finding))


def _of_whole_heads(told: tuple[Diagnostic, ...], gathered: Gathered) -> tuple[Diagnostic, ...]:
    """The findings without the one that misses a revision in a rig block of which a line can't be read."""
    heads = [each.span for each in gathered.statements if isinstance(each, nodes.Rig)]
    torn = any(
        head.source is span.source and head.start <= span.start < head.end
        for head in heads
        for span in gathered.skipped
    )
    return tuple(each for each in told if not torn or each.kind.name != "no-rig")


def _of_whole_blends(told: tuple[Diagnostic, ...], gathered: Gathered) -> tuple[Diagnostic, ...]:
    """The findings without those on the shares of a blend of which a line can't be read."""
    blends = {
        str(each.name)
        for each in gathered.statements
        if isinstance(each, nodes.Blend)
        and any(
            span.source is each.span.source and each.span.start <= span.start < each.span.end
            for span in gathered.skipped
        )
    }
    return tuple(each for each in told if each.level is not Level.WARNING or not blends & set(each.subject))


_JACK_LINE = re.compile(
    r"\s*(\d+\s+)?(input|output|inlet|outlet|midi|expression|control|usb|loop|pair|jack)s?\b|.*\d\s*V\b.*\d\s*m?A\b"
)
"""A line about a jack, by its first word, or about an outlet, by its figures."""


def _of_whole_jacks(told: tuple[Diagnostic, ...], gathered: Gathered) -> tuple[Diagnostic, ...]:
    """The findings without those that miss a jack, an outlet or a loop of a thing one of whose lines about these can't be read."""
    lines = [span for span in gathered.skipped if _JACK_LINE.match(span.text)]
    blocks = [
        each
        for each in gathered.statements
        if any(each.span.source is line.source and each.span.start <= line.start < each.span.end for line in lines)
    ]
    names = {str(each.name) for each in blocks if hasattr(each, "name")}
    named = [each for each in gathered.statements if getattr(each, "like", None) is not None]
    while more := {str(each.name) for each in named if str(each.like) in names} - names:  # type: ignore[attr-defined]
        names |= more

    def follows(finding: Diagnostic) -> bool:
        at = finding.span
        within = at is not None and any(
            at.source is each.span.source and each.span.start <= at.start < each.span.end for each in blocks
        )
        if finding.kind.name == "misused-name" and finding.level is Level.WARNING:
            return bool(names & _words(finding))
        return finding.kind.name in ("unknown-name", "unclear-jack", "loose-lead", "jack-without-audio") and (
            within or bool(names & _words(finding))
        )

    return tuple(finding for finding in told if not blocks or not follows(finding))


def _words(finding: Diagnostic) -> set[str]:
    if finding.kind.name == "no-rig":
        return {"rig", "revision"}
    return {part for name in finding.subject for part in name.split(".")}
