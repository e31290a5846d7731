"""Both boards -> what becomes of every lead."""

from __future__ import annotations

from rigc.analysis.leads.lengths.cable_lengths import CableLengths, Length
from rigc.analysis.revision.board import Board, BoardLead
from rigc.analysis.revision.plan.leads.fit import TOO_LONG, UNKNOWN, Bench, Fit, fit, unlike
from rigc.analysis.revision.plan.leads.plan import BIN, KEEP, NEW, REMAKE, STORE, UNTOLD, LeadPlan
from rigc.analysis.revision.plan.leads.reuse import Reused, reused
from rigc.analysis.revision.plan.leads.stage import end_by_end, stage_plan, stage_twin
from rigc.analysis.revision.plan.leads.y_leads import whole_ys


def lead_plans(
    built: Board, new: Board, lengths: CableLengths, spares: tuple[BoardLead, ...], bench: Bench
) -> tuple[LeadPlan, ...]:
    """The new board's leads in order, then those of the old board that are pulled. `spares` are leads that the new design carries no longer
    as such. Of a lead without a way over a deck, such as one between two decks, no other is made while it may stay itself."""
    needs = tuple(lead for lead in new.leads.values() if _measurable(lead) and lead.mark in lengths.lengths)
    untold = new.leads.keys() - {lead.mark for lead in needs}
    stays = {mark for mark in untold if _measurable(new.leads[mark]) and _is_itself(built, new.leads[mark])}
    own = tuple(lead for lead in built.leads.values() if _measurable(lead) and lead.mark not in stays)
    haves = (*own, *spares)
    found = reused(needs, lengths.lengths, haves, bench)
    twins: set[str] = set()
    plans = [
        _staged(built, new, lead, twins, bench)
        if lead.stage
        else _by_number(built, lead, bench)
        if lead.mark in untold
        else _planned(built, lead, lengths, found, haves, bench)
        for lead in new.leads.values()
    ]
    plans = whole_ys(plans, built, new)
    kept = {plan.before.mark for plan in plans if plan.before is not None and not plan.spare}
    pulled = [_pulled(lead, new, lengths, bench) for mark, lead in built.leads.items() if mark not in kept]
    return (*plans, *pulled)


def _is_itself(built: Board, need: BoardLead) -> bool:
    """Whether the lead of its number is one of its kind."""
    have = built.leads.get(need.mark)
    return have is not None and not unlike(have, need)


def _measurable(lead: BoardLead) -> bool:
    return not lead.stage and not lead.captive


def _planned(
    built: Board,
    need: BoardLead,
    lengths: CableLengths,
    found: dict[str, Reused],
    haves: tuple[BoardLead, ...],
    bench: Bench,
) -> LeadPlan:
    window = lengths.lengths[need.mark]
    own = built.leads.get(need.mark)
    if need.mark in found:
        use = found[need.mark]
        return _kept(haves[use.have], need, use.fit, window)
    plan = LeadPlan(need.mark, NEW, None, need, window.least, window.longest_kept, assumed=window.assumed)
    if own is None:
        return plan
    why = fit(own, need, window, bench)
    if why == UNKNOWN:
        untold: LeadPlan = plan.replace(verdict=UNTOLD, before=own, why=why)
        return untold
    remade: LeadPlan = plan.replace(verdict=REMAKE, why=why if isinstance(why, str) else "it serves elsewhere")
    return remade


def _kept(have: BoardLead, need: BoardLead, one: Fit, window: Length) -> LeadPlan:
    return LeadPlan(
        need.mark,
        KEEP,
        have,
        need.replace(length=one.length),
        window.least,
        window.longest_kept,
        ends=one.ends,
        moved=one.moved,
        adaptor=one.adaptor,
        swapped=one.swapped,
        plugged=one.plugged,
        labelled=one.labelled,
        cut=one.cut,
        spare=have.ends is None,
        assumed=window.assumed,
    )


def _staged(built: Board, new: Board, need: BoardLead, twins: set[str], bench: Bench) -> LeadPlan:
    """By its number, else the one that it is under another number; each of those (`twins`) serves once."""
    have = built.leads.get(need.mark) or stage_twin(built, new, need, bench)
    if have is None or not have.stage or have.mark in twins:
        return _comes(need)
    twins.add(have.mark)
    return stage_plan(have, need, bench)


def _by_number(built: Board, need: BoardLead, bench: Bench) -> LeadPlan:
    """A lead without a way over the deck: the one of its number stays where nothing about it changes, and is made anew
    where it is of another kind; else nobody can tell."""
    have = built.leads.get(need.mark)
    if have is None:
        return _comes(need)
    if why := unlike(have, need):
        return LeadPlan(need.mark, REMAKE, None, need, why=why)
    if (have.ends, have.plugs) == (need.ends, need.plugs) and have.is_as_long(need):
        return end_by_end(have, need, KEEP, bench)
    return end_by_end(have, need, UNTOLD, bench, "its way is not known")


def _pulled(lead: BoardLead, new: Board, lengths: CableLengths, bench: Bench) -> LeadPlan:
    """Stored where it could take the place of a lead of the new board as it is, or of all of its kind, being longer; else binned. For a
    spare another cable will do. A captive lead goes with its unit, and a stage lead, or a certified mains lead, is never of no use."""
    if lead.signal == "mains":
        return LeadPlan(lead.mark, STORE, lead, None, why="a lead set as it was bought")
    if lead.captive or lead.stage:
        return LeadPlan(lead.mark, STORE, lead, None, why=_captive(lead, new) if lead.captive else "")
    peers = [
        need for mark, need in new.leads.items() if mark in lengths.lengths and _measurable(need) and not need.leg_of
    ]
    found = [
        fit(lead.replace(cable=need.cable), need, lengths.lengths[need.mark], bench)
        for need in peers
        if need.signal == lead.signal and bench.carries_as_much(lead, need)
    ]
    serves = any(isinstance(one, Fit) and not one.plugged for one in found)
    universal = bool(found) and all(one == TOO_LONG for one in found)
    return LeadPlan(lead.mark, STORE if lead.leg_of is None and (serves or universal) else BIN, lead, None)


def _captive(lead: BoardLead, new: Board) -> str:
    """What becomes of a captive lead that is used no longer: where its brick stays, it still grows out of that."""
    stays = any(lead.grows_from in (each.ends or ()) for each in new.leads.values())
    return f"it hangs on {lead.grows_from}, tie it back" if stays else "it goes with its unit"


def _comes(need: BoardLead) -> LeadPlan:
    """A lead that was not there, made or bought; a captive one comes with its thing."""
    grows = need.grows_from
    return LeadPlan(need.mark, NEW, None, need, why="" if grows is None else f"it comes with {grows.thing}")
