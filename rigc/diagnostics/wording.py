"""Names -> the words in which a finding lists them."""

from __future__ import annotations

from collections.abc import Iterable


def listed(names: Iterable[object], joined_by: str = "and") -> str:
    """The names in quotes, commas between, `and` (or another word) before the last."""
    return joined((f"'{name}'" for name in names), joined_by)


def joined(parts: Iterable[object], joined_by: str = "and") -> str:
    """The same of parts that need no quotes."""
    words = [str(part) for part in parts]
    if len(words) < 2:
        return "".join(words)
    return f"{', '.join(words[:-1])} {joined_by} {words[-1]}"
