"""A cable that is cut -> how many ends get heat-shrink, how much of it, and how small it must shrink."""

from __future__ import annotations

from rigc.analysis.cables.reel_use import ReelUse
from rigc.facts.bench import SHRINK_SHARE, SHRINK_TO_MM


def shrink_pieces(use: ReelUse) -> int:
    """How many ends of a cable are made here."""
    return sum(1 for lead in use.leads for port in (lead.start, lead.end) if port != lead.captive)


def shrink_cm(pieces: int) -> int:
    """How much heat-shrink these take at most, in cm, part ones counted as whole."""
    return -(-round(pieces * SHRINK_TO_MM.value * 10) // 100)


def shrunk_mm(outer_mm: float) -> float:
    """What the shrunk inside must be below to grip a jacket of this diameter."""
    return round(outer_mm * SHRINK_SHARE.value, 6)
