"""Scenarios: mains, selectors, transformers and ground lifts of each place where the rig is used."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.revision.compared.aspect import DESIGN, REPOWER, Aspect
from rigc.analysis.revision.compared.words import NONE, exact, words
from rigc.model.rig import Rig, Scenario


def scenarios(rig: Rig) -> Iterator[Aspect]:
    """A selector or a transformer is work, the rest is read."""
    for each in rig.scenarios.values():
        yield Aspect("scenario", each.name, "", each.title or "scenario", True, DESIGN, span=each.declared)
        for field, text, value in _read(each):
            yield Aspect("scenario", each.name, field, text, value, DESIGN, span=each.declared)
        for field, text, value in _set(each):
            yield Aspect("scenario", each.name, field, text, value, DESIGN, (REPOWER,), each.declared)


def _read(each: Scenario) -> Iterator[tuple[str, str, object]]:
    yield "title", each.title or NONE, each.title
    yield "mains", words(each.mains), exact(each.mains)
    yield "country", each.country or NONE, each.country
    lifts = ", ".join(" ".join(lift) for lift in each.lifts)
    yield "lifts", lifts or NONE, each.lifts
    yield "amps", "all" if each.amps is None else words(each.amps), each.amps
    yield "notes", words(each.notes), each.notes


def _set(each: Scenario) -> Iterator[tuple[str, str, object]]:
    selectors = ", ".join(f"{supply} at {volts.typed}" for supply, volts in each.selectors)
    yield "selectors", selectors or NONE, exact(each.selectors)
    changed = (f"{p.typed} to {s.typed}, {va.typed}, before {supply}" for supply, p, s, va in each.transformers)
    yield "transformers", "; ".join(changed) or NONE, exact(each.transformers)


ASPECTS = scenarios
