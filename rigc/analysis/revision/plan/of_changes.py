"""Pieces of a rework and the changes of the rig block -> the same pieces, each with its change, and whether that is done."""

from __future__ import annotations

from collections.abc import Iterable

from rigc.analysis.revision.board import BoardLead
from rigc.analysis.revision.plan.leads.plan import LeadPlan
from rigc.analysis.revision.plan.plan_records import AdaptorPlan, FeedPlan, FittingPlan, OutletPlan, ProgramPlan
from rigc.analysis.revision.plan.rework_pieces import Pieces
from rigc.analysis.revision.plan.successors import Successors
from rigc.model.records import Change
from rigc.model.rig import Rig
from rigc.record import Record


class ChangeLedger(Record):
    """The changes of a revision, and the numbers of those that the board that is there has already."""

    changes: tuple[Change, ...]
    done: frozenset[int]

    def of(self, own: Iterable[str], about: Iterable[str] = ()) -> dict[str, int | bool | None]:
        """`change` and `done` of what bears the names or numbers `own`: the first change that touches one of them, else
        the first that touches a thing that it is `about`. A lone change that names nothing is about everything."""
        number = next((found for names in (own, about) if (found := self._touching(frozenset(names)))), None)
        if number is None and len(self.changes) == 1 and not self.changes[0].touches:
            number = self.changes[0].number
        return {"change": number, "done": number in self.done}

    def _touching(self, names: frozenset[str]) -> int | None:
        return next((each.number for each in self.changes if names & frozenset(each.touches)), None)


def of_changes(pieces: Pieces, rig: Rig, ledger: ChangeLedger, after: Successors) -> Pieces:
    """A piece belongs to the change that touches it by its own name or number, else to the one that touches a thing
    at its ends: the thing that is there from now on before the one that was; a unit that goes counts with its
    successor."""
    heirs = after.units
    marked: Pieces = pieces.replace(
        leads=tuple(each.replace(**ledger.of((each.mark,), _lead(each, heirs))) for each in pieces.leads),
        adaptors=tuple(each.replace(**ledger.of((each.mark,), _adaptor(each))) for each in pieces.adaptors),
        outlets=tuple(each.replace(**ledger.of(_now(each), _was(each, heirs))) for each in pieces.outlets),
        feeds=tuple(each.replace(**ledger.of((each.unit,), _feed(each, heirs))) for each in pieces.feeds),
        units=tuple(each.replace(**ledger.of((each.name,), _heir(each.name, heirs))) for each in pieces.units),
        strips=tuple(each.replace(**ledger.of((each.unit,), _heir(each.unit, heirs))) for each in pieces.strips),
        programs=tuple(each.replace(**ledger.of((), _program(each, rig))) for each in pieces.programs),
        channels=tuple(each.replace(**ledger.of((each.unit,))) for each in pieces.channels),
        fittings=tuple(each.replace(**ledger.of(_own(each), _fitting(each, pieces))) for each in pieces.fittings),
        spares=tuple(each.replace(**ledger.of(())) for each in pieces.spares),
    )
    return marked


def _heir(name: str, heirs: dict[str, str]) -> tuple[str, ...]:
    return (heirs[name],) if name in heirs else ()


def _things(lead: BoardLead | None) -> tuple[str, ...]:
    return () if lead is None or lead.ends is None else tuple(end.thing for end in lead.ends)


def _with_heirs(names: Iterable[str], heirs: dict[str, str]) -> tuple[str, ...]:
    return tuple(heirs.get(name, name) for name in names)


def _lead(plan: LeadPlan, heirs: dict[str, str]) -> tuple[str, ...]:
    if plan.after is not None and not plan.touched:
        return ()
    via = () if plan.after is None else tuple(mark for mark in plan.after.via if mark)
    return (*via, *(_things(plan.after) or _with_heirs(_things(plan.before), heirs)))


def _adaptor(plan: AdaptorPlan) -> tuple[str, ...]:
    return tuple(name for each in (plan.after, plan.before) if each is not None for name in each.units)


def _now(plan: OutletPlan) -> tuple[str, ...]:
    return (plan.outlet.thing, *plan.after.units, *plan.after.leads)


def _was(plan: OutletPlan, heirs: dict[str, str]) -> tuple[str, ...]:
    return (*_with_heirs(plan.before.units, heirs), *plan.before.leads)


def _feed(plan: FeedPlan, heirs: dict[str, str]) -> tuple[str, ...]:
    outlets = () if plan.after is None else plan.after.outlets
    return (*_heir(plan.unit, heirs), *(port.thing for port in outlets))


def _own(plan: FittingPlan) -> tuple[str, ...]:
    return plan.leads or (plan.name,)


def _fitting(plan: FittingPlan, pieces: Pieces) -> tuple[str, ...]:
    """Of a passage what its leads go to."""
    if plan.leads:
        through = (lead.after for lead in pieces.leads if lead.mark in plan.leads)
        return (*(name for lead in through for name in _things(lead)), plan.on)
    return (plan.name.partition(".")[0], plan.on)


def _program(plan: ProgramPlan, rig: Rig) -> tuple[str, ...]:
    """The things that its settings name, and the units in its loops."""
    words = {word for line in (*(plan.after or ()), *(plan.before or ())) for word in line.split()}
    stops = {
        stop.thing for use in rig.loops if f"loop {use.number} of {use.switcher}" in plan.about for stop in use.stops
    }
    return tuple(name for name in rig.things if name in words or name in stops)
