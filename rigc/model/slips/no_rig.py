"""no-rig: a file that declares no rig, more than one, or one without a revision."""

from __future__ import annotations

from rigc.diagnostics.diagnostic import Kind, Level

NO_RIG = Kind(
    "no-rig",
    Level.ERROR,
    """The file declares no rig, or more than one.

    Why it matters: every page bears the name and the revision of one rig; without them nobody knows which board a sheet belongs to.
    What to do: write one block, rig NAME "Title", with a line: revision A 2026-03-02.
    Source: the language reference, grammar/README.md.
    """,
    "one rig block with a revision",
    "the language reference, grammar/README.md",
)
