"""A swap of units that is stated of the built board could not be followed, or not wholly."""

from __future__ import annotations

from rigc.diagnostics.diagnostic import Kind, Level

KIND = Kind(
    "unmade-swap",
    Level.WARNING,
    """A swap of units that is stated of the built board can't be followed in the design of that board, or not wholly.

    Why it matters: the next revision is then compared with a board that no longer exists: leads are kept that are gone,
    and a unit is taken out that is not there.
    What to do: declare the unit that went in, or correct the `swap` line; state what else was changed as field notes.
    Source: common practice, no source.
    """,
    "both units of a stated swap are declared, the first is used by that revision and the second was not",
    "common practice, no source",
)
