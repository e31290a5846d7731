"""Ways side by side -> whether they cancel, how far they are apart, what is lost: figures of one place where they meet."""

from __future__ import annotations

from collections.abc import Collection, Iterable
from typing import Any

from rigc.analysis.signal.parallel.comb import Notch, Way, loss_db, notches
from rigc.analysis.signal.parallel.leg import Leg
from rigc.facts.paths import LATENCY_APART_MS
from rigc.record import Record
from rigc.source import Span
from rigc.traced.means import highest, least
from rigc.traced.term import Unknown

JOIN, AMP_LOOP, AMPS, DESK = "join", "amp loop", "amps", "desk"


class LowNote(Record):
    """The lowest note of an instrument that is heard here, in Hz; `stated`, else a guitar's low E is taken."""

    instrument: str
    hertz: float
    stated: bool


class LowLoss(Record):
    """What is lost at a note, in dB (0 or negative; minus infinity: all of it), with these of the turning units `on` and
    the others of them off."""

    on: tuple[str, ...]
    note: LowNote
    db: float


class Parallel(Record):
    """Ways side by side that meet at `at`: in a unit (`join`), in an amp (`amp loop`), in the air (`amps`), or in a
    desk if it sums them (`desk`).

    The dry leg stands first where there is one. Legs in which only echoes arrive are told, but not compared. `mix` is how an amp joins its
    loop (`series` has one leg; None: not said). `scenarios` is empty where it is the same in all. `notes` are those of the
    instruments that are heard here.
    """

    kind: str
    at: str
    legs: tuple[Leg, ...]
    mix: str | None
    scenarios: tuple[str, ...]
    notes: tuple[LowNote, ...]
    span: Span

    @property
    def combing(self) -> tuple[Leg, ...]:
        """The legs that make a comb or cancel: those in which the sound itself arrives. The first is what the others are
        compared with."""
        return tuple(each for each in self.legs if each.direct)

    @property
    def turning(self) -> tuple[str, ...]:
        """The units that turn one leg against the first one when they are on."""
        if not self.combing:
            return ()
        first, *others = self.combing
        both = (({*each.turning} ^ {*first.turning}, (*first.turning, *each.turning)) for each in others)
        return tuple(dict.fromkeys(name for apart, names in both for name in names if name in apart))

    def against(self, on: Collection[str]) -> tuple[Leg, ...]:
        """The legs that are turned against the first one with these of the turning units on and the others of them off."""
        return tuple(each for each in self.combing[1:] if each.inverted(on) != self.combing[0].inverted(on))

    @property
    def states(self) -> tuple[tuple[str, ...], ...]:
        """The units that are on in each state that matters for polarity: none, each alone, all."""
        return tuple(dict.fromkeys(((), *((name,) for name in self.turning), self.turning)))

    @property
    def turned(self) -> bool:
        """Whether in any on/off state one leg is turned against the first."""
        return any(self.against(on) for on in self.states)

    @property
    def unsure(self) -> tuple[str, ...]:
        """The units of unknown polarity."""
        return tuple(dict.fromkeys(name for each in self.combing for name in each.unsure))

    @property
    def unsaid(self) -> tuple[str, ...]:
        """The units that do not say whether they invert; a passive one need not."""
        return tuple(dict.fromkeys(name for each in self.combing for name in each.unsaid))

    @property
    def untimed(self) -> tuple[str, ...]:
        """The units that do not say their latency."""
        return tuple(dict.fromkeys(name for each in self.combing for name in each.untimed))

    @property
    def apart_ms(self) -> float | None:
        """The difference between the latest and the earliest leg in ms; None where one is not known."""
        return _apart(self.legs)

    @property
    def comb_ms(self) -> float | None:
        """The difference between the latest and the earliest of these in ms; None where one is not known."""
        return _apart(self.combing)

    @property
    def too_late(self) -> bool:
        """Whether they are known to be more apart than is good."""
        return self.comb_ms is not None and self.comb_ms > LATENCY_APART_MS.value + 1e-9

    @property
    def shared_out(self) -> bool:
        """Whether the shares of all legs are said."""
        return all(each.share is not None for each in self.legs)

    @property
    def late(self) -> Leg:
        """The latest of the legs that make a comb, of those whose latency is known."""
        return max(self.combing, key=lambda each: each.latency_ms or 0.0)

    @property
    def early(self) -> Leg:
        """The earliest of them."""
        return min(self.combing, key=lambda each: each.latency_ms or 0.0)

    @property
    def notches(self) -> tuple[Notch, ...]:
        """The first three notches of the sum of all legs that make a comb, with everything on; none where nothing is apart
        or that is not known."""
        return notches(self.ways(self.turning)) if self.comb_ms else ()

    def low_loss(self, states: Collection[tuple[str, ...]]) -> LowLoss | None:
        """The state of these, and the note, at which most is lost, at equal shares where none are said; None where a
        latency or a polarity is not known."""
        if self.unsure or any(each.late_ms(on) is None for each in self.combing for on in states):
            return None
        found = [LowLoss(on, note, loss_db(note.hertz, self.ways(on))) for on in states for note in self.notes]
        return min(found, key=lambda each: each.db) if found else None

    @property
    def worst_low_loss(self) -> LowLoss | None:
        """The same of all states."""
        return self.low_loss(self.states)

    def ways(self, on: Collection[str]) -> tuple[Way, ...]:
        """The legs that make a comb as they add up with these of the turning units on and the others of them off."""
        return tuple(
            Way(
                float(each.share) if self.shared_out and each.share is not None else 1.0,
                each.late_ms(on) or 0.0,
                each.inverted(on),
            )
            for each in self.combing
        )


def _apart(legs: Collection[Leg]) -> float | None:
    times = [each.latency_ms for each in legs if each.latency_ms is not None]
    return None if not times or len(times) < len(legs) else float(between(times))


def between(times: Iterable[float | Unknown]) -> Any:
    """The difference between the latest and the earliest of these times, at least one."""
    every = tuple(times)
    return highest(*every) - least(*every)
