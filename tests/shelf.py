"""A store of what is kept, for tests that look at it."""

from __future__ import annotations


class Shelf(dict[str, bytes]):
    """A store in memory."""

    def read(self, name: str) -> bytes | None:
        return self.get(name)

    def write(self, name: str, data: bytes) -> None:
        self[name] = data

    def __hash__(self) -> int:  # type: ignore[override]
        return id(self)
