"""passed-twice, dead-end, open-loop: ways of sound that can't be as they are written, each told once and by its cause."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence

from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.diagnostics.mend import Mend, Replace
from rigc.diagnostics.wording import listed
from rigc.model.jacks import AUDIO_IN, AUDIO_OUT, LoopJacks, Port
from rigc.model.scope import article
from rigc.model.things import ENDS, AnyThing
from rigc.model.wishes import Blend, Chain, Connection, Gap, LoopUse, Stop
from rigc.record import Record
from rigc.source import Span

PASSED_TWICE = Kind(
    "passed-twice",
    Level.ERROR,
    """A unit stands twice in one chain, or in a loop and in the chain as well.

    Why it matters: it has one input and one output, so its leads would have to be in two places at once.
    What to do: leave it where it belongs. Where sound is to pass a unit of several channels twice, name the jacks (`weir.a`).
    Source: arithmetic on the stated chains.
    """,
    "a unit stands once in a chain, and not in a loop and in the chain",
    "arithmetic on the stated chains",
)
DEAD_END = Kind(
    "dead-end",
    Level.ERROR,
    """A chain or a loop goes on behind a thing that gives no sound: an amp, or a unit without an audio output (a tuner).

    Why it matters: nothing comes out there, so nothing of what follows is heard.
    What to do: put the amp last; hang a tuner on an output of its own, in a chain of its own.
    Source: arithmetic on the stated chains.
    """,
    "an amp, and a unit without an audio output, ends its chain",
    "arithmetic on the stated chains",
)
OPEN_LOOP = Kind(
    "open-loop",
    Level.ERROR,
    """Sound goes out by the send of a loop and does not come back to its return.

    Why it matters: with the loop in, the rig is silent.
    What to do: say what the loop holds (`loop 1 of gate holds tern -> fen`): that joins both jacks.
    Source: arithmetic on the stated chains. A unit without an output (a tuner), an amp or a panel jack may hang on a send.
    """,
    "what a loop's send feeds comes back to its return, or leaves the rig",
    "arithmetic on the stated chains",
)


class Ways(Record):
    """What the source says of the ways of sound, before any of it is joined to leads."""

    things: Mapping[str, AnyThing]
    chains: Sequence[Chain]
    loops: Sequence[LoopUse]
    blends: Sequence[Blend]
    connections: Collection[Connection]
    gaps: Sequence[Gap]
    feedback: frozenset[str]


def way_slips(ways: Ways) -> tuple[Diagnostic, ...]:
    """All of them, in the order of the kinds above."""
    return (*_twice(ways), *_in_loop_too(ways), *_dead_ends(ways), *_open_loops(ways))


def _twice(ways: Ways) -> Iterator[Diagnostic]:
    for stops, where in _paths(ways):
        met: dict[str, Stop] = {}
        for stop in stops:
            first = met.setdefault(stop.thing, stop)
            if first is not stop and _passes(ways, stop) and _passes(ways, first):
                yield PASSED_TWICE.at(
                    stop.span,
                    f"'{stop.thing}' stands twice in {where}",
                    subject=(stop.thing,),
                    label="here again",
                    also=(Label(first.span, "first here"),),
                    mends=tuple(
                        mend
                        for each, which in ((stop, "the second"), (first, "the first"))
                        for mend in _taken_out(stops, each, which, "the chain" if where == "this chain" else where)
                    ),
                    help=""
                    if len(stops) > 2
                    else "name in place of one of them what it is joined with, or delete the line",
                )


def _in_loop_too(ways: Ways) -> Iterator[Diagnostic]:
    for use in ways.loops:
        yield from (_in_itself(use, stop) for stop in use.stops if stop.thing == use.switcher)
    held = {
        stop.thing: (stop, f"loop {use.number} of '{use.switcher}'")
        for use in ways.loops
        for stop in use.stops
        if _passes(ways, stop) and stop.thing != use.switcher
    }
    held |= {
        stop.thing: (stop, f"the blend of '{blend.unit}'")
        for blend in ways.blends
        for path in blend.paths
        for stop in path.stops
        if _passes(ways, stop)
    }
    for chain in ways.chains:
        for stop in chain.stops:
            if stop.thing in held and _passes(ways, stop):
                inside, where = held[stop.thing]
                yield PASSED_TWICE.at(
                    stop.span,
                    f"'{stop.thing}' stands in the chain and in {where}",
                    subject=(stop.thing,),
                    label="in the chain here",
                    also=(Label(inside.span, "in the loop here"),),
                    mends=_taken_out(chain.stops, stop, ""),
                    help="" if len(chain.stops) > 2 else f"delete '{stop.thing}' from one of them",
                )


def _in_itself(use: LoopUse, stop: Stop) -> Diagnostic:
    return PASSED_TWICE.at(
        stop.span,
        f"'{use.switcher}' stands in its own loop {use.number}",
        subject=(use.switcher,),
        label="the loop begins and ends at it",
        mends=_taken_out(use.stops, stop, "", "the loop"),
        help="" if len(use.stops) > 1 else f"write `loop {use.number} of {use.switcher} empty`",
    )


def _passes(ways: Ways, stop: Stop) -> bool:
    """Whether a stop means a unit as a whole, by its main input and output, and no way back through it is meant."""
    thing = ways.things.get(stop.thing)
    return thing is not None and thing.kind == "unit" and stop.jack is None and stop.thing not in ways.feedback


def _taken_out(stops: Sequence[Stop], stop: Stop, which: str, where: str = "the chain") -> tuple[Mend, ...]:
    """The chain or loop without a stop; the arrow before it goes with it, or the one behind where it is the first."""
    at = next(number for number, each in enumerate(stops) if each is stop)
    if len(stops) < (3 if where == "the chain" else 2):
        return ()
    start = stops[at - 1].span.end if at else stop.span.start
    end = stop.span.end if at else stops[1].span.start
    words = f"take {which + ' ' if which else ''}'{stop.thing}' out of {where}"
    return (Mend(words, (Replace(Span(stop.span.source, start, end), ""),)),)


def _dead_ends(ways: Ways) -> Iterator[Diagnostic]:
    lacking = {gap.thing for gap in ways.gaps if gap.direction == "out"}
    for chain in filter(lambda each: _backwards(ways, each), ways.chains):
        yield _turned(chain)
    for stops, where in _paths(ways):
        last = where == "this chain"
        if last and any(stops is chain.stops and _backwards(ways, chain) for chain in ways.chains):
            continue
        for at, stop in enumerate(stops[:-1] if last else stops):
            thing = ways.things.get(stop.thing)
            if stop.thing not in lacking or thing is None or not _takes_sound(thing):
                continue
            if stop.jack is not None and all(jack.name != stop.jack for jack in thing.jacks):
                continue
            if not last:
                yield _silent_loop(stop, stops, where)
            elif thing.kind in ENDS:
                others = {each.thing for chain in ways.chains if chain.stops is not stops for each in chain.stops}
                yield _past_amp(thing, stops, at, any(each.thing in others for each in stops[at + 1 :]))
            elif thing.kind == "unit":
                yield _past_end(stop, stops[at + 1])


def _backwards(ways: Ways, chain: Chain) -> bool:
    """Whether a chain runs from an amp to an instrument."""
    first, last = (ways.things.get(chain.stops[at].thing) for at in (0, -1))
    return first is not None and first.kind in ENDS and last is not None and last.kind in ("instrument", "source")


def _turned(chain: Chain) -> Diagnostic:
    stops = chain.stops
    whole = Span(stops[0].span.source, stops[0].span.start, stops[-1].span.end)
    written = " -> ".join(stop.span.text for stop in reversed(stops))
    plain = not any(chain.stereo) and all(stop.jack is None for stop in stops)
    return DEAD_END.at(
        whole,
        f"this chain runs from '{stops[0].thing}' to '{stops[-1].thing}': sound goes from the instrument to the amp",
        subject=tuple(stop.thing for stop in stops),
        label="the wrong way round",
        mends=(Mend(f"turn it round: {written}", (Replace(whole, written),)),) if plain else (),
        help="" if plain else "write it the other way round",
    )


def _takes_sound(thing: AnyThing) -> bool:
    """Whether it declares an audio input and no output: one that declares neither is not described yet."""
    roles = {jack.role for jack in thing.jacks}
    return AUDIO_IN in roles and AUDIO_OUT not in roles


def _past_amp(amp: AnyThing, stops: Sequence[Stop], at: int, elsewhere: bool) -> Diagnostic:
    """What is behind it belongs before it; or nowhere, if it stands `elsewhere` too, in another chain."""
    stop, behind = stops[at], stops[at + 1 :]
    names = [str(each.span.text) for each in (*stops[:at], *behind, stop)]
    whole = Span(stop.span.source, stops[0].span.start, stops[-1].span.end)
    rest = Span(stop.span.source, stop.span.end, stops[-1].span.end)
    last = Mend(f"put it last: {' -> '.join(names)}", (Replace(whole, " -> ".join(names)),))
    end = Mend(f"end the chain at '{amp.name}'", (Replace(rest, ""),))
    mends = () if not at else (end,) if elsewhere else (last,)
    return DEAD_END.at(
        stop.span,
        f"the chain goes on to '{behind[0].thing}' behind '{amp.name}', which is {article(amp.kind)}: {article(amp.kind)} ends a chain",
        subject=(amp.name, *(each.thing for each in behind)),
        label="the sound ends here",
        also=(Label(amp.declared, "declared here, without an audio output"),),
        mends=mends,
        help=f"where its own loop is meant, declare its send and return in '{amp.name}' and write `loop 1 of {amp.name} holds "
        f"{' -> '.join(each.span.text for each in behind)}`",
    )


def _past_end(stop: Stop, after: Stop) -> Diagnostic:
    return DEAD_END.at(
        stop.span,
        f"the chain goes on to '{after.thing}' behind '{stop.thing}', which has no audio output",
        subject=(stop.thing, after.thing),
        label="the sound ends here",
        help=f"declare its output in '{stop.thing}'; if it has none, hang it on an output of its own, in a chain of its own",
    )


def _silent_loop(stop: Stop, stops: Sequence[Stop], where: str) -> Diagnostic:
    return DEAD_END.at(
        stop.span,
        f"'{stop.thing}' has no audio output, so nothing comes back from {where}",
        subject=(stop.thing, *(each.thing for each in stops if each is not stop)),
        label="the sound ends here",
        help=f"declare its output in '{stop.thing}'; if it has none, take it out of the loop and hang it on an output of its own, "
        "in a chain of its own",
    )


def _open_loops(ways: Ways) -> Iterator[Diagnostic]:
    audio = [each for each in ways.connections if each.signal == "audio"]
    wired = {port for each in audio for port in (each.start, each.end)}
    for thing in ways.things.values():
        for loop in thing.loops if thing.kind in ("unit", "amp") else ():
            send, back = Port(thing.name, loop.send), Port(thing.name, loop.back)
            if send not in wired or back in wired:
                continue
            behind = _behind(audio, send)
            last = [Port(name, out) for name in behind if (out := _open_output(ways, name, wired)) is not None]
            if last and not any(_ends(ways, name) for name in behind):
                yield _open(ways, audio, loop, send, back, behind, last[0])
            elif thing.kind == "unit" and (main := _open_main(thing, wired)) is not None:
                yield _past(ways, audio, loop, send, back, behind, main)


def _behind(audio: Sequence[Connection], send: Port) -> list[str]:
    """The things that the sound comes to from a send, in order."""
    found: list[str] = []
    todo = [each.end.thing for each in audio if each.start == send]
    while todo:
        name = todo.pop(0)
        if name not in found and name != send.thing:
            found.append(name)
            todo += [each.end.thing for each in audio if each.start.thing == name]
    return found


def _open_output(ways: Ways, name: str, wired: Collection[Port]) -> str | None:
    """Its output, if no lead leaves it."""
    outs = [jack.name for jack in ways.things[name].jacks if jack.role == AUDIO_OUT]
    return outs[0] if outs and not any(Port(name, out) in wired for out in outs) else None


def _open_main(host: AnyThing, wired: Collection[Port]) -> Port | None:
    """The first output of a switcher that is not a loop's send, if no lead leaves any of them."""
    sends = {loop.send for loop in host.loops}
    outs = [Port(host.name, jack.name) for jack in host.jacks if jack.role == AUDIO_OUT and jack.name not in sends]
    return outs[0] if outs and not any(out in wired for out in outs) else None


def _ends(ways: Ways, name: str) -> bool:
    return ways.things[name].kind in (*ENDS, "panel")


def _open(
    ways: Ways,
    audio: Sequence[Connection],
    loop: LoopJacks,
    send: Port,
    back: Port,
    behind: Sequence[str],
    last: Port,
) -> Diagnostic:
    lead = next(each for each in audio if each.start == send)
    said = f"loop {loop.number} of {send.thing} holds {' -> '.join(behind)}"
    chain = next((each for each in ways.chains if _is_the_loop(each, loop, behind, send.thing)), None)
    mends = (Mend(f"write `{said}` in its place", (Replace(chain.span, said),)),) if chain is not None else ()
    return OPEN_LOOP.at(
        lead.span,
        f"loop {loop.number} of '{send.thing}' is open: it goes out by '{send}' to {listed(behind)}, but nothing leads from "
        f"'{last}' back to '{back}'",
        subject=(send.thing, f"loop {loop.number}", *behind),
        label="goes out here",
        also=(Label(loop.span, "the loop's jacks"),),
        mends=mends,
        help="" if mends else f"write `{said}` in place of the chain",
    )


def _past(
    ways: Ways,
    audio: Sequence[Connection],
    loop: LoopJacks,
    send: Port,
    back: Port,
    behind: Sequence[str],
    out: Port,
) -> Diagnostic:
    lead = next(each for each in audio if each.start == send)
    held = [name for name in behind if not _ends(ways, name)]
    onward = [name for name in behind if _ends(ways, name)]
    said = f"loop {loop.number} of {send.thing} " + (f"holds {' -> '.join(held)}" if held else "empty")
    return OPEN_LOOP.at(
        lead.span,
        f"loop {loop.number} of '{send.thing}' is open: it goes out by '{send}' to {listed(behind)}, and '{back}' and '{out}' "
        "stay empty: with the loop out nothing is heard",
        subject=(send.thing, f"loop {loop.number}", *behind),
        label="goes out here",
        also=(Label(loop.span, "the loop's jacks"),),
        help=f"write `{said}`, and go on from {out}" + (f": `chain {send.thing} -> {onward[0]}`" if onward else ""),
    )


def _is_the_loop(chain: Chain, loop: LoopJacks, behind: Sequence[str], host: str) -> bool:
    """Whether a chain that holds always says nothing but what the loop holds."""
    first, *rest = chain.stops
    plain = not chain.when.scenarios and not chain.when.instrument and not any(chain.stereo)
    whole = [each.thing for each in rest] == list(behind) and all(each.jack is None for each in rest)
    return plain and whole and (first.thing, first.jack) == (host, loop.send)


def _paths(ways: Ways) -> Iterator[tuple[Sequence[Stop], str]]:
    """Every path with the words for it; a chain is `this chain`."""
    yield from ((chain.stops, "this chain") for chain in ways.chains)
    yield from ((use.stops, f"loop {use.number} of '{use.switcher}'") for use in ways.loops)
    yield from ((path.stops, f"the blend of '{blend.unit}'") for blend in ways.blends for path in blend.paths)
