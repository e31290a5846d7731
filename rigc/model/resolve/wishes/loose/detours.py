"""Hops of chains that leave out what leads go by way of."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence

from rigc.diagnostics.diagnostic import Diagnostic, Label
from rigc.diagnostics.mend import Mend, Replace
from rigc.diagnostics.wording import joined, listed
from rigc.model.resolve.wishes.loose.loose_lead import Caused, Joints, Left, LooseLead, by, statement
from rigc.model.scope import LOOSE_LEAD
from rigc.model.wishes import Connection
from rigc.source import Span


def detours(left: Left, joints: Joints) -> Caused:
    """One finding for each hop that leaves out what leads go by way of."""
    for joint, ways in _ways(left, joints.free):
        yield [lead for way in ways for lead in way], _told(joint, ways)


def _ways(left: Left, free: Sequence[Connection]) -> Iterator[tuple[Connection, list[list[LooseLead]]]]:
    """The hops of chains that leave out what leads, two or more, go by way of; with these, for the one or both sides.

    `left` is read again for each hop: what a hop has taken is no way of another.
    """
    begun = by(left.values(), lambda lead: (lead.start.thing,))
    hops: dict[Span, list[Connection]] = {}
    touching: Counter[str] = Counter()
    for joint in free:
        hops.setdefault(joint.span, []).append(joint)
        touching.update({joint.start.thing, joint.end.thing})
    for joint in free:
        if joint.signal != "audio" or joint.start.thing not in begun:
            continue
        sides = hops[joint.span] if joint.stereo else [joint]
        ways = [_by_way_of(side, begun, left) for side in sides]
        mine = Counter(thing for side in sides for thing in {side.start.thing, side.end.thing})
        passed = {tuple(lead.end.thing for lead in way) for way in ways}
        between = {lead.end.thing for lead in ways[0][:-1]}
        if len(passed) == 1 and ways[0] and all(touching[thing] == mine[thing] for thing in between):
            yield joint, ways


_LONGEST_DETOUR = 20


def _by_way_of(joint: Connection, begun: Mapping[str, Sequence[LooseLead]], left: Left) -> list[LooseLead]:
    """The leads, two or more, that go from where a chain's connection begins to where it ends; none where they part or end elsewhere."""

    def on(thing: str) -> list[LooseLead]:
        return [lead for lead in begun.get(thing, ()) if lead.mark in left]

    way = [lead for lead in on(joint.start.thing) if lead.start == joint.start][:1]
    while way and way[-1].end != joint.end:
        if len(way) == _LONGEST_DETOUR:
            return []
        after = [lead for lead in on(way[-1].end.thing) if lead not in way]
        last = [lead for lead in after if lead.end == joint.end]
        if len(last or after) != 1:
            return []
        way += last or after
    return way if len(way) > 1 else []


def _told(joint: Connection, ways: Sequence[Sequence[LooseLead]]) -> Diagnostic:
    """`ways` are those of the one or both sides of a hop."""
    marks = [lead.mark for step in zip(*ways, strict=True) for lead in step]
    between = [lead.end.thing for lead in ways[0][:-1]]
    first = Span(joint.span.source, joint.span.start, joint.span.start)
    arrow = " => " if joint.stereo else " -> "
    whole = arrow.join((joint.start.thing, *between, joint.end.thing))
    return LOOSE_LEAD.at(
        joint.span,
        f"{joined(marks)} go from {joint.start.thing} to {joint.end.thing} by way of {listed(between)}, and the {statement(joint)} "
        "leaves that out",
        subject=(*marks, *between),
        label="straight to here",
        also=(Label(ways[0][0].span, "by way of it"),),
        mends=(Mend(f"write `{whole}`", (Replace(first, "".join(f"{each}{arrow}" for each in between)),)),),
        help=f"delete {joined(marks)}",
    )
