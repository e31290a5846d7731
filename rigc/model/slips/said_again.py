"""Statements -> the same without those that say again what stands further up in their block, or say it otherwise; a finding for each.

Facts of one thing are told so where they are gathered (`items_of`), because `like` takes part there; this is of everything else.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import Any

from rigc.diagnostics.diagnostic import Diagnostic, Label
from rigc.diagnostics.mend import Delete, Mend, Replace
from rigc.model.scope import SAID_TWICE
from rigc.source import Span
from rigc.syntax import nodes
from rigc.syntax.nodes import Node, Word

_MEANT = (nodes.Note, nodes.ReserveOutlet, nodes.ReserveRoom)
"""What may stand twice: a line for the crew is its author's, and two equal reserves are two."""

_ONE_PLACE = (
    nodes.MidiBlock, nodes.ControlBlock, nodes.PowerBlock, nodes.LeadsBlock, nodes.MountingBlock, nodes.TestsBlock,
)  # fmt: skip
"""Blocks without a name: what stands in two of them stands in one."""


def _once(_: Any) -> Any:
    return ()


_ABOUT: dict[type[Node], Callable[[Any], Any]] = {
    nodes.Provenance: _once,
    nodes.Limit: lambda node: node.what,
    nodes.Country: _once,
    nodes.Amps: _once,
    nodes.Selector: lambda node: node.supply,
    nodes.Transformer: lambda node: node.supply,
    nodes.GroundLift: lambda node: node.at,
    nodes.StereoPair: lambda node: frozenset((node.left, node.right)),
    nodes.InternalPath: lambda node: (node.start, node.end),
    nodes.PanelJack: lambda node: ("jack", node.name),
    nodes.PanelInlet: lambda node: ("jack", node.name),
    nodes.Tier: lambda node: node.name,
    nodes.Hole: lambda node: (node.x, node.y),
    nodes.BareMetal: lambda _: "metal",
    nodes.Insulating: lambda _: "metal",
    nodes.Order: lambda node: frozenset((node.first, node.second)),
    nodes.Feedback: lambda node: node.unit,
    nodes.Mute: lambda node: node.unit,
    nodes.BypassPlan: lambda node: (node.start, node.end),
    nodes.Accept: lambda node: (node.rule, node.target),
    nodes.BlendDry: _once,
    nodes.BlendWet: lambda node: (node.number, node.path),
    nodes.Program: lambda node: node.unit,
    nodes.PresetLine: lambda node: node.at,
    nodes.PresetVolume: lambda node: node.unit,
    nodes.Tempo: _once,
    nodes.SongPreset: _once,
    nodes.Tuning: _once,
    nodes.Setting: lambda node: (node.unit, node.knob),
    nodes.Master: _once,
    nodes.MidiLink: lambda node: (node.start, node.end),
    nodes.ControlLink: lambda node: (node.start, node.end),
    nodes.SpareOutlets: lambda node: node.supply,
    nodes.Clear: lambda node: node.thing,
    nodes.Away: lambda node: (node.things, node.others),
    nodes.StockChoice: lambda node: node.signal,
    nodes.PlugChoice: lambda node: node.signal,
    nodes.Cutting: lambda node: node.signal,
    nodes.Adaptor: lambda node: (node.kind, node.unit),
    nodes.Tie: lambda node: frozenset((node.first, node.second)),
    nodes.MountAll: _once,
    nodes.Bridged: lambda node: node.thing,
    nodes.Expected: lambda node: (node.number, node.point),
    nodes.Every: lambda node: node.task,
    nodes.BuiltLead: lambda node: (node.mark, node.date),
}
"""What a statement of this kind is about: of two about the same, one is wrong."""


_EITHER = (nodes.BareMetal, nodes.Insulating, nodes.PanelJack, nodes.PanelInlet)
"""Kinds of which one may contradict another."""


def said_once(statements: tuple[Node, ...]) -> tuple[tuple[Node, ...], tuple[Diagnostic, ...]]:
    """The statements without doubles, at the top level and in each block. That a block stands twice, its name tells."""
    found: list[Diagnostic] = []
    together: dict[type, dict[Any, Any]] = {kind: {} for kind in _ONE_PLACE}
    kept = []
    for statement in statements:
        items = getattr(statement, "items", None)
        if items:
            kind = type(statement)
            once = tuple(_kept(items, kind, together.get(kind), found))
            if once != items:
                statement = statement.replace(items=once)
        kept.append(statement)
    return tuple(_kept(tuple(kept), None, None, found)), tuple(found)


def _kept(
    items: tuple[Any, ...], block: type | None, before: dict[Any, Any] | None, found: list[Diagnostic]
) -> Iterator[Any]:
    """The items that say something new; `before` are those of other blocks that are one with this, by what they are about."""
    seen: dict[Any, Any] = {} if before is None else before
    several = _several(items) if before is None else None
    for item in items:
        if hasattr(item, "items") or isinstance(item, _MEANT):
            yield item
            continue
        if several is None or type(item) in several or isinstance(item, _EITHER):
            first = seen.setdefault(_about(item, block), item)
            if first is not item:
                found.append(stated_again(first, item))
                continue
        yield _each_once(item, found)


def _several(items: tuple[Any, ...]) -> set[type]:
    """The kinds of which there are several: of the others none says again what another says."""
    once: set[type] = set()
    several: set[type] = set()
    for item in items:
        kind = type(item)
        (several if kind in once else once).add(kind)
    return several


def _about(item: Any, block: type | None) -> Any:
    """What it is about; the whole of it, where two of its kind go together unless they are equal."""
    kind = type(item)
    if kind in _ABOUT:
        return (None if kind in _EITHER else kind, _ABOUT[kind](item))
    return kind if kind is nodes.Mains and block is nodes.Scenario else item


def _each_once(item: Any, found: list[Diagnostic]) -> Any:
    """The item, with each name in each of its lists once."""
    if not any(type(each) is tuple or type(each) is nodes.ChainHead for each in item.__dict__.values()):
        return item
    for field, words in list(item.__dict__.items()):
        if type(words) is tuple and len(words) > 1 and type(words[0]) is Word:
            texts = [word.text for word in words]
            if len(set(texts)) < len(texts):
                again = [number for number, text in enumerate(texts) if text in texts[:number]]
                found += (
                    _again_in_list(words[number - 1], words[number], words[texts.index(texts[number])])
                    for number in again
                )
                item = item.replace(**{field: tuple(each for number, each in enumerate(words) if number not in again)})
        elif isinstance(words, nodes.ChainHead):
            item = item.replace(**{field: _each_once(words, found)})
    return item


def _again_in_list(before: Word, again: Word, first: Word) -> Diagnostic:
    """The finding about a name that stands in a list a second time; `before` is what stands before it there."""
    gone = Span(again.span.source, before.span.end, again.span.end)
    return SAID_TWICE.at(
        again.span,
        f"'{again.text}' stands twice in this list",
        subject=(again.text,),
        label="the same again",
        also=(Label(first.span, "first named here"),),
        mends=(Mend(f"name '{again.text}' once", (Replace(gone, ""),)),),
    )


def stated_again(first: Any, again: Any, mends: tuple[Mend, ...] = ()) -> Diagnostic:
    """The finding about the second of two statements; `mends` where there is something better than to leave one of them standing."""
    said = first_line(again)
    same = first == again
    return SAID_TWICE.at(
        again.span,
        f"'{said}' is stated twice" if same else f"'{said}' is stated again, other than before",
        label="stated again here",
        also=(Label(first.span, "first stated here"),),
        mends=mends or _either(first, again, same),
    )


def _either(first: Any, again: Any, same: bool) -> tuple[Mend, ...]:
    """The ways to leave one of two statements standing."""
    if same:
        return (Mend("delete the second line", (Delete(again.span),)),)
    return tuple(Mend(f"delete '{first_line(each)}'", (Delete(each.span),)) for each in (first, again))


def first_line(node: Any) -> str:
    """The first line of a statement, as it is printed."""
    return str(node).split("\n", 1)[0]
