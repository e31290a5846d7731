"""Leads that are made at the bench -> what each cable takes from its reels: `mini-coax.pieces`, `.cut`, `.with-waste`,
`.spare-ends`, `.take`, `.reel-holds`, `.reels`, `.least-reels`, `.left`; where there are several reels, `.last-with-waste`, `.last-reel`."""

from __future__ import annotations

from math import ceil, floor

from rigc.analysis.leads.lead_status import status
from rigc.analysis.leads.leads import Lead, Leads
from rigc.analysis.leads.lengths.cable_lengths import CableLengths
from rigc.analysis.leads.lengths.lead_ends import whole_tenths
from rigc.diagnostics.figures import metres_cut, plain
from rigc.facts.bench import REEL_MM, SPARE_ENDS
from rigc.facts.leads import WASTE_SHARE
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.solvers.cutting.plan import CuttingPlan, cutting_plan
from rigc.traced.figure import Figure, named_by_field
from rigc.traced.given import mentioned, ours, stated
from rigc.traced.means import becomes, found, in_its_unit, total
from rigc.traced.reason import PRACTICE
from rigc.traced.term import Term, number
from rigc.traced.units import COUNT, METRES_CUT, METRES_TAKEN, TENTHS

_WASTE = f"{plain(100 * WASTE_SHARE.value)} % waste, rounded up to a centimetre"
_HAIR = 1e-6  # far below what a cut is off, far above what binary floats are off
_FINE = 10_000  # tenths of a millimetre in a metre


class ReelUse(Record):
    """What one cable takes, in m. `cable` is None where no cable is stated.

    `leads` are cut from it, the longest first, and `cuts` their cut lengths in tenths of a millimetre. `cut` is all of them
    together, `take` what to take from the stock: these `with_waste`, and the `spare_ends` (tenths of a millimetre). `plan` cuts the
    leads from full reels of which the spare ends and the waste are set aside: each `holds` so much. `left` is left on the last
    reel, part centimetres left off; None where no reel is cut.
    """

    cable: str | None
    leads: tuple[Lead, ...]
    cuts: tuple[Figure, ...]
    pieces: Figure
    cut: Figure
    with_waste: Figure
    spare_ends: Figure
    take: Figure
    holds: Figure
    plan: CuttingPlan
    reels: Figure
    least: Figure
    left: Figure | None


class ReelUses(Record):
    """Each cable that is cut, in the order of the stock."""

    all: tuple[ReelUse, ...]


def reel_uses(rig: Rig, leads: Leads, lengths: CableLengths) -> ReelUses:
    """Batches the leads by cable, and cuts each batch from as few reels as will do."""
    batches: dict[str | None, list[tuple[Lead, Figure]]] = {cable: [] for cable in (*rig.stock.cables, None)}
    for lead in leads.all:
        length = lengths.lengths.get(lead.mark)
        if length is not None and isinstance(length.cutting, Figure) and status(rig, lead) == "make":
            batches[lead.cable].append((lead, length.cutting))
    return ReelUses(tuple(_use(rig, cable, batch) for cable, batch in batches.items() if batch))


def with_waste(metres: Term) -> Term:
    """What a length in m takes with the usual waste, part centimetres counted as whole."""
    return up_to_centimetre(metres * (1 + ours(WASTE_SHARE)))


def up_to_centimetre(metres: Term) -> Term:
    """A length in m, part centimetres counted as whole."""
    if abs(_next_centimetre(metres) - metres) < _HAIR:
        return metres
    rounded: Term = becomes(metres, _next_centimetre)
    return rounded


def stock_name(cable: str | None) -> str:
    """What a cable is called in the names of its figures."""
    return cable or "cable-not-stated"


def _next_centimetre(metres: float) -> float:
    return ceil(metres * 100 - _HAIR) / 100


def _use(rig: Rig, cable: str | None, batch: list[tuple[Lead, Figure]]) -> ReelUse:
    batch = sorted(batch, key=lambda each: -each[1])
    leads, cuts = tuple(lead for lead, _ in batch), tuple(cut for _, cut in batch)
    name = stock_name(cable)
    cut = named_by_field(f"{name}.cut", _together(cuts), METRES_CUT, rule="the cut lengths together")
    wasted = named_by_field(
        f"{name}.with-waste",
        with_waste(cut),
        METRES_TAKEN,
        rule=f"the cut length and {_WASTE}",
        source=WASTE_SHARE.source,
    )
    spare_ends = _spare_ends(rig, name, leads)
    take = _taken(f"{name}.take", wasted, spare_ends)
    holds = _holds(name, spare_ends)
    plan = cutting_plan(round(holds * _FINE), tuple(map(round, cuts)))
    return ReelUse(
        cable,
        leads,
        cuts,
        _pieces(name, leads),
        cut,
        wasted,
        spare_ends,
        take,
        holds,
        plan,
        _reels(name, plan, holds, cut),
        _least(name, plan, holds, cut),
        _left(name, plan, cuts, spare_ends, take),
    )


def _together(cuts: tuple[Figure, ...]) -> Term:
    """Cut lengths together, in m."""
    metres: Term = total(in_its_unit(cut) for cut in cuts) / 1000
    return metres


def _pieces(name: str, leads: tuple[Lead, ...]) -> Figure:
    marks = ", ".join(lead.mark for lead in leads)
    return named_by_field(
        f"{name}.pieces",
        found(len(leads), lambda: f"{marks}: {len(leads)}"),
        COUNT,
        *(mentioned(lead.mark, f"{lead.start} -> {lead.end}", lead.span) for lead in leads),
        rule="leads of this cable made at the bench",
    )


def _spare_ends(rig: Rig, name: str, leads: tuple[Lead, ...]) -> Figure:
    kinds = dict.fromkeys(plug for lead in leads for plug in lead.ends if plug is not None)
    facts = ((kind, rig.stock.plugs[kind].cut_in_mm) for kind in kinds)
    taken_in = [whole_tenths(stated(f"{kind} takes in", fact, TENTHS)) for kind, fact in facts if fact is not None]
    most = max(taken_in, default=number(0))
    return named_by_field(
        f"{name}.spare-ends",
        ours(SPARE_ENDS) * most,
        TENTHS,
        *(each for each in taken_in if each is not most),
        rule="ends that may have to be made anew, each the most that a plug of the batch takes in",
        source=SPARE_ENDS.source,
    )


def _taken(name: str, wasted: Figure, spare_ends: Figure) -> Figure:
    value = up_to_centimetre(wasted + in_its_unit(spare_ends) / 1000)
    rule = "the cut lengths with the waste, and the spare ends, rounded up to a centimetre"
    return named_by_field(name, value, METRES_TAKEN, rule=rule)


def _holds(name: str, spare_ends: Figure) -> Figure:
    left = (ours(REEL_MM) - in_its_unit(spare_ends)) / 1000 / (1 + ours(WASTE_SHARE))
    return named_by_field(
        f"{name}.reel-holds",
        becomes(left, lambda each: floor(each * _FINE + _HAIR) / _FINE),
        METRES_CUT,
        rule="a full reel, of which the waste and the spare ends are set aside; part tenths of a millimetre left off",
        source=PRACTICE,
    )


def _reels(name: str, plan: CuttingPlan, holds: Figure, cut: Figure) -> Figure:
    count = len(plan.raws)
    return named_by_field(
        f"{name}.reels",
        found(count, lambda: f"{' + '.join(metres_cut(sum(raw)) for raw in plan.raws) or '0'} on {count}"),
        COUNT,
        holds,
        cut,
        rule="leads on full reels, of which the waste and the spare ends are set aside: as few reels as will do",
        source=PRACTICE,
    )


def _least(name: str, plan: CuttingPlan, holds: Figure, cut: Figure) -> Figure:
    return named_by_field(
        f"{name}.least-reels",
        found(plan.least, lambda: f"{plan.bound:.4f} → {plan.least}"),
        COUNT,
        holds,
        cut,
        rule="no plan has fewer reels: what the leads take at least, rounded up",
    )


def _left(name: str, plan: CuttingPlan, cuts: tuple[Figure, ...], spare_ends: Figure, take: Figure) -> Figure | None:
    if not plan.raws:
        return None
    rule = "a reel less the leads of the last one with their waste and the spare ends"
    taken = take if len(plan.raws) == 1 and not plan.too_long else _last(name, plan, cuts, spare_ends)
    return named_by_field(f"{name}.left", ours(REEL_MM) / 1000 - taken, METRES_TAKEN, rule=rule)


def _last(name: str, plan: CuttingPlan, cuts: tuple[Figure, ...], spare_ends: Figure) -> Figure:
    """What is taken of the last reel."""
    by_length: dict[int, list[Figure]] = {}
    for cut in cuts:
        by_length.setdefault(round(cut), []).append(cut)
    last = tuple(by_length[length].pop() for length in plan.raws[-1])
    wasted = named_by_field(
        f"{name}.last-with-waste",
        with_waste(_together(last)),
        METRES_TAKEN,
        rule=f"the cut lengths of the leads from the last reel, and {_WASTE}",
        source=WASTE_SHARE.source,
    )
    return _taken(f"{name}.last-reel", wasted, spare_ends)


COMPUTE = reel_uses
