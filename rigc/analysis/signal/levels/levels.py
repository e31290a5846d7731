"""Hookups -> nominal and peak level on every audio lead, and what the input at its end takes.

Not known is not 0: a unit that says neither what it gives nor what it lifts leaves every lead behind it blank.
"""

from __future__ import annotations

from rigc.analysis.leads.leads import Leads
from rigc.analysis.signal.levels.jack_levels import SILENT, JackLevels, PlainLevel
from rigc.analysis.signal.levels.lead_levels import Ends, LeadLevel, LeadName, lead_levels
from rigc.analysis.signal.sound_ways import Hookup, SoundWays
from rigc.facts.levels import LEAST_MARGIN_DB, LOW_BY_DB
from rigc.model.fact import Quantity
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.wishes import Connection
from rigc.record import Record
from rigc.source import Span
from rigc.traced.figure import Answer, AnyFigure, figure
from rigc.traced.given import ours, stated
from rigc.traced.reason import ARITHMETIC, AS_STATED, STATED
from rigc.traced.term import Term, Traced, known
from rigc.traced.units import DBU, DECIBELS

NO_LEAD = "no lead"


class LevelEdge(Record):
    """A lead (by its number; `no lead` through the air), in dBu. `scenarios` and `instruments` are those in which it is
    so; empty where it is the same in all.

    `high` and `low` are the nominal level in the states where it is highest and lowest, `nominal` tells both, `peak` is the
    highest peak. `most` is what the input takes, `margin` what is left to it; None at a panel of which nothing is stated: it takes any level.
    `wants_line` marks the return of an amp's own loop. `lacking` names what does not say what it gives.
    """

    mark: str
    start: Port
    end: Port
    scenarios: tuple[str, ...]
    instruments: tuple[str, ...]
    nominal: AnyFigure | Answer
    high: AnyFigure
    low: AnyFigure
    peak: AnyFigure
    most: AnyFigure | None
    margin: AnyFigure | None
    maximum: Quantity | None
    sensitivity: Quantity | None
    wants_line: bool
    lacking: tuple[str, ...]
    span: Span

    @property
    def when(self) -> str:
        """` in stage with nylon`: when it is so; empty where it always is."""
        scenarios = f" in {', '.join(self.scenarios)}" if self.scenarios else ""
        return scenarios + (f" with {', '.join(self.instruments)}" if self.instruments else "")

    @property
    def high_dbu(self) -> float | None:
        """The nominal level in dBu in the state where it is highest; None where not known."""
        return known(self.high)

    @property
    def low_dbu(self) -> float | None:
        """The nominal level in dBu in the state where it is lowest; None where not known."""
        return known(self.low)

    @property
    def peak_dbu(self) -> float | None:
        """The highest peak in dBu; None where not known."""
        return known(self.peak)

    @property
    def margin_db(self) -> float | None:
        """What is left between the highest level and what the input takes, in dB; None where not known."""
        return None if self.margin is None else known(self.margin)

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
    def below_db(self) -> float | None:
        """By how much the source is below what drives the input fully, in dB; None where not known."""
        return None if self.sensitivity is None or self.low_dbu is None else self.sensitivity.value - self.low_dbu

    @property
    def short_db(self) -> float:
        """By how much the source falls short of the least that the input wants, in dB; 0 where it does not."""
        return 0.0 if self.below_db is None else max(0.0, self.below_db - LOW_BY_DB.value)


class Levels(Record):
    """Every audio lead, in the order of the source; once where scenarios do not change it."""

    edges: tuple[LevelEdge, ...]


class _Row(Record):
    """A lead at one level: its number, and the hookups in which it is at that level; `alone` if it is in all."""

    mark: str
    lead: Connection
    hookups: tuple[int, ...]
    alone: bool

    @property
    def ends(self) -> Ends:
        """Its two jacks."""
        return self.lead.start, self.lead.end


def levels(rig: Rig, ways: SoundWays, leads: Leads) -> Levels:
    """Reckons each hookup; leads that are the same in several are one, told as they are in the first of these."""
    rows = _rows(rig, ways, leads)
    names: dict[int, dict[Ends, LeadName]] = {}
    counts: dict[str, int] = {}
    for row in rows:
        called = str(row.lead.start) if row.mark == NO_LEAD else row.mark
        number = counts[called] = counts.get(called, 0) + 1
        for each in row.hookups:
            name = LeadName(f"{called}.level{'' if number == 1 else f'-{number}'}", called)
            names.setdefault(each, {})[row.ends] = name
    firsts = dict.fromkeys(row.hookups[0] for row in rows)
    told = {first: lead_levels(rig, ways.hookups[first], names[first]) for first in firsts}
    edges = []
    for row in rows:
        first = row.hookups[0]
        only = ((), ()) if row.alone else _when(rig, [ways.hookups[each] for each in row.hookups])
        edges.append(_edge(rig, row, only, names[first][row.ends].name, told[first][row.ends]))
    return Levels(tuple(edges))


def _rows(rig: Rig, ways: SoundWays, leads: Leads) -> list[_Row]:
    marks = {frozenset((lead.start, lead.end)): lead.mark for lead in leads.all}
    order = {lead.mark: number for number, lead in enumerate(leads.all)}
    found: dict[Ends, dict[PlainLevel, list[int]]] = {}
    of: dict[Ends, Connection] = {}
    for number, hookup in enumerate(ways.hookups):
        at = JackLevels(rig, hookup)
        for lead in hookup.leads:
            ends = (lead.start, lead.end)
            of[ends] = lead
            found.setdefault(ends, {}).setdefault(at.at(lead.start).plain, []).append(number)
    rows = [
        _Row(marks.get(frozenset(ends), NO_LEAD), of[ends], tuple(hookups), len(each) < 2)
        for ends, each in ((ends, _heard(each)) for ends, each in found.items())
        for hookups in each.values()
    ]
    return sorted(rows, key=lambda row: order.get(row.mark, -1))


def _heard(levels: dict[PlainLevel, list[int]]) -> dict[PlainLevel, list[int]]:
    """The levels of a lead without those of hookups in which nothing comes to it, if anything comes in another."""
    return {level: hookups for level, hookups in levels.items() if level != SILENT.plain} or levels


def _when(rig: Rig, hookups: list[Hookup]) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The scenarios and the instruments of some hookups; of each kind nothing where they are all that the rig has."""
    scenarios = tuple(dict.fromkeys(name for each in hookups for name in each.scenarios))
    instruments = tuple(dict.fromkeys(name for each in hookups for name in each.instruments))
    return (
        () if len(scenarios) == len(rig.scenarios) else scenarios,
        () if len(instruments) == len(rig.instruments) else instruments,
    )


def _edge(rig: Rig, row: _Row, when: tuple[tuple[str, ...], tuple[str, ...]], name: str, level: LeadLevel) -> LevelEdge:
    lead = row.lead
    jack, unit = rig.jack(lead.end), rig.units.get(lead.end.thing)
    maximum = None if jack is None else jack.levels.maximum_dbu
    returns = unit is not None and unit.kind == "amp" and any(loop.back == lead.end.jack for loop in unit.loops)
    most = margin = None
    if maximum is not None or lead.end.thing not in rig.panels:
        takes = stated(f"what {lead.end} takes", maximum)
        most = figure(f"{name}.max", takes, DBU, rule=AS_STATED, source=STATED, label=f"{lead.end} takes")
        margin = _margin(name, most, level)
    return LevelEdge(
        row.mark,
        lead.start,
        lead.end,
        *when,
        level.nominal,
        level.high,
        level.low,
        level.peak,
        most,
        margin,
        maximum,
        None if jack is None else jack.levels.sensitivity_dbu,
        returns,
        level.lacking,
        lead.span,
    )


def _margin(name: str, most: AnyFigure, level: LeadLevel) -> AnyFigure:
    """Where no peak is known, the nominal level counts if it alone is too high."""
    left: Traced = most - level.peak
    by_nominal: Traced = most - level.high
    if isinstance(by_nominal, Term) and by_nominal < (left if isinstance(left, Term) else LEAST_MARGIN_DB.value):
        left = by_nominal
    return figure(
        f"{name}.margin",
        left,
        DECIBELS,
        ours(LEAST_MARGIN_DB),
        rule="what the input takes − the highest level: the peak, or a nominal level above it",
        source=ARITHMETIC,
    )


COMPUTE = levels
