"""The findings of reading a file -> the same, one slip that was made at several places told once, with all of them."""

from __future__ import annotations

from collections.abc import Iterable

from rigc.diagnostics.diagnostic import Diagnostic, Label
from rigc.diagnostics.mend import Mend

MOST_PLACES = 5  # of a slip that are shown; the rest is counted


def each_slip_once(findings: Iterable[Diagnostic]) -> tuple[Diagnostic, ...]:
    """Whoever writes `=` behind one word writes it behind each: one finding, whose mend puts all of them right."""
    same: dict[tuple[str, str, str, tuple[str, ...], str], list[Diagnostic]] = {}
    for finding in findings:
        words = tuple(mend.words for mend in finding.mends)
        same.setdefault((finding.kind.name, finding.message, finding.label, words, finding.help), []).append(finding)
    return tuple(_together(group) for group in same.values())


def _together(group: list[Diagnostic]) -> Diagnostic:
    first = group[0]
    if len(group) == 1:
        return first
    places = [finding.span for finding in group[1:] if finding.span is not None]
    also = tuple(Label(span, "and here") for span in places[: MOST_PLACES - 1])
    note = f"{len(group)} times in this file" if len(group) > MOST_PLACES else ""
    told: Diagnostic = first.replace(also=(*first.also, *also), note=note, mends=_mends(group))
    return told


def _mends(group: list[Diagnostic]) -> tuple[Mend, ...]:
    """Each mend with its edits at all places; an edit that is the same at several of them is made once."""
    return tuple(
        Mend(same[0].words, tuple({_key(edit): edit for mend in same for edit in mend.edits}.values()))
        for same in zip(*(finding.mends for finding in group), strict=True)
    )


def _key(edit: object) -> tuple[object, ...]:
    span = getattr(edit, "span", None)
    return (type(edit), span.start, span.end, getattr(edit, "text", "")) if span else (edit,)
