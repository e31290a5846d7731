"""A move -> what it would do: to lengths, and to what is found; told before it is made."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from rigc.analysis.leads.lengths.cable_lengths import CableLengths
from rigc.compile import Compiled
from rigc.diagnostics.diagnostic import Diagnostic, Level
from rigc.edit.move import moved, stated_with
from rigc.preview.look import Look
from rigc.record import Record


class Changed(Record):
    """A lead whose finished length changes, in mm as printed; `""` where there is none."""

    mark: str
    before: str
    after: str


class Effect(Record):
    """What follows from a move: findings that `come` and that are `gone`, lengths, and what else gets a stated place.

    `texts` are the new texts by the names of their sources.
    """

    thing: str
    x_mm: float
    y_mm: float
    come: tuple[Diagnostic, ...]
    gone: tuple[Diagnostic, ...]
    lengths: tuple[Changed, ...]
    stated_with: tuple[str, ...]
    texts: dict[str, str]

    @property
    def against(self) -> tuple[Diagnostic, ...]:
        """The errors that come."""
        return tuple(each for each in self.come if each.level is Level.ERROR)

    @property
    def words(self) -> str:
        """All of it in some sentences."""
        return " ".join(_words(self))


def effect(look: Look, thing: str, x_mm: float, y_mm: float) -> Effect:
    """Compiles the rig with the move made. Raises `CannotMove`."""
    assert look.made.results is not None
    rig, bench = look.made.results.rig, look.bench
    texts = moved(bench.parse(look.own).file, rig, thing, x_mm, y_mm)
    after = bench.after(texts)
    return Effect(
        thing,
        x_mm,
        y_mm,
        _more(after, look.made),
        _more(look.made, after),
        tuple(_lengths(look.made, after)),
        stated_with(rig, thing),
        texts,
    )


def _more(one: Compiled, other: Compiled) -> tuple[Diagnostic, ...]:
    """The findings of one that the other has not, those that were accepted left out."""
    left = Counter(each.fingerprint for each in other.findings if each.accepted is None)
    found = []
    for each in one.findings:
        if each.accepted is None:
            left[each.fingerprint] -= 1
            if left[each.fingerprint] < 0:
                found.append(each)
    return tuple(found)


def _lengths(before: Compiled, after: Compiled) -> Iterator[Changed]:
    old, new = _finished(before), _finished(after)
    for mark in dict.fromkeys((*old, *new)):
        if old.get(mark) != new.get(mark):
            yield Changed(mark, old.get(mark, ""), new.get(mark, ""))


def _finished(made: Compiled) -> dict[str, str]:
    if made.results is None:
        return {}
    return {mark: each.made.text for mark, each in made.results.get(CableLengths).lengths.items()}


def _words(found: Effect) -> Iterator[str]:
    yield f"{found.thing} at {found.x_mm:g}, {found.y_mm:g} mm."
    for each in found.come:
        yield f"New {each.level.word}: {each.message}."
    if not found.come:
        yield "Nothing new is found."
    if found.gone:
        yield f"No longer found: {'; '.join(each.message for each in found.gone)}."
    told = [f"{each.mark} {each.before or 'no'} to {each.after or 'no'} mm" for each in found.lengths]
    yield f"Finished lengths: {', '.join(told)}." if told else "No length changes."
    if found.stated_with:
        yield f"The places that rigc chose for {', '.join(found.stated_with)} are written down with it."
