"""Two files of one rig -> the statements that one has and the other has not, block by block; order and comments don't count."""

from __future__ import annotations

from collections import Counter

from rigc.edit.canonical import block_items
from rigc.syntax.nodes import File, Node, Word


def statement_changes(old: File, new: File) -> str:
    """Lines with `-` and `+` under the head of each block that changed; one sentence where none did."""
    before, after = _by_block(old), _by_block(new)
    told: list[str] = []
    for block in dict.fromkeys((*before, *after)):
        lines = _changed(before.get(block, []), after.get(block, []))
        if lines:
            told += ([block] if block else []) + [f"  {line}" if block else line for line in lines]
    return "".join(f"{line}\n" for line in told) or "the statements are the same; comments, order or spacing differ\n"


def _by_block(file: File) -> dict[str, list[str]]:
    """The statements under the word and name of their block; those of no block, and heads of blocks, under themselves."""
    found: dict[str, list[str]] = {}
    for node in file.statements:
        items = block_items(node)
        if items is None:
            found.setdefault("", []).append(str(node))
            continue
        head = str(node).split("\n", 1)[0].removesuffix(" {")
        found.setdefault(_label(node, head), []).extend([head, *map(str, items)])
    return found


def _label(node: Node, head: str) -> str:
    """What the block is known by: its word and name, without title and `like`."""
    name = getattr(node, "name", None)
    return f"{head.split(' ')[0]} {name}" if isinstance(name, Word) else head


def _changed(old: list[str], new: list[str]) -> list[str]:
    gone, come = Counter(old) - Counter(new), Counter(new) - Counter(old)
    return [f"- {line}" for line in gone.elements()] + [f"+ {line}" for line in come.elements()]
