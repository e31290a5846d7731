"""A cell that can't be understood without guessing."""

from __future__ import annotations


class Unclear(Exception):
    """Why it can't be understood; `do` is one thing to do about it."""

    def __init__(self, why: str, do: str) -> None:
        super().__init__(why)
        self.do = do
