"""A supply in a scenario -> what stands at its primary, against what that is made for. Nothing here is wiring: figures only."""

from __future__ import annotations

from math import ceil

from rigc.facts.mains import STEP_MORE, STEP_SIZE_VA
from rigc.model.rig import Scenario
from rigc.model.things import MainsRange, Supply
from rigc.record import Record

_SAME = 1 + 1e-9


class Primary(Record):
    """A supply's primary in a scenario: the mains there, after a step transformer if one is declared.

    `place` is the range that holds: the position that `selected` names, else the one that takes the voltage, else the
    first. Its windings are in series, as many as its voltage is times that of the lowest position. `volts` and `hertz` are the lowest and highest that arrive. `step_va` is the declared transformer's rating,
    `load_va` what the supply takes.
    """

    scenario: str
    supply: str
    volts: tuple[float, float]
    hertz: tuple[float, float] | None
    place: MainsRange | None
    selected: float | None
    positions: int
    windings: float
    core_hz: float | None
    step: tuple[float, float] | None
    step_va: float | None
    load_va: float | None

    @property
    def in_voltage(self) -> bool | None:
        """Whether the voltage lies in the range; None where the supply states none. A position that it lacks is outside."""
        if self.place is None:
            return None if not self.positions else False
        return self.place.low_v / _SAME <= self.volts[0] and self.volts[1] <= self.place.high_v * _SAME

    @property
    def position_v(self) -> float | None:
        """Where a selector of several positions must stand: as stated, else at the one that takes the voltage; None where none does."""
        if self.positions < 2 or self.selected is not None:
            return self.selected
        return self.design_v if self.in_voltage else None

    @property
    def in_frequency(self) -> bool | None:
        """Whether the frequency lies in the range; None where either is not stated."""
        if self.place is None or self.hertz is None or self.place.hertz_low is None or self.place.hertz_high is None:
            return None
        return self.place.hertz_low / _SAME <= self.hertz[0] and self.hertz[1] <= self.place.hertz_high * _SAME

    @property
    def design_v(self) -> float | None:
        """The middle of the range: what a transformer's windings are laid out for."""
        return None if self.place is None else (self.place.low_v + self.place.high_v) / 2

    @property
    def flux(self) -> float | None:
        """The highest V/Hz of one winding; None without a core frequency (no transformer at the mains) or without Hz."""
        return None if self.core_hz is None or self.hertz is None else self.volts[1] / self.windings / self.hertz[0]

    @property
    def design_flux(self) -> float | None:
        """The V/Hz of one winding that the core is laid out for."""
        return None if self.core_hz is None or self.design_v is None else self.design_v / self.windings / self.core_hz

    @property
    def flux_pct(self) -> float | None:
        """The V/Hz of one winding, in percent of what the core is laid out for."""
        return None if self.flux is None or not self.design_flux else self.flux / self.design_flux * 100

    @property
    def over_flux(self) -> bool:
        """Whether the V/Hz is more than at the range's upper end and the core's own frequency."""
        if self.flux is None or self.core_hz is None or self.place is None:
            return False
        return self.flux > self.place.high_v / self.windings / self.core_hz * _SAME

    @property
    def secondary_pct(self) -> float | None:
        """What a transformer's secondary gives, in percent of what it is laid out for."""
        return None if self.core_hz is None or not self.design_v else self.volts[0] / self.design_v * 100

    @property
    def needed_va(self) -> float | None:
        """The least rating of a step transformer: 1.5 times the load, rounded up to a size that is made."""
        if self.load_va is None:
            return None
        size = STEP_SIZE_VA.value
        return max(1, ceil(self.load_va * STEP_MORE.value / size - 1e-9)) * size

    @property
    def step_too_small(self) -> bool:
        """Whether the declared step transformer is rated for less than 1.5 times the load."""
        if self.step_va is None or self.load_va is None:
            return False
        return self.step_va * _SAME < self.load_va * STEP_MORE.value


def primary(scenario: Scenario, mains: MainsRange, supply: Supply, load_va: float | None) -> Primary:
    """The primary of a supply where these mains are."""
    step = next((each for each in scenario.transformers if each[0] == supply.name), None)
    ratio = 1.0 if step is None else step[2].value / step[1].value
    volts = mains.low_v * ratio, mains.high_v * ratio
    selected = next((volts.value for name, volts in scenario.selectors if name == supply.name), None)
    place = _place(supply, selected, volts)
    return Primary(
        scenario.name,
        supply.name,
        volts,
        None if mains.hertz_low is None or mains.hertz_high is None else (mains.hertz_low, mains.hertz_high),
        place,
        selected if len(supply.mains) > 1 or place is None else None,
        len(supply.mains),
        _windings(supply, place),
        None if supply.core_hz is None else supply.core_hz.value,
        None if step is None else (step[1].value, step[2].value),
        None if step is None else step[3].value,
        load_va,
    )


def _place(supply: Supply, selected: float | None, volts: tuple[float, float]) -> MainsRange | None:
    if supply.mains and selected is not None:
        return next((each for each in supply.mains if each.low_v <= selected <= each.high_v), None)
    taking = (each for each in supply.mains if each.low_v <= volts[0] and volts[1] <= each.high_v)
    return next(taking, supply.mains[0] if supply.mains else None)


def _windings(supply: Supply, place: MainsRange | None) -> float:
    """How many windings are in series in a selector's position, told by the voltages of the positions."""
    if place is None:
        return 1.0
    return (place.low_v + place.high_v) / min(each.low_v + each.high_v for each in supply.mains)
