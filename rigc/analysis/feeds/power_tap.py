"""Outlets and their settings -> a tap: what a unit on them gets, and which part of its current each of them bears."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import Any, TypeVar

from rigc.analysis.feeds.load_limits import percent_of
from rigc.diagnostics.wording import joined
from rigc.facts.power import PARALLEL_SHARE
from rigc.model.jacks import Connector, Port
from rigc.model.rig import Rig
from rigc.model.things import Outlet, Rating
from rigc.record import Record
from rigc.traced.means import least

T = TypeVar("T")


class Tap(Record):
    """One outlet, or several joined `how` (`series`, `parallel`), each at one of its `settings`.

    `volts` is their sum in series and the lowest in parallel; `limit_ma` the smaller rating in series, nine tenths of the
    sum in parallel. `current` is empty where AC and DC outlets are joined; `polarity` and `connector` are None where not
    said or not equal. `lower` is the outlet of a series pair whose return is the pair's, None where that is not stated.
    """

    outlets: tuple[Port, ...]
    how: str
    settings: tuple[Rating, ...]
    volts: float
    current: str
    limit_ma: float
    polarity: str | None
    connector: Connector | None
    lower: Port | None = None

    def __str__(self) -> str:
        return outlets_told(self.outlets, self.how)

    @property
    def gives(self) -> str:
        """`gives`, or `give` where it is several outlets."""
        return "give" if self.how else "gives"

    def setting(self, outlet: Port) -> Rating:
        """At which of its ratings one of its outlets stands; ValueError if it is none of its outlets."""
        return self.settings[self.outlets.index(outlet)]

    def share(self, outlet: Port) -> float:
        """Which part of a current one of its outlets bears: in parallel as its rating to the sum of ratings, else all."""
        rated = [setting.milliamps.value for setting in self.settings]
        return float(share_of(self.how, rated, self.outlets.index(outlet)))

    def percent(self, current_ma: float) -> float | None:
        """A current in percent of what may be taken; None where nothing may."""
        return percent_of(current_ma, self.limit_ma)


def outlets_told(outlets: Iterable[Port], how: str) -> str:
    """The outlets that feed as one: `mill5.o1 and mill5.o2 in series`; `how` is empty of a single one."""
    names = " and ".join(map(str, outlets))
    return f"{names} in {how}" if how else names


def outlets_named(taps: Iterable[Tap]) -> str:
    """The outlets of several taps, each once, as a finding names them."""
    return joined(dict.fromkeys(port for each in taps for port in each.outlets))


def outlet_at(rig: Rig, port: Port) -> Outlet | None:
    """The outlet at a port; None where there is none of that name."""
    supply = rig.supplies.get(port.thing)
    return None if supply is None else supply.outlet(port.jack)


def tap(rig: Rig, ports: tuple[Port, ...], how: str, settings: tuple[Rating, ...]) -> Tap:
    """The tap that the outlets at these ports make, each at its setting (as many settings as ports)."""
    outlets = [outlet_at(rig, port) for port in ports]
    volts = [setting.volts.value for setting in settings]
    rated = [setting.milliamps.value for setting in settings]
    return Tap(
        ports,
        how,
        settings,
        volts_of(how, volts),
        _same([setting.current for setting in settings]) or "",
        limit_of(how, rated, PARALLEL_SHARE.value),
        _same([outlet.polarity if outlet else None for outlet in outlets]),
        _same([outlet.connector if outlet else None for outlet in outlets]),
    )


def volts_of(how: str, volts: Sequence[float]) -> Any:
    """What outlets at these voltages give together, in V; traced where these are."""
    return sum(volts) if how == "series" else least(*volts)


def limit_of(how: str, ratings: Sequence[float], parallel_pct: float) -> Any:
    """What may be taken of outlets with these ratings together, in mA; traced where these are."""
    return sum(ratings) * parallel_pct / 100 if how == "parallel" else least(*ratings)


def share_of(how: str, ratings: Sequence[float], at: int) -> Any:
    """Which share of a current the outlet at that place of the ratings bears: in parallel as its rating to their sum, else
    all; traced where the ratings are."""
    return ratings[at] / sum(ratings) if how == "parallel" and sum(ratings) > 0 else 1


def _same(values: list[T]) -> T | None:
    return values[0] if all(value == values[0] for value in values) else None
