"""What becomes of leads and adaptors -> the labels to print and those to destroy."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.revision.board import Board
from rigc.analysis.revision.plan.leads.plan import LeadPlan
from rigc.analysis.revision.plan.plan_records import AdaptorPlan, LabelPlan


def adaptor_plans(built: Board, new: Board) -> tuple[AdaptorPlan, ...]:
    """Adaptors that come, go, or serve others."""
    plans = [
        AdaptorPlan(mark, built.adaptors.get(mark), new.adaptors.get(mark))
        for mark in {**new.adaptors, **built.adaptors}
    ]
    return tuple(plan for plan in plans if plan.before != plan.after)


def label_plans(
    leads: tuple[LeadPlan, ...], adaptors: tuple[AdaptorPlan, ...], ys: tuple[dict[str, str], dict[str, str]]
) -> tuple[LabelPlan, ...]:
    """Two for each lead that is made; one for each end whose text changes, and one for each Y lead (`ys`: their texts
    before and now, by number) that feeds others or is made anew. What is pulled keeps its labels until its
    bag is emptied, unless another lead bears that number now."""
    others = {
        plan.mark for plan in leads if plan.after is not None and (plan.before is None or plan.before.mark != plan.mark)
    }
    found = [label for plan in leads for label in _of_lead(plan, others)]
    for each in adaptors:
        old = "" if each.before is None else each.before.label
        new = "" if each.after is None else each.after.label
        if old != new and new:
            found.append(LabelPlan(each.mark, None, old, new, each.change, each.done))
    return (*found, *_of_ys(leads, *ys))


def _of_ys(leads: tuple[LeadPlan, ...], before: dict[str, str], now: dict[str, str]) -> Iterator[LabelPlan]:
    for mark, text in now.items():
        legs = [plan for plan in leads if plan.after is not None and plan.after.leg_of == mark]
        anew = any(plan.before is None for plan in legs)
        if legs and (anew or before.get(mark) != text):
            old = before.get(mark, "")
            if anew and old:
                yield LabelPlan(mark, None, old, "", legs[0].change, legs[0].done)
            yield LabelPlan(mark, None, "" if anew else old, text, legs[0].change, legs[0].done)


def _of_lead(plan: LeadPlan, others: set[str]) -> Iterator[LabelPlan]:
    for end in (0, 1):
        old = "" if plan.before is None else plan.before.labels[plan.ends[end]]
        if plan.after is None:
            if plan.mark in others:
                yield LabelPlan(plan.mark, end, old, "", plan.change, plan.done)
        elif plan.before is None or plan.spare or end in plan.labelled:
            yield LabelPlan(plan.mark, end, old, plan.after.labels[end], plan.change, plan.done)
