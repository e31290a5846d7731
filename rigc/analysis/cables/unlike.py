"""Two leads -> whether they should keep apart, and how far: only audio keeps away from what feeds power."""

from __future__ import annotations

from rigc.analysis.computations.leads import Lead
from rigc.facts.separation import BESIDE_AC_MM, BESIDE_DC_MM


def apart_mm(one: Lead, other: Lead) -> float | None:
    """The distance in mm below which they run beside each other; None for leads that may lie together."""
    signals = {one.signal, other.signal}
    if signals == {"audio", "dc"}:
        return BESIDE_DC_MM.value
    return BESIDE_AC_MM.value if signals in ({"audio", "ac"}, {"audio", "mains"}) else None
