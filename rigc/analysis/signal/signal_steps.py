"""Chains, loops and blends -> the steps of each chain in signal order, loops expanded, with the lead into each step.

Each step has its number, `chain-1.step-3`.
"""

from __future__ import annotations

from rigc.analysis.leads.leads import Leads
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.wishes import Chain, Connection, Stop, When
from rigc.record import Record
from rigc.traced.figure import Figure, known_figure
from rigc.traced.given import mentioned
from rigc.traced.means import found
from rigc.traced.term import Unknown
from rigc.traced.units import COUNT

WIRELESS = "wireless"

_Links = dict[tuple[str, str], list[Connection]]


class Step(Record):
    """One pass through a thing: the jacks it is entered and left by, the leads that come in, and the loop it belongs to.

    A switcher is passed once for its input and once for each loop's return; `loop` is empty outside loops. `number` counts
    the steps of the chain from 1.
    """

    number: Figure
    thing: str
    loop: str
    ins: tuple[str, ...]
    outs: tuple[str, ...]
    leads: tuple[str, ...]


class ChainSteps(Record):
    """The steps of one chain, from its first stop to its last."""

    name: str
    when: When
    steps: tuple[Step, ...]


class SignalSteps(Record):
    """All chains, in the order of the source."""

    chains: tuple[ChainSteps, ...]


class _Visit(Record):
    """A thing on the way, the loop it belongs to, and the connections that come in."""

    thing: str
    loop: str
    coming: tuple[Connection, ...]


def signal_steps(rig: Rig, leads: Leads) -> SignalSteps:
    """Follows each chain. A stop to which no connection leads has no lead and no input jack."""
    marks = {frozenset((lead.start, lead.end)): lead.mark for lead in leads.all}
    links: _Links = {}
    for each in rig.connections:
        if each.signal == "audio":
            links.setdefault((each.start.thing, each.end.thing), []).append(each)
    entered = {stop.thing for chain in rig.chains for stop in chain.stops[1:]}
    return SignalSteps(
        tuple(_chain(rig, number, chain, links, marks, entered) for number, chain in enumerate(rig.chains, 1))
    )


def _chain(
    rig: Rig, number: int, chain: Chain, links: _Links, marks: dict[frozenset[Port], str], entered: set[str]
) -> ChainSteps:
    """Loops are expanded where their host is entered; a branch that only leaves it does not pass them again."""
    visits: list[_Visit] = []
    before: Stop | None = None
    for stop in chain.stops:
        coming = () if before is None else _between(rig, links, before, stop, "chain", chain.when)
        visits.append(_Visit(stop.thing, "", coming))
        if before is not None or stop.thing not in entered:
            visits += _inside(rig, stop, links)
        before = stop
    of_chain = mentioned("chain", chain.name or str(number), chain.span)
    numbers = [_number(rig, f"chain-{number}", of_chain, at, visit) for at, visit in enumerate(visits, 1)]
    return ChainSteps(chain.name, chain.when, tuple(_steps(visits, numbers, marks)))


def _number(rig: Rig, chain: str, of_chain: Unknown, at: int, visit: _Visit) -> Figure:
    def told() -> str:
        if at == 1:
            return f"the chain begins at '{visit.thing}': 1"
        return f"{at - 1} stops before '{visit.thing}', and 1 = {at}"

    stop = mentioned(visit.thing, visit.loop or "stop", rig.things[visit.thing].declared)
    return known_figure(
        f"{chain}.step-{at}",
        found(at, told),
        COUNT,
        of_chain,
        stop,
        rule="stops are counted in the order of the sound, every loop expanded where its switcher is entered",
        source="counting",
    )


def _between(
    rig: Rig, links: _Links, start: Stop, end: Stop, origin: str | tuple[str, ...], when: When
) -> tuple[Connection, ...]:
    return tuple(
        each
        for each in links.get((start.thing, end.thing), ())
        if each.origin.startswith(origin)
        and each.when.meets(when)
        and _is_at(rig, start, each.start, each.stereo)
        and _is_at(rig, end, each.end, each.stereo)
    )


def _is_at(rig: Rig, stop: Stop, port: Port, stereo: bool) -> bool:
    """Whether a lead at this jack is one of the stop; the jack that a stereo hop names stands for its pair."""
    if stop.jack in (None, port.jack):
        return True
    return stereo and any({stop.jack, port.jack} == {*pair} for pair in rig.things[stop.thing].pairs)


def _inside(rig: Rig, stop: Stop, links: _Links) -> list[_Visit]:
    """What is passed between a thing's input and its output: the units of its loops, loop by loop, or of its blend's ways.

    A loop that a way of a blend goes through is that way, and not passed a second time.
    """
    visits: list[_Visit] = []
    if stop.jack is not None and _loop_jack(rig, stop):
        return visits
    ways = [path for blend in rig.blends if blend.unit == stop.thing for path in blend.paths if path.stops]
    blended = {(path.loop, _names(path.stops)) for path in ways}
    held = [use for use in rig.loops if use.switcher == stop.thing and use.stops]
    for use in sorted(held, key=lambda each: each.number):
        if (use.number, _names(use.stops)) not in blended:
            visits += _round(
                rig, stop.thing, use.stops, f"loop {use.number}", f"loop {use.number} of {use.switcher}", links
            )
    for number, path in enumerate(ways, start=1):
        origin = (f"blend {stop.thing}", f"loop {path.loop} of {stop.thing}")
        visits += _round(rig, stop.thing, path.stops, f"wet {number}", origin, links)
    return visits


def _names(stops: tuple[Stop, ...]) -> tuple[str, ...]:
    return tuple(stop.thing for stop in stops)


def _loop_jack(rig: Rig, stop: Stop) -> bool:
    unit = rig.units.get(stop.thing)
    return unit is not None and any(stop.jack in (loop.send, loop.back) for loop in unit.loops)


def _round(
    rig: Rig, host: str, stops: tuple[Stop, ...], name: str, origin: str | tuple[str, ...], links: _Links
) -> list[_Visit]:
    home = Stop(host, None, stops[0].span)
    hops = zip((home, *stops), (*stops, home), strict=True)
    return [_Visit(end.thing, name, _between(rig, links, start, end, origin, When())) for start, end in hops]


def _steps(visits: list[_Visit], numbers: list[Figure], marks: dict[frozenset[Port], str]) -> list[Step]:
    steps = []
    for at, visit in enumerate(visits):
        going = visits[at + 1].coming if at + 1 < len(visits) else ()
        steps.append(
            Step(
                numbers[at],
                visit.thing,
                visit.loop,
                tuple(dict.fromkeys(each.end.jack for each in visit.coming)),
                tuple(dict.fromkeys(each.start.jack for each in going)),
                tuple(marks.get(frozenset((each.start, each.end)), WIRELESS) for each in visit.coming),
            )
        )
    return steps


COMPUTE = signal_steps
