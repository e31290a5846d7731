"""The changes of a revision -> their records: what each touches is a declared name, or the number of a lead."""

from __future__ import annotations

from rigc.model.records import Change
from rigc.model.resolve.context import Context
from rigc.model.resolve.wishes.leads import known_mark
from rigc.model.scope import Scope, twice
from rigc.source import Span
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
    touched, gone = _touched(context, node)
    changes[number] = Change(number, node.cause.text, node.text.value, because, touched, node.span, gone)


def _touched(context: Context, node: nodes.Change) -> tuple[tuple[str, ...], tuple[tuple[str, Span], ...]]:
    """The names and numbers that are known; a lead's number may be retired by the very change. Where another revision is followed, a
    name that nothing declares here may be of what it took off the board; it is told behind the others, too."""
    marks = {
        item.mark.text: item.mark
        for block in context.of(nodes.LeadsBlock)
        for item in block.items
        if isinstance(item, nodes.Lead | nodes.Adaptor | nodes.Retired)
    }
    words = dict.fromkeys(node.touches or ())
    follows = any(isinstance(item, nodes.Follows) for block in context.of(nodes.Rig) for item in block.items)
    gone = {
        word: word.span for word in words if follows and not word.text[0].isupper() and not _families(context, word)
    }
    touched = tuple(word.text for word in words if word in gone or _known(context, word, marks, follows))
    return touched, tuple((word.text, span) for word, span in gone.items())


def _families(context: Context, word: Word) -> list[Scope]:
    return [scope for scope in context.scopes.values() if word.text in scope.declared]


def _known(context: Context, word: Word, marks: dict[str, Word], follows: bool) -> bool:
    if word.text[0].isupper():
        return known_mark(context, word, marks, may_be_gone=follows)
    families = _families(context, word) or [context.scopes["thing"]]
    return None not in [scope.find(word, (), "what the change touches") for scope in families]
