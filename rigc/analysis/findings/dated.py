"""A rig -> all of it that bears a day: the facts of what is in use, and what was read, seen, agreed and released."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.feeds.used_things import used_things
from rigc.analysis.findings.stated_facts import Facts, StatedFacts
from rigc.model.deck import Deck
from rigc.model.rig import Rig
from rigc.model.things import Instrument, Thing
from rigc.record import Record
from rigc.source import Span


class DatedFacts(Record):
    """The facts of one thing. `signs`: whether each must say who found it and when, as what stands on the board must."""

    thing: Thing | Instrument | Deck
    facts: Facts
    signs: bool


class DatedAct(Record):
    """What was done on a day, or holds until it: what it is about, its words before the day (ISO), and its place."""

    subject: str
    words: str
    date: str
    span: Span


class Dated(Record):
    """Both. Facts of units, amps, desks and supplies in use, then of instruments and decks."""

    facts: tuple[DatedFacts, ...]
    acts: tuple[DatedAct, ...]


def dated(rig: Rig, power: PowerAssignment, stated: StatedFacts) -> Dated:
    """Facts without a day are among them."""
    used = (DatedFacts(each, stated.of(each), True) for each in used_things(rig, power))
    others: tuple[Instrument | Deck, ...] = (*rig.instruments.values(), *rig.decks.values())
    return Dated((*used, *(DatedFacts(each, stated.of(each), False) for each in others)), tuple(_acts(rig)))


def _acts(rig: Rig) -> Iterator[DatedAct]:
    for reading in rig.readings:
        words = f"test {reading.test} at {reading.point} was read on"
        yield DatedAct(reading.point, words, reading.date, reading.span)
    for block in rig.as_built:
        for lead in block.leads:
            if lead.date:
                yield DatedAct(lead.mark, f"{lead.mark} was measured on", lead.date, lead.span)
    for note in rig.field_notes:
        yield DatedAct(f"field-note {note.number}", f"field note {note.number} is of", note.date, note.span)
    for accept in rig.accepts:
        yield DatedAct(accept.target or accept.rule, f"{accept.rule} is accepted until", accept.until, accept.span)
    if rig.head.frozen is not None:
        yield DatedAct(rig.head.name, "this revision was frozen on", rig.head.frozen.date, rig.head.frozen.span)


COMPUTE = dated
