"""The nearest of some names to what was typed; the only place that judges nearness."""

from __future__ import annotations

from collections.abc import Iterable


def nearest(typed: str, names: Iterable[str]) -> str:
    """The name most like `typed`, or an empty text when none is near."""
    from difflib import get_close_matches  # only when something is wrong: the import costs a millisecond

    found = get_close_matches(typed.lower(), list(names), n=1, cutoff=0.7)
    return found[0] if found else ""
