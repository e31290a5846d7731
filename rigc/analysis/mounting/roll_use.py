"""Pieces of strip and tape -> how they are cut from rolls of the length that the stock states."""

from __future__ import annotations

from rigc.analysis.cables.lead_ends import tenths
from rigc.analysis.computations.mounting_strip import MountingStrip
from rigc.analysis.computations.rail_tape import RailTape
from rigc.analysis.computations.strip_order import OrderedStrip, StripOrder, strip_length
from rigc.analysis.cutting.cutting_plan import CuttingPlan, cutting_plan
from rigc.model.rig import Rig
from rigc.record import Record


class RollUse(Record):
    """The pieces of one kind of strip, in tenths of a millimetre, the longest first.

    `plan` is None where the stock does not say how long a roll is.
    """

    kind: OrderedStrip
    pieces: tuple[int, ...]
    plan: CuttingPlan | None


def roll_uses(rig: Rig, strips: MountingStrip, tape: RailTape, order: StripOrder) -> tuple[RollUse, ...]:
    """For each kind of strip, in the order of the totals."""
    return tuple(_use(rig, strips, tape, kind) for kind in order.kinds)


def _use(rig: Rig, strips: MountingStrip, tape: RailTape, kind: OrderedStrip) -> RollUse:
    pieces = tuple(sorted((tenths(each) for each in _pieces(strips, tape, kind) if each > 0), reverse=True))
    stock = rig.stock.strips.get(kind.strip or "")
    roll = None if stock is None or stock.roll_mm is None else stock.roll_mm.value
    return RollUse(kind, pieces, None if roll is None else cutting_plan(tenths(roll), pieces))


def _pieces(strips: MountingStrip, tape: RailTape, kind: OrderedStrip) -> list[float]:
    """What lies under units, its twins on the deck, and tape of that width; in mm."""
    found: list[float] = []
    for unit in strips.units:
        if unit.strip == kind.strip:
            found += [unit.piece_mm] * unit.count
            found += [strip_length(piece, kind.width_mm) for piece in unit.deck_pieces]
    if kind.on_rails_mm:
        for _, _, piece, strip, faces in tape.each:
            if kind.is_tape(strip, piece.depth_mm):
                found += [piece.width_mm] * faces
    return found
