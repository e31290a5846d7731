"""Results: values by their type. A computation's or check's parameter types say what it needs; each value is made once."""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterable
from functools import cache
from typing import Any, TypeVar

from rigc.analysis.findings.known_findings import NOTHING_KNOWN, KnownFindings
from rigc.analysis.kept import NOTHING_KEPT, Kept
from rigc.analysis.previous import NOTHING_BEFORE, Previous
from rigc.diagnostics.diagnostic import tells_line
from rigc.discover import member
from rigc.model.rig import Rig
from rigc.model.seen_rig import SeenRig, differing, looked_at_finely
from rigc.model.twins import MovedPlaces, Places, is_same, joined
from rigc.record import Record

T = TypeVar("T")


class Beside(Record):
    """Results of a rig that differs little (None: the first of a row). What is the same here is taken from there: from another rig of the
    same time, so that places in sources are those of the one or the other; or, where that one `goes_on` here, with each place
    where it lies now, and no longer of use there. `known` gives what is kept of an earlier run on the rig, given the revision before and what else is given."""

    results: Results | None
    goes_on: bool = False
    known: Callable[[Rig, Previous, tuple[object, ...]], KnownFindings] | None = None


class Results:
    """Everything that follows from a rig, computed when it is first asked for.

    A computation is the `COMPUTE` function of the module that declares the type: what its annotations name is handed to
    it, what it returns is kept. So no module is loaded whose value nobody asks for. The rig itself, the revision before
    it (`previous`), these results and what is `Kept` of earlier runs can be asked for like any of them; what is `given` is not computed. `between` is called
    before each computation, and may raise to stop them all.

    Of a rig that differs little from one whose results stand `beside`, only that is computed which reads a part that differs, or a value
    that came out otherwise.
    """

    def __init__(
        self,
        rig: Rig,
        previous: Previous = NOTHING_BEFORE,
        given: tuple[Any, ...] = (),
        between: Callable[[], None] | None = None,
        beside: Beside | None = None,
    ) -> None:
        last = None if beside is None else beside.results
        self._goes_on = beside is not None and beside.goes_on
        places = None if last is None else last._places
        self._places: Places = MovedPlaces(places) if self._goes_on else Places(places)
        self.rig: Rig = self._places.own(rig) if last is None else joined(last.rig, rig, self._places)
        self._finely = looked_at_finely(self.rig)
        self._beside = last
        self._differ = (
            frozenset() if last is None else differing(self.rig, last.rig, () if self._goes_on else Rig.PLACES)
        )
        self.between = between
        self._given: dict[Any, Any] = {
            Previous: previous,
            Kept: NOTHING_KEPT,
            KnownFindings: NOTHING_KNOWN,
            **{type(value): value for value in given},
        }
        if last is not None and beside is not None and beside.known is not None:
            own = beside.known(self.rig, previous, given)
            differ = self._differ | ({Previous.__name__} if previous is not last._given[Previous] else set())
            self._given[KnownFindings] = own.beside(last._given[KnownFindings], differ)
        self._values: dict[Any, Any] = {Rig: self.rig, Results: self, **self._given}
        self._making: list[Any] = []
        self._seen: dict[Any, _Seen] = {}
        self._taken: dict[Any, frozenset[str]] = {}  # and what each had read then
        if last is not None:
            last._beside = None  # of no use any more, and each holds the one before it

    def get(self, kind: type[T]) -> T:
        """The value of that type. Two computations that need each other are a bug and raise with their names."""
        value: T = self._value(kind)
        return value

    def call(self, function: Callable[..., Any]) -> Any:
        """Calls a sheet or the like with what its parameter types ask for."""
        return function(*(self.get(kind) for kind in needed(function)[0]))

    def found(self, check: Callable[..., Iterable[T]]) -> tuple[T, ...]:
        """All that a check finds, asked once."""
        found: tuple[T, ...] = self._value(check)
        return found

    def read_by(self, check: Callable[..., Any]) -> frozenset[str]:
        """Which parts of the rig, and what that was given, the findings of a check hang on: what it read, and what that was reckoned from."""
        read: set[str] = set()
        todo, done = [check], set[Any]()
        while todo:
            kind = todo.pop()
            if kind in done:
                continue
            done.add(kind)
            seen = self._seen.get(kind)
            if seen is None:
                read.add(kind.__name__)
            else:
                read |= seen.reads
                todo += seen.needs
        return frozenset(read)

    @property
    def sound(self) -> bool:
        """Whether what was taken from beside still stands: a value that was made there may have read a part of the rig since."""
        taken = self._taken.items()
        return self._goes_on or all((self._seen[kind].reads - then).isdisjoint(self._differ) for kind, then in taken)

    @property
    def taken(self) -> frozenset[Any]:
        """The types, and the checks, whose values were taken from beside."""
        return frozenset(self._taken)

    def alone(self) -> Results:
        """The same, with nothing computed yet and nothing beside it."""
        return Results(
            self.rig,
            self._given[Previous],
            tuple(self._given[kind] for kind in self._given if kind is not Previous),
            self.between,
        )

    def _value(self, kind: Any) -> Any:
        if kind not in self._values:
            self._values[kind] = self._asked(kind)
        return self._values[kind]

    def _asked(self, kind: Any) -> Any:
        if kind in self._making:
            circle = " -> ".join(each.__name__ for each in [*self._making, kind])
            raise AssertionError(f"computations need each other: {circle}")
        self._making.append(kind)
        try:
            if self._beside is not None and self._stands(self._beside, kind):
                return self._take(self._beside, kind)
            if self.between is not None:
                self.between()
            return self._made(kind)
        finally:
            self._making.pop()

    def _made(self, kind: Any) -> Any:
        function = _function(kind)
        seen = self._seen[kind] = _Seen()
        made = function(*(self._handed(each, seen) for each in needed(function)[0]))
        if not isinstance(kind, type):
            return tuple(made)
        beside = self._beside
        if beside is None or kind not in beside._seen or seen.asking is not None:
            return made
        if not is_same(beside._values[kind], made, self._places):
            return made
        beside._seen[kind].reads |= seen.reads
        return self._take(beside, kind)

    def _handed(self, kind: Any, seen: _Seen) -> Any:
        if kind is Rig:
            seen.rigs.append(SeenRig(self.rig, seen.reads, self._finely))
            return seen.rigs[-1]
        if kind is Results:
            seen.asking = _Asking(self, seen)
            return seen.asking
        seen.needs[kind] = None
        return self._value(kind)

    def _stands(self, beside: Results, kind: Any) -> bool:
        """Whether the value that stands beside is of nothing that differs here, nor of a value that does."""
        seen = beside._seen.get(kind)
        if kind not in beside._values or seen is None or not seen.reads.isdisjoint(self._differ):
            return False
        if not self._goes_on:
            if seen.asking is not None:
                return False
        elif not isinstance(kind, type) and any(map(tells_line, beside._values[kind])):
            return False
        return all(each in beside._values and self._value(each) is beside._values[each] for each in (*seen.needs,))

    def _take(self, beside: Results, kind: Any) -> Any:
        seen = self._seen[kind] = beside._seen[kind]
        self._taken[kind] = frozenset(seen.reads)
        if self._goes_on:
            for each in seen.rigs:
                each.look_at(self.rig)
            if seen.asking is not None:
                seen.asking.look_at(self)
        return beside._values[kind]


class _Seen:
    """What a computation has read of the rig, and which other values; what it was handed to read them by."""

    def __init__(self) -> None:
        self.reads: set[str] = set()
        self.needs: dict[Any, None] = {}
        self.rigs: list[SeenRig] = []
        self.asking: _Asking | None = None


class _Asking(Results):
    """Results as one computation sees them that asks for more than its parameters name: for what is written down."""

    def __init__(self, results: Results, seen: _Seen) -> None:
        self._seen_by = seen
        self.rig = SeenRig(results.rig, seen.reads, results._finely)
        seen.rigs.append(self.rig)
        self.look_at(results)

    def look_at(self, results: Results) -> None:
        """Asks others from now on, in which all that was asked for is the same."""
        self._results, self.between = results, results.between

    def alone(self) -> Results:
        return self._results.alone()

    def read_by(self, check: Callable[..., Any]) -> frozenset[str]:
        return self._results.read_by(check)

    def _value(self, kind: Any) -> Any:
        if kind is Rig:
            return self.rig
        if kind is Results:
            return self
        self._seen_by.needs[kind] = None
        return self._results._value(kind)


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
