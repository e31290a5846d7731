"""Leads one behind another through things of which no chain joins any."""

from __future__ import annotations

from collections.abc import Sequence

from rigc.diagnostics.diagnostic import Diagnostic
from rigc.diagnostics.mend import Add, Mend
from rigc.diagnostics.wording import joined
from rigc.model.resolve.wishes.loose.loose_lead import Caused, Joints, Left, LooseLead, by, carrying
from rigc.model.scope import LOOSE_LEAD


def rows(left: Left, joints: Joints) -> Caused:
    """One finding for each such row of leads."""
    for row in _rows(carrying("audio", left), joints):
        yield row, _told(row)


def _rows(leads: Sequence[LooseLead], joints: Joints) -> list[list[LooseLead]]:
    """The leads, two or more, that go on one behind another through things of which no chain joins any."""
    chained = {
        port.thing for each in joints.connections.values() if each.signal == "audio" for port in (each.start, each.end)
    }
    alone = [each for each in leads if not {each.start.thing, each.end.thing} & chained]
    begun, ended = by(alone, lambda lead: (lead.start.thing,)), by(alone, lambda lead: (lead.end.thing,))
    found = []
    for first in alone:
        if first.start.thing in ended:
            continue
        row = [first]
        while len(after := begun.get(row[-1].end.thing, ())) == 1 and len(ended[row[-1].end.thing]) == 1:
            row.append(after[0])
        if len(row) > 1:
            found.append(row)
    return found


def _told(row: Sequence[LooseLead]) -> Diagnostic:
    marks = [lead.mark for lead in row]
    names = [row[0].start.thing, *(lead.end.thing for lead in row)]
    whole = " -> ".join(names)
    return LOOSE_LEAD.at(
        row[0].span,
        f"{joined(marks)} go {whole}, and no chain does",
        subject=(*marks, *names),
        label="the first of them",
        mends=(Mend(f"write `chain {whole}`", (Add(f"chain {whole}"),)),),
        help=f"delete {joined(marks)}",
    )
