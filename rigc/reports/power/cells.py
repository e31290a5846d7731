"""The polarity of a plug -> how a cell of the power table writes it; `?` where not known."""

from __future__ import annotations

from rigc.analysis.feeds.outlet_fit import POLAR
from rigc.model.fact import Fact
from rigc.model.things import Outlet


def polarity(stated: str | None, current: str | None) -> str:
    """The polarity of a plug; AC has none."""
    return "none (AC)" if current == "ac" else stated or "?"


def polarity_mark(fact: Fact[str] | None, current: str | None) -> str:
    """What is said beside the polarity of a unit's plug where nobody has measured it."""
    if current == "ac":
        return ""
    return "NOT STATED: measure" if fact is None else "assumed: measure" if fact.assumed else ""


def unstated(outlet: Outlet | None, current: str) -> bool:
    """Whether an outlet does not say the polarity of a plug that hides it."""
    kind = None if outlet is None or outlet.connector is None else outlet.connector.kind
    return current == "dc" and (outlet is None or outlet.polarity is None) and (kind is None or kind in POLAR)
