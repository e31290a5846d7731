"""Both boards -> the units and supplies that come, go or move, and their strips."""

from __future__ import annotations

from rigc.analysis.computations.board import Board, BoardPlace, BoardUnit
from rigc.analysis.revision.plan_records import StripPlan, UnitPlan
from rigc.analysis.revision.successors import Successors


def unit_plans(built: Board, new: Board, after: Successors) -> tuple[UnitPlan, ...]:
    """In the order of the new design, then those that go."""
    came = {name: old for old, name in after.units.items()}
    plans = [
        UnitPlan(
            name,
            name in built.units,
            name in new.units,
            _place(built.units.get(name)),
            _place(new.units.get(name)),
            came.get(name),
            after.units.get(name),
        )
        for name in {**new.units, **built.units}
    ]
    return tuple(plan for plan in plans if plan.there_before != plan.there_after or plan.before != plan.after)


def strip_plans(built: Board, new: Board) -> tuple[StripPlan, ...]:
    """Units whose strip is peeled off or laid: on its base where the pieces are others, on the deck also where it
    moves."""
    plans = []
    for name in {**new.strips, **built.strips}:
        before, after = built.strips.get(name), new.strips.get(name)
        base = (before and (before.strip, before.pieces)) != (after and (after.strip, after.pieces))
        deck = (before and (before.strip, before.deck_pieces)) != (after and (after.strip, after.deck_pieces))
        moved = _place(built.units.get(name)) != _place(new.units.get(name))
        laid = bool((before and before.deck_pieces) or (after and after.deck_pieces))
        if base or deck or (moved and laid):
            plans.append(StripPlan(name, before, after, base, deck or (moved and laid)))
    return tuple(plans)


def _place(unit: BoardUnit | None) -> BoardPlace | None:
    return None if unit is None else unit.place
