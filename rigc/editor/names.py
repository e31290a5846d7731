"""Statements and what they say -> every place at which something is declared or named, so that one finds the others of it."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterable, Iterator
from typing import Any

from rigc.model.resolve import FAMILIES, Resolved
from rigc.record import Record
from rigc.source import Source, Span
from rigc.syntax import nodes
from rigc.syntax.nodes import Node, Word

JACK, LEAD = "jack", "lead"
_ONE_JACK = (
    nodes.Inlet, nodes.MidiJack, nodes.Expression, nodes.ControlJack, nodes.Usb, nodes.PanelJack, nodes.PanelInlet,
)  # fmt: skip
_IN_BLOCK = (nodes.Level, nodes.Impedance, nodes.Phantom, nodes.JackLift)


class Named(Record):
    """A word that names something: a thing, cable, plug, strip, deck, case or scenario (its `family`), a `jack` (its name with its thing's
    before it), or a `lead` by its number."""

    family: str
    name: str
    span: Span
    declares: bool

    @property
    def key(self) -> tuple[str, str]:
        """What is the same wherever the same is named."""
        return self.family, self.name


class Names:
    """All of them, by place and by what they name."""

    def __init__(self, found: Iterable[Named]) -> None:
        self.by_source: dict[Source, list[Named]] = {}
        self.by_key: dict[tuple[str, str], list[Named]] = {}
        seen: set[tuple[Source, int]] = set()
        for each in found:
            place = (each.span.source, each.span.start)
            if place not in seen:
                seen.add(place)
                self.by_source.setdefault(each.span.source, []).append(each)
                self.by_key.setdefault(each.key, []).append(each)
        for held in self.by_source.values():
            held.sort(key=lambda each: each.span.start)
        self._starts = {source: [each.span.start for each in held] for source, held in self.by_source.items()}

    def at(self, source: Source, offset: int) -> Named | None:
        """What the word at an offset names, or the word that ends there."""
        held = self.by_source.get(source, [])
        for at in range(bisect_right(self._starts.get(source, []), offset) - 1, -1, -1):
            span = held[at].span
            return held[at] if span.start <= offset <= span.end else None
        return None

    def declared(self, key: tuple[str, str]) -> tuple[Named, ...]:
        """Where it is declared."""
        return tuple(each for each in self.by_key.get(key, ()) if each.declares)

    def all(self, key: tuple[str, str]) -> tuple[Named, ...]:
        """Everywhere that it is declared or named."""
        return tuple(self.by_key.get(key, ()))


def names(statements: tuple[Node, ...], resolved: Resolved) -> Names:
    """All names in the statements of a rig."""
    return Names(_found(statements, resolved))


def _found(statements: tuple[Node, ...], resolved: Resolved) -> Iterator[Named]:
    declared: dict[tuple[str, str], tuple[str, Word]] = {}
    for statement in statements:
        family = FAMILIES.get(type(statement))
        if family is not None:
            whole: Any = statement
            declared.setdefault((family[0], whole.name.text), (family[1], whole.name))
            yield Named(family[0], whole.name.text, whole.name.span, True)
            if getattr(whole, "like", None) is not None:
                yield Named(family[0], whole.like.text, whole.like.span, False)
    for family_name, words in resolved.mentioned.items():
        yield from (Named(family_name, word.text, word.span, False) for word in words)
    homes = _jack_homes(resolved)
    for statement in statements:
        yield from _inside(statement, declared, homes)


def _jack_homes(resolved: Resolved) -> dict[tuple[str, str], Span]:
    """By thing and jack or outlet the statement that declares it, which may stand in the block that the thing is `like`."""
    found: dict[tuple[str, str], Span] = {}
    if resolved.rig is not None:
        for name, thing in resolved.rig.things.items():
            whole: Any = thing
            for each in (*whole.jacks, *getattr(whole, "outlets", ())):
                found[name, each.name] = each.span
    return found


def _inside(
    statement: Node, declared: dict[tuple[str, str], tuple[str, Word]], homes: dict[tuple[str, str], Span]
) -> Iterator[Named]:
    """The jacks and leads of a statement, and the things that `mentioned` leaves out."""
    own = ""
    family = FAMILIES.get(type(statement))
    whole: Any = statement
    if family is not None and family[0] == "thing":
        own = whole.name.text
        for item in whole.items:
            yield from _own_jacks(own, getattr(item, "fact", item))
    for node in _walk(statement):
        each: Any = node
        if isinstance(node, nodes.Stop | nodes.Endpoint):
            if isinstance(statement, nodes.Accept) and ("thing", each.thing.text) in declared:
                yield Named("thing", each.thing.text, each.thing.span, False)
            if each.jack is not None:
                home = homes.get((each.thing.text, each.jack.text))
                yield Named(JACK, _home_name(each.thing.text, each.jack.text, home, declared), each.jack.span, False)
        elif isinstance(node, nodes.Lead | nodes.Adaptor):
            yield Named(LEAD, each.mark.text, each.mark.span, True)
        elif isinstance(node, nodes.Retired | nodes.LeadMark | nodes.BuiltLead):
            yield Named(LEAD, each.mark.text, each.mark.span, False)
        elif isinstance(node, nodes.Tie):
            yield from (Named(LEAD, word.text, word.span, False) for word in (each.first, each.second))
        elif isinstance(node, nodes.Join):
            yield from (Named(LEAD, word.text, word.span, False) for word in each.leads)
        elif isinstance(node, nodes.Change):
            for word in each.touches or ():
                family_name = LEAD if word.text[:1].isupper() else "thing"
                yield Named(family_name, word.text, word.span, False)


def _home_name(thing: str, jack: str, home: Span | None, declared: dict[tuple[str, str], tuple[str, Word]]) -> str:
    """The jack with the thing in whose block it is declared: a unit `like` another has its jacks from there."""
    block = "" if home is None else _block_of(home)
    return f"{block if ('thing', block) in declared else thing}.{jack}"


def _block_of(span: Span) -> str:
    """The name of the block in which a statement stands."""
    head = span.source.text.rfind("{", 0, span.start)
    line = span.source.text[span.source.text.rfind("\n", 0, max(head, 0)) + 1 : max(head, 0)].split()
    return line[1] if len(line) > 1 else ""


def _own_jacks(thing: str, fact: Any) -> Iterator[Named]:
    if isinstance(fact, nodes.Input | nodes.Output | nodes.Outlet):
        yield from _range(thing, fact.names, True)
    elif isinstance(fact, _ONE_JACK):
        yield Named(JACK, f"{thing}.{fact.name.text}", fact.name.span, True)
    elif isinstance(fact, _IN_BLOCK):
        yield from _range(thing, fact.jacks, False)
    elif isinstance(fact, nodes.StereoPair):
        yield from (Named(JACK, f"{thing}.{each.text}", each.span, False) for each in (fact.left, fact.right))
    elif isinstance(fact, nodes.LoopJacks):
        yield from (*_range(thing, fact.sends, False), *_range(thing, fact.returns, False))
    elif isinstance(fact, nodes.InternalPath):
        yield from (Named(JACK, f"{thing}.{each.text}", each.span, False) for each in (fact.start, fact.end))


def _range(thing: str, these: Any, declares: bool) -> Iterator[Named]:
    """The words of `in` or of `o1..o8`; a name between the ends has no word of its own."""
    for word in (these.first, these.last):
        if word is not None:
            yield Named(JACK, f"{thing}.{word.text}", word.span, declares)


def _walk(value: Any) -> Iterator[Node]:
    if isinstance(value, Node):
        yield value
        for name in value.FIELDS:
            if name != "span":
                yield from _walk(value.__dict__[name])
    elif isinstance(value, tuple):
        for each in value:
            yield from _walk(each)
