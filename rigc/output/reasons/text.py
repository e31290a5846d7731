"""Reasons -> text for a terminal: the value first, then the formula, the inputs with their places, the rule and its source."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from rigc.analysis.reasoning import Reasoning
from rigc.traced.reason import Input, Reason
from rigc.traced.told_range import ToldPart, ToldRange

_ASSUMED = "ASSUMED"
_UNBOUNDED = "  range: not known; it is no plain arithmetic, and these may be off:"
_DECIDED = "  these may be off too, and decided about it:"
_AS_DECIDED = "  as long as these, which may be off too, decide as they did:"
_LEANS = "rests on something assumed"


def short(reasoning: Reasoning, reasons: tuple[Reason, ...]) -> str:
    """One line for each: name, value, and whether something assumed is behind it."""
    rows = [(reason.name, _amount(reason.value, reason.unit), _LEANS * reasoning.leans(reason)) for reason in reasons]
    return "".join(f"{line}\n" for line in _columns(rows))


def whole(reasoning: Reasoning, reason: Reason, shown: Callable[[str], str], deep: bool) -> str:
    """A reason in full; `deep` also what each of its inputs rests on, further in, each once."""
    seen: set[str] = {reason.name}
    heading = f"{reason.name} = {_amount(reason.value, reason.unit)}"
    if reasoning.leans(reason):
        heading += f" ({_LEANS})"
    lines = [heading, *_body(reasoning, reason, shown, seen if deep else None)]
    return "".join(f"{line}\n" for line in lines)


def _body(reasoning: Reasoning, reason: Reason, shown: Callable[[str], str], seen: set[str] | None) -> list[str]:
    """What stands below the value. `seen` holds what was told already, None where only this reason is wanted."""
    lines = [f"  formula: {reason.formula}", *_range(reasoning.range_of(reason), reason.unit, shown)]
    rows = _columns([_row(reasoning, each, shown) for each in reason.inputs])
    for each, row in zip(reason.inputs, rows, strict=True):
        lines.append(f"  from {row}")
        behind = reasoning.by_name.get(each.why)
        if seen is not None and behind is not None and behind.name not in seen:
            seen.add(behind.name)
            lines += [f"    {line}" for line in _body(reasoning, behind, shown, seen)]
    return [*lines, f"  rule: {reason.rule}", f"  source: {reason.source}"]


def _range(told: ToldRange | None, unit: str, shown: Callable[[str], str]) -> list[str]:
    """From where to where it may be, and a line for each fact that makes it so, the one that makes most first."""
    if told is None:
        return []
    lines = [_UNBOUNDED]
    if told.ends is not None:
        at_most = "" if told.exact else "at most "
        lines = [f"  range: {at_most}{_amount(f'{told.least} to {told.most}', unit)}"]
    rows = [
        (*_off(part), _amount(f"makes {part.by}", unit) if part.by else "", _place(part, shown)) for part in told.parts
    ]
    lines += [f"    {row}" for row in _columns(rows)]
    if told.beside:
        lines.append(_AS_DECIDED if told.ends is not None else _DECIDED)
        lines += [f"    {row}" for row in _columns([(*_off(part), _place(part, shown)) for part in told.beside])]
    return lines


def _off(part: ToldPart) -> tuple[str, ...]:
    """What a fact is, as typed, and what it may be off by, where that is not typed with it."""
    fact = part.fact.fact
    off = "" if fact.spread is not None else part.spread.typed
    if off and fact.provenance is not None:
        off += f", as {'from a leaflet' if fact.provenance.kind == 'leaflet' else fact.provenance.kind}"
    return part.fact.label, fact.typed, off


def _place(part: ToldPart, shown: Callable[[str], str]) -> str:
    span = part.fact.fact.span
    return f"{shown(span.source.name)}:{span.line}"


def _row(reasoning: Reasoning, one: Input, shown: Callable[[str], str]) -> tuple[str, ...]:
    if one.why:
        where = f"why {one.why}" + f", {_LEANS}" * reasoning.assumed(one)
    elif one.source:
        where = f"a number of rigc: {one.source}"
    else:
        where = "" if one.span is None else f"{shown(one.span.source.name)}:{one.span.line}"
    return one.name, _amount(one.value, one.unit), where, _known(one)


def _known(one: Input) -> str:
    """How a fact is known: `measured 2026-02-14 by R.K.`; what is assumed is marked in capitals."""
    if one.provenance is None:
        return ""
    kind = _ASSUMED if one.assumed else one.provenance.kind
    by = f"by {one.provenance.by}" if one.provenance.by else ""
    return " ".join(part for part in (kind, one.provenance.date, by) if part)


def _amount(value: str, unit: str) -> str:
    return f"{value} {unit}" if unit and value != "not known" else value


def _columns(rows: Sequence[tuple[str, ...]]) -> list[str]:
    if not rows:
        return []
    widths = [max(len(row[at]) for row in rows) for at in range(len(rows[0]))]
    return ["  ".join(text.ljust(width) for text, width in zip(row, widths, strict=True)).rstrip() for row in rows]
