"""What becomes of the legs of Y leads -> the same, where one leg that changes makes all legs of its Y lead anew: they
are one piece, and nobody solders a leg on or off at the show."""

from __future__ import annotations

from rigc.analysis.revision.board import Board
from rigc.analysis.revision.plan.leads.plan import KEEP, NEW, REMAKE, UNTOLD, LeadPlan

WHY = "its Y lead is made anew"


def whole_ys(plans: list[LeadPlan], built: Board, new: Board) -> list[LeadPlan]:
    """`plans` are those of the new board's leads. A leg that only gets another label, or another way, is kept; so is one that grows out
    of a brick, whatever hangs on it beside."""
    anew = {_y(plan) for plan in plans if _y(plan) is not None and _is_other(plan)}
    stay = {plan.before.mark for plan in plans if plan.before is not None}
    anew |= {lead.leg_of for mark, lead in built.leads.items() if lead.leg_of is not None and mark not in stay}
    return [
        _anew(plan, built, new)
        if plan.verdict == KEEP and _y(plan) in anew and not new.leads[plan.mark].captive
        else plan
        for plan in plans
    ]


def _y(plan: LeadPlan) -> str | None:
    return None if plan.after is None else plan.after.leg_of


def _is_other(plan: LeadPlan) -> bool:
    return plan.verdict not in (KEEP, UNTOLD)


def _anew(plan: LeadPlan, built: Board, new: Board) -> LeadPlan:
    verdict = REMAKE if plan.mark in built.leads else NEW
    return LeadPlan(
        plan.mark, verdict, None, new.leads[plan.mark], plan.least, plan.most, why=WHY, assumed=plan.assumed
    )
