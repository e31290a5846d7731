"""The level on each audio lead: `A14.level.nominal`, `.peak`, `.max`, `.margin`; `level-2` where scenarios change it."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.computations.levels import NO_LEAD, LevelEdge, Levels
from rigc.analysis.reasons.as_stated import as_stated
from rigc.analysis.reasons.inputs import derived, known, ours, placed
from rigc.diagnostics.decimals import decimals
from rigc.facts.levels import LEAST_MARGIN_DB
from rigc.model.rig import Rig
from rigc.model.things import Unit
from rigc.traced.reason import ARITHMETIC, NOT_KNOWN, Input, Reason, told

_RULE = "a stated level stands; else what comes in and the unit's gain, the highest of all on/off states"


def audio_level(rig: Rig, levels: Levels) -> Iterator[Reason]:
    """Four reasons for each audio lead, three where it ends at a panel, which takes any level."""
    named = _named(levels)
    for name, edge in named:
        yield from (_nominal(rig, named, name, edge), _peak(rig, named, name, edge))
        if edge.end.thing not in rig.panels:
            yield as_stated(f"{name}.max", f"what {edge.end} takes", edge.maximum, "dBu", _taken(edge))
            yield _margin(name, edge)


def _named(levels: Levels) -> list[tuple[str, LevelEdge]]:
    counts: dict[str, int] = {}
    found = []
    for edge in levels.edges:
        base = str(edge.start) if edge.mark == NO_LEAD else edge.mark
        number = counts[base] = counts.get(base, 0) + 1
        found.append((f"{base}.level{'' if number == 1 else f'-{number}'}", edge))
    return found


def _taken(edge: LevelEdge) -> str:
    return told(None if edge.maximum is None else edge.maximum.value)


def nominaltold(edge: LevelEdge) -> str:
    """One level, or the lowest and the highest of all states."""
    high = told(edge.high_dbu)
    both = edge.high_dbu is not None and edge.low_dbu is not None and edge.low_dbu != edge.high_dbu
    return f"{told(edge.low_dbu)} to {high}" if both else high


def _nominal(rig: Rig, named: list[tuple[str, LevelEdge]], name: str, edge: LevelEdge) -> Reason:
    jack = rig.jack(edge.start)
    own = None if jack is None else jack.levels.nominal_dbu
    value = nominaltold(edge)
    if own is not None and jack is not None and jack.role == "output":
        inputs: tuple[Input, ...] = known(f"nominal level of {edge.start}", own)
        return Reason(f"{name}.nominal", value, "dBu", f"{decimals(own.value)}, as stated", inputs, _RULE, ARITHMETIC)
    return _carried(rig, named, name, edge, "nominal", value)


def _peak(rig: Rig, named: list[tuple[str, LevelEdge]], name: str, edge: LevelEdge) -> Reason:
    jack = rig.jack(edge.start)
    own = None if jack is None else jack.levels.peak_dbu
    value = told(edge.peak_dbu)
    if own is not None and jack is not None and jack.role == "output":
        inputs: tuple[Input, ...] = known(f"peak of {edge.start}", own)
        return Reason(f"{name}.peak", value, "dBu", f"{decimals(own.value)}, as stated", inputs, _RULE, ARITHMETIC)
    return _carried(rig, named, name, edge, "peak", value)


def _carried(
    rig: Rig, named: list[tuple[str, LevelEdge]], name: str, edge: LevelEdge, field: str, value: str
) -> Reason:
    """A level that no source states: the leads that come in, and the gain of the unit between."""
    unit = rig.units.get(edge.start.thing)
    inputs: tuple[Input, ...] = tuple(
        derived(
            f"{other.mark} comes in",
            nominaltold(other) if field == "nominal" else told(other.peak_dbu),
            "dBu",
            f"{key}.{field}",
        )
        for key, other in named
        if other.end.thing == edge.start.thing
    )
    if isinstance(unit, Unit) and unit.gain_db is not None:
        inputs += known(f"gain of {unit.name}", unit.gain_db)
    inputs += (placed(edge.mark, f"{edge.start} -> {edge.end}", edge.span),)
    coming = ", ".join(each.value for each in inputs if each.why) or "nothing"
    gain = f", gain {decimals(unit.gain_db.value)} dB" if unit is not None and unit.gain_db is not None else ""
    formula = f"{coming} dBu in{gain}: {value}"
    if value == NOT_KNOWN:
        formula = f"for want of what {' and '.join(edge.lacking) or edge.start.thing} gives"
    return Reason(f"{name}.{field}", value, "dBu", formula, inputs, _RULE, ARITHMETIC)


def _margin(name: str, edge: LevelEdge) -> Reason:
    against = "peak" if edge.by_peak else "nominal"
    level = told(edge.peak_dbu) if against == "peak" else nominaltold(edge)
    inputs = (
        derived(f"{edge.end} takes", _taken(edge), "dBu", f"{name}.max"),
        derived(against, level, "dBu", f"{name}.{against}"),
        ours(LEAST_MARGIN_DB),
    )
    rule = "what the input takes − the highest level: the peak, or a nominal level above it"
    if edge.margin_db is None or edge.maximum is None:
        why = "for want of a peak or of what the input takes"
        return Reason(f"{name}.margin", NOT_KNOWN, "dB", why, inputs, rule, ARITHMETIC)
    value = decimals(edge.margin_db)
    high = told(edge.highest_dbu)
    return Reason(
        f"{name}.margin", value, "dB", f"{decimals(edge.maximum.value)} − ({high}) = {value}", inputs, rule, ARITHMETIC
    )


REASONS = audio_level
