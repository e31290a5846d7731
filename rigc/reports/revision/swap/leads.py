"""A trial -> the table of the leads that it concerns: which stay, which are too short and by how much, which are to be made."""

from __future__ import annotations

from rigc.analysis.leads.lead_plugs import fitting_plugs, socket
from rigc.analysis.revision.board import BoardLead
from rigc.analysis.revision.plan.leads.plan import BIN, KEEP, NEW, REMAKE, STORE, LeadPlan
from rigc.analysis.revision.rework import Rework
from rigc.analysis.revision.substitute.trial import Trial
from rigc.diagnostics.figures import millimetres
from rigc.model.jacks import Jack
from rigc.model.rig import Rig
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.revision.swap.answer import WORK, YES

COLUMNS = (
    Column("lead", key="lead"),
    Column("from -> to", key="way", least_mm=52),
    Column("there", "mm", number=True),
    Column("least", "mm", number=True),
    Column("most", "mm", number=True),
    Column("what to do", key="do"),
)


def lead_plans(trial: Trial) -> tuple[LeadPlan, ...]:
    """The leads at the substitute and all others for which a hand is needed; one that is made anew is told once, with the
    one that it replaces as its `before`."""
    plans = trial.mended.get(Rework).leads
    old = {plan.mark: plan.before for plan in plans if plan.after is None}
    anew = {plan.mark for plan in plans if plan.verdict == REMAKE}
    return tuple(
        plan.replace(before=plan.before or old.get(plan.mark)) if plan.mark in anew else plan
        for plan in plans
        if (plan.touched or _is_at(plan.after, trial.into.name)) and not (plan.after is None and plan.mark in anew)
    )


def lead_table(trial: Trial) -> Table:
    """One row for each of these leads."""
    rows = tuple(_row(trial.mended.rig, plan) for plan in lead_plans(trial))
    return Table("leads", "Leads", COLUMNS, rows, empty="no lead is concerned", tick=True)


def lead_work(rig: Rig, plan: LeadPlan) -> tuple[str, str]:
    """What a lead comes to, and how the verdict names it; empty where it need not."""
    if plan.verdict == KEEP:
        ends = [*plan.plugged, *unfit_ends(rig, plan)]
        return (WORK, f"another plug on {plan.mark}") if ends else (YES, "")
    if plan.verdict in (NEW, REMAKE):
        if plan.spare:
            return WORK, f"the spare{_of(plan)} as {plan.mark}"
        if _is_mains(plan):
            return WORK, f"another mains lead set as {plan.mark}"
        made = f", {_made(plan)}" if _made(plan) else ""
        return WORK, f"{plan.mark} new{made}" if plan.verdict == NEW else f"{plan.mark} anew{made} ({short_by(plan)})"
    untold = plan.verdict not in (STORE, BIN) and not _is_stage(plan)
    return (WORK, f"try the length of {plan.mark}") if untold else (YES, "")


def unfit_ends(rig: Rig, plan: LeadPlan) -> tuple[int, ...]:
    """The ends whose plug does not go into its jack."""
    after = plan.after
    if after is None or after.ends is None:
        return ()
    found = []
    for end in (0, 1):
        jack, plug = socket(rig, after.ends[end]), after.plugs[end]
        if not isinstance(jack, Jack) or plug not in rig.stock.plugs or rig.stock.plugs[plug].soldered:
            continue
        if plug not in [kind.name for kind in fitting_plugs(rig, jack.connector)]:
            found.append(end)
    return tuple(found)


def short_by(plan: LeadPlan) -> str:
    """Why a lead can't stay, with how many mm it is too short or too long."""
    length = plan.before.length if plan.before is not None else None
    if length is not None and plan.least is not None and length < plan.least:
        return f"{millimetres(plan.least - length)} mm too short"
    if length is not None and plan.most is not None and length > plan.most:
        return f"{millimetres(length - plan.most)} mm too long"
    return plan.why or "of no use"


def _row(rig: Rig, plan: LeadPlan) -> Row:
    after = plan.after or plan.before
    way = "" if after is None or after.ends is None else f"{after.ends[0]} -> {after.ends[1]}"
    there = plan.before.length if plan.before is not None else None
    cells = (way, _mm(there), _mm(plan.least), _mm(plan.most), _do(rig, plan))
    return Row((Cell(plan.mark, strong=True), *map(Cell, cells)))


def _do(rig: Rig, plan: LeadPlan) -> str:
    if plan.verdict == STORE:
        return "pull it, and keep it as a spare"
    if plan.verdict == BIN:
        return "pull it"
    if plan.verdict in (NEW, REMAKE) and _is_mains(plan) and plan.after is not None:
        why = f"{plan.why}: " if plan.why else ""
        return f"{why}take a certified lead set for {' and '.join(plan.after.inlets)}"
    if plan.verdict == NEW:
        return (
            f"take the spare{_of(plan)}"
            if plan.spare
            else f"make or buy it, {_made(plan) or 'as long as the stage needs'}"
        )
    if plan.verdict == REMAKE:
        instead = f"take the spare{_of(plan)}" if plan.spare else f"make it anew, {_made(plan)}"
        return f"{short_by(plan)}: {instead}"
    if plan.verdict != KEEP and not _is_stage(plan):
        known = plan.before is not None and plan.before.length is not None
        return "how long it must be is not known: try it" if known else "its length is not known: measure it"
    return ", ".join(["keep", *_acts(rig, plan)])


def _acts(rig: Rig, plan: LeadPlan) -> list[str]:
    before, after = plan.before, plan.after
    acts = []
    if before is not None and after is not None and before.ends and after.ends:
        for end in plan.moved:
            acts.append(f"move the end from {before.ends[plan.ends[end]]} to {after.ends[end]}")
        acts += [f"plug {after.plugs[end]} at {after.ends[end]}" for end in plan.plugged]
        acts += [f"{after.plugs[end]} does not go into {after.ends[end]}" for end in unfit_ends(rig, plan)]
        acts += [f"through {after.via[end]}" for end in (0, 1) if after.via[end]]
    if plan.dressed:
        acts.append("lay it anew")
    if plan.labelled:
        acts.append("new labels")
    return acts


def _is_at(lead: BoardLead | None, thing: str) -> bool:
    return lead is not None and lead.ends is not None and thing in {end.thing for end in lead.ends}


def _is_stage(plan: LeadPlan) -> bool:
    """Whether it runs on the stage, where nobody lays its way."""
    return plan.after is not None and plan.after.stage


def _is_mains(plan: LeadPlan) -> bool:
    return plan.after is not None and bool(plan.after.inlets)


def _of(plan: LeadPlan) -> str:
    return "" if plan.before is None or plan.before.length is None else f" of {_mm(plan.before.length)} mm"


def _made(plan: LeadPlan) -> str:
    """How long a lead is made; empty where no way tells, as on a stage."""
    known = plan.after is not None and plan.after.length is not None
    return f"{_mm(plan.after.length)} mm" if known and plan.after is not None else ""


def _mm(tenths: int | None) -> str:
    return "" if tenths is None else millimetres(tenths)
