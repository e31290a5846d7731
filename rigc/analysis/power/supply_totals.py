"""PowerAssignment -> what each supply gives in all, against its ceiling: `mill5.load`, `.watts`, `.ceiling`, `.share`, `.spare`."""

from __future__ import annotations

from rigc.analysis.feeds.load_limits import percent_of
from rigc.analysis.feeds.outlet_loads import OutletLoad
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.model.rig import Rig
from rigc.model.things import Supply
from rigc.record import Record
from rigc.traced.figure import AnyFigure, Figure, figure, known_figure
from rigc.traced.given import mentioned, stated
from rigc.traced.means import found, percent, total_known
from rigc.traced.reason import ARITHMETIC, AS_STATED, STATED
from rigc.traced.shown import as_typed
from rigc.traced.term import Term, Traced, known
from rigc.traced.units import COUNT, MILLIAMPS, SHARE, WATTS_GIVEN


class SupplyTotal(Record):
    """What is taken of a supply: mA and W summed over its outlets; `unknown` units' currents are not in the sums.

    `start_ma` and `start_w` count measured start-up currents in place of running ones. `most` is its ceiling in `unit`
    (`W` or `mA`), lacking where the source does not state one, `share` the load in percent of it. `spare` counts the outlets
    that feed nothing and are not kept for later.
    """

    supply: str
    drawn_ma: Figure
    drawn_w: Figure
    most: AnyFigure
    share: AnyFigure
    spare: Figure
    unit: str
    unknown: tuple[str, ...]
    start_ma: float
    start_w: float

    @property
    def ceiling(self) -> Term | None:
        """Its ceiling in `unit`; None where the source does not state one."""
        return known(self.most)

    @property
    def started(self) -> float:
        """What is taken at switch-on, where all units start at once, in the ceiling's unit."""
        return self.start_ma if self.unit == "mA" else self.start_w

    @property
    def taken(self) -> Figure:
        """What is taken, in the ceiling's unit."""
        return self.drawn_ma if self.unit == "mA" else self.drawn_w

    @property
    def known_pct(self) -> Term | None:
        """What is known to be taken, in percent of the ceiling; None where the source states none."""
        return known(self.share)

    @property
    def start_pct(self) -> float | None:
        """What is taken at switch-on in percent of the ceiling; None where the source states none."""
        return percent_of(self.started, self.ceiling)


class SupplyTotals(Record):
    """Totals of every supply in use, in order of declaration."""

    all: tuple[SupplyTotal, ...]


def supply_totals(rig: Rig, power: PowerAssignment) -> SupplyTotals:
    """Sums the loads of each supply; an AC outlet's volt-amperes count as W."""
    loads: dict[str, list[OutletLoad]] = {}
    for port, load in power.loads.items():
        loads.setdefault(port.thing, []).append(load)
    return SupplyTotals(tuple(_total(rig.supplies[name], each, power) for name, each in loads.items()))


def _total(supply: Supply, loads: list[OutletLoad], power: PowerAssignment) -> SupplyTotal:
    name = supply.name
    used = [load for load in loads if load.units]
    lacking = [load.load for load in used if load.unknown]
    drawn_ma = known_figure(
        f"{name}.load",
        total_known([_known(load) for load in used], lacking),
        MILLIAMPS,
        rule="the loads of its outlets; a current that is not known is left out and named",
        source=ARITHMETIC,
    )
    drawn_w = known_figure(
        f"{name}.watts",
        total_known([_known(load) * load.volts for load in used], lacking) / 1000,
        WATTS_GIVEN,
        rule="load × voltage, outlet by outlet; volt-amperes of an AC outlet count as W",
        source=ARITHMETIC,
        label=f"{name} gives",
    )
    unit = "mA" if supply.ceiling_w is None and supply.ceiling_ma is not None else "W"
    ceiling = stated(f"the ceiling of {name}", supply.ceiling_w or supply.ceiling_ma)
    most = figure(f"{name}.ceiling", ceiling, as_typed(unit), rule=AS_STATED, source=STATED)
    return SupplyTotal(
        name,
        drawn_ma,
        drawn_w,
        most,
        figure(
            f"{name}.share",
            percent(drawn_ma if unit == "mA" else drawn_w, most),
            SHARE,
            rule="load / ceiling × 100, in the ceiling's unit",
            source=ARITHMETIC,
        ),
        _spare(supply, loads, power),
        unit,
        tuple(dict.fromkeys(each for load in loads for each in load.unknown)),
        sum(load.start_ma for load in loads),
        sum(load.start_ma * load.volts for load in loads) / 1000,
    )


def _known(load: OutletLoad) -> Traced:
    return load.known_ma if load.unknown else load.load


def _spare(supply: Supply, loads: list[OutletLoad], power: PowerAssignment) -> Figure:
    used = sum(bool(load.units) for load in loads)
    kept = sum(not load.units and load.outlet in power.reserved for load in loads)
    spare = len(loads) - used - kept
    return known_figure(
        f"{supply.name}.spare",
        found(spare, lambda: f"{len(loads)} − {used} in use − {kept} reserved = {spare}"),
        COUNT,
        mentioned(supply.name, f"{len(loads)} outlets", supply.declared),
        rule="outlets that feed nothing and are not kept for later",
        source=ARITHMETIC,
    )


COMPUTE = supply_totals
