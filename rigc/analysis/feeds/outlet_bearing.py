"""Units and a tap -> whether the tap bears their currents."""

from __future__ import annotations

from math import ceil

from rigc.analysis.feeds.load_limits import LoadLimits, exceeds
from rigc.analysis.feeds.power_tap import Tap
from rigc.model.things import Unit

_ROUND_MA = 50.0


def bears(tap: Tap, units: tuple[Unit, ...], limits: LoadLimits) -> bool:
    """Whether a tap bears these units together: their current within the limit, their start-up current within the rating.

    A unit whose current is not known weighs nothing here; the checks say that they can't tell.
    """
    share = limits.digital_pct if any(unknown_start(unit) for unit in units) else limits.load_pct
    return not (
        exceeds(sum(drawn_ma(unit) for unit in units), share, tap.limit_ma)
        or exceeds(sum(highest_ma(unit) for unit in units), 100, tap.limit_ma)
    )


def drawn_ma(unit: Unit) -> float:
    """What is known to be drawn, in mA; 0 where it is not known."""
    return unit.draws_ma.value if unit.draws_ma is not None else 0.0


def highest_ma(unit: Unit) -> float:
    """The highest current that is known, at start-up or later, in mA."""
    return max(drawn_ma(unit), unit.starts_ma.value if unit.starts_ma is not None else 0.0)


def asked_rating_ma(unit: Unit, limits: LoadLimits) -> float:
    """The smallest round rating of an outlet that bears the unit alone as `bears` wants it, in mA."""
    share = limits.digital_pct if unknown_start(unit) else limits.load_pct
    needed = max(drawn_ma(unit) * 100 / share, highest_ma(unit))
    return max(ceil(needed / _ROUND_MA - 1e-9), 1) * _ROUND_MA


def unknown_start(unit: Unit) -> bool:
    """Whether a unit is digital and its start-up current is not stated."""
    return "digital" in unit.flags and unit.starts_ma is None
