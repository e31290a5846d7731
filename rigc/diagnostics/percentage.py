"""A share in percent -> how a finding writes it."""

from __future__ import annotations

from rigc.diagnostics.figures import share


def percentage(percent: float | None) -> str:
    """`51.3 %`: one decimal, none where it is 0; empty where the whole is nothing."""
    return "" if percent is None else f"{share(percent)} %"
