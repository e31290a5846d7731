"""A number that the revision before has, or has retired, is given to something else.

Why it matters: labels in the truck, in the spares bag and in old notes bear that number; they then point to two
leads.
What to do: give a fresh number; gaps are fine. A lead that is meant to be the old one keeps its number if it can be
kept, or is made anew between the same jacks.
Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.board import BoardLead
from rigc.analysis.computations.rework import Rework
from rigc.analysis.revision.lead_plan import KEEP, LeadPlan
from rigc.analysis.revision.previous import Previous
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Level
from rigc.model.rig import Rig
from rigc.source import Span

KIND = Kind(
    "C14",
    "reused-number",
    Level.ERROR,
    __doc__,
    "a number given in the revision before belongs to that lead for ever",
    "common practice, no source",
)


def reused_number(rig: Rig, previous: Previous, rework: Rework) -> Iterator[Diagnostic]:
    """One finding for each stated number of a lead or adaptor. A lead that is kept, or made anew between the same
    jacks (or those of a unit's successor), is the same lead; so is one of unknown length, unless it lies between
    two other jacks."""
    old, built = previous.results, rework.built
    if old is None or built is None:
        return
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


def _same(had: BoardLead, plan: LeadPlan, rework: Rework) -> bool:
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
