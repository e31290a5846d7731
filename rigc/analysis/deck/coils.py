"""Units and supplies -> which of them hold a coil that hears, and which a transformer that it would hear."""

from __future__ import annotations

from rigc.model.things import Supply, Unit

TRANSFORMERS = {"linear": "linear", "unregulated": "unregulated", "winding": "a bare winding"}
"""The kinds of supply that hold a mains transformer, in words."""


def has_coil(unit: Unit) -> bool:
    """Whether it is taken for a wah with a coil: a treadle with sound through it that is neither a volume treadle nor digital."""
    heard = {jack.role for jack in unit.jacks if jack.audio}
    filters = unit.treadle_mm is not None and unit.track_ohm is None and "digital" not in unit.flags
    return filters and {"input", "output"} <= heard


def may_hold_transformer(supply: Supply) -> bool:
    """Whether it holds a mains transformer, or does not say."""
    return supply.technology in (*TRANSFORMERS, None)
