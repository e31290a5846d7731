"""A node and a change of its parts -> the node with other parts in the same places of the source."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from rigc.syntax.nodes import Node, Word

Part = Node | Word
"""What a change is asked about: a node, before its own parts, and each word."""


def reworded(value: Any, change: Callable[[Part], Part]) -> Any:
    """A node, a tuple of nodes or a word, with whatever `change` gives in place of each part; untouched parts are the same objects.

    A node for which `change` gives another is taken as it is; of the others the parts are asked about in turn.
    """
    if isinstance(value, tuple):
        parts = tuple(reworded(part, change) for part in value)
        return parts if any(new is not old for new, old in zip(parts, value, strict=True)) else value
    if isinstance(value, Word):
        return change(value)
    if not isinstance(value, Node):
        return value
    given = change(value)
    if given is not value:
        return given
    fields = {name: getattr(value, name) for name in value.FIELDS}
    changed = {name: new for name, old in fields.items() if (new := reworded(old, change)) is not old}
    return value.replace(**changed) if changed else value
