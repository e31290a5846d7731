"""A revision that was released is not what its sources give now, or is said to be released before its own day.

Why it matters: the crew holds documents of the released revision; whoever builds from the file builds something else.
What to do: give the edit a new revision letter. Where the rules or the compiler changed, compare the documents and seal anew.
Source: common practice, no source. The seal holds two parts: one over what is stated, one over what follows from it.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import TYPE_CHECKING

from rigc.analysis.results import Results
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Level
from rigc.model.records import Frozen
from rigc.model.rig import Rig

if TYPE_CHECKING:
    from rigc.analysis.revision.seal import Seal

KIND = Kind(
    "frozen-differs",
    Level.ERROR,
    __doc__,
    "a revision is frozen on its day or later, and its seal is that of its sources and of what follows from them",
    "common practice, no source",
)


def frozen_differs(rig: Rig, results: Results) -> Iterator[Diagnostic]:
    """The seal is only computed for a rig that is frozen; without one a remark gives it."""
    frozen, letter = rig.head.frozen, rig.head.letter
    if frozen is None:
        return
    if frozen.date < rig.head.date:
        yield KIND.at(
            frozen.span,
            f"revision {letter} of {rig.head.date} is said to be frozen on {frozen.date}, before its own day",
            subject=(letter,),
            label="before the revision",
            help="correct one of the two dates",
        )
        return
    from rigc.analysis.revision.seal import Seal  # few rigs are frozen

    now = results.get(Seal)
    told = _told(frozen, letter, now)
    if told is not None:
        level = Level.ERROR if frozen.seal else Level.REMARK
        message, help = told
        yield KIND.at(frozen.span, message, subject=(letter,), label=f"its seal is {now} now", help=help, level=level)


def _told(frozen: Frozen, letter: str, now: Seal) -> tuple[str, str] | None:
    who = frozen.by.replace("\\", "\\\\").replace('"', '\\"')
    anew = f'frozen {frozen.date} by "{who}" seal "{now}"'
    if not frozen.seal:
        return (
            f"revision {letter} was frozen on {frozen.date} without a seal, so a later edit goes unseen",
            f"write: {anew}",
        )
    if re.fullmatch(r"[0-9a-f]{6}-[0-9a-f]{6}", frozen.seal) is None:
        return f"'{frozen.seal}' is no seal; one is twelve hexadecimal digits in two parts", f"write: {anew}"
    stated, _, computed = frozen.seal.partition("-")
    if stated != now.stated:
        return (
            f"revision {letter} was edited after it was frozen on {frozen.date}: its seal was {frozen.seal}",
            "take the edit back, or give it a new revision letter",
        )
    if computed != now.computed:
        return (
            f"revision {letter} is as it was frozen on {frozen.date}, but what follows from it is not: the rules, the compiler or "
            f"its stock changed; its seal was {frozen.seal}",
            f"compare the documents with those that were released, then write: {anew}",
        )
    return None


CHECK = frozen_differs
