"""A jack -> what the contacts of a plug in it carry, in words; a cable -> how many ways for current it has."""

from __future__ import annotations

from rigc.model.jacks import Connector, Jack
from rigc.model.stock import Cable, Plug

THREE = ("trs", "mini-trs")
SCREENED = ("audio", "midi")


def meaning(jack: Jack) -> str:
    """What kind of signal it carries: `mono`, `stereo`, `balanced`, `insert`, `speaker`; `wireless` where no lead is."""
    if jack.connector.kind == "wireless":
        return "wireless"
    if jack.carries is not None:
        return jack.carries
    return "balanced" if jack.connector.kind == "xlr" else "mono"


def told(jack: Jack) -> str:
    """What each contact carries."""
    kind = jack.connector.kind
    if kind == "wireless":
        return "no contact: it is reached through the air"
    if kind == "xlr":
        return "pin 1 shield, pin 2 signal, pin 3 signal inverted"
    if kind == "ts" or meaning(jack) in ("mono", "speaker"):
        return "tip signal, sleeve ground" + (", ring not used" if kind in THREE else "")
    rings = {"stereo": ("left", "right"), "balanced": ("signal", "signal inverted"), "insert": ("send", "return")}
    tip, ring = rings[meaning(jack)]
    return f"tip {tip}, ring {ring}, sleeve ground"


def fits(plug: Plug, jack: Jack, *, three: bool) -> bool:
    """Whether a plug goes into a jack, and joins three conductors where it must; one that says nothing of what it fits does."""
    wanted = jack.connector.kind
    kinds = {each.kind for each in plug.fits}
    if three and wanted in THREE and (plug.poles == 2 or kinds == {"ts"}):
        return False
    if not kinds or wanted in kinds:
        return True
    return {wanted, *kinds} <= {"ts", "trs"}


def three_conductors(start: Jack, end: Jack) -> bool:
    """Whether a lead between two jacks needs three conductors: both carry more than a mono signal."""
    return all(meaning(jack) in ("stereo", "balanced", "insert") for jack in (start, end))


def conducting_paths(cable: Cable) -> int | None:
    """How many ways for current a cable has: its conductors, and in audio and MIDI cable the screen round them."""
    if cable.conductors is None:
        return None
    return cable.conductors + (1 if cable.signal in SCREENED else 0)


def named(connector: Connector) -> str:
    """The connector as people write it."""
    return {"ts": "TS", "trs": "TRS", "mini-trs": "mini TRS", "xlr": "XLR", "din": "DIN"}.get(
        connector.kind, str(connector)
    )
