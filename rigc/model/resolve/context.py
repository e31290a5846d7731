"""What every part of the resolver shares: the names, the findings, and how facts of a block are gathered."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from typing import Any, TypeVar

from rigc.diagnostics.diagnostic import Diagnostic
from rigc.diagnostics.mend import Mend, Replace
from rigc.model.fact import Fact, Provenance
from rigc.model.scope import Scope
from rigc.model.slips.said_again import stated_again
from rigc.model.slips.wrong_quantity import WRONG_QUANTITY
from rigc.model.units.measures import Measure
from rigc.model.units.quantities import quantities, quantity
from rigc.model.units.spreads import without_spread
from rigc.source import Span
from rigc.syntax import nodes
from rigc.syntax.nodes import Amount, Node, Word

N = TypeVar("N", bound=Node)
T = TypeVar("T")

SEVERAL_TIMES = (
    nodes.Note, nodes.FootSwitch, nodes.Knob, nodes.NoTape, nodes.Vents, nodes.StereoPair, nodes.LoopJacks,
    nodes.InternalPath, nodes.Mains, nodes.Fits, nodes.Rail, nodes.Drop, nodes.Hole, nodes.KeepOut, nodes.Tier, nodes.Fuse,
)  # fmt: skip

EITHER_OR = {
    "digital": "technology",
    "analogue": "technology",
    "delay": "time unit",
    "reverb": "time unit",
    "tails wanted": "tails wish",
    "tails unwanted": "tails wish",
    "dry analogue": "dry path",
    "dry converted": "dry path",
    "inverts unknown": "inverts",
    "non-inverting": "inverts",
}
"""Flags of which a thing bears one; under `like` the one stated takes the place of the other."""
BOTH_AT_ONCE = frozenset(("delay", "reverb"))
"""Of these a thing may bear both, if its own block says both."""


ONE_ALONE = nodes.Was | nodes.StandsIn | nodes.Serial
"""What a block says of one thing, and of none that is like it."""


class Item:
    """A statement of a block with the provenance that holds for it; `key` is the same of those that a block says once."""

    __slots__ = ("fact", "key", "provenance")

    def __init__(self, fact: Any, provenance: Provenance | None) -> None:
        self.fact = fact
        self.provenance = provenance
        self.key = _key(fact)


class Context:
    """The scopes by family, and the findings so far."""

    def __init__(self, statements: tuple[Node, ...], reserved: frozenset[str], end: Span) -> None:
        self.statements = statements
        self.end = end
        self.findings: list[Diagnostic] = []
        self.jack_said_twice = False
        self.jacks_unsure = False
        self._of_all_alike: dict[Any, Any] = {}
        self.unsure: set[str] = set()
        """Things of which a run of jacks, a pair or a loop could not be taken as it stands: what then lacks one of these only follows."""
        self.scopes = {
            family: Scope(family, reserved, self.report)
            for family in ("thing", "scenario", "cable", "plug", "strip", "deck", "case")
        }

    @property
    def said(self) -> tuple[int, int, bool, bool]:
        """What is another after something was said of a thing."""
        return len(self.findings), len(self.unsure), self.jack_said_twice, self.jacks_unsure

    def unsure_if_lost(self, name: str) -> None:
        """Takes the thing of that name for unsure where one of its runs, pairs or loops was lost since the thing before."""
        if self.jacks_unsure:
            self.unsure.add(name)
            self.jacks_unsure = False

    def of_all_alike(self, fact: Any, provenance: Provenance | None, make: Callable[[], T], how: Any = None) -> T:
        """What `make` makes of a statement, the same for all things that are like the one whose block has it; where something is to be said of
        it, it is said of each. `how` is what else it hangs on."""
        key = id(fact), None if provenance is None else id(provenance.span), how
        found = self._of_all_alike.get(key)
        if found is None:
            before = self.said
            found = make(), fact, provenance  # held, so that their ids stay their own
            if self.said == before:
                self._of_all_alike[key] = found
        value: T = found[0]
        return value

    def report(self, finding: Diagnostic) -> None:
        """Takes a finding up."""
        self.findings.append(finding)

    def of(self, kind: type[N]) -> Iterator[N]:
        """The top-level statements of one kind, in order."""
        return (statement for statement in self.statements if isinstance(statement, kind))

    def amount(
        self, amount: Amount | None, measure: Measure, provenance: Provenance | None = None
    ) -> Fact[float] | None:
        """The amount as a fact; None where absent or after a finding."""
        if amount is None:
            return None
        return self.of_all_alike(
            amount, provenance, lambda: quantity(amount, measure, self.report, provenance), id(measure)
        )

    def chosen(
        self, amount: Amount | None, measure: Measure, provenance: Provenance | None = None
    ) -> Fact[float] | None:
        """As `amount`, of what is decided or agreed and so is off by nothing: a spread is a finding."""
        bare = None if amount is None else without_spread(amount, measure, self.report)
        return self.amount(bare, measure, provenance)

    def value(self, amount: Amount | None, measure: Measure) -> float:
        """The amount as a bare float, which has no spread; 0 where absent or after a finding."""
        found = self.chosen(amount, measure)
        return 0.0 if found is None else found.value

    def shared(
        self, measure: Measure, *amounts: Amount | None, provenance: Provenance | None = None
    ) -> list[Fact[float] | None]:
        """Amounts that may share the unit of the last; absent ones are passed over."""
        return quantities(amounts, [measure] * len(amounts), self.report, provenance)

    def shared_chosen(
        self, measure: Measure, *amounts: Amount | None, provenance: Provenance | None = None
    ) -> list[Fact[float] | None]:
        """As `shared`, of what is off by nothing."""
        bare = [None if each is None else without_spread(each, measure, self.report) for each in amounts]
        return self.shared(measure, *bare, provenance=provenance)

    def shared_values(self, measure: Measure, *amounts: Amount) -> list[float]:
        """As `shared_chosen`, but bare floats, 0 after a finding."""
        return [0.0 if fact is None else fact.value for fact in self.shared_chosen(measure, *amounts)]

    def rising(self, span: Span, low: float, high: float, unit: str) -> None:
        """A finding where a range runs from the higher to the lower."""
        if low > high:
            self.report(
                WRONG_QUANTITY.at(
                    span,
                    f"{low:g}..{high:g} {unit} runs from the higher to the lower",
                    label="upside down",
                    mends=(turned := _turned_round(span, f"write {high:g}..{low:g} {unit}")),
                    help="" if turned else f"write {high:g}..{low:g} {unit}",
                )
            )

    def count(self, word: Word, what: str, low: int, high: int) -> int | None:
        """A plain whole number within bounds, or None after a finding."""
        if word.text.isdigit() and len(word.text) < 20 and low <= int(word.text) <= high:
            return int(word.text)
        self.report(
            WRONG_QUANTITY.at(
                word.span,
                f"'{word.text}' is no {what}; whole numbers from {low} to {high} are",
                label="this number",
                help=f"write a whole number from {low} to {high}",
            )
        )
        return None


def _turned_round(span: Span, words: str) -> tuple[Mend, ...]:
    """The mend that exchanges the two numbers around `..`, where their unit stands once."""
    for found in re.finditer(r"(\d+(?:\.\d+)?)( *\.\. *)(\d+(?:\.\d+)?)", span.text):
        if float(found[1]) > float(found[3]):
            typed = Span(span.source, span.start + found.start(), span.start + found.end())
            return (Mend(words, (Replace(typed, f"{found[3]}{found[2]}{found[1]}"),)),)
    return ()


def provenance_of(node: nodes.Provenance) -> Provenance:
    """The provenance that a line or a suffix states."""
    return Provenance(
        node.kind.text, node.date.text if node.date else "", node.who.value if node.who else "", node.span
    )


def items_of(
    context: Context, own: tuple[Node, ...], base: list[Item], general: Provenance | None = None
) -> list[Item]:
    """A block's facts, each with its provenance, laid over those of the block it is `like`, but for what only that one bears: its serial
    number, and what it was in the revision before. `general` is where they come from if the block says nothing."""
    for node in own:
        if isinstance(node, nodes.Provenance):
            general = provenance_of(node)
    items: list[Item] = []
    for node in own:
        if isinstance(node, nodes.Sourced):
            items.append(Item(node.fact, provenance_of(node.provenance)))
        elif not isinstance(node, nodes.Provenance):
            items.append(Item(node, general))
    _once(context, items)
    mine = {item.key for item in items}
    kept = [item for item in base if item.key not in mine and not isinstance(item.fact, ONE_ALONE)]
    return [*kept, *items]


def _once(context: Context, items: list[Item]) -> None:
    seen: dict[Any, Any] = {}
    for item in items:
        key = item.key
        if isinstance(item.fact, SEVERAL_TIMES):
            continue
        if isinstance(item.fact, nodes.Flag) and item.fact.words.text in BOTH_AT_ONCE:
            key = ("flag", item.fact.words.text)
        if key in seen:
            mends = _as_output(items, seen[key], item.fact) or _as_next(items, item.fact)
            context.report(stated_again(seen[key], item.fact, mends))
            context.jack_said_twice |= isinstance(item.fact, nodes.Input | nodes.Output)
        seen[key] = item.fact


def _as_output(items: list[Item], first: Any, again: Any) -> tuple[Mend, ...]:
    """Two different inputs of one name and no output: the second was to be that."""
    if not isinstance(again, nodes.Input) or first == again or any(isinstance(it.fact, nodes.Output) for it in items):
        return ()
    span = again.span
    said = f"output out{span.text.removeprefix('input').lstrip().removeprefix(str(again.names))}"
    return (Mend(f"make it the output: `{said}`", (Replace(span, said),)),)


def _as_next(items: list[Item], again: Any) -> tuple[Mend, ...]:
    """An outlet pasted once more, whose name was to be the next: `o1` and `o1`."""
    numbered = re.fullmatch(r"([a-z-]+)(\d{1,3})", again.names.first.text) if isinstance(again, nodes.Outlet) else None
    if numbered is None or again.names.last is not None:
        return ()
    taken = {
        str(each)
        for it in items
        if isinstance(it.fact, nodes.Outlet)
        for each in (it.fact.names.first, it.fact.names.last)
    }
    name = next(
        name for number in range(int(numbered[2]) + 1, 2_000) if (name := f"{numbered[1]}{number}") not in taken
    )
    return (Mend(f"name it {name}", (Replace(again.names.span, name),)),)


def _key(fact: Any) -> Any:
    if isinstance(fact, nodes.Input | nodes.Output):
        return ("jack", fact.names.first.text, fact.names.last.text if fact.names.last else "")
    if isinstance(fact, nodes.Outlet):
        return ("outlet", fact.names.first.text, fact.names.last.text if fact.names.last else "")
    if isinstance(fact, nodes.Inlet | nodes.MidiJack | nodes.Expression | nodes.ControlJack | nodes.Usb):
        return ("jack", fact.name.text, "")
    if isinstance(fact, nodes.Level | nodes.Impedance | nodes.Phantom | nodes.JackLift):
        return (type(fact).__name__, str(fact.jacks))
    if isinstance(fact, nodes.Flag):
        return ("flag", EITHER_OR.get(fact.words.text, fact.words.text))
    if isinstance(fact, nodes.LoopJacks):
        return ("loop", fact.first.text)
    if isinstance(fact, nodes.InternalPath):
        return ("path", fact.start.text, fact.end.text)
    return type(fact).__name__
