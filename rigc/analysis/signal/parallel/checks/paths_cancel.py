"""Paths that run side by side and join again differ in polarity in at least one on/off state.

Why it matters: what is equal in both cancels. The low notes go first, since what the paths do differently is mostly treble.
What to do: flip the polarity of one path at the mixer, and see that no unit in it turns the signal over only while it is on.
Source: physics: the sum is |Σ ±g exp(-j 2 pi f tau)|, told for the state and the note that are named: the lowest note of
the instrument (`lowest note`), else the low E of a guitar (equal temperament at A = 440 Hz; ISO 16, from memory). Of the
inputs of a desk it is what is lost where the desk sums them. What a unit on one path only does not say (`inverts`,
`non-inverting`) can't be checked; a passive one without a transformer turns nothing over.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import isfinite

from rigc.analysis.signal.parallel.comb_words import note_told, notes_taken
from rigc.analysis.signal.parallel.parallel import AMP_LOOP, AMPS, DESK, LowLoss, Parallel
from rigc.analysis.signal.parallel.parallel_paths import ParallelPaths
from rigc.analysis.signal.parallel.turned_words import counted, state_told, unsaid, way_out, when_turned
from rigc.diagnostics.decimals import decimals
from rigc.diagnostics.diagnostic import Diagnostic, Kind, Label, Level, Number
from rigc.diagnostics.mend import Mend, Replace
from rigc.diagnostics.wording import listed
from rigc.model.rig import Rig
from rigc.model.wishes import BlendPath

KIND = Kind(
    "paths-cancel",
    Level.WARNING,
    __doc__,
    "paths that join again have the same polarity in every on/off state",
    "physics: the sum of ways, |Σ ±g exp(−j 2πfτ)|",
)


def paths_cancel(rig: Rig, paths: ParallelPaths) -> Iterator[Diagnostic]:
    """One finding for each place where paths meet; can't-check for each unit of unknown polarity, each amp of unknown mix,
    and each place where units do not say theirs."""
    unsure: dict[str, str] = {}
    for each in paths.all:
        if each.kind == AMPS or len(each.combing) < 2:
            continue
        if each.mix is None and each.kind == AMP_LOOP:
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
    states = tuple(on for on in paths.states if paths.against(on))
    loss = paths.low_loss(states)
    turned = paths.against(states[0] if loss is None else loss.on)
    names = tuple(dict.fromkeys((*paths.turning, *(name for each in paths.combing for name in each.turned))))
    numbers: list[Number] = []
    if loss is not None and isfinite(loss.db):
        numbers = [Number("lowest note", loss.note.hertz, "Hz"), Number("lost there", -loss.db, "dB")]
    taken = notes_taken(paths) if numbers else ""
    return KIND.at(
        paths.span,
        f"{_where(paths)}{listed(each.label for each in turned)} {'is' if len(turned) == 1 else 'are'} turned against "
        f"'{paths.combing[0].label}' {when_turned(paths)}: {_lost(paths, loss)}",
        subject=(*paths.at.split(", "), *names),
        label="the paths meet here",
        also=tuple(Label(rig.units[name].declared, f"'{name}' inverts") for name in names),
        numbers=tuple(numbers),
        note="; ".join(filter(None, (counted(paths), taken))),
        mends=() if paths.turning else _turned_back(rig, paths),
        help=way_out(paths, _flip(paths, turned[0].label)),
    )


def _lost(paths: Parallel, loss: LowLoss | None) -> str:
    shares = "" if paths.shared_out else " at equal shares"
    if loss is None:
        return f"the low notes are lost (how much depends on {listed(paths.untimed or paths.unsure or paths.turning)})"
    state = f"{state_told(paths, loss.on)} " if len(paths.turning) > 1 else ""
    if not isfinite(loss.db):
        return f"{state}they cancel{shares}"
    lost = decimals(-loss.db)
    return f"{state}{f'{lost} dB are' if lost != '0' else 'nothing is'} lost at {note_told(loss.note)}{shares}"


def _turned_back(rig: Rig, paths: Parallel) -> tuple[Mend, ...]:
    """The blend with each of its turned ways turned over once more."""
    turned = [{*leg.things} for leg in paths.against(())]
    edits = [
        Replace(path.span, _toggled(path))
        for blend in rig.blends
        for path in blend.paths
        if blend.unit == paths.at and {stop.thing for stop in path.stops} in turned
    ]
    if not edits:
        return ()
    words = (
        "take the word `inverted` out of the blend, and set its switch so"
        if all("inverted" not in edit.text for edit in edits)
        else "turn the polarity switch of that path, and write `inverted` in the blend"
    )
    return (Mend(words, tuple(edits)),)


def _toggled(path: BlendPath) -> str:
    text = path.span.text
    return text.replace(" inverted", "", 1) if path.inverted else text.replace(" through", " inverted through", 1)


def _where(paths: Parallel) -> str:
    return "where the desk sums them, " if paths.kind == DESK else f"at '{paths.at}', "


def _flip(paths: Parallel, turned: str) -> str:
    if paths.kind == DESK:
        return f"use the polarity switch of '{turned}'"
    return f"flip the polarity of one path at '{paths.at}'"


CHECK = paths_cancel
