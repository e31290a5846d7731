"""Sound runs in a circle, and no feedback is declared for a unit in it.

Why it matters: a circle with gain howls as soon as it is powered.
What to do: find the lead that goes back, and take it to the next unit of the chain; where the circle is wanted, say so
with `feedback` and the name of a unit in it; where a unit's channels are separate, state its inner ways with `path`.
Source: arithmetic on the stated chains (a circle in the graph of what feeds what); what a circle with gain does is physics.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.signal.audio_graph import AudioGraph
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level
from rigc.model.graphs import signal_graph
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.ways.jack_use import in_several_loops
from rigc.model.wishes import When

KIND = Kind(
    "audio-cycle",
    Level.ERROR,
    __doc__,
    "no circle of audio without declared feedback",
    "arithmetic on the stated chains",
)


def audio_cycle(rig: Rig, graph: AudioGraph) -> Iterator[Diagnostic]:
    """One finding for each circle that can close in a scenario with an instrument."""
    if not graph.circles():
        return
    wanted = {*in_several_loops(rig), *(intent.unit for intent in rig.intents if intent.kind == "feedback")}
    told: set[tuple[str, ...]] = set()
    for when in _times(rig):
        for circle in signal_graph(rig, when).circles():
            names = tuple(dict.fromkeys(port.thing for port in circle))
            if names not in told and not wanted & set(names):
                told.add(names)
                yield _told(rig, circle, names)


def _times(rig: Rig) -> Iterator[When]:
    for scenario in rig.scenarios or ("",):
        for instrument in rig.instruments or ("",):
            yield When((scenario,) if scenario else (), instrument or None)


def _told(rig: Rig, circle: list[Port], names: tuple[str, ...]) -> Diagnostic:
    leads = [each for each in rig.connections if each.signal == "audio" and each.start in circle and each.end in circle]
    last = max(leads, key=lambda each: each.span.start)
    return KIND.at(
        last.span,
        f"sound runs in a circle: {' -> '.join((*names, names[0]))}",
        subject=names,
        label="closes the circle",
        also=tuple(Label(each.span, "in the circle") for each in leads if each.span is not last.span),
        help=f"take {last.start} elsewhere, or state `feedback {names[0]}` if the circle is wanted",
    )


CHECK = audio_cycle
