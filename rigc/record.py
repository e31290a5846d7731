"""Record: the one base class of all frozen values (nodes, model, results, sheets).

It behaves as a frozen dataclass does, and type checkers treat it as one. It is not one because a rig compiler
declares some three hundred small classes, and a dataclass compiles its methods anew for each at import: that alone
would cost more than reading a rig. A field that holds a `Span` never counts when two records are compared: moving a
line changes no rig.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from itertools import count
from operator import itemgetter
from typing import Any, ClassVar, dataclass_transform

_PLACE_KINDS = ("Span", "Span | None")
"""Annotations of fields that hold a place and nothing else."""
_MANY = 100
"""Records of a class: from here on it pays to compile an `__init__` for it."""
_COMPILED: set[Any] = set()


@dataclass_transform(frozen_default=True)
class Record:
    """A frozen value whose fields are its annotations, in order; a class attribute of the same name is the default."""

    FIELDS: ClassVar[tuple[str, ...]] = ()
    DEFAULTS: ClassVar[dict[str, Any]] = {}
    PLACES: ClassVar[frozenset[str]] = frozenset()
    COUNTED: ClassVar[Callable[[dict[str, Any]], Any]]
    _ALL: ClassVar[frozenset[str]] = frozenset()
    _MADE: ClassVar[Iterator[int]]

    def __init_subclass__(cls) -> None:
        super().__init_subclass__()
        own = [name for name, kind in vars(cls).get("__annotations__", {}).items() if "ClassVar" not in str(kind)]
        cls.FIELDS = (*cls.FIELDS, *(name for name in own if name not in cls.FIELDS))
        cls._ALL = frozenset(cls.FIELDS)
        kinds = vars(cls).get("__annotations__", {})
        cls.PLACES = cls.PLACES | {name for name in own if kinds[name] in _PLACE_KINDS}
        counted = [name for name in cls.FIELDS if name not in cls.PLACES]
        cls.COUNTED = itemgetter(*counted) if counted else _nothing
        cls.DEFAULTS = {name: getattr(cls, name) for name in cls.FIELDS if hasattr(cls, name)}
        cls._MADE = count(1)
        if cls.__init__ in _COMPILED:  # a base's, which has other fields
            cls.__init__ = Record.__init__  # type: ignore[method-assign]

    def __init__(self, *values: Any, **named: Any) -> None:
        fields, state = self.FIELDS, self.__dict__
        if next(self._MADE) == _MANY:
            _compile_init(type(self))
        if len(values) == len(fields) and not named:  # nearly always
            state.update(zip(fields, values))  # noqa: B905  # they are as many
            return
        if len(values) > len(fields):
            raise TypeError(f"{type(self).__name__} takes {len(fields)} values, not {len(values)}")
        if not self._ALL.issuperset(named) or not named.keys().isdisjoint(fields[: len(values)]):
            taken = fields[: len(values)]
            wrong = next(name for name in named if name not in fields or name in taken)
            raise TypeError(f"{type(self).__name__}: unknown or repeated field {wrong}")
        state.update(self.DEFAULTS)
        state.update(zip(fields, values, strict=False))
        state.update(named)
        if len(state) < len(fields):
            missing = next(name for name in fields if name not in state)
            raise TypeError(f"{type(self).__name__}: missing field {missing}")

    def __setattr__(self, name: str, value: object) -> None:
        raise AttributeError(f"{type(self).__name__} is frozen")

    def __eq__(self, other: object) -> bool:
        return self is other or (type(self) is type(other) and self._key() == other._key())

    def __hash__(self) -> int:
        return hash((type(self).__name__, self._key()))

    def __repr__(self) -> str:
        shown = ", ".join(f"{name}={self.__dict__[name]!r}" for name in self.FIELDS if name not in self.PLACES)
        return f"{type(self).__name__}({shown})"

    def _key(self) -> Any:
        return type(self).COUNTED(self.__dict__)

    def replace(self, **changed: Any) -> Any:
        """A copy of this record with the named fields changed."""
        fields, mine = self.FIELDS, self.__dict__
        state = {name: mine[name] for name in fields}
        state.update(changed)
        if len(state) > len(fields):
            unknown = next(name for name in changed if name not in fields)
            raise TypeError(f"{type(self).__name__}: unknown field {unknown}")
        made = object.__new__(type(self))
        made.__dict__.update(state)
        return made


def _compile_init(cls: type[Record]) -> None:
    """Give a class of which many are made an `__init__` of its own, as a dataclass has: it takes a third of the time."""
    if cls.__subclasses__() or "__init__" in vars(cls):
        return
    taken = ", ".join(f"{name}=defaults[{name!r}]" if name in cls.DEFAULTS else name for name in cls.FIELDS)
    kept = "".join(f"\n _[{name!r}] = {name}" for name in cls.FIELDS)  # `_` is no field's name
    scope: dict[str, Any] = {"defaults": cls.DEFAULTS}
    exec(f"def __init__(self, {taken}):\n _ = self.__dict__{kept}", scope)  # noqa: S102  # the class's own names alone
    cls.__init__ = scope["__init__"]  # type: ignore[method-assign]
    _COMPILED.add(cls.__init__)


def _nothing(state: dict[str, Any]) -> tuple[()]:  # noqa: ARG001
    return ()
