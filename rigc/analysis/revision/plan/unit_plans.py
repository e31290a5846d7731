"""Both boards -> the units and supplies that come, go or move, and their strips."""

from __future__ import annotations

from rigc.analysis.revision.board import Board, BoardPlace, BoardUnit
from rigc.analysis.revision.plan.plan_records import StripPlan, UnitPlan
from rigc.analysis.revision.plan.successors import Successors


def unit_plans(built: Board, new: Board, after: Successors, exchanged: frozenset[str]) -> tuple[UnitPlan, ...]:
    """In the order of the new design, then those that go. What stands on a deck that is exchanged, gets other strip under its base or
    is held otherwise is taken off and set down again also where its place is the same."""
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
            _fixing(new.units.get(name)),
            _refixed(built.units.get(name), new.units.get(name)),
        )
        for name in {**new.units, **built.units}
    ]
    return tuple(
        plan
        for plan in plans
        if plan.there_before != plan.there_after
        or plan.before != plan.after
        or plan.refixed
        or _on(plan.after, exchanged)
        or _base(built, plan.name) != _base(new, plan.name)
    )


def strip_plans(built: Board, new: Board, exchanged: frozenset[str]) -> tuple[StripPlan, ...]:
    """Units whose strip is peeled off or laid: on its base where the pieces are others, on the deck also where it
    moves, or where the deck is another. What lies on a deck that goes stays on it."""
    plans = []
    for name in {**new.strips, **built.strips}:
        before, after = built.strips.get(name), new.strips.get(name)
        base = _base(built, name) != _base(new, name)
        deck = (before and (before.strip, before.deck_pieces)) != (after and (after.strip, after.deck_pieces))
        was, now = _place(built.units.get(name)), _place(new.units.get(name))
        moved = was != now or _on(now, exchanged)
        laid = bool((before and before.deck_pieces) or (after and after.deck_pieces))
        if base or deck or (moved and laid):
            peeled = before is not None and bool(before.deck_pieces) and not _on(was, exchanged)
            stays = name in built.units and name in new.units
            plans.append(StripPlan(name, before, after, base, deck or (moved and laid), peeled, stays))
    return tuple(plans)


def _base(board: Board, name: str) -> tuple[str, tuple[float, ...]] | None:
    """The strip under a unit's base."""
    strips = board.strips.get(name)
    return None if strips is None else (strips.strip, strips.pieces)


def _fixing(unit: BoardUnit | None) -> str | None:
    return None if unit is None else unit.fixing


def _refixed(before: BoardUnit | None, after: BoardUnit | None) -> bool:
    """Whether what was on the board is held otherwise now."""
    return before is not None and after is not None and before.fixing != after.fixing


def _place(unit: BoardUnit | None) -> BoardPlace | None:
    return None if unit is None else unit.place


def _on(place: BoardPlace | None, decks: frozenset[str]) -> bool:
    return place is not None and place.deck in decks
