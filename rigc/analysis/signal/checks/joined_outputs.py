"""Two outputs are joined into one input.

Why it matters: each output drives the other instead of the input; both grow quiet and may distort.
What to do: bring them together in a mixer or blender, each on an input of its own; where both ways begin at one jack, put a
splitter there too. Or, where they never hold at once, say for which scenario (`for`) or with which instrument (`with`) each
chain holds.
Source: physics (two low output impedances in parallel load each other).
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.signal.one_at_a_time import plugged_in_turn
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.diagnostics.mend import Mend, Replace
from rigc.diagnostics.wording import listed
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.things import Unit
from rigc.model.ways.conductors import meaning
from rigc.model.ways.jack_use import joined_inputs, led_astray, parted_before
from rigc.model.wishes import Connection

KIND = Kind(
    "joined-outputs",
    Level.ERROR,
    __doc__,
    "no two outputs into one input without a mixer or blender",
    "physics: two outputs in parallel drive each other",
)


def joined_outputs(rig: Rig) -> Iterator[Diagnostic]:
    """One finding for each thing at whose inputs outputs are joined; what parts before it is told with it. Where one of them is that of a speaker
    the lead itself is told, which burns what it meets."""
    joined = {
        port: leads for port, leads in joined_inputs(rig).items() if not any(_speaker(rig, each) for each in leads)
    }
    parted = parted_before(rig, joined)
    for thing in dict.fromkeys(port.thing for port in joined):
        mine = {port: leads for port, leads in joined.items() if port.thing == thing}
        astray = [start for start, end in led_astray(rig, joined).items() if end in mine and start not in parted]
        yield _told(rig, mine, thing, [start for start, end in parted.items() if end in mine], astray)


def _speaker(rig: Rig, lead: Connection) -> bool:
    jack = rig.jack(lead.start)
    return jack is not None and meaning(jack) == "speaker"


def _told(
    rig: Rig, joined: dict[Port, list[Connection]], thing: str, parted: list[Port], astray: list[Port]
) -> Diagnostic:
    parts, places = [], []
    for port, leads in joined.items():
        coming = [each for each in leads if each.end == port]
        parts.append(f"{listed(dict.fromkeys(each.start for each in coming))} into '{port}'")
        places += coming
    split = f"; both ways begin at {listed(parted)}, where one plug goes in" if parted else ""
    if astray:
        split += f"; {listed(astray)} {'holds' if len(astray) == 1 else 'hold'} another lead, too"
    apart = "put a splitter where they part and a mixer or blender where they meet"
    bring = apart if parted else "bring them together in a mixer or blender"
    return KIND.at(
        places[-1].span,
        f"outputs are joined: {', '.join(parts)}{split}",
        subject=(thing, *map(str, joined), *map(str, (*parted, *astray))),
        label="joined here",
        also=tuple(Label(each.span, "with this") for each in places[:-1] if each.span is not places[-1].span),
        mends=() if parted else (*_into_a_free_one(rig, places), *_in_turn(rig, places)),
        help=f"{bring}, or say with `for` or `with` when each chain holds",
    )


def _in_turn(rig: Rig, places: list[Connection]) -> tuple[Mend, ...]:
    """Two instruments that are both plugged into it."""
    names = list(dict.fromkeys(each.start.thing for each in places))
    if len(names) != 2 or any(name not in rig.instruments for name in names):
        return ()
    return plugged_in_turn(rig, names[0], names[1])


def _into_a_free_one(rig: Rig, places: list[Connection]) -> tuple[Mend, ...]:
    """The last lead into the next input of its kind that holds no lead and is not a side of a pair, where the chain names its end."""
    lead = places[-1]
    thing, wrong = rig.things[lead.end.thing], rig.jack(lead.end)
    taken = {port for each in rig.connections for port in (each.start, each.end)}
    sides = {name for pair in thing.pairs for name in pair} if isinstance(thing, Unit) else set()
    if wrong is None or lead.stereo or lead.span.text not in (thing.name, str(lead.end)):
        return ()
    for jack in thing.jacks:
        port = Port(thing.name, jack.name)
        if jack.role == "input" and jack.connector == wrong.connector and port not in taken and jack.name not in sides:
            return (Mend(f"plug '{lead.start}' into '{port}', which is free", (Replace(lead.span, str(port)),)),)
    return ()


CHECK = joined_outputs
