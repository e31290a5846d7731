"""A revision names one that it follows, and can't be compared with it."""

from __future__ import annotations

from rigc.diagnostics.diagnostic import Kind, Level

KIND = Kind(
    "no-comparison",
    Level.WARNING,
    """The revision that this one follows can't be read, has errors, is not the one that is named, bears this one's letter or a later date.

    Why it matters: without it nobody is told which leads stay, and the bench makes good cables anew.
    What to do: put the file there, correct it, or name the right one behind `follows`; letters and dates go on from one to the next.
    Source: common practice, no source.
    """,
    "a revision is compared with the one that it follows",
    "common practice, no source",
)
