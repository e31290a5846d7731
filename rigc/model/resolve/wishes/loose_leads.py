"""Stated leads that no other statement joins -> findings: each by what does join its jacks, or one for all where one cause has several."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence

from rigc.diagnostics.diagnostic import Diagnostic, Label
from rigc.diagnostics.mend import Mend, Replace
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


def told(loose: Sequence[LooseLead], joints: Joints, context: Context) -> Iterator[Diagnostic]:
    """The findings, in the order of the leads; none of a lead of what stands in a statement that is wrong and told."""
    spoiled = _spoiled(context)
    left = [each for each in loose if not {each.start.thing, each.end.thing} & spoiled]
    fed = [each for each in left if each.carries == "power"]
    sounding = [each for each in left if each.carries == "audio"]
    gone: list[LooseLead] = []
    if len(fed) > 1 and not joints.power.feeds and not joints.power.others:
        gone += fed
        yield _all(fed, "no power statement says what feeds what", f"power {{ {_feed(fed[0])} ... }}")
    if len(sounding) > 1 and not any(each.signal == "audio" for each in joints.connections.values()):
        gone += sounding
        first = sounding[0]
        yield _all(sounding, "no chain is stated", f"chain {first.start.thing} -> {first.end.thing} -> ...")
    for chain in context.of(nodes.Chain):
        right = _right_sides(chain, [each for each in left if each not in gone], joints)
        gone += [each for each, _ in right]
        if right:
            yield _mono(right)
    for joint in joints.free:
        sides = [each for each in joints.free if each.span == joint.span] if joint.stereo else [joint]
        ways = [_by_way_of(side, [each for each in left if each not in gone]) for side in sides]
        elsewhere = {port.thing for each in joints.free if each not in sides for port in (each.start, each.end)}
        passed = {tuple(lead.end.thing for lead in way) for way in ways}
        if len(passed) == 1 and ways[0] and not elsewhere & {lead.end.thing for lead in ways[0][:-1]}:
            gone += [lead for way in ways for lead in way]
            yield _left_out(joint, ways)
    for feed in joints.power.feeds:
        moved = [each for each in left if each not in gone and _moved(each, feed)]
        if len(moved) > 1:
            gone += moved
            yield _other_outlet(moved, feed)
    turned = _exchanged([each for each in left if each not in gone and each.carries == "power"], joints.power.feeds)
    if turned:
        gone += [lead for lead, _ in turned]
        yield _other_outlets(turned)
    for leads, joined_so in _tangles([each for each in left if each not in gone and each.carries == "audio"], joints):
        gone += leads
        yield _otherwise(leads, joined_so)
    for each in left:
        if each not in gone:
            yield _one(each, joints)


def _spoiled(context: Context) -> frozenset[str]:
    """The names in statements of chains, loops, control, MIDI and power in which something is wrong: what they join is not known."""
    wrong = [finding.span for finding in context.findings if finding.span is not None]
    wrong += [label.span for finding in context.findings for label in finding.also]
    names: set[str] = set()
    for node in _joining(context):
        if any(at.source is node.span.source and node.span.start <= at.start < node.span.end for at in wrong):
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


def _right_sides(chain: nodes.Chain, leads: Iterable[LooseLead], joints: Joints) -> list[tuple[LooseLead, Word]]:
    """The leads between the right sides of two stereo pairs that a `->` of the chain joins by their left sides; each with its arrow."""
    arrows = {hop.stop.span: hop.link for hop in chain.path.hops if hop.link.text == "->"}
    found = []
    for lead in leads:
        start, end = _left_of(joints.things, lead.start), _left_of(joints.things, lead.end)
        mono = None if start is None or end is None else joints.connections.get((start, end))
        if mono is not None and not mono.stereo and mono.span in arrows:
            found.append((lead, arrows[mono.span]))
    return found


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


def _by_way_of(joint: Connection, leads: Sequence[LooseLead]) -> list[LooseLead]:
    """The leads, two or more, that go from where a chain's connection begins to where it ends, by way of things that the chain leaves out."""
    if joint.signal != "audio":
        return []
    way = [lead for lead in leads if lead.start == joint.start][:1]
    while way and way[-1].end != joint.end:
        on = [lead for lead in leads if lead.start.thing == way[-1].end.thing and lead not in way]
        last = [lead for lead in on if lead.end == joint.end]
        if len(last or on) != 1:
            return []
        way += last or on
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


def _moved(lead: LooseLead, feed: Feed) -> bool:
    """Whether a lead from one outlet goes to a unit that this statement feeds from another one."""
    fed = lead.carries == "power" and lead.end.thing in feed.units
    return fed and len(feed.outlets) == 1 and lead.start not in feed.outlets


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


def _exchanged(leads: Sequence[LooseLead], feeds: Iterable[Feed]) -> list[tuple[LooseLead, Feed]]:
    """The leads, two or more, of units that the power block feeds each from an outlet at which another one of them begins."""
    found = [(lead, feed) for lead in leads for feed in feeds if _moved(lead, feed)]
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
    ways: list[tuple[Port, Port]] = [
        *((each.start, each.end) for each in leads),
        *((each.start, each.end) for each in free),
    ]

    def together(one: int, other: int) -> bool:
        (start, end), (begin, stop) = ways[one], ways[other]
        if (one < len(leads)) != (other < len(leads)):
            return start == begin or end == stop
        between = {end.thing} & {begin.thing} | {start.thing} & {stop.thing}
        return bool(between - hosts)

    left = set(range(len(ways)))
    while left:
        group, edge = set[int](), [min(left)]
        while edge:
            at = edge.pop()
            group.add(at)
            edge += [other for other in left - group if other not in edge and together(at, other)]
        left -= group
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
    feed = next((each for each in joints.power.feeds if lead.end.thing in each.units), None)
    instead = _instead(lead, joints.free)
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


def _instead(lead: LooseLead, free: Collection[Connection]) -> Connection | None:
    """The one connection that lacks a lead and that this one may be meant to be: between the same things, else at one of its jacks."""
    alike = [each for each in free if (each.start.thing, each.end.thing) == (lead.start.thing, lead.end.thing)]
    for fitting in (
        [each for each in alike if each.start == lead.start],
        [each for each in alike if each.end == lead.end],
        alike,
        [each for each in free if each.start == lead.start],
        [each for each in free if each.end == lead.end],
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
