"""Names -> the words in which a finding lists them."""

from __future__ import annotations

from collections.abc import Iterable


def listed(names: Iterable[object], joined_by: str = "and") -> str:
    """The names in quotes, commas between, `and` (or another word) before the last."""
    quoted = [f"'{name}'" for name in names]
    if len(quoted) < 2:
        return "".join(quoted)
    return f"{', '.join(quoted[:-1])} {joined_by} {quoted[-1]}"
