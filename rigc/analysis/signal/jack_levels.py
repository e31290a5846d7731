"""A hookup -> the level at each jack: stated where the source says so, else what comes in and what the unit lifts.

Of all on/off states the highest and the lowest are kept. What an input takes from its source (less than 1 dB where
bridging holds) is not counted.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from functools import cached_property

from rigc.analysis.computations.sound_ways import Hookup
from rigc.analysis.signal.decibels import dbu, volts
from rigc.analysis.signal.sources_first import sources_first
from rigc.model.fact import Quantity
from rigc.model.inner_ways import main_inputs, main_outputs
from rigc.model.jacks import Jack, Port
from rigc.model.rig import Rig
from rigc.model.things import Panel, Unit
from rigc.record import Record

_CAN_BE_OFF = ("true", "buffered", "trails")
_Shares = dict[Port, float]


class JackLevel(Record):
    """The level at a jack in dBu: nominal at its highest and lowest, and the highest peak; None where not known.

    `lacking` names the things that do not say what they give.
    """

    high_dbu: float | None
    low_dbu: float | None
    peak_dbu: float | None
    lacking: tuple[str, ...] = ()
    assumed: bool = False

    @property
    def silent(self) -> bool:
        """Whether nothing comes there, and not only nothing that is known."""
        return self.high_dbu is None and self.low_dbu is None and self.peak_dbu is None and not self.lacking

    def lifted(self, gain_db: float) -> JackLevel:
        """The same after a gain."""
        high, low, peak = (
            None if each is None else each + gain_db for each in (self.high_dbu, self.low_dbu, self.peak_dbu)
        )
        return JackLevel(high, low, peak, self.lacking, self.assumed)


SILENT = JackLevel(None, None, None)


class JackLevels:
    """The levels of one hookup, each reckoned when it is first asked for."""

    def __init__(self, rig: Rig, hookup: Hookup) -> None:
        self.rig = rig
        self.hookup = hookup
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
            return loudest(self._known_of(self._before.get(port, ())))
        if unit is None:
            return _stated(jack, JackLevel(None, None, None, (port.thing,)))
        on = _stated(jack, SILENT if _is_whole(jack) else self._through(unit, port))
        off = self._known_of(self._passing(unit, port))
        return loudest([on, *(each for each in off if not each.lacking)])

    def _known_of(self, ports: Iterable[Port]) -> list[JackLevel]:
        return [self._known.get(port, SILENT) for port in ports]

    def _is_reached(self, jack: Jack, port: Port) -> bool:
        """Whether a jack takes the level of what is led to it."""
        return jack.role == "input" or (port in self._before and isinstance(self.rig.things[port.thing], Panel))

    def _gain(self, unit: Unit, port: Port) -> float | None:
        return 0.0 if unit.gain_db is None and _is_wire(unit, port) else _value(unit.gain_db)

    def _inside(self, unit: Unit, port: Port) -> Sequence[Port]:
        """The unit's own inputs that reach one of its outputs."""
        return [start for start in self._before.get(port, ()) if start.thing == unit.name]

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
            return JackLevel(None, None, None, (unit.name,))
        shares = _shares(self.rig, unit)
        mixed = port in main_outputs(unit) and shares and all(start in shares for start in starts)
        levels = self._known_of(starts)
        come = _mixed(list(zip(levels, map(shares.__getitem__, starts), strict=True))) if mixed else None
        lifted = (come or loudest(levels)).lifted(gain)
        assumed = lifted.assumed or (unit.gain_db is not None and unit.gain_db.assumed)
        return JackLevel(lifted.high_dbu, lifted.low_dbu, lifted.peak_dbu, lifted.lacking, assumed)

    def _passing(self, unit: Unit, port: Port) -> Iterable[Port]:
        """The inputs that reach an output unchanged when the unit is off, or its loops out."""
        starts = self._inside(unit, port)
        if unit.kind != "unit":
            return ()
        if unit.loops and not any(blend.unit == unit.name for blend in self.rig.blends):
            return dict.fromkeys((*starts, *main_inputs(unit)))
        return starts if unit.bypass is not None and unit.bypass.value in _CAN_BE_OFF else ()


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
    highs, lows, peaks = zip(*((each.high_dbu, each.low_dbu, each.peak_dbu) for each in levels), strict=True)
    assumed = any(each.assumed for each in levels)
    return JackLevel(_of_all(highs, max), _of_all(lows, min), _of_all(peaks, max), lacking, assumed)


def _of_all(values: tuple[float | None, ...], pick: Callable[[list[float]], float]) -> float | None:
    known = [each for each in values if each is not None]
    return None if len(known) < len(values) else pick(known)


def _stated(jack: Jack, otherwise: JackLevel) -> JackLevel:
    """The levels that a jack states; what it leaves out is taken from the reckoned ones."""
    nominal, peak = jack.levels.nominal_dbu, jack.levels.peak_dbu
    if nominal is None and peak is None:
        return otherwise
    whole = _is_whole(jack)
    return JackLevel(
        otherwise.high_dbu if nominal is None else nominal.value,
        otherwise.low_dbu if nominal is None else nominal.value,
        otherwise.peak_dbu if peak is None else peak.value,
        () if whole else otherwise.lacking,
        any(fact is not None and fact.assumed for fact in (nominal, peak)) or (not whole and otherwise.assumed),
    )


def _mixed(parts: list[tuple[JackLevel, float]]) -> JackLevel:
    """Ways in step added by their shares, as voltages."""
    whole = loudest([level for level, _ in parts])

    def total(values: list[float | None]) -> float | None:
        shares = [share for _, share in parts]
        known = [share * volts(each) for each, share in zip(values, shares, strict=True) if each is not None]
        return None if len(known) < len(values) or not sum(known) else dbu(sum(known))

    return JackLevel(
        total([level.high_dbu for level, _ in parts]),
        total([level.low_dbu for level, _ in parts]),
        total([level.peak_dbu for level, _ in parts]),
        whole.lacking,
        whole.assumed,
    )


def _shares(rig: Rig, unit: Unit) -> _Shares:
    """The share (0 to 1) with which each input of a blender counts: its own for the dry way, a return for a wet one."""
    found: _Shares = {}
    for path in (path for blend in rig.blends if blend.unit == unit.name for path in blend.paths):
        loop = unit.loop(path.loop) if path.loop is not None else None
        ports = [Port(unit.name, loop.back)] if loop is not None else main_inputs(unit)
        found.update(dict.fromkeys(ports, path.share.value / 100))
    return found


def _is_wire(unit: Unit, port: Port) -> bool:
    paths = [path for path in unit.paths if path.end == port.jack]
    return bool(paths) and all(path.how == "straight" for path in paths)


def _value(fact: Quantity | None) -> float | None:
    return None if fact is None else fact.value
