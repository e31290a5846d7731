"""Hookups -> nominal and peak level on every audio lead, and what the input at its end takes.

Not known is not 0: a unit that says neither what it gives nor what it lifts leaves every lead behind it blank.
"""

from __future__ import annotations

from rigc.analysis.computations.leads import Leads
from rigc.analysis.computations.sound_ways import SoundWays
from rigc.analysis.signal.jack_levels import JackLevel, JackLevels
from rigc.facts.levels import LEAST_MARGIN_DB, LOW_BY_DB
from rigc.model.fact import Quantity
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.wishes import Connection
from rigc.record import Record
from rigc.source import Span

NO_LEAD = "no lead"


class LevelEdge(Record):
    """A lead (by its number; `no lead` through the air), in dBu. `scenarios` is empty where it is the same in all.

    `high_dbu` and `low_dbu` are the nominal level in the states where it is highest and lowest, `peak_dbu` the highest peak.
    `wants_line` marks the return of an amp's own loop. `lacking` names what does not say what it gives.
    """

    mark: str
    start: Port
    end: Port
    scenarios: tuple[str, ...]
    high_dbu: float | None
    low_dbu: float | None
    peak_dbu: float | None
    maximum: Quantity | None
    sensitivity: Quantity | None
    wants_line: bool
    lacking: tuple[str, ...]
    assumed: bool
    span: Span

    @property
    def margin_db(self) -> float | None:
        """What is left between the highest level and what the input takes, in dB; where no peak is known, the nominal
        level counts if it alone is too high."""
        if self.maximum is None or self.highest_dbu is None:
            return None
        left = self.maximum.value - self.highest_dbu
        return left if self.peak_dbu is not None or left < LEAST_MARGIN_DB.value else None

    @property
    def by_peak(self) -> bool:
        """Whether the peak is what is highest, and not a nominal level that is stated above the peak that is reckoned."""
        return self.peak_dbu is not None and (self.high_dbu is None or self.high_dbu <= self.peak_dbu)

    @property
    def highest_dbu(self) -> float | None:
        """The highest level that is known to come: the peak, or the nominal level where that is above it."""
        return self.peak_dbu if self.by_peak else self.high_dbu

    @property
    def pad_db(self) -> float:
        """The least that a pad must take away, in dB; 0 where none is needed or nothing is known."""
        return 0.0 if self.margin_db is None else max(0.0, LEAST_MARGIN_DB.value - self.margin_db)

    @property
    def short_db(self) -> float:
        """By how much the source falls short of the least that the input wants, in dB; 0 where it does not."""
        if self.sensitivity is None or self.low_dbu is None:
            return 0.0
        return max(0.0, self.sensitivity.value - LOW_BY_DB.value - self.low_dbu)


class Levels(Record):
    """Every audio lead, in the order of the source; once where scenarios do not change it."""

    edges: tuple[LevelEdge, ...]


def levels(rig: Rig, ways: SoundWays, leads: Leads) -> Levels:
    """Reckons each hookup; leads that are the same in several are one."""
    marks = {frozenset((lead.start, lead.end)): lead.mark for lead in leads.all}
    found: dict[tuple[Port, Port], dict[JackLevel, list[str]]] = {}
    of: dict[tuple[Port, Port], Connection] = {}
    for hookup in ways.hookups:
        at = JackLevels(rig, hookup)
        for lead in hookup.leads:
            ends = (lead.start, lead.end)
            of[ends] = lead
            found.setdefault(ends, {}).setdefault(at.at(lead.start), []).extend(hookup.scenarios)
    edges = [
        _edge(rig, of[ends], level, tuple(dict.fromkeys(scenarios)) if len(each) > 1 else (), marks)
        for ends, each in ((ends, _heard(each)) for ends, each in found.items())
        for level, scenarios in each.items()
    ]
    order = {lead.mark: number for number, lead in enumerate(leads.all)}
    return Levels(tuple(sorted(edges, key=lambda edge: order.get(edge.mark, -1))))


def _heard(levels: dict[JackLevel, list[str]]) -> dict[JackLevel, list[str]]:
    """The levels of a lead without those of hookups in which nothing comes to it, if anything comes in another."""
    return {level: names for level, names in levels.items() if not level.silent} or levels


def _edge(
    rig: Rig, lead: Connection, level: JackLevel, scenarios: tuple[str, ...], marks: dict[frozenset[Port], str]
) -> LevelEdge:
    jack, unit = rig.jack(lead.end), rig.units.get(lead.end.thing)
    taken = None if jack is None else jack.levels
    returns = unit is not None and unit.kind == "amp" and any(loop.back == lead.end.jack for loop in unit.loops)
    facts = () if taken is None else (taken.maximum_dbu, taken.sensitivity_dbu)
    return LevelEdge(
        marks.get(frozenset((lead.start, lead.end)), NO_LEAD),
        lead.start,
        lead.end,
        scenarios,
        level.high_dbu,
        level.low_dbu,
        level.peak_dbu,
        None if taken is None else taken.maximum_dbu,
        None if taken is None else taken.sensitivity_dbu,
        returns,
        level.lacking,
        level.assumed or any(fact is not None and fact.assumed for fact in facts),
        lead.span,
    )


COMPUTE = levels
