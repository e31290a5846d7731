"""Rig -> how far its outlets and supplies may be loaded: the rules of practice, or the rig's own limits."""

from __future__ import annotations

from rigc.facts.fact import Fact
from rigc.facts.power import DIGITAL_LOAD_SHARE, LOAD_SHARE, TOTAL_SHARE
from rigc.model.rig import Rig
from rigc.record import Record


class LoadLimits(Record):
    """Loads in percent of a rating or ceiling; `digital_pct` holds where a digital unit's start-up current is unknown."""

    load_pct: float
    digital_pct: float
    total_pct: float


HARD = LoadLimits(100.0, 100.0, 100.0)


def load_limits(rig: Rig) -> LoadLimits:
    """The limits that `limit load`, `limit digital load` and `limit total` state, else those of practice.

    A rig that states only `limit load` below the digital limit means digital units too.
    """
    load = _own(rig, "load", LOAD_SHARE)
    return LoadLimits(load, min(load, _own(rig, "digital load", DIGITAL_LOAD_SHARE)), _own(rig, "total", TOTAL_SHARE))


def exceeds(amount: float, share_pct: float, rating: float) -> bool:
    """Whether an amount is more than a share of a rating; exactly full is not, whatever the last binary digit says."""
    return float(amount) * 100.0 > float(share_pct) * float(rating) * (1 + 1e-9)


def percent_of(amount: float, whole: float | None) -> float | None:
    """A share in percent; None where the whole is nothing or not known."""
    return None if whole is None or whole <= 0 else amount / whole * 100


def _own(rig: Rig, name: str, practice: Fact) -> float:
    stated = rig.limit(name)
    return practice.value if stated is None else stated.amount.value


COMPUTE = load_limits
