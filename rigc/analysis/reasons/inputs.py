"""Facts of the source, numbers of our own and other reasons -> the inputs of a reason."""

from __future__ import annotations

from typing import Any

from rigc.diagnostics.figures import plain
from rigc.facts.fact import Fact as OwnFact
from rigc.model.deck import Place
from rigc.model.fact import Fact
from rigc.model.rig import Rig
from rigc.source import Span
from rigc.traced.reason import Input, Reason


def stated(name: str, fact: Fact[Any] | None) -> Input:
    """A fact of the source, as typed."""
    return Input(name, "not stated") if fact is None else Input(name, fact.typed, "", fact.span, fact.provenance)


def known(name: str, *facts: Fact[Any] | None) -> tuple[Input, ...]:
    """Those of some facts that are stated, under one name."""
    return tuple(stated(name, fact) for fact in facts if fact is not None)


def placed(name: str, value: str, span: Span | None, unit: str = "") -> Input:
    """A statement that carries no single quantity, with its place."""
    return Input(name, value, unit, span)


def stands(place: Place) -> Input:
    """Where a thing stands, as stated or as the compiler chose it."""
    turned = f" turned {plain(place.turned + place.skew_deg)}" if place.turned or place.skew_deg else ""
    where = f"{plain(place.x_mm)}, {plain(place.y_mm)} mm, chosen" if place.chosen else place.typed
    return Input(f"{place.thing} stands at", f"{where}{turned}", "", place.span)


def ours(fact: OwnFact, name: str = "") -> Input:
    """A number that rigc relies on, with its source."""
    return Input(name or fact.says, plain(fact.value), fact.unit, source=fact.source)


def derived(name: str, value: str, unit: str, why: str) -> Input:
    """A value that has a reason of its own, by the name of that."""
    return Input(name, value, unit, why=why)


def follows(name: str, reason: Reason) -> Input:
    """The value of another reason."""
    return Input(name, reason.value, reason.unit, why=reason.name)


def limit(rig: Rig, name: str, practice: OwnFact) -> Input:
    """The rig's own limit of that name, else the one of practice."""
    own = rig.limit(name)
    return ours(practice) if own is None else stated(f"limit {name} ({own.source})", own.amount)
