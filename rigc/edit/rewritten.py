"""A statement in which more than one thing is wrong -> the line as it would read well: one mend made, the next mistake of that line mended, and so on.

Only what stands in the line is changed, and only by mends that a mistake in writing itself offers.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.diagnostics.diagnostic import Diagnostic
from rigc.diagnostics.mend import Mend, Replace
from rigc.edit.change import Change, changed, with_text
from rigc.source import Source, Span
from rigc.syntax.parsed import Parsed, Reader

_MOST_MENDS = 5
"""In one line; who writes more of them wrongly had better read the reference."""
_MOST_TRIED = 12
"""Readings of the file with its line changed."""


def rewritten(finding: Diagnostic, reader: Reader, own: Parsed) -> tuple[Mend, ...]:
    """The mends that write the finding's line anew, the shortest way first; `own` is its file as it was read. Nothing of them is compiled yet."""
    if finding.span is None:
        return ()
    old = finding.span.source
    number = finding.span.line
    lines: list[str] = []
    tried = 0
    waiting = [(old, each) for each in _in_line(finding.mends, number)]
    for _ in range(_MOST_MENDS):
        following = []
        for source, mend in waiting:
            if tried == _MOST_TRIED:
                break
            tried += 1
            edits = [edit for edit in mend.edits if isinstance(edit, Replace)]
            changes = [Change(edit.span.start, edit.span.end, edit.text) for edit in edits]
            new = with_text(source, changed(source, changes))
            wrong = [
                each for each in reader.parse(new, own).findings if each.span is not None and each.span.line == number
            ]
            if wrong:
                following += [(new, each) for each in _in_line(wrong[0].mends, number)]
            else:
                lines.append(new.line(number).strip())
        waiting = following
    return tuple(_as_a_mend(old, number, line) for line in dict.fromkeys(lines))


def _in_line(mends: tuple[Mend, ...], number: int) -> Iterator[Mend]:
    for mend in mends:
        edits = [
            each
            for each in mend.edits
            if isinstance(each, Replace) and each.span.line == number and "\n" not in each.text
        ]
        if len(edits) == len(mend.edits):
            yield mend


def _as_a_mend(source: Source, number: int, line: str) -> Mend:
    old = source.line(number)
    start = source.line_starts[number - 1] + len(old) - len(old.lstrip())
    return Mend(
        f"write {line.partition(' #')[0].rstrip()}", (Replace(Span(source, start, start + len(old.strip())), line),)
    )
