"""`all-units` blocks -> the facts that hold for every unit of a file, unless the unit says otherwise."""

from __future__ import annotations

from typing import Any

from rigc.diagnostics.diagnostic import Label
from rigc.model.fact import Provenance
from rigc.model.resolve.context import Context, items_of, provenance_of
from rigc.model.scope import SAID_TWICE
from rigc.syntax import nodes
from rigc.syntax.nodes import Node


class SharedFacts:
    """By file, what its `all-units` block states. A unit of another file is not touched: what a bench file says of its units
    must not hang on the rigs that use it."""

    def __init__(self, blocks: dict[str, nodes.AllUnits]) -> None:
        self._blocks = blocks

    def items(self, block: Node) -> tuple[Node, ...]:
        """The statements that hold for a unit's block; nothing for other things."""
        own = self.of(block)
        return () if own is None else own.items

    def provenance(self, block: Node) -> Provenance | None:
        """Where the facts of a unit's block come from that say nothing themselves."""
        found = [provenance_of(item) for item in self.items(block) if isinstance(item, nodes.Provenance)]
        return found[-1] if found else None

    def of(self, block: Node) -> nodes.AllUnits | None:
        """The `all-units` block that holds for a unit's block; None for other things."""
        return self._blocks.get(block.span.source.name) if isinstance(block, nodes.Unit) else None


NOTHING_SHARED = SharedFacts({})


def shared_facts(context: Context) -> SharedFacts:
    """One block for each file; a second one is a finding, and so is a fact stated twice in one."""
    blocks: dict[str, Any] = {}
    for node in context.of(nodes.AllUnits):
        first = blocks.setdefault(node.span.source.name, node)
        if first is not node:
            context.report(
                SAID_TWICE.at(
                    node.span,
                    "what holds for all units of this file is stated in two blocks",
                    label="stated again here",
                    also=(Label(first.span, "first stated here"),),
                    help="put both into one `all-units` block",
                )
            )
        else:
            items_of(context, node.items, [])
    return SharedFacts(blocks)
