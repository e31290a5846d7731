"""Two outputs are joined into one input.

Why it matters: each output drives the other instead of the input; both grow quiet and may distort.
What to do: bring them together in a mixer or blender, each on an input of its own; where both ways begin at one jack, put a
splitter there too. Or, where they never hold at once, say for which scenario (`for`) or with which instrument (`with`) each
chain holds.
Source: physics (two low output impedances in parallel load each other).
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.diagnostics.wording import listed
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.ways.jack_use import joined_inputs, parted_before
from rigc.model.wishes import Connection

KIND = Kind(
    "joined-outputs",
    Level.ERROR,
    __doc__,
    "no two outputs into one input without a mixer or blender",
    "physics: two outputs in parallel drive each other",
)


def joined_outputs(rig: Rig) -> Iterator[Diagnostic]:
    """One finding for each thing at whose inputs outputs are joined; what parts before it is told with it."""
    joined = joined_inputs(rig)
    parted = parted_before(rig, joined)
    for thing in dict.fromkeys(port.thing for port in joined):
        mine = {port: leads for port, leads in joined.items() if port.thing == thing}
        yield _told(mine, thing, [start for start, end in parted.items() if end in mine])


def _told(joined: dict[Port, list[Connection]], thing: str, parted: list[Port]) -> Diagnostic:
    parts, places = [], []
    for port, leads in joined.items():
        coming = [each for each in leads if each.end == port]
        parts.append(f"{listed(dict.fromkeys(each.start for each in coming))} into '{port}'")
        places += coming
    split = f"; both ways begin at {listed(parted)}, where one plug goes in" if parted else ""
    apart = "put a splitter where they part and a mixer or blender where they meet"
    bring = apart if parted else "bring them together in a mixer or blender"
    return KIND.at(
        places[-1].span,
        f"outputs are joined: {', '.join(parts)}{split}",
        subject=(thing, *map(str, joined), *map(str, parted)),
        label="joined here",
        also=tuple(Label(each.span, "with this") for each in places[:-1] if each.span is not places[-1].span),
        help=f"{bring}, or say with `for` or `with` when each chain holds",
    )


CHECK = joined_outputs
