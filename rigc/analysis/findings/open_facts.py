"""The rig and its checks -> the facts that were assumed, with their values, and those that are missing."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.feeds.used_things import used_things
from rigc.analysis.findings.facts_of import facts_within
from rigc.analysis.findings.findings import Findings
from rigc.diagnostics.diagnostic import Diagnostic, Level
from rigc.model.fact import Fact
from rigc.model.rig import Rig
from rigc.record import Record


class AssumedFact(Record):
    """A fact of a thing in use that the source marks as assumed; `near` are the findings that a limit leans on it."""

    thing: str
    fact: Fact[Any]
    near: tuple[str, ...]


class MissingFact(Record):
    """What could not be checked, or stays blank, for want of a fact; `rule` is the slug of the rule that wants it."""

    thing: str
    rule: str
    message: str
    help: str


class OpenFacts(Record):
    """The assumed ones in the order of the things, the missing ones in the order of the rules."""

    assumed: tuple[AssumedFact, ...]
    missing: tuple[MissingFact, ...]


def open_facts(rig: Rig, power: PowerAssignment, found: Findings) -> OpenFacts:
    """What is assumed is in the rig; what is missing the checks tell."""
    findings = found.all
    near = [each for each in findings if each.kind.name == "guess-near-limit"]
    missing = [each for each in findings if each.level is Level.CANT_CHECK or each.kind.name == "missing-fact"]
    return OpenFacts(tuple(_assumed(rig, power, near)), tuple(map(_missing, missing)))


def _assumed(rig: Rig, power: PowerAssignment, near: list[Diagnostic]) -> Iterator[AssumedFact]:
    things = (
        *rig.instruments.values(),
        *used_things(rig, power),
        *rig.panels.values(),
        *rig.decks.values(),
        *rig.cases.values(),
        *rig.stock.cables.values(),
        *rig.stock.plugs.values(),
        *rig.stock.strips.values(),
    )
    told = set()
    for thing in things:
        for fact in facts_within(thing):
            place = (thing.name, fact.span.source.name, fact.span.start)
            if fact.assumed and place not in told:
                told.add(place)
                yield AssumedFact(thing.name, fact, tuple(each.message for each in near if each.span == fact.span))


def _missing(finding: Diagnostic) -> MissingFact:
    thing = finding.subject[0] if finding.subject else ""
    return MissingFact(thing, finding.kind.name, finding.message, finding.help)


COMPUTE = open_facts
