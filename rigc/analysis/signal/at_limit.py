"""Comparing with a limit: exactly at it is not over it, whatever the last binary digit says."""

from __future__ import annotations


def over(amount: float, limit: float) -> bool:
    """Whether an amount is more than its limit; to ask for less, put the two the other way round."""
    return amount > limit * (1 + 1e-9)
