"""Pieces of strip and tape -> how they are cut from rolls of the length that the stock states: `hook.roll`, `.rolls`, `.least-rolls`,
`.from-rolls`, `.rolls-left`."""

from __future__ import annotations

from rigc.analysis.leads.lengths.lead_ends import tenths
from rigc.analysis.mounting.mounting_strip import MountingStrip
from rigc.analysis.mounting.rail_tape import RailTape
from rigc.analysis.mounting.strip_order import OrderedStrip, StripOrder, strip_length
from rigc.diagnostics.figures import millimetres
from rigc.model.fact import Quantity
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.solvers.cutting.plan import CuttingPlan, cutting_plan
from rigc.traced.figure import Figure, named_by_field
from rigc.traced.given import stated
from rigc.traced.means import found, in_its_unit, total
from rigc.traced.reason import AS_STATED, STATED
from rigc.traced.shown import places
from rigc.traced.term import number
from rigc.traced.units import COUNT, METRES_CUT

_ROLL = places("m", 4, 1000)


class Rolls(Record):
    """How the pieces of a strip come off rolls that are `roll` mm long, as few `rolls` as will do; `left` is what is left of them, in m."""

    roll: Figure
    plan: CuttingPlan
    rolls: Figure
    least: Figure
    left: Figure


class RollUse(Record):
    """The pieces of one kind of strip, in tenths of a millimetre, the longest first.

    `cut` is None where the stock does not say how long a roll is.
    """

    kind: OrderedStrip
    pieces: tuple[int, ...]
    cut: Rolls | None


class RollUses(Record):
    """Each kind of strip, in the order of the totals."""

    all: tuple[RollUse, ...]


def roll_uses(rig: Rig, strips: MountingStrip, tape: RailTape, order: StripOrder) -> RollUses:
    """Cuts the pieces of each kind from as few rolls as will do."""
    return RollUses(tuple(_use(rig, strips, tape, kind) for kind in order.kinds))


def _use(rig: Rig, strips: MountingStrip, tape: RailTape, kind: OrderedStrip) -> RollUse:
    pieces = tuple(sorted((tenths(each) for each in _pieces(strips, tape, kind) if each > 0), reverse=True))
    stock = rig.stock.strips.get(kind.strip or "")
    roll = None if stock is None else stock.roll_mm
    return RollUse(kind, pieces, None if roll is None else _rolls(kind, roll, pieces))


def _rolls(kind: OrderedStrip, length: Quantity, pieces: tuple[int, ...]) -> Rolls:
    name, plan = kind.name, cutting_plan(tenths(length.value), pieces)
    roll = named_by_field(
        f"{name}.roll", stated(f"how long a roll of {name} is", length), _ROLL, rule=AS_STATED, source=STATED
    )
    count = len(plan.raws)
    told = " | ".join(" + ".join(map(millimetres, raw)) for raw in plan.raws) or "nothing"
    rolls = named_by_field(
        f"{name}.rolls",
        found(count, lambda: f"{told}: {count}"),
        COUNT,
        roll,
        kind.laid_mm,
        rule="every piece whole, from as few rolls as will do",
    )
    least = named_by_field(
        f"{name}.least-rolls",
        found(plan.least, lambda: f"{plan.bound:.4f} → {plan.least}"),
        COUNT,
        roll,
        kind.laid_mm,
        rule="no plan has fewer rolls: what the pieces take at least, rounded up",
    )
    cut = named_by_field(
        f"{name}.from-rolls",
        total(number(piece / 10) for raw in plan.raws for piece in raw) / 1000,
        METRES_CUT,
        kind.laid_mm,
        rule="the pieces that a roll holds",
    )
    left = named_by_field(
        f"{name}.rolls-left", rolls * in_its_unit(roll) - cut, METRES_CUT, rule="the rolls less what is cut"
    )
    return Rolls(roll, plan, rolls, least, left)


def _pieces(strips: MountingStrip, tape: RailTape, kind: OrderedStrip) -> list[float]:
    """What lies under units, its twins on the deck, and tape of that width; in mm."""
    every: list[float] = []
    for unit in strips.units:
        if unit.strip == kind.strip:
            every += [unit.piece_mm] * unit.count
            every += [strip_length(piece, kind.width_mm) for piece in unit.deck_pieces]
    if kind.on_rails_mm:
        for _, _, piece, strip, faces in tape.each:
            if kind.is_tape(strip, piece.depth_mm):
                every += [piece.width_mm] * faces
    return every


COMPUTE = roll_uses
