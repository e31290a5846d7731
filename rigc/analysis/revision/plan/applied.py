"""A rework and the board that is there -> the board after the work, each action changing what a hand would change."""

from __future__ import annotations

from collections.abc import Hashable, Mapping
from typing import TypeVar

from rigc.analysis.revision.board import Board, BoardLead, BoardUnit
from rigc.analysis.revision.plan.leads.plan import LeadPlan
from rigc.analysis.revision.plan.rework_pieces import Pieces

Name = TypeVar("Name", bound=Hashable)
T = TypeVar("T")


def applied(rework: Pieces, board: Board) -> Board:
    """The board after every piece of the rework; of a part of it, the board as it stands half-way.

    A lead that is kept keeps its length, but for what a new plug takes; songs and presets are entered as they shall be.
    """
    leads = _leads(rework, board.leads)
    units = dict(board.units)
    for plan in rework.units:
        units.pop(plan.name, None)
        if plan.there_after:
            units[plan.name] = BoardUnit(plan.name, plan.after, plan.fixing)
    return Board(
        leads,
        _exchanged(board.adaptors, {plan.mark: plan.after for plan in rework.adaptors}),
        units,
        _exchanged(board.feeds, {plan.unit: plan.after for plan in rework.feeds}),
        _exchanged(board.strips, {plan.unit: plan.after for plan in rework.strips}),
        _exchanged(board.presets, {plan.number: plan.after for plan in rework.programs if plan.number is not None}),
        _exchanged(board.songs, {plan.title: plan.after for plan in rework.programs if plan.number is None}),
        _exchanged(board.channels, {plan.unit: plan.after for plan in rework.channels}),
        {what: count for what, count in _spares(rework, board).items() if count},
        _y_labels(rework, board, leads),
    )


def _exchanged(have: Mapping[Name, T], pieces: Mapping[Name, T | None]) -> dict[Name, T]:
    return {name: value for name, value in {**have, **pieces}.items() if value is not None}


def _spares(rework: Pieces, board: Board) -> dict[str, int]:
    return {**board.spares, **{plan.what: plan.after for plan in rework.spares}}


def _y_labels(rework: Pieces, board: Board, leads: dict[str, BoardLead]) -> dict[str, str]:
    """A Y lead is there as long as its legs are."""
    texts = {**board.y_labels, **{each.mark: each.text for each in rework.labels if each.end is None}}
    legs = {lead.leg_of for lead in leads.values()}
    return {mark: text for mark, text in texts.items() if mark in legs}


def _leads(rework: Pieces, have: dict[str, BoardLead]) -> dict[str, BoardLead]:
    """Leads are taken off before any is put on, since one may take another's number."""
    off = {plan.before.mark for plan in rework.leads if plan.before is not None and not plan.spare}
    leads = {mark: lead for mark, lead in have.items() if mark not in off}
    for plan in rework.leads:
        if plan.after is not None:
            leads[plan.mark] = plan.after if plan.before is None else _worked(plan, plan.before, plan.after)
    return leads


def _worked(plan: LeadPlan, lead: BoardLead, target: BoardLead) -> BoardLead:
    """The lead that is there after the actions of its plan: what no action names stays as it was."""
    moved = {*plan.moved, *plan.swapped}
    via = {*moved, *plan.adaptor}
    ends, into = lead.ends, target.ends
    assert into is not None
    worked: BoardLead = lead.replace(
        mark=plan.mark,
        ends=tuple(into[end] if end in moved or ends is None else ends[plan.ends[end]] for end in (0, 1)),
        via=tuple(target.via[end] if end in via else lead.via[plan.ends[end]] for end in (0, 1)),
        plugs=tuple(target.plugs[end] if end in plan.plugged else lead.plugs[plan.ends[end]] for end in (0, 1)),
        labels=tuple(target.labels[end] if end in plan.labelled else lead.labels[plan.ends[end]] for end in (0, 1)),
        length=target.length if plan.plugged else lead.length,
        leg_of=target.leg_of,
        make=target.make,
        designed=target.designed,
    )
    return worked
