"""Where sound goes side by side: `paths-1.apart`, `.nulls`, `.loss`, numbered in the order of the level table."""

from __future__ import annotations

from collections.abc import Iterator
from math import isfinite

from rigc.analysis.computations.parallel_paths import ParallelPaths
from rigc.analysis.reasons.inputs import derived, known, ours, placed
from rigc.analysis.reasons.reason import NOT_KNOWN, Input, Reason
from rigc.analysis.signal.parallel import Parallel
from rigc.diagnostics.decimals import decimals
from rigc.facts.paths import LOWEST_NOTE_HZ
from rigc.model.rig import Rig

_COMB = "physics: the sum of a path and its copy that is late or turned over"


def parallel_path(rig: Rig, paths: ParallelPaths) -> Iterator[Reason]:
    """Three reasons for each place where several ways meet, one for an amp's loop in series."""
    for number, each in enumerate(paths.all, 1):
        name = f"paths-{number}"
        apart = _apart(rig, name, each)
        yield apart
        if len(each.legs) > 1:
            yield _nulls(name, each, apart)
            yield _loss(name, each, apart)


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


def _nulls(name: str, paths: Parallel, apart: Reason) -> Reason:
    inputs = (derived("apart", apart.value, "ms", apart.name),)
    rule = "of the latest and the earliest way: (2k + 1) / (2τ), or k / τ where one is turned over; with everything on"
    if paths.apart_ms is None:
        return Reason(f"{name}.nulls", NOT_KNOWN, "Hz", "for want of a latency", inputs, rule, _COMB)
    value = ", ".join(decimals(each, 0) for each in paths.nulls_hz) or "none"
    opposite = paths.late.inverted(paths.turning) != paths.early.inverted(paths.turning)
    shape = "k = 1, 2, 3: k" if opposite else "k = 0, 1, 2: (k + 1/2)"
    formula = f"{shape} × 1000 / {apart.value} = {value}" if paths.nulls_hz else "they are not apart: none"
    return Reason(f"{name}.nulls", value, "Hz" if paths.nulls_hz else "", formula, inputs, rule, _COMB)


def _loss(name: str, paths: Parallel, apart: Reason) -> Reason:
    inputs = (derived("apart", apart.value, "ms", apart.name), ours(LOWEST_NOTE_HZ))
    rule = (
        "|Σ ±g exp(−j 2πfτ)| / Σ g at the lowest note, in the worst on/off state; equal shares where not all are said"
    )
    loss = paths.low_loss_db
    if loss is None:
        return Reason(f"{name}.loss", NOT_KNOWN, "dB", "for want of a latency or of a polarity", inputs, rule, _COMB)
    value = decimals(-loss) if isfinite(loss) else "all"
    shares = [decimals(leg.share, 1) if paths.shared_out and leg.share is not None else "1" for leg in paths.legs]
    ways = ", ".join(
        f"{leg.label}: g = {share}, τ = {_late(leg.latency_ms)} ms"
        for leg, share in zip(paths.legs, shares, strict=True)
    )
    opposite = "; opposite in some state" if paths.turned else ""
    formula = f"{ways}{opposite}; at {decimals(LOWEST_NOTE_HZ.value, 2)} Hz {value} lost"
    return Reason(f"{name}.loss", value, "dB" if value != "all" else "", formula, inputs, rule, _COMB)


REASONS = parallel_path
