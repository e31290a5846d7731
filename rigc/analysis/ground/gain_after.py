"""Ways of sound and gains of units -> the most gain that follows a place in the chain."""

from __future__ import annotations

from collections.abc import Iterable

from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.ways.inner_ways import Way, handed_on, main_outputs
from rigc.record import Record
from rigc.traced.given import stated


class Gain(Record):
    """The most gain in dB on any way from there to where sound leaves the board, a sum of stated gains.

    `stated` are the units on any of the ways that say theirs, `unknown` those that do not.
    """

    most_db: float
    stated: tuple[str, ...]
    unknown: tuple[str, ...]

    @classmethod
    def most(cls, ways: Iterable[Gain]) -> Gain:
        """Of several ways the one that lifts most, with the units of all; 0 of none."""
        every = tuple(ways)
        said = dict.fromkeys(name for each in every for name in each.stated)
        unknown = dict.fromkeys(name for each in every for name in each.unknown)
        return cls(max((each.most_db for each in every), default=0.0), tuple(said), tuple(unknown))


_NONE = Gain(0.0, (), ())


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
        ahead = [(self._step(here, end), self._known[end]) for end in self._next.get(here, ()) if end in self._known]
        return Gain.most(
            Gain(step.most_db + gain.most_db, (*step.stated, *gain.stated), (*step.unknown, *gain.unknown))
            for step, gain in ahead
        )

    def _step(self, start: Port, end: Port) -> Gain:
        """The gain of one step: a unit's counts where sound leaves it for good, not at the sends of its loops."""
        unit = self._rig.units.get(start.thing)
        if unit is None or unit.kind != "unit" or end not in self._outputs or start.thing != end.thing:
            return _NONE
        if handed_on(unit, end.jack):
            return _NONE
        if unit.gain_db is not None:
            return Gain(stated(f"gain of {unit.name}", unit.gain_db), (unit.name,), ())
        return _NONE if "passive" in unit.flags else Gain(0.0, (), (unit.name,))
