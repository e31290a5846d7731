"""Findings -> the same, a name that nothing declares told once: at the first place where it stands, with the other places; or not at all,
where one of two things of one name was to bear it."""

from __future__ import annotations

from collections.abc import Iterable

from rigc.diagnostics.diagnostic import Diagnostic, Label
from rigc.diagnostics.mend import Mend, Replace
from rigc.model.scope import NOWHERE, TAKEN, UNKNOWN, Scope
from rigc.source import Source, Span

AGAIN = "and here"


def each_name_once(findings: Iterable[Diagnostic]) -> tuple[Diagnostic, ...]:
    """One cause, one finding: a slip in a declaration shows at every line that bears the right name."""
    kept: list[Diagnostic] = []
    where: dict[tuple[str, ...], int] = {}
    for finding in findings:
        if finding.kind is not UNKNOWN or not finding.subject or finding.span is None:
            kept.append(finding)
        elif finding.subject in where:
            kept[where[finding.subject]] = _both(kept[where[finding.subject]], finding)
        else:
            where[finding.subject] = len(kept)
            kept.append(finding)
    return _with_lost_name(kept)


def _with_lost_name(findings: list[Diagnostic]) -> tuple[Diagnostic, ...]:
    """Where one name is given twice and one is declared nowhere, the first stands where the second was to: a block was copied."""
    taken = [each for each in findings if each.kind is TAKEN and each.span is not None and _declares(each.span)]
    lost = [each for each in findings if each.kind is UNKNOWN and each.label == NOWHERE and "unit" in each.message]
    if len(taken) != 1 or len(lost) != 1:
        return tuple(findings)
    (double,), (name,) = taken, lost
    places = (double.also[0].span, double.span)
    mends = tuple(
        Mend(
            f"name the one of line {span.line} '{name.subject[0]}', which nothing declares",
            (Replace(span, name.subject[0]),),
        )
        for span in places
        if span is not None
    )
    where = () if name.span is None else (Label(name.span, "named here"),)
    told: Diagnostic = double.replace(mends=mends, help="", also=(*double.also, *where))
    return tuple(told if each is double else each for each in findings if each is not name)


def with_idle_name(findings: tuple[Diagnostic, ...], things: Scope, source: Source) -> tuple[Diagnostic, ...]:
    """Where one name is declared nowhere, and one thing of the rig's own file is named nowhere: its name was changed in its block alone."""
    lost = [each for each in findings if each.kind is UNKNOWN and each.label == NOWHERE and each.also and each.subject]
    used = {word.text for word in things.mentioned}
    idle = [
        (kind, word)
        for name, (kind, word) in things.declared.items()
        if name not in used and word.span.source is source
    ]
    if len(lost) != 1 or len(idle) != 1 or idle[0][0] not in lost[0].message.partition("; ")[2]:
        return findings
    name, word = lost[0], idle[0][1]
    mend = Mend(f"call '{word}' '{name.subject[0]}' again", (Replace(word.span, name.subject[0]),))
    place = Label(word.span, f"'{word}' is declared here, and no line names it")
    told: Diagnostic = name.replace(
        mends=(mend,),
        also=(place, *name.also),
        help=f"write '{word}' at each of these places, or declare '{name.subject[0]}'",
    )
    return tuple(told if each is name else each for each in findings)


def _declares(span: Span) -> bool:
    """Whether a name stands where a unit, an amp or a desk is declared."""
    return span.source.line(span.line).split()[:1] in (["unit"], ["amp"], ["desk"])


def _both(told: Diagnostic, again: Diagnostic) -> Diagnostic:
    """The one that stands further up, with the place of the other."""
    if _comes_before(again, told):
        places = [label for label in told.also if label.text == AGAIN]
        told, again = again.replace(also=(*again.also, *places)), told
    here = tuple(Label(span, AGAIN) for span in (again.span,) if span and not _same_place(told, again))
    both: Diagnostic = told.replace(also=(*told.also, *here), mends=_both_mended(told.mends, again.mends))
    return both


def _both_mended(first: tuple[Mend, ...], second: tuple[Mend, ...]) -> tuple[Mend, ...]:
    """Mends that say the same, as one that does it at both places."""
    others = {mend.words: mend.edits for mend in second}
    return tuple(Mend(mend.words, (*mend.edits, *others.get(mend.words, ()))) for mend in first)


def _same_place(one: Diagnostic, other: Diagnostic) -> bool:
    """One line may be read for several things: those that are like the one that holds it."""
    here, there = one.span, other.span
    return here is not None and there is not None and (here.source, here.start) == (there.source, there.start)


def _comes_before(one: Diagnostic, other: Diagnostic) -> bool:
    if one.span is None or other.span is None:
        return False
    return one.span.source is other.span.source and one.span.start < other.span.start
