"""A mistake -> the finding that tells it, by the first of all wordings that fits; loaded where there is one."""

from __future__ import annotations

import re
from collections.abc import Callable

from rigc.diagnostics.diagnostic import Diagnostic
from rigc.diagnostics.mend import Delete, Replace
from rigc.source import Span
from rigc.syntax.mistake import Mistake, Wording
from rigc.syntax.mistakes import MALFORMED
from rigc.syntax.slips.block_slips import BLOCK_SLIPS
from rigc.syntax.slips.habit_slips import HABIT_SLIPS
from rigc.syntax.slips.hurried_slips import HURRIED_SLIPS
from rigc.syntax.slips.line_slips import LINE_SLIPS, as_it_lacks, as_it_reads, one_of_few, two_lines, with_a_remark
from rigc.syntax.slips.name_slips import NAME_SLIPS
from rigc.syntax.slips.order_slips import ORDER_SLIPS
from rigc.syntax.slips.printed_slips import PRINTED_SLIPS
from rigc.syntax.slips.said_slips import (
    HALF_SURE,
    as_far_as_it_is_meant,
    as_it_is_meant,
    in_other_words,
    in_words_of_the_trade,
    reads_elsewhere,
    where_it_belongs,
)
from rigc.syntax.slips.sign_slips import SIGN_SLIPS
from rigc.syntax.slips.spread_slips import SPREAD_SLIPS, without_spreads
from rigc.syntax.slips.statement_slips import BROKEN_OFF, ELSEWHERE, GENERAL, LAST_RESORT, REMARKED, STATEMENT_SLIPS
from rigc.syntax.slips.trade_slips import TRADE_SLIPS, in_our_words
from rigc.syntax.worked_lines import as_in_the_reference

_WORDINGS = (
    *BLOCK_SLIPS,
    *LINE_SLIPS,
    *PRINTED_SLIPS,
    *ORDER_SLIPS,
    *HURRIED_SLIPS,
    *HABIT_SLIPS,
    *SIGN_SLIPS,
    *NAME_SLIPS,
    *TRADE_SLIPS,
    *BROKEN_OFF,
    in_other_words,
    *STATEMENT_SLIPS,
    *LAST_RESORT,
)


def tell(mistake: Mistake) -> Diagnostic:
    """The finding for a mistake: the first wording that fits."""
    plain = without_spreads(mistake)
    for wording, seen in (
        (in_words_of_the_trade, mistake),
        *((each, mistake) for each in SPREAD_SLIPS),
        *((each, plain) for each in _WORDINGS),
    ):
        told = wording(seen)
        if told is not None and (told.mends or wording in GENERAL) and not _settled(told, seen):
            told = _nearer(wording, seen) or (_shown(told, seen) if wording in GENERAL else told)
        elif told is not None and not told.mends:
            elsewhere = told.help.startswith(ELSEWHERE) and not reads_elsewhere(seen)
            told = in_other_words(seen) or (_elsewhere(seen) if elsewhere else None) or told
        if told is not None:
            span = mistake.span
            if f"'{mistake.whole}'" in told.message:
                start = span.start + len(mistake.word) - len(mistake.whole)
                span = Span(span.source, start, start + len(mistake.whole))
            elif mistake.ends and (typed := _typed_before(mistake, told)) is not None:
                span = typed
            elif span.start == span.end or mistake.kind == "character":
                span = Span(span.source, span.start, span.start + max(1, len(mistake.word)))
            line = (
                as_in_the_reference(
                    mistake.block, in_our_words(mistake.code, mistake.blocks().get(mistake.block, frozenset()))
                )
                if told.mends
                else ""
            )
            return MALFORMED.at(span, told.message, label=told.label, help=told.help, mends=told.mends, otherwise=line)
    raise AssertionError("the last wording fits every mistake")


def _typed_before(m: Mistake, told: Wording) -> Span | None:
    """Where the words stand that the message begins with, of a line that breaks off behind them."""
    quoted = re.match(r"'([^']+)'", told.message)
    words = quoted[1] if quoted else ""
    start = m.before.rfind(words) if words else -1
    return None if start < 0 else m.place(m.line_start + start, m.line_start + start + len(words))


def _elsewhere(m: Mistake) -> Wording | None:
    """What a line says of which only the first word belongs to another block."""
    return as_far_as_it_is_meant(m, HALF_SURE) or where_it_belongs(m)


def _nearer(wording: Callable[[Mistake], Wording | None], m: Mistake) -> Wording | None:
    """How the whole line reads, where that can be found; of a line of which little more is known, what it lacks."""
    general, last = wording in GENERAL, wording in LAST_RESORT
    return (
        (two_lines(m) if general else None)
        or in_other_words(m)
        or as_it_reads(m)
        or as_it_is_meant(m)
        or as_far_as_it_is_meant(m, HALF_SURE)
        or (with_a_remark(m) if general else None)
        or (one_of_few(m) if last else None)
        or (as_it_lacks(m) if general else None)
        or as_far_as_it_is_meant(m)
    )


def _shown(told: Wording, m: Mistake) -> Wording:
    """Where no mend makes the line read, the worked line that is most like it in place of one that would not work."""
    remarked = any(mend.words.startswith(REMARKED) for mend in told.mends)
    line = (
        as_in_the_reference(m.block, in_our_words(m.code, m.blocks().get(m.block, frozenset())))
        if told.mends and not remarked
        else ""
    )
    shown: Wording = told.replace(mends=(), help=line) if line else told
    return shown


def _settled(told: Wording, m: Mistake) -> bool:
    """Whether the line reads with the first of the mends, or has to be written elsewhere."""
    if "{" in m.line:
        return True
    if not told.mends:
        return told.help.startswith(ELSEWHERE)
    if told.mends[0].words.startswith(REMARKED):
        return False
    line, moved = m.line, m.span.start - m.at + m.line_start
    if any(isinstance(edit, Delete) for edit in told.mends[0].edits):
        return True
    edits = [edit for edit in told.mends[0].edits if isinstance(edit, Replace)]
    for edit in sorted(edits, key=lambda each: -each.span.start):
        start, end = edit.span.start - moved, edit.span.end - moved
        if not 0 <= start <= end <= len(line) or "\n" in edit.text:
            return True
        line = f"{line[:start]}{edit.text}{line[end:]}"
    return m.tries.reads(m.block, line) is not False
