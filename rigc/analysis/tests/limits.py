"""A test and a point -> what the reading there must keep to: the one that is expected, else the rule of the test."""

from __future__ import annotations

from collections.abc import Callable

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.feeds.power_tap import outlet_at
from rigc.analysis.leads.leads import Leads
from rigc.analysis.leads.lengths.cable_lengths import CableLengths
from rigc.analysis.signal.levels.standing_pads import losses_before, standing_loss_db
from rigc.analysis.tests.limit import Limit, bounds, unbounded
from rigc.analysis.tests.nominal import Nominal, nominal_at
from rigc.facts import readings
from rigc.facts.tests import TESTS
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.record import Record


class Board(Record):
    """What the limits of tests depend on; `outputs` are the jacks where sound leaves the board."""

    rig: Rig
    power: PowerAssignment
    leads: Leads
    lengths: CableLengths
    outputs: tuple[str, ...]

    def nominal(self, point: str) -> Nominal | None:
        """The voltage that stands at a point."""
        return nominal_at(self.rig, self.power, self.leads, point)


def rule_limit(board: Board, test: int, point: str, place: str = "") -> Limit:
    """The limit by the rule of a test; `place` is heel or toe. Without bounds, and in words why, where none can be told."""
    if test in _FIXED:
        return _FIXED[test]
    if test in _BY_POINT:
        return _BY_POINT[test](board, point, place)
    known = TESTS.get(test)
    return unbounded("no limit is stated" if known is None else known.limit)


def _lead(board: Board, point: str, _: str) -> Limit:
    length = _length_mm(board, point)
    if length is None:
        return bounds("ohm", high=readings.LONG_LEAD_OHM.value, behind=f", {readings.LEAD_OHM.value:g} Ω up to 1 m")
    if length > readings.LONG_LEAD_MM.value:
        return bounds("ohm", high=readings.LONG_LEAD_OHM.value)
    return bounds("ohm", high=readings.LEAD_OHM.value, strict=True)


def _length_mm(board: Board, mark: str) -> float | None:
    """As built, else as it is supplied."""
    built = [lead.length_mm.value for block in board.rig.as_built for lead in block.leads if lead.mark == mark]
    lead = board.leads.of(mark)
    if built or lead is None:
        return built[-1] if built else None
    return board.lengths.supplied_mm(mark)


def _off_load(board: Board, point: str, _: str) -> Limit:
    nominal = board.nominal(point)
    if nominal is None or nominal.current != "dc":
        return _no_voltage(nominal)
    low, high = (table.get(round(nominal.volts)) for table in (readings.OFF_LOAD_LOW_V, readings.OFF_LOAD_HIGH_V))
    if low is None or high is None or nominal.volts != round(nominal.volts):
        return unbounded(f"no limit is known for {nominal.volts:g} V")
    if nominal.supply.technology == "unregulated":
        return bounds("V", low.value, readings.UNREGULATED_SHARE.value * nominal.volts, behind=", unregulated")
    return bounds("V", low.value, high.value)


def _on_load(board: Board, point: str, _: str) -> Limit:
    nominal = board.nominal(point)
    if nominal is None:
        return _no_voltage(nominal)
    return bounds("V", low=readings.ON_LOAD_PCT.value / 100 * nominal.volts)


def _ripple(board: Board, point: str, _: str) -> Limit:
    nominal = board.nominal(point)
    if nominal is None or nominal.current != "dc":
        return _no_voltage(nominal)
    most = readings.RIPPLE_MV.get(nominal.supply.technology or "")
    if most is None:
        kind = nominal.supply.technology
        return unbounded(
            f"no limit is known for {kind}" if kind else f"the kind of '{nominal.supply.name}' is not stated"
        )
    return bounds("V", high=most.value / 1000)


def _no_voltage(nominal: Nominal | None) -> Limit:
    return unbounded("its voltage is not known" if nominal is None else "no limit is known for AC")


def _isolation(board: Board, point: str, _: str) -> Limit:
    thing, _, name = point.partition(".")
    outlet = outlet_at(board.rig, Port(thing, name)) if thing in board.rig.supplies else None
    group = None if outlet is None else outlet.common
    mates = [
        each.name
        for each in (board.rig.supplies[thing].outlets if group is not None else ())
        if each.common == group and each.name != name
    ]
    behind = f", but to {', '.join(mates)}: one common" if mates else ""
    return bounds("ohm", low=readings.ISOLATION_MOHM.value * 1e6, strict=True, behind=behind)


def _through(board: Board, point: str, _: str) -> Limit:
    """A change of nothing, or what the pads take that always stand in the way."""
    ends = board.outputs if point == board.rig.head.name else (point,) if point in board.outputs else ()
    most = (readings.THROUGH_DB if ends or point == board.rig.head.name else readings.BYPASS_DB).value
    found = {loss for end in ends for loss in losses_before(board.rig, Port(*end.split(".", 1)))}
    if None in found:
        return unbounded("what the transformer in its way takes is not stated: note the reading")
    losses = {loss for loss in found if loss is not None}
    if point in board.rig.units:
        losses = {standing_loss_db(board.rig.units[point])}
    if len(losses) > 1:
        told = " or ".join(f"{loss:g}" for loss in sorted(losses))
        return unbounded(f"the pads in its ways take {told} dB: measure each way by itself")
    loss = max(losses, default=0.0)
    if not loss:
        return Limit(f"±{most:g} dB", f"±{most:g} dB", "dB", -most, most)
    words = f"−{loss:g} ±{most:g} dB, for a pad that is always in the way"
    return Limit(words, words, "dB", -loss - most, -loss + most)


def _treadle(_: Board, __: str, place: str) -> Limit:
    value = (readings.HEEL if place == "heel" else readings.TOE).value
    return Limit(f"{value:g}", f"{value:g}", "", value, value)


def _heat(board: Board, point: str, _: str) -> Limit:
    if point in board.rig.supplies:
        return bounds("°C", high=readings.SUPPLY_C.value, strict=True)
    return bounds("°C", high=readings.UNIT_C.value)


_FIXED = {
    1: bounds("ohm", high=readings.BOND_OHM.value, behind=" and the lead's own"),
    2: bounds("ohm", low=readings.INSULATION_MOHM.value * 1e6),
    4: bounds("ohm", low=readings.LEAKAGE_MOHM.value * 1e6, strict=True),
    10: bounds("dB", high=readings.TREBLE_DB.value, either_way=True, behind=" down"),
    12: bounds("dB", high=readings.NOISE_DB.value),
    13: bounds("dB", high=readings.HUM_DB.value, behind=" of −20 dBu"),
    14: bounds("dB", low=readings.MUTE_DB.value, either_way=True),
    15: bounds("ms", high=readings.FOLLOW_MS.value),
}
_BY_POINT: dict[int, Callable[[Board, str, str], Limit]] = {
    3: _lead,
    5: _off_load,
    6: _on_load,
    7: _ripple,
    8: _isolation,
    9: _through,
    16: _treadle,
    19: _heat,
    20: _lead,
}
