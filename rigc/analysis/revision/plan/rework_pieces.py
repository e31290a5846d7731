"""Pieces: everything that is to be done to a board, kind by kind; each piece knows the change that it belongs to."""

from __future__ import annotations

from rigc.analysis.revision.plan.leads.plan import LeadPlan
from rigc.analysis.revision.plan.plan_records import (
    AdaptorPlan,
    ChannelPlan,
    FeedPlan,
    FittingPlan,
    LabelPlan,
    OutletPlan,
    ProgramPlan,
    Retest,
    SparePlan,
    StripPlan,
    UnitPlan,
)
from rigc.record import Record


class Pieces(Record):
    """`leads` has every lead of both boards, also those that stay as they are; `to_make` the numbers of those among
    the new ones that are made at the bench (others are bought, or exist); `supply_names` are the supplies of both, `corded` what has a mains
    lead of which no lead of either tells."""

    leads: tuple[LeadPlan, ...] = ()
    adaptors: tuple[AdaptorPlan, ...] = ()
    outlets: tuple[OutletPlan, ...] = ()
    feeds: tuple[FeedPlan, ...] = ()
    units: tuple[UnitPlan, ...] = ()
    strips: tuple[StripPlan, ...] = ()
    labels: tuple[LabelPlan, ...] = ()
    programs: tuple[ProgramPlan, ...] = ()
    channels: tuple[ChannelPlan, ...] = ()
    spares: tuple[SparePlan, ...] = ()
    fittings: tuple[FittingPlan, ...] = ()
    retests: tuple[Retest, ...] = ()
    to_make: frozenset[str] = frozenset()
    supply_names: frozenset[str] = frozenset()
    corded: frozenset[str] = frozenset()

    def lead(self, mark: str) -> LeadPlan | None:
        """What becomes of the lead of that number (the new design's, else the old one's)."""
        named = [plan for plan in self.leads if plan.mark == mark]
        return next((plan for plan in named if plan.after is not None), named[0] if named else None)
