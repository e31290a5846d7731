"""Kept: what was made once of the same things, from one run to the next, as a value that computations and sheets can ask for."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, Protocol, TypeVar

T = TypeVar("T")


class Store(Protocol):
    """Bytes by name from one run to the next; what is read is what was written, or None."""

    def read(self, name: str) -> bytes | None: ...

    def write(self, name: str, data: bytes) -> None: ...

    def __hash__(self) -> int: ...


class Kept:
    """Answers by all that they hang on: a change of it is another name, so that nothing kept can be stale. `code` gives what stands for
    this rigc. Without a store each answer is made anew."""

    def __init__(self, store: Store | None = None, code: Callable[[], str] = str) -> None:
        self.store = store
        self.code = code

    def answer(self, sort: str, what: object, make: Callable[[], T], told: Callable[[Any], T]) -> T:
        """What `make` makes of `what` alone and JSON can hold; `told` is given that, with lists for tuples. `what` holds no function
        that has no name."""
        if self.store is None:
            return make()
        return self.named(sort, self.name(what), make, told)

    def named(self, sort: str, name: str, make: Callable[[], T], told: Callable[[Any], T]) -> T:
        """As `answer`, of what has that name."""
        if self.store is None:
            return make()
        import json  # help is told without

        saved = self.store.read(f"{sort}-{name}")
        if saved is not None:
            try:
                return told(json.loads(saved))
            except (ValueError, TypeError, LookupError):
                pass  # not what was kept: made anew
        made = make()
        self.store.write(f"{sort}-{name}", json.dumps(made).encode("ascii"))
        return made

    def name(self, what: object) -> str:
        """What stands for all that `what` holds, and for the code that reads it; nothing where nothing is kept."""
        if self.store is None:
            return ""
        import pickle  # most that is asked for hangs on nothing kept
        from hashlib import sha256
        from io import BytesIO

        content = BytesIO()
        content.write(self.code().encode("ascii"))
        pickler = pickle.Pickler(content, pickle.HIGHEST_PROTOCOL)
        pickler.fast = True  # the same bytes however often one and the same value stands in it
        pickler.dump(what)
        return sha256(content.getbuffer()).hexdigest()[:40]


NOTHING_KEPT = Kept()
