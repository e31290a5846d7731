"""Term: a number that knows what it was reckoned from. Arithmetic on terms makes terms, so a computation is its own reason."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from functools import lru_cache
from math import inf
from typing import TYPE_CHECKING, Any, ClassVar, Self, Union

from rigc.traced.interval import (
    BETWEEN,
    FALLING,
    NOTHING,
    ONE,
    RISING,
    Interval,
    divided,
    lessened,
    multiplied,
    negative,
)
from rigc.traced.reason import Input
from rigc.traced.shown import PLAIN, Shown

# How tightly a text binds: a sum in a product needs brackets and a list in a sum, a number never does.
LIST, SUM, PRODUCT, ATOM = range(4)


class Piece:
    """A part of a formula: its text, how tightly that binds, and what the printed digits come to."""

    __slots__ = ("binds", "said", "text")

    def __init__(self, text: str, binds: int, said: float) -> None:
        self.text, self.binds, self.said = text, binds, said

    def within(self, binds: int) -> str:
        """The text where something that binds like this stands around it."""
        return self.text if self.binds >= binds else f"({self.text})"


Pieces = tuple[Piece, ...]


class How:
    """How a number came about: the terms `of` which it was made, and what makes a number of theirs."""

    __slots__ = ("of",)
    NOTHING: ClassVar[float] = inf  # the plain number that changes nothing: `sum` begins with 0
    without: tuple[Traced, ...] = ()  # what would belong to it and is not known

    def __init__(self, *of: Traced) -> None:
        self.of = of

    def value(self, *given: float) -> float:
        """The number, from these in place of those it was made of."""
        raise NotImplementedError

    def once(self) -> How:
        """The same number, made so that none of its parts is in another of them, where that can be had."""
        return self

    def bounds(self, *given: Interval) -> Interval | None:
        """The least and the most that the number may be where its parts are within these; None where that can't be told."""
        return None

    def slopes(self, *given: Interval) -> tuple[Interval, ...]:
        """For each part, by how much the number moves where that moves by one: all the ratios of a step of the number to a
        step of the part that there may be within these. It is asked only where `bounds` tells something."""
        raise NotImplementedError

    def piece(self, parts: Pieces, shown: Shown, more: int) -> Piece:
        """Its text within a formula, from the texts of its parts; `shown` writes the whole formula's result."""
        raise NotImplementedError

    def formula(self, parts: Pieces, shown: Shown, more: int, result: str) -> str:
        """The whole formula, where nothing stands around it."""
        return f"{self.piece(parts, shown, more).text} = {result}"

    def inputs(self) -> Iterator[Input]:
        """What it names itself, beside what its parts do."""
        return iter(())

    @property
    def assumed(self) -> bool:
        """Whether the source says of it that it was not measured and not read anywhere."""
        return False


class _Arithmetic:
    """`+ − × /` between terms, and between a term and a plain number."""

    __slots__ = ()

    def __add__(self, other: Any) -> Any:
        return _joined(Sum, self, other)

    def __radd__(self, other: Any) -> Any:
        return _joined(Sum, other, self)

    def __sub__(self, other: Any) -> Any:
        return _joined(Less, self, other)

    def __rsub__(self, other: Any) -> Any:
        return _joined(Less, other, self)

    def __mul__(self, other: Any) -> Any:
        return _joined(Times, self, other)

    def __rmul__(self, other: Any) -> Any:
        return _joined(Times, other, self)

    def __truediv__(self, other: Any) -> Any:
        return _joined(By, self, other)

    def __rtruediv__(self, other: Any) -> Any:
        return _joined(By, other, self)


class Term(_Arithmetic, float):
    """A number and `how` it came about. It is a float wherever one is wanted."""

    __slots__ = ("how",)
    how: How

    def __new__(cls, value: float, how: How) -> Self:
        self = float.__new__(cls, value)
        self.how = how
        return self

    if TYPE_CHECKING:  # it equals a plain number, as any float does

        def __eq__(self, other: object) -> bool: ...
        def __hash__(self) -> int: ...


class Unknown(_Arithmetic):
    """In place of a number that can't be had; `want` says for want of what. What is reckoned from it is unknown too.

    It can't be compared with a number: ask `known` first.
    """

    __slots__ = ("how", "want")

    def __init__(self, want: tuple[str, ...], how: How) -> None:
        self.want, self.how = want, how

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Unknown) and self.want == other.want

    def __hash__(self) -> int:
        return hash(self.want)


Traced = Union[Term, Unknown]  # noqa: UP007  # a name for both, which `isinstance` can't take in the other form
_PLAIN = (int, float)
_TRACED = (Term, Unknown)


_new = float.__new__
"""Makes a term without a call of its own: of terms there are hundreds for each thing."""


def known(value: Traced) -> Term | None:
    """The number; None where it is not known."""
    return None if isinstance(value, Unknown) else value


def made(how: How) -> Any:
    """The term that is so made; unknown where one of its parts is."""
    try:
        given = [*map(float, how.of)]  # type: ignore[arg-type]
    except TypeError:  # an unknown is no number
        wants = (each for one in how.of if isinstance(one, Unknown) for each in one.want)
        return Unknown(tuple(dict.fromkeys(wants)), how)
    term = _new(Term, how.value(*given))
    term.how = how
    return term


class Number(How):
    """A plain number of a formula: the 2 of `there and back`."""

    __slots__ = ("given",)

    def __init__(self, given: float) -> None:
        self.of, self.given = (), given

    def value(self, *given: float) -> float:
        return self.given

    def piece(self, parts: Pieces, shown: Shown, more: int) -> Piece:
        return Piece(f"{self.given:g}".replace("-", "−"), ATOM, self.given)


class Alike(Number):
    """A plain number that is written as the figure in which it stands: a place in tenths of a millimetre in mm."""

    __slots__ = ()

    def piece(self, parts: Pieces, shown: Shown, more: int) -> Piece:
        return Piece(shown.told(self.given, more)[0], ATOM, self.given)


class Sum(How):
    """All of them together; of nothing it is 0."""

    __slots__ = ()
    NOTHING = 0

    def value(self, *given: float) -> float:
        return sum(given)

    def bounds(self, *given: Interval) -> Interval | None:
        least = most = 0.0
        for low, high in given:
            least, most = least + low, most + high
        return least, most

    def slopes(self, *given: Interval) -> tuple[Interval, ...]:
        return (ONE,) * len(given)

    def piece(self, parts: Pieces, shown: Shown, more: int) -> Piece:
        text = " + ".join(
            part.within(SUM) if part.said >= 0 or not at else f"({part.text})" for at, part in enumerate(parts)
        )
        return Piece(text or "0", SUM if len(parts) > 1 else parts[0].binds if parts else ATOM, _sum(parts))


class Less(How):
    """One less another."""

    __slots__ = ()
    NOTHING = 0

    def value(self, *given: float) -> float:
        return given[0] - given[1]

    def bounds(self, *given: Interval) -> Interval | None:
        return lessened(*given)

    def slopes(self, *given: Interval) -> tuple[Interval, ...]:
        return ONE, negative(ONE)

    def piece(self, parts: Pieces, shown: Shown, more: int) -> Piece:
        one, other = parts
        return Piece(
            f"{one.within(SUM)} − {other.within(PRODUCT) if other.said >= 0 else f'({other.text})'}",
            SUM,
            one.said - other.said,
        )


class Times(How):
    """One times another."""

    __slots__ = ()
    NOTHING = 1

    def value(self, *given: float) -> float:
        return given[0] * given[1]

    def bounds(self, *given: Interval) -> Interval | None:
        return multiplied(*given)

    def slopes(self, *given: Interval) -> tuple[Interval, ...]:
        return given[1], given[0]

    def piece(self, parts: Pieces, shown: Shown, more: int) -> Piece:
        one, other = parts
        return Piece(f"{one.within(PRODUCT)} × {other.within(PRODUCT)}", PRODUCT, one.said * other.said)


class By(How):
    """One divided by another."""

    __slots__ = ()
    NOTHING = 1

    def value(self, *given: float) -> float:
        return given[0] / given[1]

    def bounds(self, *given: Interval) -> Interval | None:
        return divided(*given)

    def slopes(self, *given: Interval) -> tuple[Interval, ...]:
        one, other = given
        by = divided(ONE, other)
        assert by is not None  # it has bounds
        return by, negative(multiplied(one, multiplied(by, by)))

    def once(self) -> How:
        one, other = self.of
        if not isinstance(other.how, Sum):
            return self
        weights = other.how.of
        at = next((at for at, each in enumerate(weights) if each is one), None)
        if at is not None:
            return Portion(one, *weights[:at], *weights[at + 1 :])
        moments = one.how.of if isinstance(one.how, Sum) else ()
        if len(moments) == len(weights) and all(
            isinstance(each.how, Times) and each.how.of[0] is weight
            for each, weight in zip(moments, weights, strict=True)
        ):
            return Mean(*weights, *(each.how.of[1] for each in moments))
        return self

    def piece(self, parts: Pieces, shown: Shown, more: int) -> Piece:
        one, other = parts
        return Piece(f"{one.within(PRODUCT)} / {other.within(ATOM)}", PRODUCT, one.said / (other.said or 1.0))


class Portion(How):
    """One by the sum of itself and others, all of them 0 or more: it rises with that one and falls with the others."""

    __slots__ = ()

    def value(self, *given: float) -> float:
        return given[0] / sum(given)

    def bounds(self, *given: Interval) -> Interval | None:
        lows, highs = zip(*given, strict=True)
        if min(lows) < 0 or not sum(lows):
            return None
        return self.value(lows[0], *highs[1:]), self.value(highs[0], *lows[1:])

    def slopes(self, *given: Interval) -> tuple[Interval, ...]:
        return (RISING, *(FALLING,) * (len(given) - 1))


class Mean(How):
    """The mean of values that are weighted, as a balance is that of places: first all weights, 0 or more, then the values."""

    __slots__ = ()

    def value(self, *given: float) -> float:
        count = len(given) // 2
        return sum(weight * at for weight, at in zip(given[:count], given[count:], strict=True)) / sum(given[:count])

    def bounds(self, *given: Interval) -> Interval | None:
        """It is highest where each weight beyond some value is the most that it may be, and each before it the least."""
        weights, values = given[: len(given) // 2], given[len(given) // 2 :]
        if min(low for low, _ in weights) < 0 or not sum(low for low, _ in weights):
            return None
        most = self._most(weights, [high for _, high in values])
        return -self._most(weights, [-low for low, _ in values]), most

    def slopes(self, *given: Interval) -> tuple[Interval, ...]:
        weights, values = given[: len(given) // 2], given[len(given) // 2 :]
        bounds, whole = self.bounds(*given), Sum().bounds(*weights)
        assert bounds is not None and whole is not None  # it has bounds
        share = ONE[0] / whole[1], ONE[1] / whole[0]
        return (
            *(multiplied(share, lessened(value, bounds)) for value in values),
            *(multiplied(share, weight) for weight in weights),
        )

    @staticmethod
    def _most(weights: Sequence[Interval], values: Sequence[float]) -> float:
        ordered = sorted(zip(values, weights, strict=True), key=lambda each: -each[0])
        whole = sum(low for low, _ in weights)
        moment = sum(value * low for value, (low, _) in ordered)
        most = moment / whole
        for value, (low, high) in ordered:
            moment, whole = moment + value * (high - low), whole + high - low
            most = max(most, moment / whole)
        return most


class Work(How):
    """What is no plain arithmetic: a function, and how it is `written`, with `{}` for each part: `20 log10({} / {})`.

    `unit` is set behind the result where the parts are written with theirs. `moves` has a sign for each part, in order: `+`
    where the number never falls when that part rises, `-` where it never rises, whatever the others are; it is empty where
    the function is not of that kind or does not read its parts, and then the number has no bounds.
    """

    __slots__ = ("function", "moves", "unit", "written")

    def __init__(
        self, written: str, function: Callable[..., float], *of: Traced, unit: str = "", moves: str = ""
    ) -> None:
        super().__init__(*of)
        self.written, self.function, self.unit, self.moves = written, function, unit, moves

    def value(self, *given: float) -> float:
        return self.function(*given)

    def bounds(self, *given: Interval) -> Interval | None:
        if not self.moves:
            return None
        ends = (
            tuple(each[(sign == "+") is upper] for sign, each in zip(self.moves, given, strict=True))
            for upper in (False, True)
        )
        least, most = (self.function(*each) for each in ends)
        return least, most

    def slopes(self, *given: Interval) -> tuple[Interval, ...]:
        return tuple(RISING if sign == "+" else FALLING for sign in self.moves)

    def piece(self, parts: Pieces, shown: Shown, more: int) -> Piece:
        text = self.written.format(*(part.within(PRODUCT) for part in parts))
        return Piece(text, PRODUCT, self.function(*(part.said for part in parts)))

    def formula(self, parts: Pieces, shown: Shown, more: int, result: str) -> str:
        return super().formula(parts, shown, more, result) + (f" {self.unit}" if self.unit else "")


class Apart(Work):
    """How far one is from another, whichever is more."""

    __slots__ = ()

    def __init__(self, one: Traced, other: Traced) -> None:
        super().__init__("|{} − {}|", _distance, one, other)

    def bounds(self, *given: Interval) -> Interval | None:
        low, high = lessened(*given)
        return (low, high) if low >= 0 else (-high, -low) if high <= 0 else (0.0, max(-low, high))

    def slopes(self, *given: Interval) -> tuple[Interval, ...]:
        low, high = lessened(*given)
        here = ONE if low >= 0 else negative(ONE) if high <= 0 else (-1.0, 1.0)
        return here, negative(here)


def _distance(here: float, there: float) -> float:
    return abs(here - there)


class Extreme(How):
    """The highest or the least of some; `word` says which."""

    __slots__ = ("word",)

    def __init__(self, word: str, *of: Traced) -> None:
        super().__init__(*of)
        self.word = word

    def value(self, *given: float) -> float:
        return max(given) if self.word == "highest" else min(given)

    def bounds(self, *given: Interval) -> Interval | None:
        lows, highs = zip(*given, strict=True)
        return self.value(*lows), self.value(*highs)

    def slopes(self, *given: Interval) -> tuple[Interval, ...]:
        """One of a part that is always the one, none of one that never is, and between these of others."""
        return tuple(self._slope(at, given) for at in range(len(given)))

    def _slope(self, at: int, given: tuple[Interval, ...]) -> Interval:
        others = self.bounds(*given[:at], *given[at + 1 :])
        assert others is not None
        one, other = (given[at], others) if self.word == "highest" else (others, given[at])
        if one[1] <= other[0]:
            return NOTHING
        if one[0] >= other[1]:
            return ONE
        return BETWEEN

    def piece(self, parts: Pieces, shown: Shown, more: int) -> Piece:
        value = self.value(*(part.said for part in parts))
        return Piece(f"the {self.word} of {', '.join(part.text for part in parts)}", LIST, value)


class Step(How):
    """What a number becomes: rounded up, or the next there is in a list. It is written with an arrow, `705 → 710`."""

    __slots__ = ("function",)

    def __init__(self, function: Callable[[float], float], of: Traced) -> None:
        super().__init__(of)
        self.function = function

    def value(self, *given: float) -> float:
        return self.function(given[0])

    def bounds(self, *given: Interval) -> Interval | None:
        """What is higher never becomes less."""
        low, high = given[0]
        return self.function(low), self.function(high)

    def slopes(self, *given: Interval) -> tuple[Interval, ...]:
        return (RISING,)

    def piece(self, parts: Pieces, shown: Shown, more: int) -> Piece:
        value = self.function(parts[0].said)
        return Piece(f"{self._before(parts[0], shown, more)} → {shown.text(value)}", LIST, value)

    def formula(self, parts: Pieces, shown: Shown, more: int, result: str) -> str:
        return f"{self._before(parts[0], shown, more)} → {result}"

    def _before(self, part: Piece, shown: Shown, more: int) -> str:
        return part.text if part.binds == ATOM else f"{part.text} = {PLAIN.text(part.said / shown.size)}"


class Words(How):
    """A number that a search or a drawing of lines found: told in words."""

    __slots__ = ("given", "words")

    def __init__(self, given: float, words: Callable[[], str], *of: Traced) -> None:
        super().__init__(*of)
        self.given, self.words = given, words

    def value(self, *given: float) -> float:
        return self.given

    def piece(self, parts: Pieces, shown: Shown, more: int) -> Piece:
        return Piece(shown.told(self.given, more)[0], ATOM, self.given)

    def formula(self, parts: Pieces, shown: Shown, more: int, result: str) -> str:
        return self.words()


class Taken(Words):
    """The first of its parts, which a choice among them took."""

    __slots__ = ()

    def value(self, *given: float) -> float:
        return given[0]

    def bounds(self, *given: Interval) -> Interval | None:
        """As long as the choice stays."""
        return given[0]

    def slopes(self, *given: Interval) -> tuple[Interval, ...]:
        return ONE, *(NOTHING,) * (len(given) - 1)


class KnownSum(Sum):
    """The sum of those that are known; `without` holds the others."""

    __slots__ = ("without",)

    def __init__(self, known_ones: tuple[Term, ...], without: tuple[Traced, ...]) -> None:
        super().__init__(*known_ones)
        self.without = without


class Same(How):
    """Another figure as it is."""

    __slots__ = ()

    def value(self, *given: float) -> float:
        return given[0]

    def bounds(self, *given: Interval) -> Interval | None:
        return given[0]

    def slopes(self, *given: Interval) -> tuple[Interval, ...]:
        return (ONE,)

    def piece(self, parts: Pieces, shown: Shown, more: int) -> Piece:
        return parts[0]

    def formula(self, parts: Pieces, shown: Shown, more: int, result: str) -> str:
        return f"{result}, {getattr(self.of[0], 'label', '')}"


class Chosen(Same):
    """Another figure as it is, and why that one."""

    __slots__ = ("because",)

    def __init__(self, because: str, of: Traced) -> None:
        super().__init__(of)
        self.because = because

    def formula(self, parts: Pieces, shown: Shown, more: int, result: str) -> str:
        return f"{self.because}: {result}"


class InItsUnit(How):
    """A figure in the unit in which it is written, where it is counted in smaller parts."""

    __slots__ = ("size",)

    def __init__(self, size: float, of: Traced) -> None:
        super().__init__(of)
        self.size = size

    def value(self, *given: float) -> float:
        return given[0] / self.size

    def bounds(self, *given: Interval) -> Interval | None:
        return given[0][0] / self.size, given[0][1] / self.size

    def slopes(self, *given: Interval) -> tuple[Interval, ...]:
        return ((1 / self.size, 1 / self.size),)

    def piece(self, parts: Pieces, shown: Shown, more: int) -> Piece:
        return Piece(parts[0].text, parts[0].binds, parts[0].said / self.size)


def number(value: float) -> Term:
    """A plain number as a term."""
    return value if isinstance(value, Term) else Term(value, Number(value))


def traced(value: float | Unknown) -> Traced:
    """A plain number as a term; what is not known stays so."""
    return value if isinstance(value, Unknown) else number(value)


def _joined(kind: type[How], one: Any, other: Any) -> Any:
    if not isinstance(other, _TRACED):  # it is on the right of one that is
        if not isinstance(other, _PLAIN):
            return NotImplemented
        if other == kind.NOTHING:
            return one
        other = _plain(other)
    elif not isinstance(one, _TRACED):
        if not isinstance(one, _PLAIN):
            return NotImplemented
        if one == kind.NOTHING and (kind is Sum or kind is Times):
            return other
        one = _plain(one)
    how: How = object.__new__(kind)  # as its `__init__` makes it
    how.of = (*_summands(one), *_summands(other)) if kind is Sum else (one, other)
    return made(how)


@lru_cache(maxsize=512)  # the same few stand in the formulas of thousands
def _plain(value: float) -> Term:
    return Term(value, Number(value))


def _summands(value: Traced) -> tuple[Traced, ...]:
    """What a sum within a sum adds up; a figure stands as it is."""
    return value.how.of if type(value.how) is Sum and type(value) in _TRACED else (value,)


def _sum(parts: Pieces) -> float:
    return sum(part.said for part in parts)
