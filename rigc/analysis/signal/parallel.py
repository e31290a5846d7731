"""Ways side by side -> whether they cancel, how far they are apart, what is lost: figures of one place where they meet."""

from __future__ import annotations

from collections.abc import Collection

from rigc.analysis.signal.comb import Way, loss_db, nulls_hz
from rigc.analysis.signal.leg import Leg
from rigc.facts.paths import LOWEST_NOTE_HZ
from rigc.record import Record
from rigc.source import Span

JOIN, AMP_LOOP, AMPS, DESK = "join", "amp loop", "amps", "desk"


class Parallel(Record):
    """Ways side by side that meet at `at`: in a unit (`join`), in an amp (`amp loop`), in the air (`amps`), or in a
    desk if it sums them (`desk`).

    The first leg is the one that the others are compared with: the dry one where there is one. `mix` is how an amp joins its
    loop (`series` has one leg; None: not said). `scenarios` is empty where it is the same in all.
    """

    kind: str
    at: str
    legs: tuple[Leg, ...]
    mix: str | None
    scenarios: tuple[str, ...]
    span: Span

    @property
    def turning(self) -> tuple[str, ...]:
        """The units that turn one leg against the first one when they are on."""
        first = self.legs[0]
        both = (({*each.turning} ^ {*first.turning}, (*first.turning, *each.turning)) for each in self.legs[1:])
        return tuple(dict.fromkeys(name for apart, names in both for name in names if name in apart))

    def against(self, on: Collection[str]) -> tuple[Leg, ...]:
        """The legs that are turned against the first one with these units on and all others off."""
        return tuple(each for each in self.legs[1:] if each.inverted(on) != self.legs[0].inverted(on))

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
        return tuple(dict.fromkeys(name for each in self.legs for name in each.unsure))

    @property
    def unsaid(self) -> tuple[str, ...]:
        """The units that do not say whether they invert; a passive one need not."""
        return tuple(dict.fromkeys(name for each in self.legs for name in each.unsaid))

    @property
    def untimed(self) -> tuple[str, ...]:
        """The units that do not say their latency."""
        return tuple(dict.fromkeys(name for each in self.legs for name in each.untimed))

    @property
    def apart_ms(self) -> float | None:
        """The difference between the latest and the earliest leg in ms; None where one is not known."""
        times = [each.latency_ms for each in self.legs if each.latency_ms is not None]
        return None if len(times) < len(self.legs) else max(times) - min(times)

    @property
    def shared_out(self) -> bool:
        """Whether the shares of all legs are said."""
        return all(each.share is not None for each in self.legs)

    @property
    def late(self) -> Leg:
        """The latest leg, of those whose latency is known."""
        return max(self.legs, key=lambda each: each.latency_ms or 0.0)

    @property
    def early(self) -> Leg:
        """The earliest leg."""
        return min(self.legs, key=lambda each: each.latency_ms or 0.0)

    @property
    def nulls_hz(self) -> tuple[float, ...]:
        """The first three nulls in Hz of the latest against the earliest leg, with everything on; none where nothing is
        apart or that is not known."""
        on = self.turning
        return nulls_hz(self.apart_ms or 0.0, self.late.inverted(on) != self.early.inverted(on))

    @property
    def low_loss_db(self) -> float | None:
        """What is lost at the lowest note in the worst on/off state, in dB, at equal shares where none are said."""
        if self.apart_ms is None or self.unsure:
            return None
        return min(loss_db(LOWEST_NOTE_HZ.value, self._ways(on)) for on in self.states)

    def _ways(self, on: Collection[str]) -> tuple[Way, ...]:
        shares = [each.share if self.shared_out and each.share is not None else 1.0 for each in self.legs]
        return tuple(
            Way(share, each.latency_ms or 0.0, each.inverted(on)) for share, each in zip(shares, self.legs, strict=True)
        )
