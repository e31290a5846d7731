"""Figure: a traced number that a person reads: its name, how it is written, the rule by which it was reckoned and whence that is."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Union

from rigc.traced.given import Barred, NotStated
from rigc.traced.reason import ARITHMETIC, NOT_KNOWN, Input, Reason
from rigc.traced.shown import Shown
from rigc.traced.term import ATOM, How, Piece, Same, Term, Traced, Unknown
from rigc.traced.term import made as built

_MOST_MORE = 7  # digits beyond those printed; a figure of the sizes that occur has no more that mean anything


class Told:
    """What a reader can ask of: `why NAME`."""

    __slots__ = ()
    name: str
    rule: str
    source: str
    _label: str
    _given: tuple[Beside, ...]
    _beside: tuple[Basis, ...]  # once it was asked
    standing: tuple[bool, bool]  # whether it is assumed, and incomplete; once it was asked

    @property
    def label(self) -> str:
        """What it is called among the inputs of another."""
        return self._label or called(self.name)

    @property
    def beside(self) -> tuple[Basis, ...]:
        """What decided about it without being a number in it."""
        if not hasattr(self, "_beside"):
            self._beside = tuple(each for one in self._given for each in (one() if callable(one) else (one,)))  # type: ignore[misc]  # a slot of all below
        return self._beside

    @property
    def text(self) -> str:
        """What a sheet prints."""
        raise NotImplementedError

    @property
    def unit(self) -> str:
        """The unit that stands beside the text; empty where the text has it or needs none."""
        raise NotImplementedError

    def formula(self) -> str:
        """How it came about, with the numbers filled in."""
        raise NotImplementedError

    def reason(self) -> Reason:
        """All that is told of it."""
        return Reason(self.name, self.text, self.unit, self.formula(), self.inputs(), self.rule, self.source)

    def inputs(self) -> tuple[Input, ...]:
        """What went into it, each once, in the order of the formula."""
        found: dict[tuple[str, str, str], Input] = {}
        for one in self._inputs():
            found.setdefault((one.name, one.value, one.why), one)
        return tuple(found.values())

    def as_input(self) -> Input:
        """It among the inputs of another."""
        return Input(self.label, self.text, self.unit, why=self.name)

    def behind(self) -> Iterator[Told]:
        """The figures that it rests on directly."""
        for part in (*parts_of(self), *self.beside):
            yield from _figures(part)

    def _inputs(self) -> Iterator[Input]:
        how = _how(self)
        if how is not None:
            yield from how.inputs()
        for part in (*parts_of(self), *self.beside):
            yield from _inputs(part)


class Answer(Told):
    """What a reader can ask of and that is no number: which outlet, that a lead is captive. `because` tells how it came about."""

    __slots__ = ("_beside", "_given", "_label", "_text", "_unit", "because", "name", "rule", "source", "standing")

    def __init__(
        self,
        name: str,
        text: str | Callable[[], str],
        because: str | Callable[[], str],
        *beside: Beside,
        rule: str,
        source: str,
        unit: str = "",
        label: str = "",
    ) -> None:
        self.name, self._text, self._unit, self.because, self._given = name, text, unit, because, beside
        self.rule, self.source, self._label = rule, source, label

    @property
    def text(self) -> str:
        return self._text if isinstance(self._text, str) else self._text()

    @property
    def unit(self) -> str:
        return self._unit

    def formula(self) -> str:
        return self.because if isinstance(self.because, str) else self.because()

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Answer) and (self.name, self.text) == (other.name, other.text)

    def __hash__(self) -> int:
        return hash((self.name, self.text))


class Several(Answer):
    """Figures that are told as one: `2 × 74`; `written` has a `{}` for the text of each, `formulas` for how it came about."""

    __slots__ = ("_formulas", "_written", "of")

    def __init__(
        self,
        name: str,
        of: tuple[AnyFigure, ...],
        *beside: Basis,
        written: str,
        formulas: str,
        rule: str,
        source: str,
        label: str = "",
    ) -> None:
        super().__init__(name, self._joined, self._reckoned, *beside, rule=rule, source=source, label=label)
        self.of, self._written, self._formulas = of, written, formulas

    @property
    def unit(self) -> str:
        return self.of[-1].unit

    def _joined(self) -> str:
        known = not any(isinstance(each, Lacking) for each in self.of)
        return self._written.format(*(each.text for each in self.of)) if known else NOT_KNOWN

    def _reckoned(self) -> str:
        lacking = next((each for each in self.of if isinstance(each, Lacking)), None)
        return self._formulas.format(*(each.formula() for each in self.of)) if lacking is None else lacking.formula()

    def _inputs(self) -> Iterator[Input]:
        for each in self.of:
            yield from each._inputs()  # it is told as if its figures were
        for part in self.beside:
            yield from _inputs(part)


class Figure(Told, Term):
    """A known number that a person reads."""

    __slots__ = ("_beside", "_given", "_label", "name", "rule", "shown", "source", "standing")
    shown: Shown

    @property
    def text(self) -> str:
        return self.shown.text(self)

    @property
    def unit(self) -> str:
        return self.shown.unit

    def formula(self) -> str:
        """A sheet rounds each figure once, from what was reckoned. So an operand is told with the fewest digits from which
        the printed result can be had: 7.36 / 120 × 1000 is 61.3, where 7.364 / 120 × 1000 is the 61.4 that is told."""
        text = self.text
        for more in range(_MOST_MORE + 1):
            parts = tuple(_piece(part, self.shown, more) for part in self.how.of)
            said = self.how.value(*(part.said for part in parts))
            if self.shown.text(said) == text:
                break
        without = dict.fromkeys(_left_out(self)) if incomplete(self) else ()
        told = self.how.formula(parts, self.shown, more, text)
        return told + (f", without {', '.join(without)}" if without else "")

    def __str__(self) -> str:
        return self.text

    __repr__ = float.__repr__


class Lacking(Told, Unknown):
    """A figure that is not known; `want` says for want of what."""

    __slots__ = ("_beside", "_given", "_label", "name", "rule", "shown", "source", "standing")
    shown: Shown

    @property
    def text(self) -> str:
        return NOT_KNOWN

    @property
    def unit(self) -> str:
        return self.shown.unit

    def formula(self) -> str:
        if isinstance(self.how, NotStated):
            return f"the source does not say {self.how.label}"
        if isinstance(self.how, Barred):
            return self.how.reason
        return f"for want of {', '.join(self.want)}"


Basis = Union[Term, Unknown, Answer]  # noqa: UP007
Beside = Union[Basis, Callable[[], tuple[Basis, ...]]]  # noqa: UP007
"""What decided about a figure: itself, or what makes it when it is asked for, which of most never is. That reads nothing of the rig that
was not read before: who computes is known to hang on what it reads while it does."""
AnyFigure = Union[Figure, Lacking]  # noqa: UP007


def figure(
    name: str, value: Traced, shown: Shown, *beside: Beside, rule: str, source: str, label: str = ""
) -> AnyFigure:
    """Gives a number a name by which a person can ask for it.

    `label` is what it is called among another's inputs, from its name if empty: `load of mill5`.
    """
    if not isinstance(value, Unknown):
        return known_figure(name, value, shown, *beside, rule=rule, source=source, label=label)
    unknown: Unknown = built(Same(value)) if isinstance(value, Lacking) else value
    made = Lacking(unknown.want, unknown.how)
    made.name, made._label, made.shown, made._given = name, label, shown, beside
    made.rule, made.source = rule, source
    return made


def known_figure(
    name: str, value: Term, shown: Shown, *beside: Beside, rule: str, source: str, label: str = ""
) -> Figure:
    """As `figure`, of a number that is always known."""
    made = _new(Figure, bent(name, float(value)))
    made.how = Same(value) if isinstance(value, Figure) else value.how
    made.name, made._label, made.shown, made._given = name, label, shown, beside
    made.rule, made.source = rule, source
    return made


_new = float.__new__


def named_by_field(name: str, value: Term, shown: Shown, *beside: Basis, rule: str, source: str = ARITHMETIC) -> Figure:
    """As `known_figure`, labelled by its field alone: `from rolls` for `hook.from-rolls`."""
    label = name.rpartition(".")[2].replace("-", " ")
    return known_figure(name, value, shown, *beside, rule=rule, source=source, label=label)


def bent(name: str, value: float) -> float:
    """The value itself; a test bends it here, to see that all who tell the figure read this one."""
    return value


def called(name: str) -> str:
    """`load of mill5` for `mill5.load`."""
    thing, _, field = name.rpartition(".")
    return f"{field.replace('-', ' ')} of {thing}" if thing else name


def assumed(value: Basis | Told | None) -> bool:
    """Whether a value rests on a fact that was neither measured nor read anywhere."""
    return value is not None and _standing(value)[0]


def incomplete(value: Basis | Told) -> bool:
    """Whether something that is not known was left out of a sum that it rests on."""
    return _standing(value)[1]


def _standing(value: Basis | Told) -> tuple[bool, bool]:
    """Whether it is assumed and whether it is incomplete. A figure keeps its own: many cells rest on the same few."""
    if isinstance(value, Told) and hasattr(value, "standing"):
        return value.standing
    leans = lacks = False
    for each in _reached(value):
        how = _how(each)
        if isinstance(each, Told) and each is not value:
            own = _standing(each)
            leans, lacks = leans or own[0], lacks or own[1]
        elif how is not None:
            leans, lacks = leans or how.assumed, lacks or bool(how.without)
    if isinstance(value, (Answer, Figure, Lacking)):
        value.standing = leans, lacks
    return leans, lacks


def _left_out(value: Basis | Told) -> Iterator[str]:
    """What is not known and was left out of the sums that it rests on."""
    for each in _reached(value):
        how = _how(each)
        if isinstance(each, Told) and each is not value:
            yield from _left_out(each) if incomplete(each) else ()
        elif how is not None:
            yield from (want for part in how.without for want in _wants(part))


def _reached(value: Basis | Told) -> Iterator[Basis | Told]:
    """A value and, each once, what it rests on, down to the next figures and with them."""
    seen: set[int] = set()
    waiting: list[Basis | Told] = [value]
    while waiting:
        each = waiting.pop()
        if id(each) in seen:
            continue
        seen.add(id(each))
        yield each
        if each is value or not isinstance(each, Told):
            waiting += parts_of(each)
            waiting += each.beside if isinstance(each, Told) else ()


def _wants(value: Traced) -> tuple[str, ...]:
    return value.want if isinstance(value, Unknown) else ()


def _piece(term: Traced, shown: Shown, more: int) -> Piece:
    assert isinstance(term, Term)  # a formula is written only of what is known
    if isinstance(term, Figure):
        text, said = term.shown.told(term, more)
        return Piece(text, ATOM, said)
    return term.how.piece(tuple(_piece(part, shown, more) for part in term.how.of), shown, more)


def parts_of(value: Basis | Told) -> tuple[Basis, ...]:
    """What its number was made of, and what was left out of it."""
    if isinstance(value, Several):
        return value.of
    how = _how(value)
    return () if how is None else (*how.of, *how.without)


def _how(value: Basis | Told) -> How | None:
    """How its number was reckoned; None of an answer, which is none."""
    return value.how if isinstance(value, (Term, Unknown)) else None


def _inputs(value: Basis) -> Iterator[Input]:
    """What a value is among the inputs of a figure: a figure itself, else what it was made of."""
    if isinstance(value, Told):
        yield value.as_input()
        return
    if not isinstance(value, Answer):
        yield from value.how.inputs()
    for part in parts_of(value):
        yield from _inputs(part)


def _figures(value: Basis) -> Iterator[Told]:
    if isinstance(value, Told):
        yield value
        return
    for part in parts_of(value):
        yield from _figures(part)
