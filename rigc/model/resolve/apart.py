"""misused-name: a statement about two things names two."""

from __future__ import annotations

from rigc.model.resolve.context import Context
from rigc.model.scope import MISUSED
from rigc.syntax.nodes import Word


def two_things(context: Context, first: Word, second: Word, what: str) -> bool:
    """Whether two names of a statement differ; a finding where not. `what` is what goes there, in the plural."""
    if first.text != second.text:
        return True
    context.report(
        MISUSED.at(
            second.span,
            f"'{second.text}' stands on both sides; two {what} go here",
            subject=(second.text,),
            label="the same again",
            help=f"name another one of the {what}",
        )
    )
    return False
