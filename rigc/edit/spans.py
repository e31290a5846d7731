"""A node -> where it stands: every class of nodes has a span, though their base class, which has no fields, cannot say so."""

from __future__ import annotations

from typing import Any

from rigc.source import Span
from rigc.syntax.nodes import Node


def span_of(node: Node) -> Span:
    """The stretch of the source that the node was read from."""
    whole: Any = node
    span: Span = whole.span
    return span
