"""unfit-text: a text that does not say what it is there for."""

from __future__ import annotations

from rigc.diagnostics.diagnostic import Kind, Level

UNFIT_TEXT = Kind(
    "unfit-text",
    Level.ERROR,
    """A text lacks what it is there for: a label without the lead's number, an accepted finding without reason or name,
    quotes with nothing between them.

    Why it matters: a label that names no lead can't be looked up in the cable list; a signature without words is none.
    What to do: write {id} in the template, and only {here} and {far} beside it; write why a finding may stay, and who says so; leave an empty text out.
    Source: the language reference, grammar/README.md.
    """,
    "a label bears {id} and no fields but {id}, {here} and {far}; an accept bears a reason and a name; no text is empty",
    "the language reference, grammar/README.md",
)
