"""A section -> its figures: `marl.out.loading.cable`, `.corner`, `.loss`; `guitar.out.loading.peak`, `.at-5khz`."""

from __future__ import annotations

from collections.abc import Callable
from functools import cached_property
from math import inf, nan
from typing import ClassVar

from rigc.analysis.signal.loading.section import Pickup, Section
from rigc.analysis.signal.loading.source_network import (
    FARTHEST_HZ,
    HIGH_HZ,
    LOW_HZ,
    TOLD_HZ,
    SourceNetwork,
    bridging_db,
    corner_hz,
    network,
    quality,
    unloaded_hz,
)
from rigc.diagnostics.figures import plain
from rigc.facts.loading import TREADLE_SHARE
from rigc.model.jacks import Port
from rigc.record import Record
from rigc.traced.figure import Answer, AnyFigure, Figure, figure
from rigc.traced.given import mentioned
from rigc.traced.means import found, in_parallel, total, worked
from rigc.traced.reason import ARITHMETIC, AS_STATED, STATED
from rigc.traced.shown import Shown
from rigc.traced.term import Sum, Term, Traced, Unknown
from rigc.traced.units import (
    CORNER,
    FACTOR,
    HENRIES,
    HERTZ,
    IMPEDANCE,
    KILOHMS,
    METRES,
    PICKUP_KILOHMS,
    PICOFARADS,
    RESPONSE_DECIBELS,
    WHOLE_PICOFARADS,
)

SUMS = "physics: capacitances in parallel add"
RESONANCE = "physics: resonance of an inductance with a capacitance"
UNLOADED = "unloaded resonance = 1 / (2π √(L C)); volume and tone controls and the inputs pull it lower"
_NODES = "physics: nodal analysis of pickup, controls, cable and all inputs (two nodes)"
_PARALLEL = "physics: resistances in parallel"
_SILENT = "silent"


class SectionFigures(Record):
    """What is told of a section; each figure is made when it is asked for. `state` gives the states in which it is there.

    `source`, `corner` and the losses are of a section that an output drives, `by_pickup` of one that a pickup drives; else None.
    """

    TOLD: ClassVar[tuple[str, ...]] = (
        "length", "cable", "load", "source", "corner", "loss", "judged_load", "judged_loss", "branches", "by_pickup",
    )  # fmt: skip
    section: Section
    state: Callable[[], str]

    @cached_property
    def length(self) -> AnyFigure:
        """All its leads end to end, in m."""
        return figure(
            f"{self._name}.length",
            total(lead.length for lead in self.section.leads) / 1000,
            METRES,
            mentioned("in state", self.state()),
            rule="all leads from what drives the section to its inputs; a unit that is off and bypassed by wire is only cable",
            source=SUMS,
        )

    @cached_property
    def cable(self) -> AnyFigure:
        """The capacitance of all its leads, in pF."""
        return figure(
            f"{self._name}.cable",
            self.section.cable_pf,
            PICOFARADS,
            rule="the capacitances of all its leads",
            source=SUMS,
            label="cable",
        )

    @cached_property
    def load(self) -> AnyFigure:
        """All its inputs together, in ohm; infinite where none loads it."""
        return figure(
            f"{self._name}.load",
            self.section.load_ohm,
            IMPEDANCE,
            *(load.impedance for load in self.section.loads if load.ohm == inf),
            rule="resistances in parallel: 1 / (1/R1 + 1/R2 ...)",
            source=_PARALLEL,
            label="inputs",
        )

    @cached_property
    def source(self) -> AnyFigure | None:
        """The impedance that drives it, in ohm; None of a pickup."""
        if self.section.driver is None:
            return None
        return figure(
            f"{self._name}.source",
            self.section.driver,
            IMPEDANCE,
            rule="the output's impedance; of a treadle a quarter of its track, its worst, at half travel",
            source=TREADLE_SHARE.source,
            label="source",
        )

    @cached_property
    def corner(self) -> AnyFigure | Answer | None:
        """The treble corner, 1/(2 pi R C), in Hz; None of a pickup, and no number where nothing makes one."""
        if self.source is None:
            return None
        name, rule = f"{self._name}.corner", "treble corner = 1 / (2π R C)"
        source = "physics: low-pass of a resistance and a capacitance"
        value = worked("1 / (2π × {} × {} pF)", corner_hz, self.source, self.cable, unit=CORNER.unit, moves="--")
        if value == inf:
            why = "no cable or no source impedance: no corner"
            return Answer(name, "none", why, self.source, self.cable, rule=rule, source=source)
        return figure(name, value, CORNER, rule=rule, source=source)

    @cached_property
    def loss(self) -> AnyFigure | None:
        """The bridging loss in dB, at most 0; None of a pickup."""
        if self.source is None:
            return None
        return _loss(f"{self._name}.loss", self.source, self.load)

    @cached_property
    def judged_load(self) -> AnyFigure | None:
        """The known inputs together, without those that want to see the pickup, in ohm; None of a pickup, or where none is left."""
        judged = [each.impedance for each in self.section.loads if each.ohm is not None and not each.wants_pickup]
        if self.source is None or not judged:
            return None
        if len(judged) == len(self.section.loads):
            return self.load
        return figure(
            f"{self._name}.judged-load",
            in_parallel(*judged),
            IMPEDANCE,
            rule="the known inputs in parallel, without those that want to see the pickup",
            source=_PARALLEL,
            label="inputs that are judged",
        )

    @cached_property
    def judged_loss(self) -> AnyFigure | None:
        """The bridging loss into those, in dB; None where there is none of them."""
        if self.source is None or self.judged_load is None:
            return None
        if self.judged_load is self.load:
            return self.loss
        return _loss(f"{self._name}.judged-loss", self.source, self.judged_load)

    @cached_property
    def branches(self) -> dict[Port, AnyFigure]:
        """The cable on each of a treadle's jacks beside its wiper, in pF."""
        return {
            port: figure(
                f"{self._name}.{port}.branch",
                pf,
                PICOFARADS,
                rule="the capacitances of the leads that hang on this jack",
                source=SUMS,
            )
            for port, pf in self.section.branch
        }

    @cached_property
    def by_pickup(self) -> PickupFigures | None:
        """What is told of the pickup with this section; None where none drives it."""
        return None if self.section.pickup is None else PickupFigures(self, self.section.pickup)

    @property
    def _name(self) -> str:
        return self.section.name


class PickupFigures(Record):
    """What a passive instrument sounds like into its section. Answers are what is no number: no peak, silence."""

    TOLD: ClassVar[tuple[str, ...]] = (
        "total", "resonance", "inductance", "resistance", "own", "across", "quality", "peak", "peak_level", "fallen",
        "levels", "plain_total", "plain_resonance", "brighter", "plain_levels", "against_plain",
    )  # fmt: skip
    figures: SectionFigures
    pickup: Pickup

    @cached_property
    def total(self) -> AnyFigure:
        """Cable and pickup together, in pF."""
        return figure(
            f"{self._name}.total",
            self.figures.cable + self.pickup.pf,
            PICOFARADS,
            rule="cable and pickup in parallel",
            source=SUMS,
            label="total",
        )

    @cached_property
    def resonance(self) -> AnyFigure:
        """The pickup's ideal resonance with the cable, in Hz."""
        return figure(
            f"{self._name}.resonance",
            resonance(self.pickup.henry, self.total),
            HERTZ,
            rule=UNLOADED,
            source=RESONANCE,
            label="resonance",
        )

    @cached_property
    def inductance(self) -> AnyFigure:
        """As stated, in H."""
        return self._stated("inductance", self.pickup.henry, HENRIES)

    @cached_property
    def resistance(self) -> AnyFigure:
        """As stated, in ohm."""
        return self._stated("resistance", self.pickup.ohm, PICKUP_KILOHMS)

    @cached_property
    def own(self) -> AnyFigure:
        """The pickup's own capacitance as stated, in pF."""
        return self._stated("own", self.pickup.pf, WHOLE_PICOFARADS)

    @cached_property
    def across(self) -> AnyFigure:
        """Volume, tone and inputs side by side, in ohm."""
        load = self.figures.load
        parts = (self.pickup.volume_ohm, self.pickup.tone_ohm, *(() if load == inf else (load,)))
        return figure(
            f"{self._name}.across",
            in_parallel(*parts, unit=KILOHMS.unit),
            KILOHMS,
            *((load,) if load == inf else ()),
            rule="volume, tone and inputs in parallel: 1 / (1/R1 + 1/R2 ...)",
            source=_PARALLEL,
            label="controls and inputs",
        )

    @cached_property
    def quality(self) -> AnyFigure | Answer:
        """The Q of the resonance, controls and inputs counted."""
        name = f"{self._name}.q"
        rule = "Q = ω L C / (L/P + R C) at ω² = (1 + R/P) / (L C): P is controls and inputs, C pickup and cable; all controls up"
        parts = (self.pickup.henry, self.pickup.ohm, self.across, self.total)
        for turned in (self.pickup.turned, self.pickup.tone_turned):
            if isinstance(turned, Term) and turned < 1:
                return Answer(name, "a control is down", "a control is down", turned, *parts, rule=rule, source=_NODES)
        value: Traced = Unknown(("anything to resonate",), Sum(*parts))
        if 0 not in (self.pickup.henry, self.across, self.total):
            written = "√((1 + {1} / {2} kΩ) × {0} H × {3} pF) / ({0} H / {2} kΩ + {1} × {3} pF)"
            value = worked(written, quality, *parts)
        return figure(
            name,
            value,
            FACTOR,
            self.pickup.turned,
            self.pickup.tone_turned,
            rule=rule,
            source=_NODES,
        )

    @cached_property
    def peak(self) -> AnyFigure | Answer:
        """Where the response is highest, in Hz."""
        name = f"{self._name}.peak"
        rule = f"where the response is highest between {plain(LOW_HZ)} Hz and {plain(HIGH_HZ)} Hz"
        if self._silent:
            return self._silence(name, "none")
        if self._network is not None and self._network.peak_hz is None:
            why = "it is highest at an end of the range"
            return Answer(name, "none", why, *self._parts, rule=rule, source=_NODES)
        value = self._response("|V(f)| is highest at f", lambda each: each.peak_hz)
        return figure(name, value, HERTZ, rule=rule, source=_NODES, label="peak")

    @cached_property
    def peak_level(self) -> AnyFigure | None:
        """How high it is there, in dB; None where there is no peak."""
        if isinstance(self.peak, Answer):
            return None
        return figure(
            f"{self._name}.peak-level",
            self._response(f"20 log10 |V({self.peak.text} Hz)|", lambda each: each.decibel(each.peak_hz or LOW_HZ)),
            RESPONSE_DECIBELS,
            self.peak,
            rule=f"the level where the response is highest between {plain(LOW_HZ)} Hz and {plain(HIGH_HZ)} Hz",
            source=_NODES,
        )

    @cached_property
    def fallen(self) -> AnyFigure | Answer:
        """Where it has fallen 3 dB behind its peak, in Hz."""
        name = f"{self._name}.fallen"
        rule = f"where the response, behind its peak, has fallen 3 dB below that at {plain(LOW_HZ)} Hz"
        if self._silent:
            return self._silence(name, "none")
        if self._network is not None and self._network.fallen_hz is None:
            why = f"up to {FARTHEST_HZ / 1e6:g} MHz it has not fallen so far"
            return Answer(name, "none", why, *self._parts, rule=rule, source=_NODES)
        value = self._response(f"|V(f)| is |V({plain(LOW_HZ)} Hz)| / √2 at f", lambda each: each.fallen_hz)
        return figure(name, value, HERTZ, rule=rule, source=_NODES)

    @cached_property
    def levels(self) -> tuple[AnyFigure | Answer, ...]:
        """The levels at `TOLD_HZ`, in dB."""
        rule = "level at the inputs over the pickup's own voltage"
        return tuple(
            self._level(hertz, f"{self._name}.{_at(hertz)}", rule, self._parts, "level here") for hertz in TOLD_HZ
        )

    @cached_property
    def plain_total(self) -> AnyFigure:
        """The plain stage lead and the pickup together, in pF."""
        return figure(
            f"{self._name}.plain-total",
            with_plain_lead(self.pickup),
            PICOFARADS,
            rule="the plain stage lead and the pickup in parallel",
            source=SUMS,
            label="with the plain lead",
        )

    @cached_property
    def plain_resonance(self) -> AnyFigure:
        """The pickup's ideal resonance with its plain stage lead alone, in Hz."""
        return figure(
            f"{self._name}.plain-resonance",
            resonance(self.pickup.henry, self.plain_total),
            HERTZ,
            rule=UNLOADED,
            source=RESONANCE,
            label="resonance on the plain lead",
        )

    @cached_property
    def brighter(self) -> AnyFigure:
        """How many times higher it resonates than on the plain stage lead."""
        return figure(
            f"{self._name}.brighter",
            self.resonance / self.plain_resonance,
            FACTOR,
            rule="unloaded resonance / that on the plain stage lead",
            source=ARITHMETIC,
        )

    @cached_property
    def plain_levels(self) -> tuple[AnyFigure | Answer, ...]:
        """The levels at `TOLD_HZ` of the same guitar on its plain stage lead into the same inputs, in dB."""
        rule = "level at the same inputs over the pickup's own voltage, on the plain stage lead"
        parts = (*self.pickup.circuit, self.pickup.plain_pf, self.figures.load)
        names = ((hertz, f"{self._name}.plain-level-{_at(hertz)[3:]}") for hertz in TOLD_HZ)
        return tuple(self._level(hertz, name, rule, parts, "level on the plain lead") for hertz, name in names)

    @cached_property
    def against_plain(self) -> tuple[AnyFigure | Answer, ...]:
        """How much louder or softer than on the plain stage lead at `TOLD_HZ`, in dB."""
        rule = "against the same guitar on its plain stage lead into the same inputs"
        told: list[AnyFigure | Answer] = []
        for hertz, level, on_plain in zip(TOLD_HZ, self.levels, self.plain_levels, strict=True):
            name = f"{self._name}.plain-{_at(hertz)[3:]}"
            if isinstance(level, Answer) or isinstance(on_plain, Answer):
                told.append(self._silence(name, _SILENT))
            else:
                told.append(figure(name, level - on_plain, RESPONSE_DECIBELS, rule=rule, source=_NODES))
        return tuple(told)

    def _level(self, hertz: float, name: str, rule: str, parts: tuple[Traced, ...], label: str) -> AnyFigure | Answer:
        if self._silent:
            return self._silence(name, _SILENT)
        value = _asked(f"20 log10 |V({plain(hertz)} Hz)|", lambda each: each.decibel(hertz), parts)
        return figure(name, value, RESPONSE_DECIBELS, rule=rule, source=_NODES, label=label)

    def _stated(self, field: str, value: Traced, shown: Shown) -> AnyFigure:
        return figure(f"{self._name}.{field}", value, shown, rule=AS_STATED, source=STATED)

    def _response(self, written: str, ask: Callable[[SourceNetwork], float | None]) -> Traced:
        return _asked(written, ask, self._parts)

    def _silence(self, name: str, text: str) -> Answer:
        return Answer(
            name, text, "nothing comes through", *self._parts, rule="a volume control is at 0 %", source=_NODES
        )

    @property
    def _parts(self) -> tuple[Traced, ...]:
        return (*self.pickup.circuit, self.figures.cable, self.figures.load)

    @property
    def _network(self) -> SourceNetwork | None:
        return self.figures.section.network

    @property
    def _silent(self) -> bool:
        return self._network is not None and self._network.silent

    @property
    def _name(self) -> str:
        return self.figures.section.name


def _loss(name: str, source: AnyFigure, load: AnyFigure) -> AnyFigure:
    value: Traced
    if load != inf:
        value = bridging_db(source, load)
    elif isinstance(source, Figure):
        value = found(0.0, lambda: "no input loads it: 0 dB", source, load)
    else:
        value = source
    rule = "loss = 20 log10(Zin / (Zin + Zout))"
    return figure(name, value, RESPONSE_DECIBELS, rule=rule, source="physics: voltage divider")


def resonance(henry: Traced, together: Traced) -> Traced:
    """The unloaded resonance of a pickup with a capacitance in pF; unknown where one of them is 0."""
    if henry == 0 or together == 0:
        return Unknown(("anything to resonate",), Sum(henry, together))
    made: Traced = worked("1 / (2π √({} H × {} pF))", unloaded_hz, henry, together, unit=HERTZ.unit, moves="--")
    return made


def with_plain_lead(pickup: Pickup) -> Traced:
    """The pickup's own capacitance and that of its plain stage lead, in pF."""
    made: Traced = pickup.plain_pf + pickup.pf
    return made


def _asked(written: str, ask: Callable[[SourceNetwork], float | None], parts: tuple[Traced, ...]) -> Traced:
    """What is asked of the circuit of these parts."""

    def answer(*given: float) -> float:
        value = ask(network(*map(float, given)))
        return nan if value is None else value

    made: Traced = worked(written, answer, *parts)
    return made


def _at(hertz: float) -> str:
    return f"at-{plain(hertz)}hz" if hertz < 1000 else f"at-{plain(hertz / 1000)}khz"
