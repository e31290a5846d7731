"""unfit-text: a text between quotes that holds nothing. Accepts and labels say more about theirs themselves."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any

from rigc.diagnostics.diagnostic import Diagnostic
from rigc.diagnostics.mend import Delete, Mend, Replace
from rigc.model.slips.said_again import first_line
from rigc.model.slips.unfit_text import UNFIT_TEXT
from rigc.source import Span
from rigc.syntax import nodes
from rigc.syntax.nodes import Node, Text
from rigc.syntax.nodes.written import Field, parts, rule_of

_PERHAPS = re.compile(r'(?<=\s)"[ \t]*"(?=\s)')


def empty_texts(statements: tuple[Node, ...]) -> tuple[Diagnostic, ...]:
    """One finding for each; nothing is walked where no source holds one."""
    sources = {id(each.span.source): each.span.source for each in statements}
    if not any(_PERHAPS.search(source.text) for source in sources.values()):
        return ()
    return tuple(_told(node, text, line) for each in statements for node, text, line in _empty(each, each))


def _empty(node: Any, line: Any) -> Iterator[tuple[Any, Text, Any]]:
    """Each empty text, with the node that it is a field of and the statement or line of a block in which it stands."""
    if isinstance(node, nodes.Accept | nodes.Label):
        return
    for value in node.__dict__.values():
        if isinstance(value, Text) and not value.value.strip():
            yield node, value, line
        elif isinstance(value, Node):
            yield from _empty(value, line)
        elif isinstance(value, tuple):
            for each in value:
                if isinstance(each, Node):
                    yield from _empty(each, each)


def _told(node: Any, text: Text, line: Any) -> Diagnostic:
    words = _said_before(node, text)
    mends: tuple[Mend, ...] = ()
    if words is not None:
        start = text.span.source.text.rindex(words, 0, text.span.start) if words else text.span.start
        gone = Span(text.span.source, start, text.span.end)
        mends = (Mend(f"leave the empty text out of `{first_line(line)}`", (Replace(gone, ""),)),)
    elif not hasattr(line, "items"):
        mends = (Mend(f"delete '{first_line(line)}'", (Delete(line.span),)),)
    return UNFIT_TEXT.at(
        text.span,
        "this text is empty",
        label="nothing between the quotes",
        mends=mends,
        help="write what belongs there between the quotes",
    )


def _said_before(node: Any, text: Text) -> str | None:
    """The word that stands before a text that may be left out, and goes with it: `by`, or nothing; None where the text is a must."""
    for part in parts(rule_of(type(node)), node.FIELDS):
        if isinstance(part, tuple):
            fields = [each for each in part if isinstance(each, Field)]
            if any(getattr(node, field.name) is text for field in fields):
                return " ".join(each for each in part if isinstance(each, str))
    return None
