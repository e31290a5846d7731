"""Ways side by side -> whether they cancel, how far they are apart, what is lost: figures of one place where they meet."""

from __future__ import annotations

from rigc.analysis.signal.comb import loss_db, nulls_hz
from rigc.analysis.signal.leg import Leg
from rigc.facts.paths import LOWEST_NOTE_HZ
from rigc.record import Record
from rigc.source import Span

JOIN, AMP_LOOP, AMPS = "join", "amp loop", "amps"


class Parallel(Record):
    """Ways side by side that meet at `at`: in a unit (`join`), in an amp (`amp loop`), or in the air (`amps`).

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
    def against(self) -> tuple[Leg, ...]:
        """The legs that are turned against the first one with all units off."""
        return tuple(each for each in self.legs[1:] if _fixed(each, self.legs[0]))

    @property
    def turning(self) -> tuple[str, ...]:
        """The units that turn one leg against the first one when they are on."""
        first = self.legs[0]
        names = (
            name for each in self.legs[1:] for name in (*_alone(first.turning, each), *_alone(each.turning, first))
        )
        return tuple(dict.fromkeys(names))

    @property
    def against_on(self) -> tuple[Leg, ...]:
        """The legs that are turned against the first one with all units on."""
        first = self.legs[0]
        return tuple(
            each
            for each in self.legs[1:]
            if _fixed(each, first) != bool((len(_alone(first.turning, each)) + len(_alone(each.turning, first))) % 2)
        )

    @property
    def turned(self) -> bool:
        """Whether in any on/off state one leg is turned against the first."""
        return bool(self.against or self.turning)

    @property
    def unsure(self) -> tuple[str, ...]:
        """The units of unknown polarity."""
        return tuple(dict.fromkeys(name for each in self.legs for name in each.unsure))

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
    def share(self) -> float | None:
        """How strong the last leg is against the first; None where the shares are not said."""
        first, last = self.legs[0].share, self.legs[-1].share
        return None if not first or last is None else last / first

    @property
    def nulls_hz(self) -> tuple[float, ...]:
        """The first three nulls in Hz, with everything on; none where nothing is apart or that is not known."""
        return nulls_hz(self.apart_ms or 0.0, bool(self.against_on))

    @property
    def low_loss_db(self) -> float | None:
        """What is lost at the lowest note in the worst on/off state, in dB, at equal shares where none are said."""
        if self.apart_ms is None or self.unsure:
            return None
        share = 1.0 if self.share is None else self.share
        return loss_db(LOWEST_NOTE_HZ.value, self.apart_ms, share, self.turned)


def _fixed(one: Leg, other: Leg) -> bool:
    """Whether two legs are turned against each other by what can't be switched off."""
    count = len(_alone(one.turned, other)) + len(_alone(other.turned, one)) + one.flipped + other.flipped
    return count % 2 == 1


def _alone(names: tuple[str, ...], other: Leg) -> tuple[str, ...]:
    return tuple(name for name in names if name not in other.things)
