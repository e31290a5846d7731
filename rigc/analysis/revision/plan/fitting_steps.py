"""What differs in decks, holes, passages, panel jacks, cases, selectors and ground lifts -> the steps at the bench."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.revision.plan.bench_phases import BAG, BEFORE, OUT, PROGRAMS, STRIPS, SUPPLIES
from rigc.analysis.revision.plan.plan_records import FittingPlan, Step


def fitting_steps(plan: FittingPlan) -> Iterator[Step]:
    """None for a transformer, which is only carried."""
    of_kind = {
        "deck": _deck,
        "hole": _hole,
        "passage": _passage,
        "jack": _jack,
        "case": _case,
        "selector": _selector,
        "lift": _lift,
    }
    yield from of_kind.get(plan.kind, lambda _: iter(()))(plan)


def _deck(plan: FittingPlan) -> Iterator[Step]:
    if plan.before:
        yield Step(OUT, "clear deck", (plan.name,))
    if plan.after:
        yield Step(BEFORE, "put deck", (plan.name,), plan.before, plan.after)


def _hole(plan: FittingPlan) -> Iterator[Step]:
    if plan.after:
        phase = BEFORE if plan.beforehand else STRIPS
        yield Step(phase, "drill", (f"{plan.name} in {plan.on}",), "", plan.after)
    else:
        yield Step(STRIPS, "close", (f"{plan.name} in {plan.on}",), plan.before)


def _passage(plan: FittingPlan) -> Iterator[Step]:
    phase = BEFORE if plan.beforehand else STRIPS
    yield Step(phase, "widen" if plan.before else "drill", (f"{plan.name} in {plan.on}",), plan.before, plan.after)


def _jack(plan: FittingPlan) -> Iterator[Step]:
    competent = " (mains part: a competent person)" if plan.mains else ""
    if plan.before:
        close = "" if plan.beforehand else "; close its hole"
        yield Step(STRIPS, "take out", (f"{plan.name}{competent}",), plan.before, close)
    if plan.after:
        yield Step(STRIPS, "set jack", (f"{plan.name}{competent}",), "", plan.after)


def _case(plan: FittingPlan) -> Iterator[Step]:
    if plan.after:
        yield Step(BAG, "case", (plan.name,), plan.before, plan.after)


def _selector(plan: FittingPlan) -> Iterator[Step]:
    yield Step(SUPPLIES, "set selector", (f"{plan.name} where it plays in {plan.on}",), plan.before, plan.after)


def _lift(plan: FittingPlan) -> Iterator[Step]:
    """No power is turned off for it: it is a switch."""
    yield Step(PROGRAMS, "set lift", (plan.name,), plan.before, f"{plan.after} where it plays in {plan.on}")
