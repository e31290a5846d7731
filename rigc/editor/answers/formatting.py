"""A file that can be read whole -> its canonical text; none of one that can't."""

from __future__ import annotations

from rigc.edit.canonical import canonical
from rigc.syntax.parsed import Parsed


def formatted(parsed: Parsed) -> str | None:
    """The text as `rigc fmt` writes it; None where a statement can't be read."""
    return None if parsed.findings else canonical(parsed.file)
