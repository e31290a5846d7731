"""The rig and its checks -> the facts that were assumed, with their values, and those that are missing."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.feeds.used_things import used_things
from rigc.analysis.findings.findings import Findings
from rigc.analysis.findings.follow_on import folded
from rigc.analysis.findings.limits.doubt_words import in_words
from rigc.analysis.findings.limits_in_doubt import LimitsInDoubt
from rigc.diagnostics.diagnostic import Diagnostic, Level
from rigc.diagnostics.wording import of_any
from rigc.model.fact import Fact, facts_within
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.traced.revalued import Place, place_of


class UnsureFact(Record):
    """A fact of a thing in use that the source marks as assumed, or that decides whether a limit is kept. `decides` tells of the
    limits in doubt that hang on it more than on any other fact. `takes` is the most that it may be off by of what is left to a
    limit, as a share, and `of` what that limit judges; 0 and empty where no judged number rests on it."""

    thing: str
    fact: Fact[Any]
    decides: tuple[str, ...]
    takes: float
    of: str


class MissingFact(Record):
    """What could not be checked, or stays blank, for want of a fact of one thing or of several; `rules` are the slugs of those that
    want it."""

    things: tuple[str, ...]
    rules: tuple[str, ...]
    message: str
    help: str


class OpenFacts(Record):
    """The unsure ones, those that decide a limit first, then those that take most of what is left to one, then the others in the
    order of the things; the missing ones in the order of the rules."""

    unsure: tuple[UnsureFact, ...]
    missing: tuple[MissingFact, ...]


def open_facts(rig: Rig, power: PowerAssignment, found: Findings, limits: LimitsInDoubt) -> OpenFacts:
    """What is assumed is in the rig; what is missing the checks tell."""
    findings = found.all
    missing = [each for each in findings if each.level is Level.CANT_CHECK or each.kind.name == "missing-fact"]
    unsure = sorted(_unsure(rig, power, limits), key=lambda each: (not each.decides, -each.takes))
    return OpenFacts(tuple(unsure), tuple(_missing(missing)))


def _unsure(rig: Rig, power: PowerAssignment, limits: LimitsInDoubt) -> Iterator[UnsureFact]:
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
    taking = _taking(limits)
    told = set()
    for thing in things:
        for fact in facts_within(thing):
            place = (thing.name, *place_of(fact.span))
            decides, takes, of = taking.get(place_of(fact.span), ((), 0.0, ""))
            if (fact.assumed or decides) and place not in told:
                told.add(place)
                yield UnsureFact(thing.name, fact, decides, takes, of)


def _taking(limits: LimitsInDoubt) -> dict[Place, tuple[tuple[str, ...], float, str]]:
    """For each fact what it decides, and the most that it takes of what is left to a limit, and what that judges."""
    found: dict[Place, tuple[tuple[str, ...], float, str]] = {}
    for each in limits.all:
        for at, part in enumerate(each.parts):
            place = place_of(part.fact.fact.span)
            decides, takes, of = found.get(place, ((), 0.0, ""))
            if at == 0 and each.in_doubt:
                decides = (*decides, in_words(each))
            share = each.taken_by(part)
            found[place] = (decides, share, each.judged.what) if share > takes else (decides, takes, of)
    return found


def _missing(findings: list[Diagnostic]) -> Iterator[MissingFact]:
    """One for all findings that say the same, each of a thing of its own; and for those that ask for the same fact."""
    same: dict[tuple[str, ...], list[Diagnostic]] = {}
    for each in folded(findings):
        thing = each.subject[0] if each.subject else ""
        same.setdefault((each.kind.name, of_any(each.message, thing), of_any(each.help, thing)), []).append(each)
    for group in same.values():
        things = tuple(dict.fromkeys(each.subject[0] for each in group if each.subject))
        message, help = group[0].message, group[0].help
        if len(things) > 1:
            message, help = (of_any(said, things[0], "each of them") for said in (message, help))
        rules = (one.kind.name for each in group for one in (each, *each.follow))
        yield MissingFact(things, tuple(dict.fromkeys(rules)), message, help)


COMPUTE = open_facts
