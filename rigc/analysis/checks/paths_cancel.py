"""Paths that run side by side and join again differ in polarity in at least one on/off state.

Why it matters: what is equal in both cancels. The low notes go first, since what the paths do differently is mostly treble.
What to do: flip the polarity of one path at the mixer, and see that no unit in it turns the signal over only while it is on.
Source: physics: the sum is |1 - g exp(-j phi)| with phi = 2 pi f tau; the lowest note is the low E of a guitar (equal
temperament at A = 440 Hz; ISO 16, from memory). What a unit on one path only does not say (`inverts`, `non-inverting`)
can't be checked; a passive one without a transformer turns nothing over.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import isfinite

from rigc.analysis.computations.parallel_paths import ParallelPaths
from rigc.analysis.signal.parallel import AMPS, DESK, JOIN, Parallel
from rigc.analysis.signal.turned_words import counted, unsaid, way_out, when_turned
from rigc.diagnostics.decimals import decimals
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.diagnostics.wording import listed
from rigc.facts.paths import LOWEST_NOTE_HZ
from rigc.model.rig import Rig

KIND = Kind(
    "paths-cancel",
    Level.WARNING,
    __doc__,
    "paths that join again have the same polarity in every on/off state",
    "physics: |1 - g exp(-j phi)|",
)


def paths_cancel(rig: Rig, paths: ParallelPaths) -> Iterator[Diagnostic]:
    """One finding for each place where paths meet; can't-check for each unit of unknown polarity, each amp of unknown mix,
    and each place where units do not say theirs."""
    unsure: dict[str, str] = {}
    for each in paths.all:
        if each.kind in (AMPS, DESK) or len(each.legs) < 2:
            continue
        if each.mix is None and each.kind != JOIN:
            if each.turned or each.unsure:
                unsure.setdefault(each.at, f"'{each.at}' does not say whether its loop is in series or parallel")
        elif each.turned:
            yield _told(rig, each)
        elif each.unsaid and not each.unsure:
            yield unsaid(KIND, rig, each, f"the paths at '{each.at}' cancel")
        else:
            unsure.update({name: f"nobody has measured whether '{name}' inverts" for name in each.unsure})
    for name, why in unsure.items():
        yield KIND.cant_check(
            rig.units[name].declared,
            f"{why}; whether the paths beside it cancel can't be checked",
            subject=(name,),
            help=f"write `series` or `parallel` behind the loop of '{name}'"
            if rig.units[name].kind == "amp"
            else f"measure it, and write `inverts` or `non-inverting` in '{name}'",
        )


def _told(rig: Rig, paths: Parallel) -> Diagnostic:
    turned = next(each for on in paths.states if (each := paths.against(on)))
    names = tuple(dict.fromkeys((*paths.turning, *(name for each in paths.legs for name in each.turned))))
    loss = paths.low_loss_db
    numbers = [Number("lowest note", LOWEST_NOTE_HZ.value, "Hz")]
    if loss is not None and isfinite(loss):
        numbers.append(Number("lost there", -loss, "dB"))
    return KIND.at(
        paths.span,
        f"at '{paths.at}', {listed(each.label for each in turned)} is turned against '{paths.legs[0].label}' "
        f"{when_turned(paths)}: {_lost(paths, loss)}",
        subject=(paths.at, *names),
        label="the paths meet here",
        also=tuple(Label(rig.units[name].declared, f"'{name}' inverts") for name in names),
        numbers=tuple(numbers),
        note=counted(paths),
        help=way_out(paths, _flip(paths, names)),
    )


def _lost(paths: Parallel, loss: float | None) -> str:
    shares = "" if paths.shared_out else " at equal shares"
    if loss is None:
        return f"the low notes are lost (how much depends on {listed(paths.untimed or paths.unsure)})"
    if not isfinite(loss):
        return f"they cancel{shares}"
    return f"{decimals(-loss)} dB are lost at the low E of {decimals(LOWEST_NOTE_HZ.value, 2)} Hz{shares}"


def _flip(paths: Parallel, names: tuple[str, ...]) -> str:
    if any(each.flipped for each in paths.legs) and not names:
        return "take the word `inverted` out of the blend, and set its switch so"
    return f"flip the polarity of one path at '{paths.at}'"


CHECK = paths_cancel
