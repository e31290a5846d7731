"""A thing's stated facts -> aspects: each field of its record, by what it is called."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache
from typing import Any

from rigc.analysis.revision.compared.aspect import FACTS, Aspect
from rigc.analysis.revision.compared.words import exact, words
from rigc.model.fact import Fact, facts_within
from rigc.model.jacks import Jack
from rigc.model.things import Paperwork

EMPTY: tuple[Any, ...] = (None, (), frozenset(), "")
TOLD_BESIDE = frozenset(("kind", "name", "declared", "jacks", "outlets", "papers", "was", "was_at", "stands_in_at"))
"""Fields that no line of their own tells: who a thing is, and what has aspects of its own."""

LABELS = {
    "accepts_low_v": "accepts at least", "accepts_high_v": "accepts at most", "band_countries": "band's countries",
    "ceiling_ma": "ceiling, current", "cord_mm": "own lead", "cut_in_mm": "takes in", "exit_mm": "exit", "fitted": "fitted version",
    "flags": "kind", "keep_outs": "keep-outs", "lead_cable": "lead's cable", "mates": "mates with", "no_tape": "no tape on",
    "plain_cable": "plain lead's cable", "plain_mm": "plain lead", "stand_out_mm": "stands out", "stands_in": "stands in for",
    "tone_nf": "tone capacitor", "volts": "needs", "warm_w": "heat",
}  # fmt: skip
"""What fields are called whose own name, without its unit, would not tell."""

_UNIT = re.compile(r"(?:_(?:mm2?|kg|g|k?w|db|mhz|hz|v|ma|ms|ohm|h|pf|nf|deg|kpa|per_m))+$")


@cache
def labels(every: tuple[str, ...]) -> dict[str, str]:
    """Of the fields of a record those that state something, with what they are called, title and notes last."""
    fields = [field for field in every if field not in TOLD_BESIDE]
    ends = [field for field in ("title", "notes") if field in fields]
    return {
        field: LABELS.get(field) or _UNIT.sub("", field).replace("_", " ")
        for field in (*(each for each in fields if each not in ends), *ends)
    }


def fact_aspects(kind: str, thing: Any, but: tuple[str, ...] = ()) -> Iterator[Aspect]:
    """One aspect for each field of a declared thing that says something, `but` those that are told otherwise."""
    for field, label in labels(thing.FIELDS).items():
        value = getattr(thing, field)
        if value in EMPTY or field in but:
            continue
        span = value.span if isinstance(value, Fact) else thing.declared
        yield Aspect(kind, thing.name, label, words(value), exact(value), FACTS, span=span)


def paper_aspects(kind: str, thing: Any) -> Iterator[Aspect]:
    """What insurance, customs and the crew want to know of a thing."""
    for field, label in labels(Paperwork.FIELDS).items():
        value = getattr(thing.papers, field)
        if value is not None:
            yield Aspect(kind, thing.name, label, words(value), exact(value), FACTS, span=value.span)


def knowledge(kind: str, thing: Any) -> Aspect:
    """How the facts of a thing are known: measured, from a leaflet, assumed; when and by whom."""
    ways = sorted(
        {(one.kind, one.date, one.by) for fact in facts_within(thing) if (one := fact.provenance) is not None}
    )
    text = ", ".join(" ".join(filter(None, way)) for way in ways)
    return Aspect(kind, thing.name, "known", text or "not said", tuple(ways), FACTS, span=thing.declared, detail=True)


def jack_aspects(kind: str, name: str, jacks: tuple[Jack, ...]) -> Iterator[Aspect]:
    """Two for each jack: what it is and where it sits, and what it gives or takes."""
    for jack in jacks:
        seat = (jack.role, jack.connector, jack.side, jack.offset_mm, jack.height_mm, jack.bushing, jack.captive_mm)
        yield Aspect(kind, name, f"jack {jack.name}", seat_words(jack), exact(seat), FACTS, span=jack.span)
        rest = _electrics(jack)
        if rest:
            text = ", ".join(f"{word} {words(value)}" for word, value in rest)
            yield Aspect(kind, name, f"signal at {jack.name}", text, exact(tuple(rest)), FACTS, span=jack.span)


def seat_words(jack: Jack) -> str:
    """What a jack is and where it sits, much as it is stated."""
    parts = [jack.role, str(jack.connector)]
    parts += [jack.side or ""] + [words(jack.offset_mm)] * (jack.offset_mm is not None)
    parts += [f"up {jack.height_mm.typed}"] if jack.height_mm is not None else []
    parts += [f"captive {jack.captive_mm.typed}"] if jack.captive_mm is not None else []
    return " ".join(filter(None, (*parts, jack.bushing)))


def _electrics(jack: Jack) -> list[tuple[str, Any]]:
    levels = jack.levels
    named = (
        ("impedance", jack.impedance_ohm), ("bypassed", jack.bypassed_ohm), ("carries", jack.carries),
        ("nominal", levels.nominal_dbu), ("peak", levels.peak_dbu), ("at most", levels.maximum_dbu),
        ("sensitivity", levels.sensitivity_dbu), ("wiper", jack.wiper), ("track", jack.track_ohm),
        ("taper", jack.taper),
        ("MIDI type", jack.midi_form), ("contact", jack.contact),
        ("ground lift", jack.lift), ("phantom power", jack.phantom),
    )  # fmt: skip
    return [(word, value) for word, value in named if value is not None]
