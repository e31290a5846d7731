"""Ways of sound and gains of units -> the most gain that follows a place in the chain."""

from __future__ import annotations

from collections.abc import Iterable

from rigc.model.inner_ways import Way, handed_on, main_outputs
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.record import Record


class Gain(Record):
    """The most gain in dB on any way from there to where sound leaves the board; `unknown` units on the way do not say theirs."""

    most_db: float
    unknown: tuple[str, ...]


class GainAfter:
    """Gains behind the jacks of one state of the chain, each worked out once."""

    def __init__(self, rig: Rig, ways: Iterable[Way]) -> None:
        self._rig = rig
        self._next: dict[Port, list[Port]] = {}
        for start, end in ways:
            self._next.setdefault(start, []).append(end)
        self._outputs = {port for unit in rig.units.values() for port in main_outputs(unit)}
        self._known: dict[Port, Gain] = {}

    def of(self, port: Port) -> Gain:
        """The gain behind a jack. Amps and desks end the way: theirs is a matter of the hall. A circle counts once."""
        todo, under_way = [port], {port}
        while todo:
            here = todo[-1]
            open_ways = [p for p in self._next.get(here, ()) if p not in self._known and p not in under_way]
            if open_ways:
                todo.append(open_ways[0])
                under_way.add(open_ways[0])
                continue
            self._known[here] = self._best(here)
            todo.pop()
        return self._known[port]

    def _best(self, here: Port) -> Gain:
        ahead = [(end, self._known[end]) for end in self._next.get(here, ()) if end in self._known]
        steps = [(self._step(here, end), gain) for end, gain in ahead]
        most = max((step + gain.most_db for (step, _), gain in steps), default=0.0)
        unknown = dict.fromkeys(name for (_, who), gain in steps for name in (*who, *gain.unknown))
        return Gain(most, tuple(unknown))

    def _step(self, start: Port, end: Port) -> tuple[float, tuple[str, ...]]:
        """The gain of one step: a unit's counts where sound leaves it for good, not at the sends of its loops."""
        unit = self._rig.units.get(start.thing)
        if unit is None or unit.kind != "unit" or end not in self._outputs or start.thing != end.thing:
            return 0.0, ()
        if handed_on(unit, end.jack):
            return 0.0, ()
        if unit.gain_db is not None:
            return unit.gain_db.value, ()
        return 0.0, () if "passive" in unit.flags else (unit.name,)
