"""Two revisions -> which thing of the one is which of the other where the names differ: leads by their ends, units by a guess."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.leads.leads import Lead, Leads
from rigc.analysis.previous import Previous
from rigc.analysis.results import Results
from rigc.analysis.revision.compared.changed import RENAMED, RENUMBERED, REPLACED
from rigc.analysis.revision.plan.successors import same_ground, stated, successors
from rigc.analysis.revision.rework import Rework
from rigc.model.rig import Rig
from rigc.record import Record

NAMED_AFTER_A_THING = ("unit", "supply", "place", "strips", "fixing", "bridge plate", "feed", "MIDI channel")
"""Kinds whose things bear the name of a unit or a supply."""


class Pair(Record):
    """A thing that is called `then` in the revision before and `now` in this one. `how` is `renamed` (the source says so),
    `replaced` (stated so, else a guess: both are what `why` says) or `renumbered` (a lead with the same two ends)."""

    kinds: tuple[str, ...]
    then: str
    now: str
    how: str
    why: str = ""


def pairs(previous: Previous, results: Results) -> tuple[Pair, ...]:
    """All pairs; renamed things first. The old results call a renamed thing by its new name already."""
    old = previous.results
    if old is None:
        return ()
    renamed = tuple(Pair(("unit", "supply"), then, now, RENAMED) for now, then in previous.renamed)
    reused = tuple(_reused(results.get(Rework)))
    taken = {mark for pair in reused for mark in (pair.then, pair.now)}
    renumbered = _renumbered(old.get(Leads), results.get(Leads))
    others = (pair for pair in renumbered if not {pair.then, pair.now} & taken)
    return (*renamed, *_replaced(old.rig, results.rig), *reused, *others)


def _reused(rework: Rework) -> Iterator[Pair]:
    """Leads that the rework uses under another number."""
    for plan in rework.leads:
        if plan.renumbered and plan.before is not None:
            yield Pair(("lead",), plan.before.mark, plan.mark, RENUMBERED)


def _replaced(before: Rig, after: Rig) -> Iterator[Pair]:
    """A successor for each thing that went, where one that came shares something with it."""
    went = tuple(name for name in (*before.units, *before.supplies) if name not in after.things)
    came = tuple(name for name in (*after.units, *after.supplies) if name not in before.things)
    if went and came:
        for then, now in successors(before, after, went, came).units.items():
            yield Pair(
                NAMED_AFTER_A_THING,
                then,
                now,
                REPLACED,
                "" if stated(after, then, now) else _evidence(before, after, then, now),
            )


def _evidence(old: Rig, new: Rig, then: str, now: str) -> str:
    """What holds of both, in words."""
    before = set(_stands(old, then))
    found = [each for each in _stands(new, now) if each in before]
    if same_ground(old, new, then, now):
        found.append("in one place")
    shared = [name for name in dict.fromkeys(_partners(new, now)) if name in set(_partners(old, then))]
    if shared and not found:
        found.append(f"joined to {' and '.join(shared)}")
    return " and ".join(found) or "much alike"


def _stands(rig: Rig, name: str) -> Iterator[str]:
    """Where it stands in loops and chains, in words, so that equal words are equal neighbours."""
    for loop in rig.loops:
        stops = [stop.thing for stop in loop.stops]
        if name in stops:
            yield f"in loop {loop.number} of {loop.switcher}"
    for chain in rig.chains:
        stops = [stop.thing for stop in chain.stops]
        for at, stop in enumerate(stops):
            if stop == name and 0 < at < len(stops) - 1:
                yield f"between {stops[at - 1]} and {stops[at + 1]}"
            elif stop == name and len(stops) > 1:
                yield f"{'behind' if at else 'before'} {stops[at - 1 if at else 1]}"


def _partners(rig: Rig, name: str) -> Iterator[str]:
    """The things that it shares a lead or a feed with."""
    for each in rig.connections:
        if name in (each.start.thing, each.end.thing):
            yield each.end.thing if each.start.thing == name else each.start.thing
    for feed in rig.power.feeds:
        outlets = tuple(port.thing for port in feed.outlets)
        if name in feed.units:
            yield from outlets
        if name in outlets:
            yield from feed.units


def _renumbered(old: Leads, new: Leads) -> Iterator[Pair]:
    """Leads that lie where they lay under another number, so that only their labels are wrong."""
    had = {lead.mark: _ends(lead) for lead in old.all}
    have = {lead.mark: _ends(lead) for lead in new.all}
    moved = {ends: mark for mark, ends in had.items() if have.get(mark) != ends}
    for mark, ends in have.items():
        if had.get(mark) != ends and ends in moved:
            yield Pair(("lead",), moved.pop(ends), mark, RENUMBERED)


def _ends(lead: Lead) -> tuple[str, str, str]:
    return lead.signal, str(lead.start), str(lead.end)
