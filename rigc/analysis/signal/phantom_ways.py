"""Rig -> every way on which phantom power may come back from an input to what drives it."""

from __future__ import annotations

from rigc.model.jacks import AUDIO_IN, Phantom, Port
from rigc.model.rig import Rig
from rigc.model.things import Panel, Unit
from rigc.model.ways.conductors import meaning
from rigc.record import Record
from rigc.source import Span


class PhantomWay(Record):
    """The output that drives a way, the input at its end, and what each says of phantom power (None: nothing).

    The input is None where a panel jack that nothing is plugged into ends the way. `fits` is whether both are balanced: what a jack of
    another kind gives or bears of it nobody can say, and that the two do not fit is told by itself.
    """

    output: Port
    input: Port | None
    wants: Phantom | None
    gives: Phantom | None
    fits: bool
    span: Span


class PhantomWays(Record):
    """All ways at one end of which phantom power is spoken of, in the order of the source."""

    all: tuple[PhantomWay, ...]


def phantom_ways(rig: Rig) -> PhantomWays:
    """Phantom power goes against the sound, along leads, through panel jacks and through passive units from jack to jack where
    the way is stated as straight; transformers and active units keep it back."""
    onward: dict[Port, list[tuple[Port, Span]]] = {}
    for each in rig.connections:
        if each.signal == "audio":
            onward.setdefault(each.start, []).append((each.end, each.span))
    found = []
    for port, leads in onward.items():
        if _drives(rig, port):
            for end, span in leads:
                found += [_way(rig, port, last, span) for last in _ends(rig, end, onward)]
    return PhantomWays(tuple(way for way in found if _spoken_of(way)))


def _way(rig: Rig, port: Port, last: Port, span: Span) -> PhantomWay:
    start, end = rig.jack(port), rig.jack(last)
    heard = end is not None and end.role == AUDIO_IN
    jacks = [jack for jack in (start, end if heard else None) if jack is not None]
    return PhantomWay(
        port,
        last if heard else None,
        start.phantom if start else None,
        end.phantom if heard and end else None,
        all(meaning(jack) == "balanced" for jack in jacks),
        span,
    )


def _spoken_of(way: PhantomWay) -> bool:
    asks = way.wants is not None and way.wants.how == "needs"
    return asks or (way.gives is not None and way.gives.how == "gives")


def _drives(rig: Rig, port: Port) -> bool:
    """Whether a way begins there: no panel jack, and no output through which the power would go on."""
    return not isinstance(rig.things[port.thing], Panel) and not _straight(rig, port, end=True)


def _ends(rig: Rig, port: Port, onward: dict[Port, list[tuple[Port, Span]]]) -> list[Port]:
    """The inputs at which the ways end that enter at a port, or the panel jacks that nothing is plugged into; each once."""
    found, seen, waiting = [], set(), [port]
    while waiting:
        here = waiting.pop()
        if here in seen:
            continue
        seen.add(here)
        on = [here] if isinstance(rig.things[here.thing], Panel) else _straight(rig, here, end=False)
        leads = [end for out in on for end, _ in onward.get(out, ())]
        if not leads:
            found.append(here)
        waiting += reversed(leads)
    return found


def _straight(rig: Rig, port: Port, end: bool) -> list[Port]:
    """The jacks at the other side of a passive unit's straight paths."""
    unit = rig.things[port.thing]
    if not isinstance(unit, Unit) or "passive" not in unit.flags:
        return []
    paths = [(path.end, path.start) if end else (path.start, path.end) for path in unit.paths if path.how == "straight"]
    return [Port(unit.name, there) for here, there in paths if here == port.jack]


COMPUTE = phantom_ways
