"""Statements and two units -> the statements in which the one unit stands wherever the other stood."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Any

from rigc.model.resolve import FAMILIES, resolve
from rigc.model.resolve.exchange.items import Counterparts, kept
from rigc.model.resolve.exchange.jacks import counterparts, direct
from rigc.model.resolve.renaming import place_of, thing_words
from rigc.model.scope import article
from rigc.model.things import Unit
from rigc.record import Record
from rigc.source import Span
from rigc.syntax import nodes
from rigc.syntax.nodes import Node, Word
from rigc.syntax.reworded import Part, reworded

_LEFT = (nodes.Rig, nodes.AsBuilt, nodes.Accept, nodes.FieldNote, nodes.Reading)
"""What was said of the unit that goes stays its own: what changed, what was built, accepted and measured."""


class Exchange(Record):
    """The statements after an exchange; `jacks` maps the jacks of the unit that goes to those of its substitute.

    `lines` tell in words what has no counterpart, each beginning with the statement that fell away. `refused` says why
    nothing was exchanged, and is empty where it was.
    """

    statements: tuple[Node, ...]
    jacks: dict[str, str]
    lines: tuple[str, ...] = ()
    refused: str = ""


def exchanged(statements: tuple[Node, ...], out: str, into: str, reserved: frozenset[str], end: Span) -> Exchange:
    """Unit `into` in the chains, loops, presets, feeds, leads and at the place of unit `out`; both are declared.

    A place keeps its front-left corner: that is what the source states, and what is measured on the deck. The words keep
    their spans. Refused where one of them is no unit, where they are of two kinds, where `out` is not in use, and where
    `into` is already.
    """
    rig, _ = resolve(statements, reserved, end)
    things = {} if rig is None else rig.things
    gone, come = things.get(out), things.get(into)
    words = {place_of(word): word.text for word in thing_words(statements, reserved, end) if word.text in (out, into)}
    refused = _no_units(out, into, gone, come) or _not_free(statements, out, into, words)
    if refused or not isinstance(gone, Unit) or not isinstance(come, Unit):
        return Exchange(statements, {}, (), refused)
    parts = Counterparts(gone, come, counterparts(gone, come), lambda word: words.get(place_of(word)) == out)
    lines: list[str] = []
    changed = [_statement(each, parts, lines.append) for each in statements]
    return Exchange(tuple(each for each in changed if each is not None), parts.jacks, tuple(lines))


def _no_units(out: str, into: str, gone: Any, come: Any) -> str:
    if out == into:
        return f"'{out}' can't stand in for itself"
    for name, thing in ((out, gone), (into, come)):
        if not isinstance(thing, Unit):
            return f"nothing declares '{name}'" if thing is None else f"'{name}' is {article(thing.kind)}, no unit"
    if gone.kind != come.kind:
        return f"'{out}' is {article(gone.kind)}, '{into}' is {article(come.kind)}"
    return ""


def _not_free(statements: tuple[Node, ...], out: str, into: str, words: dict[tuple[int, int], str]) -> str:
    used = tuple(each for each in statements if not _stays(each) and not isinstance(each, nodes.SparesBlock))
    found = {word.text: word for word in reversed(list(_words(used))) if place_of(word) in words}
    if out not in found:
        return f"'{out}' is declared, but nothing of this rig uses it"
    taken = found.get(into)
    if taken is not None:
        line = taken.span.source.line(taken.span.line).split("#")[0].strip()
        return f"'{into}' is in use already: {line}"
    return ""


def _statement(statement: Any, parts: Counterparts, tell: Callable[[str], None]) -> Any | None:
    if _stays(statement):
        return statement
    whole = kept(statement, parts, tell)
    if whole is None:
        return None
    items = getattr(whole, "items", None)
    if items is not None:
        within = _within(statement, tell)
        left = tuple(item if isinstance(item, _LEFT) else kept(item, parts, within) for item in items)
        whole = whole.replace(items=tuple(item for item in left if item is not None))
    return reworded(whole, lambda part: _changed(part, parts, tell))


def _within(statement: Node, tell: Callable[[str], None]) -> Callable[[str], None]:
    """Tells an item of a preset or song with its name before it: alike ones are many."""
    if not isinstance(statement, nodes.Preset | nodes.Song):
        return tell
    head = str(statement).split(" {")[0]
    return lambda line: tell(f"{head}: {line}")


def _changed(part: Part, parts: Counterparts, tell: Callable[[str], None]) -> Part:
    if isinstance(part, nodes.Reading):
        whole: Node = part.replace()  # another object is taken as it is, its words with it
        return whole
    if isinstance(part, nodes.Path):
        return _path(part, parts, tell)
    if isinstance(part, nodes.Stop | nodes.Endpoint) and parts.named(part.thing):
        thing = Word(parts.into.name, part.thing.span)
        jack = None if part.jack is None else parts.jacks.get(part.jack.text)
        if part.jack is not None and jack is None:
            tell(f"{part}: '{parts.into.name}' has no jack for it; which one is left open")
        end: Node = part.replace(thing=thing, jack=Word(jack, part.jack.span) if part.jack and jack else None)
        return end
    if isinstance(part, Word) and parts.named(part):
        return Word(parts.into.name, part.span)
    return part


def _path(path: nodes.Path, parts: Counterparts, tell: Callable[[str], None]) -> nodes.Path:
    """A path with the substitute in it: mono where the substitute has no stereo pair of jacks."""
    stops = [path.first, *(hop.stop for hop in path.hops)]
    last = len(stops) - 1
    stops = [_clear(stop, parts, at > 0, at < last) for at, stop in enumerate(stops)]
    hops = []
    for before, stop, hop in zip(stops, stops[1:], path.hops, strict=False):
        link = hop.link
        lost = [way for way, at in (("output", before), ("input", stop))
                if parts.named(at.thing) and not _paired(parts.into, way)]  # fmt: skip
        if link.text == "=>" and lost:
            tell(f"{before.thing} => {stop.thing}: '{parts.into.name}' has no pair of {lost[0]}s; mono from here on")
            link = Word("->", link.span)
        hops.append(hop.replace(link=link, stop=_changed(stop, parts, tell)))
    changed: nodes.Path = path.replace(first=_changed(stops[0], parts, tell), hops=tuple(hops))
    return changed


def _clear(stop: nodes.Stop, parts: Counterparts, entered: bool, left: bool) -> nodes.Stop:
    """A stop that names no jack; it names the one that was used where the substitute leaves that open."""
    if stop.jack is not None or not parts.named(stop.thing):
        return stop
    for role in (("input",) if entered else ()) + (("output",) if left else ()):
        used = direct(parts.out, role)
        if used in parts.jacks and direct(parts.into, role) is None:
            named: nodes.Stop = stop.replace(jack=Word(used, stop.thing.span))
            return named
    return stop


def _paired(unit: Unit, role: str) -> bool:
    return any(all((jack := unit.jack(name)) is not None and jack.role == role for name in pair) for pair in unit.pairs)


def _stays(statement: Node) -> bool:
    return isinstance(statement, _LEFT) or FAMILIES.get(type(statement), ("",))[0] not in ("", "scenario")


def _words(value: Any) -> Iterator[Word]:
    """Every word within nodes, in order, but for those of readings."""
    if isinstance(value, Word):
        yield value
    elif isinstance(value, tuple):
        for part in value:
            yield from _words(part)
    elif isinstance(value, Node) and not isinstance(value, _LEFT):
        for name in value.FIELDS:
            yield from _words(getattr(value, name))
