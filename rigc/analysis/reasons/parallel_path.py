"""Where sound goes side by side: `paths-1.apart`, `.notches`, `.loss`, numbered in the order of the level table."""

from __future__ import annotations

from collections.abc import Iterator
from math import isfinite

from rigc.analysis.computations.parallel_paths import ParallelPaths
from rigc.analysis.reasons.inputs import derived, known, ours, placed
from rigc.analysis.signal.comb_words import notches_told
from rigc.analysis.signal.parallel import Parallel
from rigc.analysis.signal.turned_words import state_told
from rigc.diagnostics.decimals import decimals
from rigc.facts.paths import LOWEST_NOTE_HZ
from rigc.model.rig import Rig
from rigc.traced.reason import NOT_KNOWN, Input, Reason

_COMB = "physics: the sum of a path and its copy that is late or turned over"


def parallel_path(rig: Rig, paths: ParallelPaths) -> Iterator[Reason]:
    """Three reasons for each place where several ways meet, one for an amp's loop in series."""
    for number, each in enumerate(paths.all, 1):
        name = f"paths-{number}"
        apart = _apart(rig, name, each)
        yield apart
        if len(each.legs) > 1:
            yield _notches(name, each, apart)
            yield _loss(rig, name, each, apart)


def _apart(rig: Rig, name: str, paths: Parallel) -> Reason:
    late = [_late(leg.latency_ms) for leg in paths.legs]
    inputs: list[Input] = [placed(f"they meet at {paths.at}", "", paths.span)]
    for thing in dict.fromkeys(thing for leg in paths.legs for thing in leg.things):
        if thing in rig.units:
            inputs += known(f"latency of {thing}", rig.units[thing].latency_ms)
    ways = ", ".join(f"{leg.label} {told}" for leg, told in zip(paths.legs, late, strict=True))
    rule = "the latest leg − the earliest; a way that stays analogue takes no time"
    if len(paths.legs) < 2:
        first = paths.legs[0].latency_ms
        value = NOT_KNOWN if first is None else f"+{decimals(first, 2)}"
        return Reason(
            f"{name}.apart",
            value,
            "ms",
            f"what the loop adds: {ways} ms",
            tuple(inputs),
            rule,
            "arithmetic on stated values",
        )
    if paths.apart_ms is None:
        why = f"for want of the latency of {', '.join(paths.untimed)}"
        return Reason(f"{name}.apart", NOT_KNOWN, "ms", why, tuple(inputs), rule, "arithmetic on stated values")
    value = decimals(paths.apart_ms, 2)
    return Reason(
        f"{name}.apart", value, "ms", f"{ways} ms: {value} apart", tuple(inputs), rule, "arithmetic on stated values"
    )


def _late(latency_ms: float | None) -> str:
    return NOT_KNOWN if latency_ms is None else decimals(latency_ms, 2)


def _notches(name: str, paths: Parallel, apart: Reason) -> Reason:
    inputs = (derived("apart", apart.value, "ms", apart.name),)
    of_two = len(paths.combing) < 3
    rule = (
        "of two ways (2k + 1) / (2τ), or k / τ where one is turned over; with everything on"
        if of_two
        else "where |Σ ±g exp(−j 2πfτ)| of all ways is least, within 20 kHz; with everything on; "
        "equal shares where not all are said"
    )
    if len(paths.combing) < 2:
        return Reason(f"{name}.notches", "none", "", "fewer than two ways bring the sound itself", inputs, rule, _COMB)
    if paths.comb_ms is None:
        return Reason(f"{name}.notches", NOT_KNOWN, "Hz", "for want of a latency", inputs, rule, _COMB)
    found = paths.notches
    value = ", ".join(decimals(each.hertz, 0) for each in found) or "none"
    if not found:
        formula = "they are not apart: none" if not paths.comb_ms else "none within 20 kHz"
        return Reason(f"{name}.notches", value, "", formula, inputs, rule, _COMB)
    if of_two:
        opposite = paths.late.inverted(paths.turning) != paths.early.inverted(paths.turning)
        counted = "k = 1, 2, 3: k" if opposite else "k = 0, 1, 2: (k + 1/2)"
        formula = f"{counted} × 1000 / {decimals(paths.comb_ms, 4)} = {value}"
    else:
        formula = f"{_ways(paths, paths.turning)}: {notches_told(found)}"
    return Reason(f"{name}.notches", value, "Hz", formula, inputs, rule, _COMB)


def _loss(rig: Rig, name: str, paths: Parallel, apart: Reason) -> Reason:
    stated = [(note, rig.instruments[note.instrument].lowest_note_hz) for note in paths.notes]
    inputs: tuple[Input, ...] = (derived("apart", apart.value, "ms", apart.name),)
    inputs += tuple(each for note, fact in stated for each in known(f"lowest note of {note.instrument}", fact))
    inputs += (ours(LOWEST_NOTE_HZ),) if any(fact is None for _, fact in stated) else ()
    rule = (
        "|Σ ±g exp(−j 2πfτ)| / Σ g at the lowest note, in the worst on/off state; equal shares where not all are said"
    )
    if len(paths.combing) < 2:
        return Reason(f"{name}.loss", "none", "", "fewer than two ways bring the sound itself", inputs, rule, _COMB)
    loss = paths.worst_low_loss
    if loss is None:
        return Reason(f"{name}.loss", NOT_KNOWN, "dB", "for want of a latency or of a polarity", inputs, rule, _COMB)
    value = decimals(-loss.db) if isfinite(loss.db) else "all"
    state = state_told(paths, loss.on).replace("'", "")
    formula = (
        f"{state}{': ' if state else ''}{_ways(paths, loss.on)}; at {decimals(loss.note.hertz, 2)} Hz {value} lost"
    )
    return Reason(f"{name}.loss", value, "dB" if value != "all" else "", formula, inputs, rule, _COMB)


def _ways(paths: Parallel, on: tuple[str, ...]) -> str:
    """Share and lateness of each way in a state; a share with a minus is of one that is turned over."""
    return ", ".join(
        f"{leg.label}: g = {decimals(way.signed, 1)}, τ = {decimals(way.late_ms, 2)} ms"
        for leg, way in zip(paths.combing, paths.ways(on), strict=True)
    )


REASONS = parallel_path
