"""unclear-feed: a statement of the power block that leaves open how outlets and units go together."""

from __future__ import annotations

from rigc.diagnostics.diagnostic import Kind, Level

UNCLEAR_FEED = Kind(
    "unclear-feed",
    Level.ERROR,
    """Power statements leave open how an outlet and its units go together, or contradict each other in it.

    Why it matters: several units on one outlet, or one unit on several, is done on purpose only; whoever wires the board must see it said.
    What to do: say `shared`, `series` or `parallel`, or name another outlet.
    Source: the language reference, grammar/README.md.
    """,
    "one unit on one outlet, unless shared, series or parallel is said",
    "the language reference, grammar/README.md",
)
