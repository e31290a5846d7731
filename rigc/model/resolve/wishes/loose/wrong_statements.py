"""Statements in which something is wrong -> the names in them: what these join is not known."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterator

from rigc.model.resolve.context import Context
from rigc.model.resolve.wishes.loose.loose_lead import by
from rigc.syntax import nodes
from rigc.syntax.nodes import Node, Word


def in_wrong_statements(context: Context) -> frozenset[str]:
    """Those in statements of chains, loops, control, MIDI and power in which something is wrong: what they join is not known."""
    wrong = [finding.span for finding in context.findings if finding.span is not None]
    wrong += [label.span for finding in context.findings for label in finding.also]
    starts = {
        source: sorted(at.start for at in found) for source, found in by(wrong, lambda at: (id(at.source),)).items()
    }
    names: set[str] = set()
    for node in _joining(context):
        told_of = starts.get(id(node.span.source), [])
        if bisect_left(told_of, node.span.start) < bisect_left(told_of, node.span.end):
            words = node.units if isinstance(node, nodes.Feed) else _words(node)
            names.update(word.text for word in words)
    return frozenset(names)


def _joining(context: Context) -> Iterator[Node]:
    for statement in context.statements:
        if isinstance(statement, nodes.Chain | nodes.LoopHolds | nodes.LoopEmpty | nodes.Blend):
            yield statement
        elif isinstance(statement, nodes.MidiBlock | nodes.ControlBlock | nodes.PowerBlock):
            kinds = nodes.MidiLink | nodes.ControlLink | nodes.Feed
            yield from (item for item in statement.items if isinstance(item, kinds))


def _words(value: object) -> Iterator[Word]:
    if isinstance(value, Word):
        yield value
    elif isinstance(value, tuple):
        for part in value:
            yield from _words(part)
    elif isinstance(value, Node):
        for name in value.FIELDS:
            yield from _words(getattr(value, name))
