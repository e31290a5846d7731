"""An audio lead and its two jacks -> which contact is joined to which, end A first."""

from __future__ import annotations

from rigc.analysis.computations.leads import Lead
from rigc.model.conductors import three_conductors
from rigc.model.jacks import Jack
from rigc.model.rig import Rig

_XLR = {"tip": "pin 2", "ring": "pin 3", "sleeve": "pin 1"}
"""The pins of an XLR that stand for the contacts of a jack plug: pin 2 is hot (AES14, from memory)."""


def audio_conductors(rig: Rig, lead: Lead) -> str:
    """`tip–tip, sleeve–sleeve` and its like; of two jacks that carry more than a mono signal with the ring."""
    start, end = rig.jack(lead.start), rig.jack(lead.end)
    three = start is not None and end is not None and three_conductors(start, end)
    wanted = ("tip", "ring", "sleeve") if three else ("tip", "sleeve")
    return ", ".join(f"{_contact(start, each)}–{_contact(end, each)}" for each in wanted)


def _contact(jack: Jack | None, contact: str) -> str:
    return _XLR[contact] if jack is not None and jack.connector.kind == "xlr" else contact
