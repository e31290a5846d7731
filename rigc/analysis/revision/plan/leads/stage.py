"""A lead that leaves the board, and those that were there -> what becomes of it: nobody lays it over a deck, so that its
stated length, its cable and its plugs decide. One that was measured and is stated as before is what it was."""

from __future__ import annotations

from collections.abc import Iterable

from rigc.analysis.revision.board import Board, BoardLead
from rigc.analysis.revision.plan.leads.fit import OTHER_CABLE, TOO_LONG, TOO_SHORT, Bench
from rigc.analysis.revision.plan.leads.plan import KEEP, REMAKE, LeadPlan


def stage_twin(built: Board, new: Board, need: BoardLead, bench: Bench) -> BoardLead | None:
    """The stage lead of another number that this one is: the same but for one end, and its own number is free."""
    return next((have for have in _free(built, new) if _alike(have, need, bench)), None)


def stage_plan(have: BoardLead, need: BoardLead, bench: Bench) -> LeadPlan:
    """Ends that go elsewhere are moved, other plugs are fitted; another cable or another stated length is another
    lead."""
    why = _why_not(have, need)
    if why:
        return LeadPlan(need.mark, REMAKE, None, need, why=why)
    return end_by_end(have, need, KEEP, bench)


def end_by_end(have: BoardLead, need: BoardLead, verdict: str, bench: Bench, why: str = "") -> LeadPlan:
    """What is done to each end of a lead of which no way is known: moved, plugged, labelled."""
    assert have.ends is not None and need.ends is not None
    changed = [end for end in (0, 1) if have.ends[end] != need.ends[end]]
    swapped = tuple(end for end in changed if bench.after.port(have.ends[end]) == need.ends[end])
    return LeadPlan(
        need.mark,
        verdict,
        have,
        need,
        moved=tuple(end for end in changed if end not in swapped),
        swapped=swapped,
        plugged=tuple(end for end in (0, 1) if have.plugs[end] != need.plugs[end]),
        labelled=tuple(end for end in (0, 1) if have.labels[end] != need.labels[end]),
        why=why,
    )


def _why_not(have: BoardLead, need: BoardLead) -> str:
    if need.cable is not None and have.cable != need.cable:
        return OTHER_CABLE
    if have.length is None or need.length is None or have.is_as_long(need):
        return ""
    return TOO_SHORT if have.length < need.length else TOO_LONG


def _free(built: Board, new: Board) -> Iterable[BoardLead]:
    return (lead for mark, lead in built.leads.items() if lead.stage and mark not in new.leads)


def _alike(have: BoardLead, need: BoardLead, bench: Bench) -> bool:
    assert have.ends is not None and need.ends is not None
    ends = tuple(map(bench.after.port, have.ends))
    kind = (have.signal, have.cable, have.plugs) == (need.signal, need.cable, need.plugs)
    if have.grows_from != need.grows_from:
        return False
    return kind and have.is_as_long(need) and (ends[0] == need.ends[0] or ends[1] == need.ends[1])
