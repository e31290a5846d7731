"""When memory is tidied: a full search for circles takes longer than an answer, so it waits until nobody types."""

from __future__ import annotations

import gc


def seldom() -> None:
    """From now on only what has piled up far is searched by itself."""
    gc.set_threshold(200_000, 50, 100)


def tidy() -> None:
    """Tidies up; takes some hundred milliseconds."""
    gc.collect()
