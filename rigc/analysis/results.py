"""Results: values by their type. A computation's or check's parameter types say what it needs; each value is made once."""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterable
from functools import cache
from typing import Any, TypeVar

from rigc.analysis.kept import NOTHING_KEPT, Kept
from rigc.analysis.previous import NOTHING_BEFORE, Previous
from rigc.discover import member
from rigc.model.rig import Rig
from rigc.model.seen_rig import SeenRig, differing

T = TypeVar("T")


class Results:
    """Everything that follows from a rig, computed when it is first asked for.

    A computation is the `COMPUTE` function of the module that declares the type: what its annotations name is handed to
    it, what it returns is kept. So no module is loaded whose value nobody asks for. The rig itself, the revision before
    it (`previous`), these results and what is `Kept` of earlier runs can be asked for like any of them; what is `given` is not computed. `between` is called
    before each computation, and may raise to stop them all.

    Of a rig that differs little from that of other results, which stand `beside`, only what reads a part that differs is computed; `rig`
    must hold the same objects where it is the same (`with_same`). Places in sources are then those of the one or the other.
    """

    def __init__(
        self,
        rig: Rig,
        previous: Previous = NOTHING_BEFORE,
        given: tuple[Any, ...] = (),
        between: Callable[[], None] | None = None,
        beside: Results | None = None,
    ) -> None:
        self.rig = rig
        self._between = between
        self._given: dict[Any, Any] = {
            Previous: previous,
            Kept: NOTHING_KEPT,
            **{type(value): value for value in given},
        }
        self._values: dict[Any, Any] = {Rig: rig, Results: self, **self._given}
        self._making: list[Any] = []
        self._reads: dict[Any, set[str]] = {}
        self._beside = beside
        self._differ = () if beside is None else differing(rig, beside.rig)
        self._stays: dict[Any, bool] = {Rig: True, Results: False}

    def get(self, kind: type[T]) -> T:
        """The value of that type. Two computations that need each other are a bug and raise with their names."""
        if kind not in self._values:
            self._values[kind] = self._asked(kind)
        value: T = self._values[kind]
        return value

    def call(self, function: Callable[..., Any]) -> Any:
        """Calls a sheet or the like with what its parameter types ask for."""
        return function(*(self.get(kind) for kind in needed(function)[0]))

    def found(self, check: Callable[..., Iterable[T]]) -> tuple[T, ...]:
        """All that a check finds, asked once."""
        if check not in self._values:
            self._values[check] = tuple(self._asked(check))
        found: tuple[T, ...] = self._values[check]
        return found

    @property
    def sound(self) -> bool:
        """Whether what was taken from `beside` still stands: a value that was made there may have read a part of the rig since."""
        reads = {} if self._beside is None else self._beside._reads
        return all(
            reads[kind].isdisjoint(self._differ) for kind, stays in self._stays.items() if stays and kind in reads
        )

    def alone(self) -> Results:
        """The same, with nothing computed yet and nothing beside it."""
        return Results(
            self.rig,
            self._given[Previous],
            tuple(self._given[kind] for kind in self._given if kind is not Previous),
            self._between,
        )

    def _asked(self, kind: Any) -> Any:
        if self._beside is not None and self._same(kind):
            return self._beside._values[kind]
        if kind in self._making:
            circle = " -> ".join(each.__name__ for each in [*self._making, kind])
            raise AssertionError(f"computations need each other: {circle}")
        self._making.append(kind)
        try:
            if self._between is not None:
                self._between()
            function = _function(kind)
            self._reads[kind] = set()
            return function(*(self._handed(each, kind) for each in needed(function)[0]))
        finally:
            self._making.pop()

    def _handed(self, kind: Any, to: Any) -> Any:
        return SeenRig(self.rig, self._reads[to]) if kind is Rig else self.get(kind)

    def _same(self, kind: Any) -> bool:
        """Whether the value that stands beside is of nothing that differs here."""
        if kind not in self._stays:
            beside = self._beside
            assert beside is not None
            if kind in self._given or kind in beside._given:
                self._stays[kind] = kind in self._given and self._given[kind] is beside._given.get(kind)
            elif kind not in beside._values or not beside._reads[kind].isdisjoint(self._differ):
                self._stays[kind] = False
            else:
                self._stays[kind] = all(map(self._same, needed(_function(kind))[0]))
        return self._stays[kind]


def _function(kind: Any) -> Callable[..., Any]:
    """What computes a type, or a check itself."""
    function: Callable[..., Any] = _maker(kind) if isinstance(kind, type) else kind
    return function


def _maker(kind: type[Any]) -> Callable[..., Any]:
    made: Callable[..., Any] = member(kind.__module__, "COMPUTE")
    assert needed(made)[1] is kind, f"{kind.__module__} computes no {kind.__name__}"
    return made


@cache
def needed(function: Callable[..., Any]) -> tuple[tuple[type[Any], ...], Any]:
    """The parameter types of a function in order, and its return type. Parameter annotations must be plain class names."""
    scope = sys.modules[function.__module__].__dict__
    hints = {
        name: scope.get(kind, kind) if isinstance(kind, str) else kind
        for name, kind in function.__annotations__.items()
    }
    given = hints.pop("return", None)
    return tuple(hints.values()), given
