"""What becomes of a lead -> the steps at the bench. No DC plug stays in a unit, or goes into one, before it was measured:
where the outlet behind a lead is another, or is set otherwise, the lead's far end is pulled out too. A mains lead is plugged in at both
ends before that is measured."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.leads.lead_numbers import in_order
from rigc.analysis.revision.plan.bench_phases import BEFORE, CONTROL, MOUNT, OF_SIGNAL, OUT, POWER, TIES
from rigc.analysis.revision.plan.fitting_plans import exchanged_decks
from rigc.analysis.revision.plan.leads.plan import BIN, NEW, REMAKE, LeadPlan
from rigc.analysis.revision.plan.plan_records import THROWN, Step
from rigc.analysis.revision.plan.rework_pieces import Pieces
from rigc.diagnostics.figures import millimetres


def lead_steps(plan: LeadPlan, pieces: Pieces) -> Iterator[Step]:
    """The steps of one lead, labels apart. A stage lead is plugged in at each show anyway, and is at hand beforehand."""
    lead = plan.after or plan.before
    if lead is not None and lead.stage:
        if plan.verdict in (NEW, REMAKE) and plan.mark in pieces.to_make:
            yield Step(BEFORE, "make", (plan.mark,))
        for at in plan.plugged if plan.after is not None else ():
            yield _refitted(plan, at, BEFORE)
    elif plan.after is None:
        yield Step(OUT, "pull out", (plan.mark,), "", THROWN if plan.verdict == BIN else "")
    elif plan.verdict in (NEW, REMAKE) or plan.spare or on_new_deck(plan, pieces):
        yield from _fitted(plan, pieces)
    elif plan.before is not None and plan.before.ends is not None:
        yield from _kept(plan, pieces)


def _fitted(plan: LeadPlan, pieces: Pieces) -> Iterator[Step]:
    """A lead that comes; a DC lead goes into its unit, or its adaptor, when its plug has been measured; any other lies plugged, but where
    the unit is set down behind it."""
    assert plan.after is not None and plan.after.ends is not None
    called, phase = (_called(plan),), OF_SIGNAL[plan.after.signal]
    start, end = (str(port) for port in plan.after.ends)
    if plan.mark in pieces.to_make and plan.verdict in (NEW, REMAKE) and not plan.spare:
        yield Step(BEFORE, "make", called)
    for at in plan.plugged if plan.verdict not in (NEW, REMAKE) else ():
        yield _refitted(plan, at, phase)
    yield Step(phase, "fit", called, start, end)
    if phase == POWER:
        for at in (0, 1):
            there = plan.after.via[at] or plan.after.ends[at].thing
            early = plan.after.via[at] or there in pieces.supply_names or plan.after.signal == "mains"
            at_outlet = plan.after.leg_of is not None and there in pieces.supply_names
            mark = plan.after.leg_of if at_outlet and plan.after.leg_of else plan.mark
            yield Step(POWER if early else MOUNT, "plug in", (mark,), "", there)
    elif phase < MOUNT:
        set_down = {unit.name for unit in pieces.units if unit.there_after}
        for port in plan.after.ends:
            if port.thing in set_down and port.thing not in pieces.supply_names:
                yield Step(MOUNT, "plug in", called, "", port.thing)


def _kept(plan: LeadPlan, pieces: Pieces) -> Iterator[Step]:
    assert plan.before is not None and plan.before.ends is not None
    assert plan.after is not None and plan.after.ends is not None
    mark, phase = (_called(plan),), OF_SIGNAL[plan.after.signal]
    for at in sorted(_hands(plan)):
        old, new = plan.before.ends[plan.ends[at]], plan.after.ends[at]
        yield Step(OUT, "unplug", (plan.before.mark,), plan.before.via[plan.ends[at]] or old.thing)
        early = phase == POWER and (plan.after.via[at] or _at_supply(plan, at, pieces) or plan.after.signal == "mains")
        yield Step(phase if early or phase == CONTROL else MOUNT, "plug in", mark, "", plan.after.via[at] or new.thing)
    for at in _pulled_out(plan, pieces):
        if plan.after.via[at] and plan.mark != min(_pulled_out_with(plan.after.via[at], pieces), key=in_order):
            continue  # the pair's other lead tells of it
        free = plan.after.via[at] or plan.before.mark
        yield Step(OUT, "unplug", (free,), plan.after.ends[at].thing)
        yield Step(MOUNT, "plug in", (plan.after.via[at] or mark[0],), "", plan.after.ends[at].thing)
    for at in plan.plugged:
        yield _refitted(plan, at, phase)
    if plan.dressed:
        yield Step(TIES, "dress", mark)


def on_new_deck(plan: LeadPlan, pieces: Pieces) -> bool:
    """Whether a lead that is kept was freed with all others from a deck that is exchanged: it is laid and plugged in again."""
    if plan.before is None or not plan.dressed or plan.after is None or plan.after.ends is None:
        return False
    exchanged = exchanged_decks(pieces.fittings)
    there = {unit.name for unit in pieces.units if unit.after is not None and unit.after.deck in exchanged}
    return any(port.thing in there for port in plan.after.ends)


def _refitted(plan: LeadPlan, at: int, phase: int) -> Step:
    assert plan.after is not None and plan.after.ends is not None
    off = f" and {millimetres(plan.cut)} mm" if plan.cut and at == plan.plugged[-1] else ""
    return Step(
        phase, "refit plug", (_called(plan),), str(plan.after.ends[at]), f"{off}, fit {plan.after.plugs[at] or '?'}"
    )


def _hands(plan: LeadPlan) -> set[int]:
    """The ends at which something is done."""
    return {*plan.moved, *plan.swapped, *plan.adaptor, *plan.plugged}


def _pulled_out(plan: LeadPlan, pieces: Pieces) -> list[int]:
    """The ends that stay, and are out while what stands at the lead's plug is measured."""
    if plan.after is None or plan.after.ends is None or plan.after.signal not in ("dc", "ac"):
        return []
    hands = _hands(plan)
    if not _other_source(plan, hands, pieces):
        return []
    return [end for end in (0, 1) if end not in hands and not _at_supply(plan, end, pieces)]


def _pulled_out_with(adaptor: str, pieces: Pieces) -> list[str]:
    """The leads that stay in it, and are out."""
    kept = (each for each in pieces.leads if each.before is not None and each.verdict not in (NEW, REMAKE))
    return [
        each.mark
        for each in kept
        if each.after is not None and any(each.after.via[end] == adaptor for end in _pulled_out(each, pieces))
    ]


def _other_source(plan: LeadPlan, hands: set[int], pieces: Pieces) -> bool:
    """Whether what stands at the lead's plug is no longer known: another outlet, another setting, a plug fitted anew."""
    assert plan.after is not None and plan.after.ends is not None
    otherwise = {each.outlet for each in pieces.outlets if each.set_otherwise}
    return any(_at_supply(plan, end, pieces) for end in hands) or any(end in otherwise for end in plan.after.ends)


def _at_supply(plan: LeadPlan, end: int, pieces: Pieces) -> bool:
    assert plan.after is not None and plan.after.ends is not None
    return plan.after.ends[end].thing in pieces.supply_names


def _called(plan: LeadPlan) -> str:
    """Until the labels are changed, a lead that gets another number still bears the old one."""
    return f"{plan.mark} (labelled {plan.before.mark})" if plan.renumbered and plan.before is not None else plan.mark
