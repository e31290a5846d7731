"""A hookup and the names of its leads -> the figures of the level on each lead: nominal, and peak."""

from __future__ import annotations

from rigc.analysis.signal.levels.jack_levels import JackLevel, JackLevels
from rigc.analysis.signal.sound_ways import Hookup
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.wishes import Connection
from rigc.record import Record
from rigc.traced.figure import Answer, AnyFigure, figure
from rigc.traced.given import mentioned, stated
from rigc.traced.reason import ARITHMETIC
from rigc.traced.term import Unknown, traced
from rigc.traced.units import DBU

_RULE = "a stated level stands; else what comes in and the unit's gain, the highest of all on/off states"
_LOWEST = "a stated level stands; else what comes in and the unit's gain, the lowest of all on/off states"
_BOTH = "from the lowest to the highest of all on/off states"


class LeadLevel(Record):
    """The level on a lead in dBu: `high` and `low` of all on/off states, `nominal` as it is told of both, and the highest `peak`.

    `lacking` names the things that do not say what they give.
    """

    nominal: AnyFigure | Answer
    high: AnyFigure
    low: AnyFigure
    peak: AnyFigure
    lacking: tuple[str, ...]


Ends = tuple[Port, Port]


class LeadName(Record):
    """By which a lead's levels are asked for, `A05.level-2`, and what the lead is called."""

    name: str
    called: str


def lead_levels(rig: Rig, hookup: Hookup, names: dict[Ends, LeadName]) -> dict[Ends, LeadLevel]:
    """By the ends of the leads that have a name; what comes on one of them is told as its figure in what lies behind it."""
    leads = {(lead.start, lead.end): lead for lead in hookup.leads if (lead.start, lead.end) in names}
    found: dict[Ends, LeadLevel] = {}

    def along(start: Port, end: Port, level: JackLevel) -> JackLevel:
        ends = (start, end)
        if ends not in leads:
            return level
        if ends not in found:
            found[ends] = _on_lead(names[ends], leads[ends], level)
        each = found[ends]
        return JackLevel(each.high, each.low, each.peak, each.lacking)

    at = JackLevels(rig, hookup, stated, along)
    for ends in leads:
        along(*ends, at.at(ends[0]))
    return found


def _on_lead(name: LeadName, lead: Connection, level: JackLevel) -> LeadLevel:
    way = mentioned(name.called, f"{lead.start} -> {lead.end}", lead.span)

    def made(field: str, value: float | Unknown, called: str, rule: str = _RULE) -> AnyFigure:
        label = f"{called} on {name.called}"
        return figure(f"{name.name}.{field}", traced(value), DBU, way, rule=rule, source=ARITHMETIC, label=label)

    peak = made("peak", level.peak, "peak")
    if isinstance(level.low, Unknown) or isinstance(level.high, Unknown) or level.low == level.high:
        nominal = made("nominal", level.high, "nominal level")
        return LeadLevel(nominal, nominal, nominal, peak, level.lacking)
    low = made("lowest", level.low, "lowest level", _LOWEST)
    high = made("highest", level.high, "highest level")
    told = Answer(
        f"{name.name}.nominal",
        f"{low.text} to {high.text}",
        f"{low.text} in the state that gives least, {high.text} in the one that gives most",
        low,
        high,
        rule=_BOTH,
        source=ARITHMETIC,
        unit=DBU.unit,
        label=f"nominal level on {name.called}",
    )
    return LeadLevel(told, high, low, peak, level.lacking)
