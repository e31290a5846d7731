"""Findings on the numbers of one statement -> one finding, where all of them bear the same unit that does not fit there."""

from __future__ import annotations

import re
from collections.abc import Sequence

from rigc.diagnostics.diagnostic import Diagnostic, Label
from rigc.diagnostics.mend import Mend
from rigc.model.slips.wrong_quantity import WRONG_QUANTITY

_UNIT = re.compile(r"[A-Za-zµμΩΩ°%/]+\Z")


def of_one_unit(found: Sequence[Diagnostic]) -> tuple[Diagnostic, ...]:
    """The findings, those about one unit as one: whoever writes `-10 dB peak 4 dB` made one slip."""
    units = {unit[0] if each.span and (unit := _UNIT.search(each.span.text)) else "" for each in found}
    if len(found) < 2 or len(units) > 1 or "" in units or any(each.kind is not WRONG_QUANTITY for each in found):
        return tuple(found)
    first, others = found[0], found[1:]
    edits = tuple(edit for each in found for mend in each.mends[:1] for edit in mend.edits)
    whole = all(len(each.mends) == 1 for each in found)
    words = f"{first.mends[0].words}, and the others in the same unit" if whole else ""
    told: Diagnostic = first.replace(
        also=(*first.also, *(Label(each.span, "and here") for each in others if each.span is not None)),
        mends=(Mend(words, edits),) if whole else first.mends,
    )
    return (told,)
