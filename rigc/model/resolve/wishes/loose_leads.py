"""Stated leads that no other statement joins -> findings: one for each, or one for all where a whole kind of statement is missing."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from rigc.diagnostics.diagnostic import Diagnostic, Label
from rigc.diagnostics.wording import joined
from rigc.model.jacks import Port
from rigc.model.scope import LOOSE_LEAD
from rigc.model.wishes import Connection, PowerWishes
from rigc.record import Record
from rigc.source import Span


class LooseLead(Record):
    """A lead between two jacks that nothing joins; `power` where it leaves an outlet, else it carries sound or control."""

    mark: str
    start: Port
    end: Port
    power: bool
    span: Span


def told(
    loose: Sequence[LooseLead], connections: Mapping[tuple[Port, Port], Connection], power: PowerWishes
) -> list[Diagnostic]:
    """The findings, in the order of the leads."""
    fed = [each for each in loose if each.power]
    sounding = [each for each in loose if not each.power]
    found: list[Diagnostic] = []
    if len(fed) > 1 and not power.feeds and not power.others:
        found.append(_all(fed, "no power statement says what feeds what", f"power {{ {_feed(fed[0])} ... }}"))
        fed = []
    if len(sounding) > 1 and not any(each.signal == "audio" for each in connections.values()):
        first = sounding[0]
        found.append(_all(sounding, "no chain is stated", f"chain {first.start.thing} -> {first.end.thing} -> ..."))
        sounding = []
    return [*found, *(_one(each, connections) for each in loose if each in fed or each in sounding)]


def _all(leads: list[LooseLead], lacking: str, example: str) -> Diagnostic:
    marks = [each.mark for each in leads]
    return LOOSE_LEAD.at(
        leads[0].span,
        f"{lacking}; the leads {joined(marks)} join what no other statement does",
        subject=tuple(marks),
        label="the first of them",
        help=f"state it, for example: {example}",
    )


def _one(lead: LooseLead, connections: Mapping[tuple[Port, Port], Connection]) -> Diagnostic:
    also: tuple[Label, ...] = ()
    help = "add the connection to a chain, or correct the lead's ends"
    if (lead.end, lead.start) in connections:
        also = (Label(connections[lead.end, lead.start].span, "joined the other way round"),)
        help = "turn the two ends round"
    elif lead.power:
        help = f"state it in the power block: {_feed(lead)}"
    return LOOSE_LEAD.at(
        lead.span,
        f"{lead.mark} joins {lead.start} to {lead.end}, but no other statement does",
        subject=(lead.mark, lead.start.thing, lead.end.thing),
        label="this lead",
        also=also,
        help=help,
    )


def _feed(lead: LooseLead) -> str:
    return f"{lead.end.thing} from {lead.start}"
