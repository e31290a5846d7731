"""A hookup -> the level at each jack: stated where the source says so, else what comes in and what the unit lifts.

Of all on/off states the highest and the lowest are kept. What an input takes from its source (less than 1 dB where
bridging holds) is not counted. All is reckoned in plain numbers or in terms, as the facts are given.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from functools import cached_property
from typing import Any

from rigc.analysis.signal.decibels import dbu, volts
from rigc.analysis.signal.levels.sources_first import sources_first
from rigc.analysis.signal.sound_ways import Hookup
from rigc.model.fact import Quantity
from rigc.model.jacks import Jack, Port
from rigc.model.rig import Rig
from rigc.model.things import Panel, Unit
from rigc.model.ways.inner_ways import gain_db, is_wire, main_inputs, main_outputs
from rigc.record import Record
from rigc.traced.given import mentioned, unstated
from rigc.traced.means import highest, least, worked
from rigc.traced.term import Unknown, traced

_CAN_BE_OFF = ("true", "buffered", "trails")
_NOTHING = mentioned("anything that comes in", "nothing")
_Number = float | Unknown
_Shares = dict[Port, _Number]
PlainLevel = tuple[float | None, float | None, float | None, tuple[str, ...]]


class JackLevel(Record):
    """The level at a jack in dBu: nominal at its highest and lowest, and the highest peak; unknown where not known.

    `lacking` names the things that do not say what they give.
    """

    high: _Number
    low: _Number
    peak: _Number
    lacking: tuple[str, ...] = ()

    @property
    def plain(self) -> PlainLevel:
        """All of it in plain numbers, None where not known: two levels are the same if these are."""
        high, low, peak = (
            None if isinstance(each, Unknown) else float(each) for each in (self.high, self.low, self.peak)
        )
        return high, low, peak, self.lacking

    def lifted(self, gain_db: _Number) -> JackLevel:
        """The same after a gain."""
        return JackLevel(self.high + gain_db, self.low + gain_db, self.peak + gain_db, self.lacking)


SILENT = JackLevel(_NOTHING, _NOTHING, _NOTHING)

Given = Callable[[str, Quantity], _Number]
Along = Callable[[Port, Port, JackLevel], JackLevel]


def plainly(_label: str, fact: Quantity) -> float:
    """A fact as a plain number."""
    return fact.value


def unchanged(_start: Port, _end: Port, level: JackLevel) -> JackLevel:
    """What a lead makes of a level."""
    return level


class JackLevels:
    """The levels of one hookup, each reckoned when it is first asked for.

    `given` makes a number of a fact and what it is called, `along` what arrives at the end of a lead of what leaves at its start.
    """

    def __init__(self, rig: Rig, hookup: Hookup, given: Given = plainly, along: Along = unchanged) -> None:
        self.rig = rig
        self.hookup = hookup
        self._given = given
        self._along = along
        self._known: dict[Port, JackLevel] = {}

    def at(self, port: Port) -> JackLevel:
        """The level at a jack. On a circle nothing is added by what comes round."""
        if port not in self._known:
            for each in sources_first(port, self._sources, self._known):
                self._known[each] = self._reckoned(each)
        return self._known[port]

    def _sources(self, port: Port) -> Sequence[Port]:
        """The jacks whose levels make up that of a jack."""
        jack, unit = self.rig.jack(port), self.rig.units.get(port.thing)
        if jack is None:
            return ()
        if self._is_reached(jack, port):
            return self._before.get(port, ())
        if unit is None:
            return ()
        through = () if _is_whole(jack) or self._gain(unit, port) is None else self._inside(unit, port)
        return (*through, *self._passing(unit, port))

    def _reckoned(self, port: Port) -> JackLevel:
        jack, unit = self.rig.jack(port), self.rig.units.get(port.thing)
        if jack is None:
            return SILENT
        if self._is_reached(jack, port):
            before = self._before.get(port, ())
            return loudest([self._along(start, port, self._known.get(start, SILENT)) for start in before])
        if unit is None:
            return self._stated(port, jack, _not_said(port.thing))
        on = self._stated(port, jack, SILENT if _is_whole(jack) else self._through(unit, port))
        off = self._known_of(self._passing(unit, port))
        return loudest([on, *(each for each in off if not each.lacking)])

    def _known_of(self, ports: Iterable[Port]) -> list[JackLevel]:
        return [self._known.get(port, SILENT) for port in ports]

    def _is_reached(self, jack: Jack, port: Port) -> bool:
        """Whether a jack takes the level of what is led to it; a jack of a panel does, too where what leads there does not play."""
        return jack.role == "input" or (port in self._led_to and isinstance(self.rig.things[port.thing], Panel))

    def _stated(self, port: Port, jack: Jack, otherwise: JackLevel) -> JackLevel:
        """The levels that a jack states; what it leaves out is taken from the reckoned ones."""
        nominal, peak = jack.levels.nominal_dbu, jack.levels.peak_dbu
        if nominal is None and peak is None:
            return otherwise
        own = None if nominal is None else self._given(f"nominal level of {port}", nominal)
        return JackLevel(
            otherwise.high if own is None else own,
            otherwise.low if own is None else own,
            otherwise.peak if peak is None else self._given(f"peak of {port}", peak),
            () if _is_whole(jack) else otherwise.lacking,
        )

    def _gain(self, unit: Unit, port: Port) -> _Number | None:
        stated = gain_db(unit, port.jack)
        if stated is None:
            return 0.0 if is_wire(unit, port.jack) else None
        return self._given(f"gain of {unit.name}", stated)

    def _inside(self, unit: Unit, port: Port) -> Sequence[Port]:
        """The unit's own inputs that reach one of its outputs."""
        return [start for start in self._before.get(port, ()) if start.thing == unit.name]

    @cached_property
    def _led_to(self) -> frozenset[Port]:
        """The jacks to which something is led in this hookup, or in another."""
        return frozenset((*self._before, *(lead.end for lead in self.rig.connections)))

    @cached_property
    def _before(self) -> dict[Port, list[Port]]:
        found: dict[Port, list[Port]] = {}
        for start, ends in self.hookup.onward.items():
            for end in ends:
                found.setdefault(end, []).append(start)
        return found

    def _through(self, unit: Unit, port: Port) -> JackLevel:
        """What a unit that is on gives where it does not say so: what comes in, and what it lifts at most."""
        gain, starts = self._gain(unit, port), self._inside(unit, port)
        if gain is None or not starts:
            return _not_said(unit.name)
        shares = self._shares(unit)
        mixed = port in main_outputs(unit) and shares and all(start in shares for start in starts)
        levels = [self._clipped(start) for start in starts]
        come = _mixed(list(zip(levels, map(shares.__getitem__, starts), strict=True))) if mixed else None
        return (come or loudest(levels)).lifted(gain)

    def _clipped(self, port: Port) -> JackLevel:
        """The level at an input of a unit that is on: no more than it takes, for beyond that it clips."""
        level, jack = self._known.get(port, SILENT), self.rig.jack(port)
        maximum = None if jack is None else jack.levels.maximum_dbu
        if maximum is None or not any(_is_above(each, maximum.value) for each in (level.high, level.low, level.peak)):
            return level
        most = self._given(f"what {port} takes", maximum)
        high, low, peak = (
            least(each, most) if _is_above(each, maximum.value) else each
            for each in (level.high, level.low, level.peak)
        )
        return JackLevel(high, low, peak, level.lacking)

    def _shares(self, unit: Unit) -> _Shares:
        """The share (0 to 1) with which each input of a blender counts: its own for the dry way, a return for a wet one."""
        found: _Shares = {}
        for path in (path for blend in self.rig.blends if blend.unit == unit.name for path in blend.paths):
            loop = unit.loop(path.loop) if path.loop is not None else None
            ports = [Port(unit.name, loop.back)] if loop is not None else main_inputs(unit)
            whose = f"{unit.name}{'' if loop is None else f' loop {loop.number}'}"
            found.update(dict.fromkeys(ports, self._given(f"share in the blend of {whose}", path.share) / 100))
        return found

    def _passing(self, unit: Unit, port: Port) -> Iterable[Port]:
        """The inputs that reach an output unchanged when the unit is off, or its loops out."""
        starts = self._inside(unit, port)
        if unit.kind != "unit":
            return ()
        if unit.loops and not any(blend.unit == unit.name for blend in self.rig.blends):
            return dict.fromkeys((*starts, *main_inputs(unit)))
        return starts if unit.bypass is not None and unit.bypass.value in _CAN_BE_OFF else ()


def _is_above(level: _Number, most: float) -> bool:
    return not isinstance(level, Unknown) and float(level) > most


def _is_whole(jack: Jack) -> bool:
    return jack.levels.nominal_dbu is not None and jack.levels.peak_dbu is not None


def loudest(levels: list[JackLevel]) -> JackLevel:
    """Of several levels that may come, the highest, the lowest and the highest peak."""
    levels = [each for each in levels if each is not SILENT]
    if len(levels) == 1:
        return levels[0]
    lacking = tuple(dict.fromkeys(name for each in levels for name in each.lacking))
    if not levels:
        return SILENT
    highs, lows, peaks = zip(*((each.high, each.low, each.peak) for each in levels), strict=True)
    return JackLevel(highest(*highs), least(*lows), highest(*peaks), lacking)


def _not_said(thing: str) -> JackLevel:
    want = unstated(f"what {thing} gives")
    return JackLevel(want, want, want, (thing,))


def _mixed(parts: list[tuple[JackLevel, _Number]]) -> JackLevel:
    """Ways in step added by their shares, as voltages."""
    whole = loudest([level for level, _ in parts])
    if not any(share for _, share in parts):
        return JackLevel(_NOTHING, _NOTHING, _NOTHING, whole.lacking)
    shares = [share for _, share in parts]

    def total(levels: Iterable[_Number]) -> Any:
        each = [traced(part) for pair in zip(shares, levels, strict=True) for part in pair]
        written = " + ".join("{} × 10^({} / 20)" for _ in shares)
        return worked(f"20 log10({written})", _in_step, *each, moves="+" * len(each))

    return JackLevel(
        total(level.high for level, _ in parts),
        total(level.low for level, _ in parts),
        total(level.peak for level, _ in parts),
        whole.lacking,
    )


def _in_step(*parts: float) -> float:
    """The level of the sum of voltages, from the share and the level of each."""
    return dbu(sum(share * volts(level) for share, level in zip(parts[::2], parts[1::2], strict=True)))
