"""Stated leads that no other statement joins -> findings: each by what does join its jacks, or one for all where one cause has several."""

from __future__ import annotations

from bisect import bisect_left
from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from functools import cached_property
from typing import TypeVar

from rigc.diagnostics.diagnostic import Diagnostic, Label
from rigc.diagnostics.mend import Add, Mend, Replace
from rigc.diagnostics.wording import joined, listed
from rigc.model.jacks import Port
from rigc.model.resolve.context import Context
from rigc.model.scope import LOOSE_LEAD
from rigc.model.things import AnyThing
from rigc.model.wishes import Connection, Feed, PowerWishes
from rigc.record import Record
from rigc.source import Span
from rigc.syntax import nodes
from rigc.syntax.nodes import Node, Word

Each = TypeVar("Each")
Name = TypeVar("Name", str, int)


class LooseLead(Record):
    """A lead between two jacks that nothing joins; `carries` is `power` where it leaves an outlet, else `midi`, `control` or `audio`."""

    mark: str
    start: Port
    end: Port
    carries: str
    span: Span
    ends: tuple[Span, Span]


class Joints(Record):
    """What the other statements join: `free` are those connections that no lead claims."""

    things: Mapping[str, AnyThing]
    connections: Mapping[tuple[Port, Port], Connection]
    free: Sequence[Connection]
    power: PowerWishes

    @cached_property
    def begun(self) -> Mapping[str, Sequence[Connection]]:
        """Those of `free` by the thing at which they begin."""
        return _by(self.free, lambda joint: (joint.start.thing,))

    @cached_property
    def ended(self) -> Mapping[str, Sequence[Connection]]:
        """Those of `free` by the thing at which they end."""
        return _by(self.free, lambda joint: (joint.end.thing,))


def _by(items: Iterable[Each], names: Callable[[Each], Iterable[Name]]) -> Mapping[Name, Sequence[Each]]:
    found: dict[Name, list[Each]] = {}
    for each in items:
        for name in names(each):
            found.setdefault(name, []).append(each)
    return found


def told(loose: Sequence[LooseLead], joints: Joints, context: Context) -> Iterator[Diagnostic]:
    """The findings, in the order of the leads; none of a lead of what stands in a statement that is wrong and told."""
    spoiled = _spoiled(context) if loose else frozenset()
    left = {each.mark: each for each in loose if not {each.start.thing, each.end.thing} & spoiled}
    if not left:
        return

    def take(leads: Iterable[LooseLead]) -> None:
        for each in leads:
            left.pop(each.mark, None)

    fed = _carrying("power", left.values())
    sounding = _carrying("audio", left.values())
    if len(fed) > 1 and not joints.power.feeds and not joints.power.others:
        take(fed)
        yield _all(fed, "no power statement says what feeds what", f"power {{ {_feed(fed[0])} ... }}")
    if len(sounding) > 1 and not any(each.signal == "audio" for each in joints.connections.values()):
        take(sounding)
        first = sounding[0]
        yield _all(sounding, "no chain is stated", f"chain {first.start.thing} -> {first.end.thing} -> ...")
    for right in _right_sides(context.of(nodes.Chain), left.values(), joints):
        take(lead for lead, _ in right)
        yield _mono(right)
    for joint, ways in _detours(left, joints.free):
        take(lead for way in ways for lead in way)
        yield _left_out(joint, ways)
    for moved, feed in _moved_together(_carrying("power", left.values()), joints.power.feeds):
        take(moved)
        yield _other_outlet(moved, feed)
    turned = _exchanged(_carrying("power", left.values()), joints.power.feeds_of)
    if turned:
        take(lead for lead, _ in turned)
        yield _other_outlets(turned)
    for row in _rows_in_no_chain(_carrying("audio", left.values()), joints):
        take(row)
        yield _no_chain(row)
    for leads, joined_so in _tangles(_carrying("audio", left.values()), joints):
        take(leads)
        yield _otherwise(leads, joined_so)
    for each in left.values():
        yield _one(each, joints)


def _carrying(what: str, leads: Iterable[LooseLead]) -> list[LooseLead]:
    return [each for each in leads if each.carries == what]


def _spoiled(context: Context) -> frozenset[str]:
    """The names in statements of chains, loops, control, MIDI and power in which something is wrong: what they join is not known."""
    wrong = [finding.span for finding in context.findings if finding.span is not None]
    wrong += [label.span for finding in context.findings for label in finding.also]
    starts = {
        source: sorted(at.start for at in found) for source, found in _by(wrong, lambda at: (id(at.source),)).items()
    }
    names: set[str] = set()
    for node in _joining(context):
        told_of = starts.get(id(node.span.source), [])
        if bisect_left(told_of, node.span.start) < bisect_left(told_of, node.span.end):
            words = node.units if isinstance(node, nodes.Feed) else _words(node)
            names.update(word.text for word in words)
    return frozenset(names)


def _joining(context: Context) -> Iterator[Node]:
    for statement in context.statements:
        if isinstance(statement, nodes.Chain | nodes.LoopHolds | nodes.LoopEmpty | nodes.Blend):
            yield statement
        elif isinstance(statement, nodes.MidiBlock | nodes.ControlBlock | nodes.PowerBlock):
            kinds = nodes.MidiLink | nodes.ControlLink | nodes.Feed
            yield from (item for item in statement.items if isinstance(item, kinds))


def _words(value: object) -> Iterator[Word]:
    if isinstance(value, Word):
        yield value
    elif isinstance(value, tuple):
        for part in value:
            yield from _words(part)
    elif isinstance(value, Node):
        for name in value.FIELDS:
            yield from _words(getattr(value, name))


def _all(leads: list[LooseLead], lacking: str, example: str) -> Diagnostic:
    marks = [each.mark for each in leads]
    names = dict.fromkeys(port.thing for each in leads for port in (each.start, each.end))
    return LOOSE_LEAD.at(
        leads[0].span,
        f"{lacking}; the leads {joined(marks)} join what no other statement does",
        subject=(*marks, *names),
        label="the first of them",
        help=f"state it, for example: {example}",
    )


def _right_sides(
    chains: Iterable[nodes.Chain], leads: Iterable[LooseLead], joints: Joints
) -> list[list[tuple[LooseLead, Word]]]:
    """The leads between the right sides of two stereo pairs that a `->` of a chain joins by their left sides; each with its arrow, by chains."""
    arrows = {
        hop.stop.span: (at, hop.link)
        for at, chain in enumerate(chains)
        for hop in chain.path.hops
        if hop.link.text == "->"
    }
    found: dict[int, list[tuple[LooseLead, Word]]] = {}
    for lead in leads:
        start, end = _left_of(joints.things, lead.start), _left_of(joints.things, lead.end)
        mono = None if start is None or end is None else joints.connections.get((start, end))
        if mono is not None and not mono.stereo and mono.span in arrows:
            at, arrow = arrows[mono.span]
            found.setdefault(at, []).append((lead, arrow))
    return [found[at] for at in sorted(found)]


def _left_of(things: Mapping[str, AnyThing], right: Port) -> Port | None:
    pair = next((pair for pair in things[right.thing].pairs if pair[1] == right.jack), None)
    return None if pair is None else Port(right.thing, pair[0])


def _mono(right: list[tuple[LooseLead, Word]]) -> Diagnostic:
    """One finding for all hops of a chain that are written as mono, while leads are stated for both sides."""
    leads, arrows = zip(*right, strict=True)
    marks = [lead.mark for lead in leads]
    hops = "this hop" if len(arrows) == 1 else f"these {len(arrows)} hops"
    return LOOSE_LEAD.at(
        arrows[0].span,
        f"`->` joins the left sides alone, and {joined(marks)} {'joins' if len(marks) == 1 else 'join'} the right sides: "
        f"{joined(f'{lead.start} to {lead.end}' for lead in leads)}",
        subject=tuple(marks),
        label="one lead, of the left side",
        also=(Label(leads[0].span, "the right side"),),
        mends=(Mend(f"write `=>` at {hops}: stereo", tuple(Replace(arrow.span, "=>") for arrow in arrows)),),
        help=f"delete {joined(marks)} if the right side is not used",
    )


def _detours(
    left: Mapping[str, LooseLead], free: Sequence[Connection]
) -> Iterator[tuple[Connection, list[list[LooseLead]]]]:
    """The hops of chains that leave out what leads, two or more, go by way of; with these, for the one or both sides.

    `left` is read again for each hop: what a hop has taken is no way of another.
    """
    begun = _by(left.values(), lambda lead: (lead.start.thing,))
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


def _by_way_of(
    joint: Connection, begun: Mapping[str, Sequence[LooseLead]], left: Mapping[str, LooseLead]
) -> list[LooseLead]:
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


def _left_out(joint: Connection, ways: Sequence[Sequence[LooseLead]]) -> Diagnostic:
    """`ways` are those of the one or both sides of a hop."""
    marks = [lead.mark for step in zip(*ways, strict=True) for lead in step]
    between = [lead.end.thing for lead in ways[0][:-1]]
    first = Span(joint.span.source, joint.span.start, joint.span.start)
    arrow = " => " if joint.stereo else " -> "
    whole = arrow.join((joint.start.thing, *between, joint.end.thing))
    return LOOSE_LEAD.at(
        joint.span,
        f"{joined(marks)} go from {joint.start.thing} to {joint.end.thing} by way of {listed(between)}, and the {_statement(joint)} "
        "leaves that out",
        subject=(*marks, *between),
        label="straight to here",
        also=(Label(ways[0][0].span, "by way of it"),),
        mends=(Mend(f"write `{whole}`", (Replace(first, "".join(f"{each}{arrow}" for each in between)),)),),
        help=f"delete {joined(marks)}",
    )


def _rows_in_no_chain(leads: Sequence[LooseLead], joints: Joints) -> list[list[LooseLead]]:
    """The leads, two or more, that go on one behind another through things of which no chain joins any."""
    chained = {
        port.thing for each in joints.connections.values() if each.signal == "audio" for port in (each.start, each.end)
    }
    alone = [each for each in leads if not {each.start.thing, each.end.thing} & chained]
    begun, ended = _by(alone, lambda lead: (lead.start.thing,)), _by(alone, lambda lead: (lead.end.thing,))
    rows = []
    for first in alone:
        if first.start.thing in ended:
            continue
        row = [first]
        while len(after := begun.get(row[-1].end.thing, ())) == 1 and len(ended[row[-1].end.thing]) == 1:
            row.append(after[0])
        if len(row) > 1:
            rows.append(row)
    return rows


def _no_chain(row: Sequence[LooseLead]) -> Diagnostic:
    marks = [lead.mark for lead in row]
    names = [row[0].start.thing, *(lead.end.thing for lead in row)]
    whole = " -> ".join(names)
    return LOOSE_LEAD.at(
        row[0].span,
        f"{joined(marks)} go {whole}, and no chain does",
        subject=(*marks, *names),
        label="the first of them",
        mends=(Mend(f"write `chain {whole}`", (Add(f"chain {whole}"),)),),
        help=f"delete {joined(marks)}",
    )


def _moved(lead: LooseLead, feed: Feed) -> bool:
    """Whether a lead from one outlet goes to a unit that this statement feeds from another one."""
    return lead.end.thing in feed.units and len(feed.outlets) == 1 and lead.start not in feed.outlets


def _moved_together(leads: Sequence[LooseLead], feeds: Iterable[Feed]) -> Iterator[tuple[list[LooseLead], Feed]]:
    """The leads, two or more, of units that one statement feeds from another outlet than these begin at."""
    ending = _by(leads, lambda lead: (lead.end.thing,))
    gone = set[str]()
    for feed in feeds:
        moved = [
            lead for unit in feed.units for lead in ending.get(unit, ()) if lead.mark not in gone and _moved(lead, feed)
        ]
        if len(moved) > 1:
            gone.update(lead.mark for lead in moved)
            yield moved, feed


def _other_outlet(leads: Sequence[LooseLead], feed: Feed) -> Diagnostic:
    """The leads, two or more, of units that one statement feeds from another outlet than these begin at."""
    marks, (outlet,) = [each.mark for each in leads], feed.outlets
    lines = joined(f"`{each.mark} {outlet} -> {each.end}`" for each in leads)
    starts = dict.fromkeys(str(each.start) for each in leads)
    return LOOSE_LEAD.at(
        leads[0].span,
        f"{joined(marks)} go from {joined(starts)} to {joined(each.end.thing for each in leads)}, and the power block feeds these from {outlet}",
        subject=(*marks, *(each.end.thing for each in leads), str(outlet)),
        label="the first of them",
        also=(Label(feed.span, "they are fed so"),),
        mends=(Mend(f"write {lines}", tuple(Replace(each.ends[0], str(outlet)) for each in leads)),),
        help="correct the power block if the leads are right",
    )


def _exchanged(leads: Sequence[LooseLead], feeding: Mapping[str, Sequence[Feed]]) -> list[tuple[LooseLead, Feed]]:
    """The leads, two or more, of units that the power block feeds each from an outlet at which another one of them begins."""
    found = [(lead, feed) for lead in leads for feed in feeding.get(lead.end.thing, ()) if _moved(lead, feed)]
    while True:
        starts = {lead.start for lead, _ in found}
        among = [(lead, feed) for lead, feed in found if feed.outlets[0] in starts]
        if len(among) == len(found):
            return found if len(found) > 1 else []
        found = among


def _other_outlets(turned: Sequence[tuple[LooseLead, Feed]]) -> Diagnostic:
    leads = [lead for lead, _ in turned]
    marks = [lead.mark for lead in leads]
    lines = joined(f"`{lead.mark} {feed.outlets[0]} -> {lead.end}`" for lead, feed in turned)
    return LOOSE_LEAD.at(
        leads[0].span,
        f"{joined(marks)} go from {joined(each.start for each in leads)} to {joined(each.end.thing for each in leads)}; the power block feeds "
        f"these from {joined(feed.outlets[0] for _, feed in turned)}",
        subject=(*marks, *(each.end.thing for each in leads)),
        label="the first of them",
        also=tuple(Label(feed.span, f"'{lead.end.thing}' is fed so") for lead, feed in turned[:3]),
        mends=(Mend(f"write {lines}", tuple(Replace(lead.ends[0], str(feed.outlets[0])) for lead, feed in turned)),),
        help="exchange the outlets in the power block if the leads are right",
    )


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


def _otherwise(leads: Sequence[LooseLead], joints: Sequence[Connection]) -> Diagnostic:
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


def _one(lead: LooseLead, joints: Joints) -> Diagnostic:
    also: tuple[Label, ...] = ()
    mends: tuple[Mend, ...] = ()
    turned = joints.connections.get((lead.end, lead.start))
    feed = next(iter(joints.power.feeds_of.get(lead.end.thing, ())), None)
    instead = _instead(lead, joints)
    if turned is not None:
        also = (Label(turned.span, "joined the other way round"),)
        help = ""
        start, end = lead.ends
        mends = (Mend("turn the two ends round", (Replace(start, end.text), Replace(end, start.text))),)
    elif lead.carries == "power" and feed is not None and lead.start not in feed.outlets:
        also = (Label(feed.span, f"'{lead.end.thing}' is fed so"),)
        mends = _of_feed(lead, feed)
        help = "" if mends else "correct the one that is wrong"
    elif lead.carries == "power" and feed is None:
        help = f"state it in the power block: {_feed(lead)}"
    elif instead is not None:
        also = (Label(instead.span, f"{instead.start} to {instead.end} is joined here"),)
        mends = _as_joined(lead, instead)
        help = "" if len(mends) > 1 else f"if {lead.mark} is right, correct the {_statement(instead)}"
    elif lead.carries in ("midi", "control"):
        help = f"state it in the {lead.carries} block: {lead.start} -> {lead.end}; or correct the lead's ends"
    else:
        help = "correct the lead's ends, or add the connection to a chain"
    return LOOSE_LEAD.at(
        lead.span,
        f"{lead.mark} joins {lead.start} to {lead.end}, but no other statement does",
        subject=(lead.mark, lead.start.thing, lead.end.thing),
        label="this lead",
        also=also,
        mends=mends,
        help=help,
    )


def _instead(lead: LooseLead, joints: Joints) -> Connection | None:
    """The one connection that lacks a lead and that this one may be meant to be: between the same things, else at one of its jacks."""
    begun, ended = joints.begun.get(lead.start.thing, ()), joints.ended.get(lead.end.thing, ())
    alike = [each for each in begun if each.end.thing == lead.end.thing]
    for fitting in (
        [each for each in alike if each.start == lead.start],
        [each for each in alike if each.end == lead.end],
        alike,
        [each for each in begun if each.start == lead.start],
        [each for each in ended if each.end == lead.end],
    ):
        if fitting:
            return fitting[0] if len(fitting) == 1 else None
    return None


def _as_joined(lead: LooseLead, joint: Connection) -> tuple[Mend, ...]:
    """The lead's ends as the connection has them; or, where these differ in the jack at which a hop arrives, that jack as the lead has it."""
    pairs = zip(lead.ends, (lead.start, lead.end), (joint.start, joint.end), strict=True)
    edits = tuple(Replace(at, str(joined_at)) for at, stated, joined_at in pairs if stated != joined_at)
    mends = [Mend(f"write `{lead.mark} {joint.start} -> {joint.end}`", edits)]
    if joint.signal == "audio" and joint.start == lead.start and joint.end.thing == lead.end.thing and not joint.stereo:
        mends.append(Mend(f"write `{lead.end}` in the {_statement(joint)}", (Replace(joint.span, str(lead.end)),)))
    return tuple(mends)


def _statement(joint: Connection) -> str:
    """The kind of statement that makes a connection."""
    return f"{joint.origin} block" if joint.origin in ("midi", "control") else joint.origin.split()[0]


def _of_feed(lead: LooseLead, feed: Feed) -> tuple[Mend, ...]:
    """The lead from the outlet that feeds its unit; or that unit from the outlet at which the lead begins."""
    if len(feed.outlets) != 1:
        return ()
    (outlet,) = feed.outlets
    mends = [Mend(f"write `{lead.mark} {outlet} -> {lead.end}`", (Replace(lead.ends[0], str(outlet)),))]
    at = feed.span.text.find(str(outlet))
    if len(feed.units) == 1 and at >= 0:
        typed = Span(feed.span.source, feed.span.start + at, feed.span.start + at + len(str(outlet)))
        mends.append(Mend(f"write `{_feed(lead)}`", (Replace(typed, str(lead.start)),)))
    return tuple(mends)


def _feed(lead: LooseLead) -> str:
    return f"{lead.end.thing} from {lead.start}"
