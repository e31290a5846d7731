"""Leads and as many connections without one that hang together: a chain in another order, ends exchanged, a unit in the place of another."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from rigc.diagnostics.diagnostic import Diagnostic, Label
from rigc.diagnostics.mend import Mend, Replace
from rigc.diagnostics.wording import joined
from rigc.model.jacks import Port
from rigc.model.resolve.wishes.loose.loose_lead import Caused, Joints, Left, LooseLead, carrying
from rigc.model.scope import LOOSE_LEAD
from rigc.model.wishes import Connection


def tangles(left: Left, joints: Joints) -> Caused:
    """One finding for each such tangle."""
    for leads, joined_so in _tangles(carrying("audio", left), joints):
        yield leads, _told(leads, joined_so)


def _tangles(leads: Sequence[LooseLead], joints: Joints) -> Iterator[tuple[list[LooseLead], list[Connection]]]:
    """Leads, two or more, and as many connections without a lead that hang together: by jacks at which both begin or end, or by a unit between.

    Those of a chain in another order, of two ends exchanged, of a unit in the place of another.
    """
    free = [each for each in joints.free if each.signal == "audio"]
    hosts = {name for name, thing in joints.things.items() if thing.loops}
    ways: list[LooseLead | Connection] = [*leads, *free]
    of_port: dict[tuple[str, Port], list[int]] = {}
    of_thing: dict[tuple[bool, str], list[int]] = {}
    for at, way in enumerate(ways):
        of_port.setdefault(("start", way.start), []).append(at)
        of_port.setdefault(("end", way.end), []).append(at)
        for name in {way.start.thing, way.end.thing} - hosts:
            of_thing.setdefault((at < len(leads), name), []).append(at)
    knots = [at for at in of_port.values() if at[0] < len(leads) <= at[-1]]
    for (_, name), members in of_thing.items():
        if any(ways[at].start.thing == name for at in members) and any(ways[at].end.thing == name for at in members):
            knots.append(members)
    knotted: dict[int, list[list[int]]] = {}
    for knot in knots:
        for at in knot:
            knotted.setdefault(at, []).append(knot)
    seen = set[int]()
    for first in range(len(leads)):
        group, edge = list[int](), [first]
        while edge:
            at = edge.pop()
            if at not in seen:
                seen.add(at)
                group.append(at)
                for knot in knotted.pop(at, ()):
                    edge += knot
                    knot.clear()
        mine = [leads[at] for at in sorted(group) if at < len(leads)]
        theirs = [free[at - len(leads)] for at in sorted(group) if at >= len(leads)]
        if len(mine) > 1 and len(mine) == len(theirs):
            yield mine, theirs


def _told(leads: Sequence[LooseLead], joints: Sequence[Connection]) -> Diagnostic:
    """Each lead is told beside the connection that takes its place: from the same jack, else to the same one, else what is left."""
    pairs = _paired(leads, joints)
    marks = [each.mark for each in leads]
    origins = dict.fromkeys("the chain" if each.origin == "chain" else each.origin for each in joints)
    statements = joined(origins)
    lines = joined(f"`{lead.mark} {joint.start} -> {joint.end}`" for lead, joint in pairs)
    edits = tuple(
        Replace(at, str(port))
        for lead, joint in pairs
        for at, stated, port in zip(lead.ends, (lead.start, lead.end), (joint.start, joint.end), strict=True)
        if stated != port
    )
    mine, theirs = _ways(leads), _ways(joints)
    verb, ends = ("go", "goes") if mine != theirs else ("join", "joins")
    if mine == theirs:
        mine, theirs = (joined(f"{each.start} to {each.end}" for each in side) for side in (leads, joints))
    return LOOSE_LEAD.at(
        leads[0].span,
        f"{joined(marks)} {verb} {mine}; {statements} {ends if len(origins) == 1 else verb} {theirs}",
        subject=(*marks, *dict.fromkeys(port.thing for each in leads for port in (each.start, each.end))),
        label="the first of them",
        also=(Label(joints[0].span, "joined so"),),
        mends=(Mend(f"write {lines}", edits), *_as_the_leads(pairs)),
        help=f"correct {statements} if the leads are right",
    )


def _ways(steps: Sequence[LooseLead | Connection]) -> str:
    """From thing to thing, as a chain is written: `guitar -> fuzz -> gate`; each way once."""
    left, ways = list(steps), list[list[str]]()
    while left:
        ends = {each.end.thing for each in left}
        first = next((each for each in left if each.start.thing not in ends), left[0])
        way = [first.start.thing]
        step: LooseLead | Connection | None = first
        while step is not None:
            left.remove(step)
            way.append(step.end.thing)
            step = next((each for each in left if each.start.thing == way[-1]), None)
        ways.append(way)
    return joined(dict.fromkeys(" -> ".join(way) for way in ways))


def _paired(leads: Sequence[LooseLead], joints: Sequence[Connection]) -> list[tuple[LooseLead, Connection]]:
    left, found = list(joints), dict[str, Connection]()
    for same in (
        lambda lead, joint: lead.start == joint.start,
        lambda lead, joint: lead.end == joint.end,
        lambda *_: True,
    ):
        for lead in leads:
            joint = next((each for each in left if lead.mark not in found and same(lead, each)), None)
            if joint is not None:
                found[lead.mark] = joint
                left.remove(joint)
    return [(lead, found[lead.mark]) for lead in leads]


def _as_the_leads(pairs: Sequence[tuple[LooseLead, Connection]]) -> tuple[Mend, ...]:
    """Where all begins at the same jacks and arrives at another unit each: that unit in the statement."""
    other = [(lead, joint) for lead, joint in pairs if lead.start == joint.start and lead.end != joint.end]
    plain = all(joint.span.text == joint.end.thing and not joint.stereo for _, joint in other)
    if not other or not plain or any(lead.end.thing == joint.end.thing for lead, joint in other):
        return ()
    words = joined(f"'{lead.end.thing}' instead of '{joint.end.thing}'" for lead, joint in other)
    where = joined(dict.fromkeys(joint.origin for _, joint in other))
    return (Mend(f"write {words} in {where}", tuple(Replace(joint.span, lead.end.thing) for lead, joint in other)),)
