"""Results: values by their type. A computation's or check's parameter types say what it needs; each value is made once."""

from __future__ import annotations

import sys
from collections.abc import Callable
from functools import cache
from typing import Any, TypeVar

from rigc.analysis.kept import NOTHING_KEPT, Kept
from rigc.analysis.previous import NOTHING_BEFORE, Previous
from rigc.discover import member
from rigc.model.rig import Rig

T = TypeVar("T")


class Results:
    """Everything that follows from a rig, computed when it is first asked for.

    A computation is the `COMPUTE` function of the module that declares the type: what its annotations name is handed to
    it, what it returns is kept. So no module is loaded whose value nobody asks for. The rig itself, the revision before
    it (`previous`), these results and what is `Kept` of earlier runs can be asked for like any of them; what is `given` is not computed. `between` is called
    before each computation, and may raise to stop them all.
    """

    def __init__(
        self,
        rig: Rig,
        previous: Previous = NOTHING_BEFORE,
        given: tuple[Any, ...] = (),
        between: Callable[[], None] | None = None,
    ) -> None:
        self.rig = rig
        self._between = between
        self._values: dict[Any, Any] = {Rig: rig, Previous: previous, Results: self, Kept: NOTHING_KEPT}
        self._values |= {type(value): value for value in given}
        self._making: list[Any] = []

    def get(self, kind: type[T]) -> T:
        """The value of that type. Two computations that need each other are a bug and raise with their names."""
        if kind not in self._values:
            if kind in self._making:
                circle = " -> ".join(each.__name__ for each in [*self._making, kind])
                raise AssertionError(f"computations need each other: {circle}")
            self._making.append(kind)
            try:
                if self._between is not None:
                    self._between()
                self._values[kind] = self.call(_maker(kind))
            finally:
                self._making.pop()
        value: T = self._values[kind]
        return value

    def call(self, function: Callable[..., Any]) -> Any:
        """Calls a computation, check or sheet with what its parameter types ask for."""
        return function(*(self.get(kind) for kind in needed(function)[0]))


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
