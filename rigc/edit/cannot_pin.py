"""CannotPin: chosen values that cannot be stated without a change of others."""

from __future__ import annotations


class CannotPin(Exception):
    """Nothing was pinned. The text is one line that says why, and what to do."""
