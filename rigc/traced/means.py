"""The small means with which a computation is written, beside `+ − × /`: each reads as it is reckoned."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from math import inf, log10
from typing import Any

from rigc.traced.figure import AnyFigure, Lacking
from rigc.traced.term import (
    Alike,
    Apart,
    Chosen,
    Extreme,
    InItsUnit,
    KnownSum,
    Step,
    Sum,
    Taken,
    Term,
    Traced,
    Unknown,
    Words,
    Work,
    made,
    traced,
)


def total(values: Iterable[Traced]) -> Any:
    """Their sum; of nothing it is 0. Unknown if one of them is."""
    return made(Sum(*values))


def total_known(values: Iterable[Traced], without: Iterable[Traced] = ()) -> Term:
    """The sum of those that are known; the formula names the others, and what is left out besides."""
    every: tuple[Any, ...] = tuple(values)
    kinds = set(map(type, every))
    if Unknown not in kinds and Lacking not in kinds:  # nearly always: a long row has thousands
        return Term(sum(map(float, every)), KnownSum(every, tuple(without)))
    known = tuple(each for each in every if isinstance(each, Term))
    left_out = (*(each for each in every if isinstance(each, Unknown)), *without)
    return Term(sum(map(float, known)), KnownSum(known, left_out))


def highest(*values: float | Unknown) -> Any:
    """The highest of them; one alone is itself. Of plain numbers a plain one."""
    return _extreme("highest", max, values)


def least(*values: float | Unknown) -> Any:
    """The least of them; one alone is itself. Of plain numbers a plain one."""
    return _extreme("least", min, values)


def _extreme(word: str, plainly: Callable[..., float], values: tuple[Any, ...]) -> Any:
    if len(values) == 1:
        return values[0]
    if not any(isinstance(each, (Term, Unknown)) for each in values):
        return plainly(values)
    return made(Extreme(word, *map(traced, values)))


def becomes(value: float | Unknown, function: Callable[[float], float]) -> Any:
    """What a number becomes by rounding or by taking the next there is: `705 → 710`. Of a plain number a plain one."""
    if not isinstance(value, (Term, Unknown)):
        return function(value)
    return made(Step(function, value))


def worked(written: str, function: Callable[..., float], *of: Traced, unit: str = "", moves: str = "") -> Any:
    """What is no plain arithmetic; `written` has a `{}` for each part. `unit` is set behind the result in the formula.

    `moves` tells for each part whether the number rises with it (`+`) or falls (`-`), or is empty: see `Work`.
    """
    return made(Work(written, function, *of, unit=unit, moves=moves))


def found(value: float, words: Callable[[], str], *of: Traced) -> Term:
    """A number that a search or geometry found, told in words."""
    return Term(value, Words(value, words, *of))


def taken(value: Term, words: Callable[[], str], *others: Traced) -> Term:
    """The number that was taken among others, told in words."""
    return Term(value, Taken(value, words, value, *others))


def alike(value: float) -> Term:
    """A plain number that is written as the figure in which it stands: a place in tenths of a millimetre in mm."""
    return Term(value, Alike(value))


def apart(one: Traced, other: Traced) -> Any:
    """How far one is from the other, whichever is more."""
    return made(Apart(one, other))


def chosen(value: AnyFigure, because: str) -> Any:
    """A figure as it is, and why that one was taken."""
    return made(Chosen(because, value))


def in_its_unit(value: AnyFigure) -> Any:
    """A figure in the unit in which it is written: in mm where it is counted in tenths of a millimetre."""
    return made(InItsUnit(value.shown.size, value))


def percent(part: Traced, whole: Traced) -> Any:
    """A part in percent of a whole; unknown where the whole is nothing."""
    if isinstance(whole, Term) and whole <= 0:
        return Unknown(("anything of which it could be a share",), Sum(part, whole))
    return part / whole * 100


def in_parallel(*ohms: float | Unknown, unit: str = "") -> Any:
    """Resistances side by side; of none it is infinite, for nothing loads. Of plain numbers a plain one."""
    if not any(isinstance(each, (Term, Unknown)) for each in ohms):
        return _parallel(*ohms)  # type: ignore[arg-type]  # all are plain
    if len(ohms) == 1:
        return ohms[0]
    return made(Work(" || ".join("{}" for _ in ohms), _parallel, *map(traced, ohms), unit=unit, moves="+" * len(ohms)))


def decibels(ratio: float | Unknown) -> Any:
    """The level of a ratio of voltages, in dB; -inf where it is 0. Of a plain number a plain one."""
    return (
        made(Work("20 log10({})", level_of, ratio, moves="+"))
        if isinstance(ratio, (Term, Unknown))
        else level_of(ratio)
    )


def level_of(ratio: float) -> float:
    """20 log10 of a plain ratio; -inf where it is 0."""
    return 20 * log10(ratio) if ratio > 0 else -inf


def _parallel(*ohms: float) -> float:
    conductance = sum(1 / each for each in ohms if each)
    return 0.0 if 0.0 in ohms else 1 / conductance if conductance else inf
