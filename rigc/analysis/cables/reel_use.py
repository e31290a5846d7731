"""Batches of leads to be cut -> what each cable takes from its reels: cut lengths, waste and spare ends."""

from __future__ import annotations

from rigc.analysis.cables.cut_batches import cut_batches, with_waste_cm
from rigc.analysis.cables.lead_ends import tenths
from rigc.analysis.computations.cable_lengths import CableLengths
from rigc.analysis.computations.leads import Lead, Leads
from rigc.analysis.cutting.cutting_plan import CuttingPlan, cutting_plan
from rigc.facts.bench import REEL_MM, SPARE_ENDS
from rigc.facts.leads import WASTE_SHARE
from rigc.model.rig import Rig
from rigc.record import Record


class ReelUse(Record):
    """What one cable takes, lengths in tenths of a millimetre. `cable` is None where no cable is stated.

    `end` is one spare end. `plan` cuts the leads from full reels of which the spare ends and the waste are set aside.
    """

    cable: str | None
    leads: tuple[Lead, ...]
    cuts: tuple[int, ...]
    end: int
    plan: CuttingPlan

    @property
    def cut(self) -> int:
        """All leads as they are cut."""
        return sum(self.cuts)

    @property
    def spare_ends(self) -> int:
        """The spare ends together."""
        return round(SPARE_ENDS.value) * self.end

    @property
    def taken_cm(self) -> int:
        """What to take from the stock, in whole centimetres: the cut lengths with the waste, and the spare ends."""
        return self._with_spares_cm(self.cut)

    @property
    def last_cm(self) -> int | None:
        """What the last reel gives in whole centimetres, the spare ends among it; None where no reel is cut."""
        return self._with_spares_cm(sum(self.plan.raws[-1])) if self.plan.raws else None

    @property
    def left_cm(self) -> int | None:
        """What is left on the last reel in whole centimetres, part ones left off; None where no reel is cut."""
        return None if self.last_cm is None else tenths(REEL_MM.value) // 100 - self.last_cm

    def _with_spares_cm(self, cut: int) -> int:
        return with_waste_cm(cut) + -(-self.spare_ends // 100)


def reel_uses(rig: Rig, leads: Leads, lengths: CableLengths) -> tuple[ReelUse, ...]:
    """For each cable that is cut, in the order of the stock."""
    return tuple(_use(rig, cable, batch) for cable, batch in cut_batches(rig, leads, lengths))


def _use(rig: Rig, cable: str | None, batch: list[tuple[Lead, int]]) -> ReelUse:
    cuts = tuple(cut for _, cut in batch)
    plugs = [rig.stock.plugs[plug].cut_in_mm for lead, _ in batch for plug in lead.ends if plug is not None]
    end = max((tenths(cut_in.value) for cut_in in plugs if cut_in is not None), default=0)
    whole = tenths(REEL_MM.value) - round(SPARE_ENDS.value) * end
    usable = whole * 100 // (100 + round(100 * WASTE_SHARE.value))
    return ReelUse(cable, tuple(lead for lead, _ in batch), cuts, end, cutting_plan(usable, cuts))
