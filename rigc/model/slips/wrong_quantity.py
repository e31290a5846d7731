"""wrong-quantity: a quantity that can't be what it says."""

from __future__ import annotations

from rigc.diagnostics.diagnostic import Kind, Level

WRONG_QUANTITY = Kind(
    "wrong-quantity",
    Level.ERROR,
    """A quantity has no unit, a unit of the wrong kind, a sign that means nothing there, or a size no such thing has.

    Why it matters: 22 mA read as 22 A, or inches read as millimetres, spoils every sheet that follows and may cost a unit.
    What to do: write the number with the unit you measured it in; look at what it was read as.
    Source: dimensions are those of the SI (conversion factors of NIST SP 811); the plausible ranges are common practice, no source.
    """,
    "a quantity has the dimension and a plausible size of what it tells",
    "arithmetic of dimensions (SI); plausible ranges are common practice, no source",
)
