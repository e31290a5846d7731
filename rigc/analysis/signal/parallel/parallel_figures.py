"""Where sound goes side by side -> its figures: `paths-1.apart`, `.notches`, `.loss`, and how late each way is, `.late-2`."""

from __future__ import annotations

from math import isfinite

from rigc.analysis.signal.parallel.comb_words import notches_told
from rigc.analysis.signal.parallel.parallel import LowLoss, Parallel, between
from rigc.analysis.signal.parallel.turned_words import state_told
from rigc.diagnostics.decimals import decimals
from rigc.facts.paths import LOWEST_NOTE_HZ
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.traced.figure import Answer, AnyFigure, figure
from rigc.traced.given import mentioned, ours, stated, unstated
from rigc.traced.means import found, total
from rigc.traced.reason import ARITHMETIC
from rigc.traced.term import Term, Traced, Unknown
from rigc.traced.units import DECIBELS, HERTZ, MILLISECONDS, MILLISECONDS_MORE

_APART = "the latest leg − the earliest; a way that stays analogue takes no time"
_LATE = "the latencies of what is on it, with everything on; a way that stays analogue takes no time"
_COMB = "physics: the sum of a path and its copy that is late or turned over"
_OF_TWO = "of two ways (2k + 1) / (2τ), or k / τ where one is turned over; with everything on"
_OF_MORE = (
    "where |Σ ±g exp(−j 2πfτ)| of all ways is least, within 20 kHz; with everything on; "
    "equal shares where not all are said"
)
_LOSS = "|Σ ±g exp(−j 2πfτ)| / Σ g at the lowest note, in the worst on/off state; equal shares where not all are said"
_ONE_WAY = "fewer than two ways bring the sound itself"


class ParallelFigures(Record):
    """What is told of one place: how far the ways are apart (what the loop adds where there is one way only), the first
    notches, what is lost at the lowest note, and how late each way is. A place with one way has but the first."""

    apart: AnyFigure
    notches: AnyFigure | Answer | None
    loss: AnyFigure | Answer | None
    late: tuple[AnyFigure, ...]


def parallel_figures(rig: Rig, name: str, paths: Parallel) -> ParallelFigures:
    """`name` is by which they are asked for: `paths-1`."""
    here = mentioned(f"they meet at {paths.at}", "", paths.span)
    if len(paths.legs) < 2:
        adds = figure(f"{name}.apart", paths.legs[0].latency, MILLISECONDS_MORE, here, rule=_APART, source=ARITHMETIC)
        return ParallelFigures(adds, None, None, ())
    late = tuple(
        figure(f"{name}.late-{number}", leg.latency, MILLISECONDS, here, rule=_LATE, source=ARITHMETIC, label=leg.label)
        for number, leg in enumerate(paths.legs, 1)
    )
    apart = figure(f"{name}.apart", between(late), MILLISECONDS, here, rule=_APART, source=ARITHMETIC)
    direct = tuple(each for each, leg in zip(late, paths.legs, strict=True) if leg.direct)
    return ParallelFigures(
        apart, _notches(f"{name}.notches", paths, direct), _loss(rig, f"{name}.loss", paths, direct), late
    )


def _notches(name: str, paths: Parallel, late: tuple[AnyFigure, ...]) -> AnyFigure | Answer:
    rule = _OF_TWO if len(late) < 3 else _OF_MORE
    if len(late) < 2:
        return Answer(name, "none", _ONE_WAY, *late, rule=rule, source=_COMB)
    if paths.comb_ms is None:
        return figure(name, total(late), HERTZ, rule=rule, source=_COMB)
    shares = _shares(paths) if len(late) > 2 else ()
    at = ", ".join(HERTZ.text(each.hertz) for each in paths.notches)
    if not at:
        why = "none within 20 kHz" if paths.comb_ms else "they are not apart: none"
        return Answer(name, "none", why, *late, *shares, rule=rule, source=_COMB)
    return Answer(name, at, lambda: _notch_words(paths, at), *late, *shares, rule=rule, source=_COMB, unit=HERTZ.unit)


def _notch_words(paths: Parallel, at: str) -> str:
    if len(paths.combing) > 2:
        return f"{_ways(paths, paths.turning)}: {notches_told(paths.notches)}"
    opposite = paths.late.inverted(paths.turning) != paths.early.inverted(paths.turning)
    counted = "k = 1, 2, 3: k" if opposite else "k = 0, 1, 2: (k + 1/2)"
    return f"{counted} × 1000 / {decimals(paths.comb_ms or 0.0, 4)} = {at}"


def _loss(rig: Rig, name: str, paths: Parallel, late: tuple[AnyFigure, ...]) -> AnyFigure | Answer:
    if len(late) < 2:
        return Answer(name, "none", _ONE_WAY, *late, rule=_LOSS, source=_COMB)
    loss = paths.worst_low_loss
    if loss is None:
        return figure(name, _unknown(paths, late), DECIBELS, rule=_LOSS, source=_COMB)
    of = (*late, *_shares(paths), *_notes(rig, paths))
    if not isfinite(loss.db):
        return Answer(name, "all", lambda: _loss_words(paths, loss, "all"), *of, rule=_LOSS, source=_COMB)
    lost = DECIBELS.text(-loss.db)
    return figure(
        name, found(-loss.db, lambda: _loss_words(paths, loss, lost), *of), DECIBELS, rule=_LOSS, source=_COMB
    )


def _loss_words(paths: Parallel, loss: LowLoss, lost: str) -> str:
    state = state_told(paths, loss.on).replace("'", "")
    told = f"{state}: " if state else ""
    return f"{told}{_ways(paths, loss.on)}; at {decimals(loss.note.hertz, 2)} Hz {lost} lost"


def _unknown(paths: Parallel, late: tuple[AnyFigure, ...]) -> Unknown:
    """What is wanted to know what is lost."""
    want: list[Traced] = [unstated(f"polarity of {each}") for each in paths.unsure]
    want += [each for each in late if isinstance(each, Unknown)]
    if not want:
        kept = [name for leg in paths.combing for name, saved in leg.saved_ms if saved is None]
        want = [unstated(f"how {each} is bypassed") for each in kept] or [unstated("which instrument is heard")]
    lacking: Unknown = total(want)
    return lacking


def _shares(paths: Parallel) -> tuple[Term, ...]:
    """The shares with which the ways count, where all are said."""
    return tuple(leg.share for leg in paths.combing if leg.share is not None) if paths.shared_out else ()


def _notes(rig: Rig, paths: Parallel) -> tuple[Traced, ...]:
    """The lowest notes of the instruments that are heard."""
    facts = {note.instrument: rig.instruments[note.instrument].lowest_note_hz for note in paths.notes}
    own = tuple(stated(f"lowest note of {name}", fact) for name, fact in facts.items() if fact is not None)
    return own if len(own) == len(facts) else (*own, ours(LOWEST_NOTE_HZ))


def _ways(paths: Parallel, on: tuple[str, ...]) -> str:
    """Share and lateness of each way in a state; a share with a minus is of one that is turned over."""
    return ", ".join(
        f"{leg.label}: g = {decimals(way.signed, 1)}, τ = {decimals(way.late_ms, 2)} ms"
        for leg, way in zip(paths.combing, paths.ways(on), strict=True)
    )
