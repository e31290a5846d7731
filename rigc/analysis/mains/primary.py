"""A supply in a scenario -> what stands at its primary, against what that is made for: `london.weir8.flux`, `.flux-percent`,
`.secondary`, `.least-va`. Nothing here is wiring: figures only."""

from __future__ import annotations

from math import ceil

from rigc.facts.mains import STEP_MORE, STEP_SIZE_VA
from rigc.model.rig import Scenario
from rigc.model.things import Instrument, MainsRange, Supply, Unit
from rigc.record import Record
from rigc.traced.figure import AnyFigure, Basis, figure
from rigc.traced.given import at_place, mentioned, ours, stated, unstated
from rigc.traced.means import becomes, percent
from rigc.traced.term import Term, Traced, known, number
from rigc.traced.units import FLUX, TRANSFORMER_VA, WHOLE_PERCENT

Taker = Supply | Unit | Instrument
"""What may have a primary: a mains lead of its own."""
_FLUX = "physics: the flux of a core goes with volts per turn over hertz"
_SAME = 1 + 1e-9


class Primary(Record):
    """A supply's primary in a scenario, or that of an amp or desk: the mains there, after a step transformer if one is declared.

    `place` is the range that holds: the position that `selected` names, else the one that takes the voltage, else the
    nearest to it. Its windings are in series, as many as its voltage is times that of the lowest position. `volts` and `hertz` are the
    lowest and highest that arrive. `step_va` is the declared transformer's rating, `load_va` what the supply takes,
    `least` the least rating of one where one is declared or the voltage is outside. `winding_flux` is the highest V/Hz of
    one winding, `made_for_flux` that which the core is laid out for, `most_flux` what it may be at the
    range's upper end and the core's own frequency, `flux_share` the first in percent of the design's, `secondary` what a
    transformer's secondary gives in percent of the design's: None without a core frequency, which tells of a transformer.
    """

    scenario: str
    supply: str
    volts: tuple[float, float]
    hertz: tuple[float, float] | None
    place: MainsRange | None
    selected: float | None
    positions: int
    step: tuple[float, float] | None
    step_va: float | None
    load: Traced
    least: AnyFigure | None
    winding_flux: AnyFigure | None
    made_for_flux: Traced
    most_flux: Traced
    flux_share: AnyFigure | None
    secondary: AnyFigure | None

    @property
    def load_va(self) -> Term | None:
        """What the supply takes, in VA; None where not known."""
        return known(self.load)

    @property
    def in_voltage(self) -> bool | None:
        """Whether the voltage lies in the range; None where the supply states none. A position that it lacks is outside."""
        return _takes(self.place, self.positions, self.volts)

    @property
    def position_v(self) -> float | None:
        """Where a selector of several positions must stand: as stated, else at the one that takes the voltage; None where none does."""
        if self.positions < 2 or self.selected is not None:
            return self.selected
        return self.place.middle_v if self.place is not None and self.in_voltage else None

    @property
    def in_frequency(self) -> bool | None:
        """Whether the frequency lies in the range; None where either is not stated."""
        if self.place is None or self.hertz is None or self.place.hertz_low is None or self.place.hertz_high is None:
            return None
        return self.place.hertz_low / _SAME <= self.hertz[0] and self.hertz[1] <= self.place.hertz_high * _SAME

    @property
    def flux(self) -> Term | None:
        """The highest V/Hz of one winding; None without a core frequency (no transformer at the mains) or without Hz."""
        return None if self.winding_flux is None else known(self.winding_flux)

    @property
    def design_flux(self) -> Term | None:
        """The V/Hz of one winding that the core is laid out for."""
        return known(self.made_for_flux)

    @property
    def flux_pct(self) -> Term | None:
        """The V/Hz of one winding, in percent of what the core is laid out for."""
        return None if self.flux_share is None else known(self.flux_share)

    @property
    def secondary_pct(self) -> Term | None:
        """What a transformer's secondary gives, in percent of what it is laid out for."""
        return None if self.secondary is None else known(self.secondary)

    @property
    def over_flux(self) -> bool:
        """Whether the V/Hz is more than at the range's upper end and the core's own frequency."""
        most = known(self.most_flux)
        return self.flux is not None and most is not None and self.flux > most * _SAME

    @property
    def needed_va(self) -> Term | None:
        """The least rating of a step transformer; None where none is asked for or the load is not known."""
        return None if self.least is None else known(self.least)

    @property
    def step_too_small(self) -> bool:
        """Whether the declared step transformer is rated for less than 1.5 times the load."""
        if self.step_va is None or self.load_va is None:
            return False
        return self.step_va * _SAME < float(self.load_va) * STEP_MORE.value


def primary(scenario: Scenario, mains: MainsRange, supply: Taker, load: Traced) -> Primary:
    """The primary of a supply, or of an amp or desk, where these mains are; `load` is what it takes, in VA."""
    step = next((each for each in scenario.transformers if each[0] == supply.name), None)
    ratio = 1.0 if step is None else step[2].value / step[1].value
    volts = mains.low_v * ratio, mains.high_v * ratio
    hertz = None if mains.hertz_low is None or mains.hertz_high is None else (mains.hertz_low, mains.hertz_high)
    selected = next((volts.value for name, volts in scenario.selectors if name == supply.name), None)
    place = _place(supply, selected, volts)
    name = f"{scenario.name}.{supply.name}"
    steps = step is not None or _takes(place, len(supply.mains), volts) is False
    here = mentioned("mains", mains.typed, mains.span)
    return Primary(
        scenario.name,
        supply.name,
        volts,
        hertz,
        place,
        selected if len(supply.mains) > 1 or place is None else None,
        len(supply.mains),
        None if step is None else (step[1].value, step[2].value),
        None if step is None else step[3].value,
        load,
        _least(name, load) if steps else None,
        *_flux(name, supply, place, volts, hertz, here),
    )


def _least(name: str, load: Traced) -> AnyFigure:
    """The least rating of a step transformer for that load."""
    return figure(
        f"{name}.least-va",
        becomes(load * ours(STEP_MORE), _size),
        TRANSFORMER_VA,
        ours(STEP_SIZE_VA),
        rule="a step transformer is rated for more than its load, and made in certain sizes",
        source=STEP_MORE.source,
    )


def _flux(
    name: str,
    supply: Taker,
    place: MainsRange | None,
    volts: tuple[float, float],
    hertz: tuple[float, float] | None,
    here: Basis,
) -> tuple[AnyFigure | None, Traced, Traced, AnyFigure | None, AnyFigure | None]:
    """Of one winding at these mains, as laid out, and at most; the first in percent of the second, and what a secondary gives."""
    made = () if place is None else (mentioned(f"{supply.name} is made for", place.typed, place.span),)
    core_hz = supply.core_hz if isinstance(supply, Supply) else None
    core = stated(f"core of {supply.name}", core_hz)
    windings = at_place("windings in series", _windings(supply, place), None)
    middle: Traced = unstated(f"what {supply.name} is made for")
    upper = middle
    if place is not None:
        middle, upper = (number(each) for each in (place.middle_v, place.high_v))
    design, most = middle / windings / core, upper / windings / core
    if core_hz is None:  # no transformer is at the mains
        return None, design, most, None, None
    flux = figure(
        f"{name}.flux",
        number(volts[1]) / windings / (unstated("the mains' frequency") if hertz is None else number(hertz[0])),
        FLUX,
        here,
        *made,
        core,
        rule="highest voltage / windings in series / lowest frequency",
        source=_FLUX,
    )
    share = figure(
        f"{name}.flux-percent",
        percent(flux, design),
        WHOLE_PERCENT,
        here,
        *made,
        rule="flux / that at the middle of the range it is made for, at the core's own frequency",
        source=_FLUX,
    )
    secondary = figure(
        f"{name}.secondary",
        percent(number(volts[0]), middle),
        WHOLE_PERCENT,
        here,
        *made,
        rule="lowest voltage / the middle of the range that the windings are laid out for",
        source="physics: a transformer's ratio",
    )
    return flux, design, most, share, secondary


def _takes(place: MainsRange | None, positions: int, volts: tuple[float, float]) -> bool | None:
    if place is None:
        return False if positions else None
    return place.low_v / _SAME <= volts[0] and volts[1] <= place.high_v * _SAME


def _size(volt_amperes: float) -> float:
    """The next larger size of transformer that is made, in VA."""
    return max(1, ceil(volt_amperes / STEP_SIZE_VA.value - 1e-9)) * STEP_SIZE_VA.value


def _place(supply: Taker, selected: float | None, volts: tuple[float, float]) -> MainsRange | None:
    if supply.mains and selected is not None:
        return next((each for each in supply.mains if each.low_v <= selected <= each.high_v), None)
    taking = (each for each in supply.mains if each.low_v <= volts[0] and volts[1] <= each.high_v)
    nearest = min(supply.mains, key=lambda each: abs(each.middle_v - volts[0]), default=None)
    return next(taking, nearest)


def _windings(supply: Taker, place: MainsRange | None) -> float:
    """How many windings are in series in a selector's position, told by the voltages of the positions."""
    if place is None:
        return 1.0
    return place.middle_v / min(each.middle_v for each in supply.mains)
