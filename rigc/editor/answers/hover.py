"""A word -> what is known of it: the fact with its source, the computed value with its `why`, the line of the language."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Any

from rigc.editor.completion.jacks import described, rating
from rigc.editor.computed import Computed
from rigc.editor.draft import Draft
from rigc.editor.names import JACK, LEAD, Named
from rigc.model.fact import Fact, spread_of
from rigc.output.reasons.text import short, whole
from rigc.record import Record
from rigc.source import Source, Span

_SHOWN = ("finished", "cut", "premade", "load", "percent", "limit")


class Hover(Record):
    """What is told of a span: lines of text, and below them reasons in fixed width."""

    span: Span
    lines: tuple[str, ...]
    reasons: str = ""


def hover(
    draft: Draft, computed: Computed | None, source: Source, offset: int, shown: Callable[[str], str] = str
) -> Hover | None:
    """What stands at an offset: a name, else a stated amount; None where it is neither."""
    word = draft.names.at(source, offset)
    if word is not None:
        return _of_name(draft, computed, word, shown)
    fact = _fact_at(draft, source, offset)
    return None if fact is None else Hover(fact.span, tuple(_fact_lines(fact)))


def _of_name(draft: Draft, computed: Computed | None, word: Named, shown: Callable[[str], str]) -> Hover:
    if word.family == LEAD:
        lines = tuple(_lead_lines(draft, word.name))
        return Hover(word.span, lines, _why(computed, word.name, shown))
    if word.family == JACK:
        port = _port(word)
        return Hover(word.span, (port, *_jack_lines(draft, port)), _why(computed, port, shown))
    lines = tuple(_thing_lines(draft, word))
    return Hover(word.span, lines, _values(computed, word.name) if word.family == "thing" else "")


def _port(word: Named) -> str:
    """The port as it is typed there: `heron.in`, though the jack may be declared in the block that heron is like."""
    text, start = word.span.source.text, word.span.start
    if text[start - 1 : start] != ".":
        return word.name
    begin = start - 1
    while begin and (text[begin - 1].isalnum() or text[begin - 1] == "-"):
        begin -= 1
    return f"{text[begin : start - 1]}.{word.span.text}"


def _lead_lines(draft: Draft, mark: str) -> Iterator[str]:
    yield f"lead {mark}"
    leads = () if draft.rig is None else draft.rig.lead_wishes.leads
    for lead in leads:
        if lead.mark == mark:
            yield f"{lead.start} to {lead.end}"
            if lead.made_mm is not None:
                yield from _fact_lines(lead.made_mm)


def _jack_lines(draft: Draft, port: str) -> Iterator[str]:
    name, _, jack = port.partition(".")
    thing: Any = None if draft.rig is None else draft.rig.things.get(name)
    if thing is None:
        return
    yield from (described(each) for each in thing.jacks if each.name == jack)
    yield from (rating(each) for each in getattr(thing, "outlets", ()) if each.name == jack)


def _thing_lines(draft: Draft, word: Named) -> Iterator[str]:
    declared = draft.names.declared(word.key)
    text = declared[0].span.source if declared else None
    if text is not None:
        yield text.line(declared[0].span.line).strip().rstrip("{").rstrip()
        yield f"declared in {declared[0].span}"
    thing: Any = None if draft.rig is None or word.family != "thing" else draft.rig.things.get(word.name)
    for field in ("volts", "draws_ma", "mass_kg"):
        fact = getattr(thing, field, None)
        if isinstance(fact, Fact):
            yield from (f"{field.partition('_')[0]} {line}" for line in list(_fact_lines(fact))[:1])


def _fact_lines(fact: Fact[Any]) -> Iterator[str]:
    known = fact.provenance
    if known is None:
        yield f"{fact.typed}, with no source stated"
    else:
        by = f" by {known.by}" if known.by else ""
        said = "ASSUMED" if fact.assumed else known.kind
        yield f"{fact.typed}, {' '.join(part for part in (said, known.date) if part)}{by}"
    spread = spread_of(fact) if fact.measure is not None else None
    if spread is not None and fact.measure is not None:
        yield f"{spread.typed}: from {spread.least:g} to {spread.most:g} {fact.measure.unit}"


def _why(computed: Computed | None, name: str, shown: Callable[[str], str]) -> str:
    """The figures of a lead or outlet that one asks for most, in full; the names of the others are in the list of a thing."""
    if computed is None:
        return ""
    reasons = computed.reasoning.by_name
    told = [reasons[f"{name}.{field}"] for field in _SHOWN if f"{name}.{field}" in reasons]
    return "\n".join(whole(computed.reasoning, reason, shown, False) for reason in told)


def _values(computed: Computed | None, name: str) -> str:
    if computed is None:
        return ""
    reasons = computed.reasoning.by_name
    own = tuple(reasons[each] for each in reasons if each.startswith(f"{name}.") and each.count(".") == 1)
    return short(computed.reasoning, own) if own else ""


def _fact_at(draft: Draft, source: Source, offset: int) -> Fact[Any] | None:
    """The fact whose amount stands at an offset; the shortest where one lies in another."""
    held = [each for each in draft.facts if each.span.source is source and each.span.start <= offset <= each.span.end]
    return min(held, key=lambda each: each.span.end - each.span.start, default=None)
