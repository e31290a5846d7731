"""Paths of unequal polarity -> in which states they are, and the cheapest way out, in words."""

from __future__ import annotations

from rigc.analysis.signal.parallel.parallel import Parallel
from rigc.diagnostics.diagnostic import Diagnostic, Kind
from rigc.diagnostics.wording import listed
from rigc.model.rig import Rig


def when_turned(paths: Parallel) -> str:
    """The states in which one path is turned against the first."""
    names = paths.turning
    if not names:
        return "in every state"
    if len(names) == 1:
        return f"while '{names[0]}' is {'off' if paths.against(()) else 'on'}"
    return f"depending on which of {listed(names)} are on"


def state_told(paths: Parallel, on: tuple[str, ...]) -> str:
    """Which of the units that turn a path are on and which are off; empty where there are none."""
    off = tuple(name for name in paths.turning if name not in on)
    parts = [f"{listed(names)} {word}" for names, word in ((on, "on"), (off, "off")) if names]
    return f"with {' and '.join(parts)}" if parts else ""


def way_out(paths: Parallel, flip: str) -> str:
    """What to do about it; `flip` says how the polarity of the path is flipped here."""
    names = paths.turning
    if not names:
        return flip
    if len(names) == 1 and paths.against(()):
        return f"leave '{names[0]}' on whenever this is heard, or take it and the flip out of the path"
    if len(names) == 1:
        return f"{flip} whenever '{names[0]}' is on, or put a unit there that does not invert"
    return f"take {listed(names)} out of the paths, or put units there that do not invert"


def unsaid(kind: Kind, rig: Rig, paths: Parallel, what: str) -> Diagnostic:
    """The finding that `what` can't be checked, because units on only some of the paths do not say whether they invert."""
    names = paths.unsaid
    return kind.cant_check(
        rig.units[names[0]].declared,
        f"{_silent(names)}; whether {what} can't be checked",
        subject=(*names, *paths.at.split(", ")),
        help=f"measure {'it' if len(names) == 1 else 'each'}, and write `inverts` or `non-inverting` in {listed(names)}",
    )


def counted(paths: Parallel) -> str:
    """What a finding of unequal polarity takes for granted; empty where nothing."""
    return f"{_silent(paths.unsaid)}; taken as non-inverting here" if paths.unsaid else ""


def _silent(names: tuple[str, ...]) -> str:
    one = len(names) == 1
    return f"{listed(names)} {'does' if one else 'do'} not say whether {'it inverts' if one else 'they invert'}"
