"""A rig -> the facts that bear a day, thing by thing: of what is in use, of instruments and of decks."""

from __future__ import annotations

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.feeds.used_things import used_things
from rigc.analysis.findings.stated_facts import Facts, StatedFacts
from rigc.model.deck import Deck
from rigc.model.rig import Rig
from rigc.model.things import Instrument, Thing
from rigc.record import Record


class OfThing(Record):
    """The facts of one thing. `signs`: whether each must say who found it and when, as what stands on the board must."""

    thing: Thing | Instrument | Deck
    facts: Facts
    signs: bool


class DatedFacts(Record):
    """Of units, amps, desks and supplies in use, then of instruments and decks. Facts without a day are among them."""

    all: tuple[OfThing, ...]


def dated_facts(rig: Rig, power: PowerAssignment, stated: StatedFacts) -> DatedFacts:
    """In the order of declaration, each kind."""
    used = (OfThing(each, stated.of(each), True) for each in used_things(rig, power))
    others: tuple[Instrument | Deck, ...] = (*rig.instruments.values(), *rig.decks.values())
    return DatedFacts((*used, *(OfThing(each, stated.of(each), False) for each in others)))


COMPUTE = dated_facts
