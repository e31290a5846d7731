"""Leads that are kept and the routes of both designs -> which of them must be laid another way."""

from __future__ import annotations

from rigc.analysis.leads.lengths.cable_routes import CableRoutes, Route
from rigc.analysis.leads.lengths.lead_ends import tenths
from rigc.analysis.revision.board import Board
from rigc.analysis.revision.plan.leads.plan import KEEP, LeadPlan
from rigc.facts.leads import LEAST_SLACK_MM


def on_decks(board: Board, decks: frozenset[str]) -> frozenset[str]:
    """The things that stand on these decks."""
    return frozenset(name for name, unit in board.units.items() if unit.place is not None and unit.place.deck in decks)


def redressed(
    plans: tuple[LeadPlan, ...], old: CableRoutes, new: CableRoutes, put: frozenset[str]
) -> tuple[LeadPlan, ...]:
    """`put` are the things that are set on another deck: all their leads are laid anew.

    A kept lead whose ends stay is laid anew where it changes sides of the deck, drop lines or lane, or where an
    end of its way, or the way itself, shifts by more than its least slack, which takes up what is less. One whose
    end moves is in a hand anyway."""
    return tuple(plan.replace(dressed=True) if _is_redressed(plan, old, new, put) else plan for plan in plans)


def _is_redressed(plan: LeadPlan, old: CableRoutes, new: CableRoutes, put: frozenset[str]) -> bool:
    if plan.verdict != KEEP or plan.before is None or plan.moved or plan.spare:
        return False
    if plan.after is not None and not plan.after.stage and any(end.thing in put for end in plan.after.ends or ()):
        return True
    before, after = old.routes.get(plan.before.mark), new.routes.get(plan.mark)
    if before is None or after is None or not before.kind or not after.kind:
        return False
    slack = tenths(LEAST_SLACK_MM[plan.before.signal].value)
    turned = plan.ends == (1, 0)
    exits = before.exits[::-1] if turned else before.exits
    shifts = [abs(x1 - x2) + abs(y1 - y2) for (x1, y1), (x2, y2) in zip(exits, after.exits, strict=True)]
    return _way(before, turned) != _way(after, False) or max((*shifts, abs(before.more - after.more))) > slack


def _way(route: Route, turned: bool) -> tuple[str, tuple[int | None, ...], int | None]:
    return route.kind, route.drops[::-1] if turned else route.drops, route.lane
