"""What a computation starts from, as terms: facts of the source, numbers of rigc, places in the source."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any, overload

from rigc.diagnostics.figures import plain
from rigc.facts.fact import Fact as OwnFact
from rigc.model.deck import Place
from rigc.model.fact import Choice, Fact, Quantity
from rigc.model.money import amount_and_currency
from rigc.model.rig import Rig
from rigc.source import Span
from rigc.traced.reason import Input
from rigc.traced.shown import PLAIN, Shown
from rigc.traced.term import ATOM, How, Piece, Pieces, Term, Traced, Unknown


class Leaf(How):
    """A number that was not reckoned, called `label` among the inputs of what rests on it."""

    __slots__ = ("given", "label", "shown")

    def __init__(self, label: str, given: float, shown: Shown) -> None:
        super().__init__()
        self.label, self.given, self.shown = label, given, shown

    def value(self, *given: float) -> float:
        return self.given

    def piece(self, parts: Pieces, shown: Shown, more: int) -> Piece:
        return Piece(self.shown.text(self.given), ATOM, self.given)


class Stated(Leaf):
    """A fact of the source."""

    __slots__ = ("fact",)

    def __init__(self, label: str, fact: Fact[Any], given: float, shown: Shown) -> None:
        self.of = ()  # as its bases set it: more of these are made than of anything else
        self.label, self.given, self.shown, self.fact = label, given, shown, fact

    def counted(self, value: float) -> float:
        """A value of the fact, in the parts in which the number counts it."""
        return _counted(value, self.shown)

    def formula(self, parts: Pieces, shown: Shown, more: int, result: str) -> str:
        return f"{self.fact.typed}, as stated"

    def inputs(self) -> Iterator[Input]:
        yield Input(self.label, self.fact.typed, "", self.fact.span, self.fact.provenance)

    @property
    def assumed(self) -> bool:
        return self.fact.assumed


class Ours(Leaf):
    """A number that rigc relies on, with its source."""

    __slots__ = ("own",)

    def __init__(self, own: OwnFact, label: str, given: float, shown: Shown) -> None:
        super().__init__(label, given, shown)
        self.own = own

    def formula(self, parts: Pieces, shown: Shown, more: int, result: str) -> str:
        return f"{result}, {self.label}"

    def inputs(self) -> Iterator[Input]:
        yield Input(self.label, PLAIN.text(self.own.value), self.own.unit, source=self.own.source)


class Typed(Leaf):
    """A number that stands in a statement beside others, which is told as `text`."""

    __slots__ = ("span", "text")

    def __init__(self, label: str, given: float, span: Span | None, text: str, shown: Shown) -> None:
        super().__init__(label, given, shown)
        self.span, self.text = span, text

    def formula(self, parts: Pieces, shown: Shown, more: int, result: str) -> str:
        return f"{result}, as stated" if self.text == PLAIN.text(self.given) else f"{result}, of {self.text}"

    def inputs(self) -> Iterator[Input]:
        yield Input(self.label, self.text, self.shown.unit, self.span)


class Barred(How):
    """What can't be had because something is in the way, which `reason` tells."""

    __slots__ = ("reason",)

    def __init__(self, reason: str) -> None:
        super().__init__()
        self.reason = reason


class NotStated(How):
    """A fact that the source does not state."""

    __slots__ = ("label",)

    def __init__(self, label: str) -> None:
        super().__init__()
        self.label = label

    def inputs(self) -> Iterator[Input]:
        yield Input(self.label, "not stated")


class Mentioned(How):
    """A statement or a circumstance that carries no quantity, told as `text`."""

    __slots__ = ("label", "span", "text", "unit")

    def __init__(self, label: str, text: str, span: Span | None, unit: str) -> None:
        super().__init__()
        self.label, self.text, self.span, self.unit = label, text, span, unit

    def inputs(self) -> Iterator[Input]:
        yield Input(self.label, self.text, self.unit, self.span)


@overload
def stated(label: str, fact: Quantity, shown: Shown = PLAIN) -> Term: ...


@overload
def stated(label: str, fact: Quantity | None, shown: Shown = PLAIN) -> Traced: ...


def stated(label: str, fact: Quantity | None, shown: Shown = PLAIN) -> Traced:
    """A fact of the source, in the unit in which the model holds it; `shown.size` times as much where a computation counts
    in smaller parts. Unknown where it is not stated."""
    if fact is None:
        return unstated(label)
    given = _counted(fact.value, shown)
    return Term(given, Stated(label, fact, given, shown))


def ours(own: OwnFact, label: str = "", shown: Shown = PLAIN) -> Term:
    """A number of rigc's own; as `stated`."""
    given = _counted(own.value, shown)
    return Term(given, Ours(own, label or own.says, given, shown))


def price(label: str, fact: Choice) -> Term:
    """A stated sum of money, without its currency, which `7.50 EUR` has behind the amount."""
    given = float(amount_and_currency(fact)[0])
    return Term(given, Stated(label, fact, given, PLAIN))


def unstated(label: str) -> Unknown:
    """A fact that the source does not state."""
    return Unknown((label,), NotStated(label))


def barred(reason: str) -> Unknown:
    """What can't be had because something is in the way."""
    return Unknown((reason,), Barred(reason))


def at_place(label: str, value: float, span: Span | None, text: str = "", shown: Shown = PLAIN) -> Term:
    """A number of a statement that holds several, or of a place on the board; `text` is that statement as typed. As `stated`."""
    given = _counted(value, shown)
    return Term(given, Typed(label, given, span, text or shown.text(given), shown))


def mentioned(label: str, text: str, span: Span | None = None, unit: str = "") -> Unknown:
    """What decides about a value without being a number in it."""
    return Unknown((label,), Mentioned(label, text, span, unit))


def choice(label: str, fact: Fact[Any] | None) -> Unknown:
    """A stated word or a figure that decides about a value without being a number in it."""
    if fact is None:
        return unstated(label)
    return Unknown((label,), Stated(label, fact, 0.0, PLAIN))


def limit(rig: Rig, name: str, practice: OwnFact) -> Term:
    """The rig's own limit of that name, else the one of practice."""
    own = rig.limit(name)
    return ours(practice) if own is None else stated(f"limit {name} ({own.source})", own.amount)


def stands(place: Place) -> Unknown:
    """Where a thing stands, as stated or as the compiler chose it: its place, its turn, its tier, or that it is under the deck."""
    turned = f" turned {plain(place.turned + place.skew_deg)}" if place.turned or place.skew_deg else ""
    ground = " under the deck" if place.under else f" on {place.tier}" if place.tier is not None else ""
    where = f"{plain(place.x_mm)}, {plain(place.y_mm)} mm" if place.chosen else place.typed
    return mentioned(f"{place.thing} stands at", f"{where}{turned}{ground}{', chosen' * place.chosen}", place.span)


def _counted(value: float, shown: Shown) -> float:
    """In the smaller parts in which it is counted, without the hair by which 1.1 × 10 is more than 11."""
    return round(value * shown.size, 6) if shown.size > 1 else value * shown.size
