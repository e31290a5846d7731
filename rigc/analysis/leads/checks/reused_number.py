"""A number that the revision before has, or has retired, is given to something else.

Why it matters: labels in the truck, in the spares bag and in old notes bear that number; they then point to two
leads.
What to do: give a fresh number; gaps are fine. A lead that is meant to be the old one keeps its number if it can be
kept, or is made anew between the same jacks.
Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING

from rigc.analysis.leads.leads import Lead, Leads
from rigc.analysis.previous import Previous
from rigc.analysis.results import Results
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Level
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.source import Span

if TYPE_CHECKING:
    from rigc.analysis.revision.board import BoardLead
    from rigc.analysis.revision.plan.leads.plan import LeadPlan
    from rigc.analysis.revision.rework import Rework

KIND = Kind(
    "reused-number",
    Level.ERROR,
    __doc__,
    "a number given in the revision before belongs to that lead for ever",
    "common practice, no source",
)


def reused_number(rig: Rig, previous: Previous, results: Results) -> Iterator[Diagnostic]:
    """One finding for each stated number of a lead or adaptor. A lead that is kept, or made anew between the same
    jacks (or those of a unit's successor), is the same lead; so is one of unknown length, unless it lies between
    two other jacks. The rework is only planned where a number has moved."""
    old = previous.results
    if old is None or not _moved(rig, old, results):
        return
    from rigc.analysis.revision.rework import Rework

    rework = results.get(Rework)
    built = rework.built
    assert built is not None
    retired = {mark for mark, _ in old.rig.lead_wishes.retired}
    stated = [(lead.mark, lead.mark_span) for lead in rig.lead_wishes.leads]
    for mark, span in stated:
        had, plan = built.leads.get(mark), rework.lead(mark)
        if mark in retired:
            yield _found(span, mark, f"revision {rework.before} retired it")
        elif mark in built.adaptors:
            yield _found(span, mark, f"in revision {rework.before} it is a {built.adaptors[mark].kind} adaptor")
        elif had is not None and plan is not None and not _same(had, plan, rework):
            yield _found(span, mark, f"in revision {rework.before} it is {_words(had)}, and that lead is {_fate(plan)}")
    for adaptor in rig.lead_wishes.adaptors:
        before = built.adaptors.get(adaptor.mark)
        if adaptor.mark in retired:
            yield _found(adaptor.span, adaptor.mark, f"revision {rework.before} retired it")
        elif adaptor.mark in built.leads:
            yield _found(
                adaptor.span, adaptor.mark, f"in revision {rework.before} it is {_words(built.leads[adaptor.mark])}"
            )
        elif before is not None and before.kind != adaptor.kind:
            yield _found(adaptor.span, adaptor.mark, f"in revision {rework.before} it is a {before.kind} adaptor")


def _moved(rig: Rig, old: Results, new: Results) -> bool:
    """Whether a stated number was something else than this lead between these jacks, or than this adaptor."""
    from rigc.analysis.leads.special_leads import SpecialLeads

    before, now = old.get(Leads), new.get(Leads)
    adaptors = {each.mark: each.kind for each in old.get(SpecialLeads).all if before.of(each.mark) is None}
    retired = {mark for mark, _ in old.rig.lead_wishes.retired}
    leads = [lead.mark for lead in rig.lead_wishes.leads]
    return any(
        mark in retired or mark in adaptors or _between(before.of(mark)) not in (None, _between(now.of(mark)))
        for mark in leads
    ) or any(
        each.mark in retired or before.of(each.mark) is not None or adaptors.get(each.mark, each.kind) != each.kind
        for each in rig.lead_wishes.adaptors
    )


def _between(lead: Lead | None) -> tuple[str, Port, Port] | None:
    return None if lead is None else (lead.signal, lead.start, lead.end)


def _same(had: BoardLead, plan: LeadPlan, rework: Rework) -> bool:
    from rigc.analysis.revision.plan.leads.plan import KEEP

    if plan.after is None:
        return True
    if plan.before is not None and plan.before.mark == had.mark:
        return plan.verdict == KEEP or plan.moved != (0, 1)
    now = {rework.successors.port(port) for port in had.ends or ()}
    return now == set(plan.after.ends or ()) and had.signal == plan.after.signal


def _words(lead: BoardLead) -> str:
    ends = " to ".join(f"'{port}'" for port in lead.ends or ())
    return f"the {lead.signal} lead {ends}"


def _fate(plan: LeadPlan) -> str:
    return f"{plan.why} for this one" if plan.why.startswith("too") else "not used here"


def _found(span: Span, mark: str, why: str) -> Diagnostic:
    return KIND.at(
        span,
        f"the number {mark} is taken: {why}",
        subject=(mark,),
        label="given here to something else",
        help="give it a fresh number; gaps are fine",
    )


CHECK = reused_number
