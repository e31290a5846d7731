"""The changes of a revision -> their records: what each touches is a declared name, or the number of a lead."""

from __future__ import annotations

from rigc.model.records import Change
from rigc.model.resolve.context import Context
from rigc.model.resolve.wishes.leads import known_mark
from rigc.model.scope import twice
from rigc.syntax import nodes
from rigc.syntax.nodes import Word


def change(context: Context, node: nodes.Change, changes: dict[int, Change]) -> None:
    """Takes a change up among `changes`, by its number; a number given twice is told, and the later one is kept."""
    number = context.count(node.number, "change number", 1, 9999)
    if number is None:
        return
    if number in changes:
        first = Word("", changes[number].span)
        context.report(twice(f"change {number}", node.number, first, "give one of them another number"))
    because = node.reason.value if node.reason else ""
    changes[number] = Change(number, node.cause.text, node.text.value, because, _touched(context, node), node.span)


def _touched(context: Context, node: nodes.Change) -> tuple[str, ...]:
    """The names and numbers that are known; a lead's number may be retired by the very change."""
    marks = {
        item.mark.text: item.mark
        for block in context.of(nodes.LeadsBlock)
        for item in block.items
        if isinstance(item, nodes.Lead | nodes.Adaptor | nodes.Retired)
    }
    words = dict.fromkeys(node.touches or ())
    return tuple(word.text for word in words if _known(context, word, marks))


def _known(context: Context, word: Word, marks: dict[str, Word]) -> bool:
    if word.text[0].isupper():
        return known_mark(context, word, marks)
    families = [scope for scope in context.scopes.values() if word.text in scope.declared]
    found = [scope.find(word, (), "what the change touches") for scope in families or [context.scopes["thing"]]]
    return None not in found
