"""A jack -> what the contacts of a plug in it carry, in words."""

from __future__ import annotations

from rigc.model.jacks import Connector, Jack
from rigc.model.stock import Plug

THREE = ("trs", "mini-trs")


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
    if kind == "xlr":
        return "pin 1 shield, pin 2 signal, pin 3 signal inverted"
    if kind == "ts" or meaning(jack) in ("mono", "speaker"):
        return "tip signal, sleeve ground" + (", ring not used" if kind in THREE else "")
    rings = {"stereo": ("left", "right"), "balanced": ("signal", "signal inverted"), "insert": ("send", "return")}
    tip, ring = rings[meaning(jack)]
    return f"tip {tip}, ring {ring}, sleeve ground"


def fits(plug: Plug, jack: Jack) -> bool:
    """Whether a plug makes all the contacts that a jack needs; a plug that says nothing of what it fits is taken to fit."""
    wanted = jack.connector.kind
    kinds = {each.kind for each in plug.fits}
    if not kinds or wanted in kinds:
        return not (wanted in THREE and _all_three(jack) and plug.poles == 2)
    if wanted == "ts":
        return "trs" in kinds
    return wanted == "trs" and "ts" in kinds and not _all_three(jack)


def _all_three(jack: Jack) -> bool:
    return meaning(jack) in ("stereo", "balanced", "insert")


def named(connector: Connector) -> str:
    """The connector as people write it."""
    return {"ts": "TS", "trs": "TRS", "mini-trs": "mini TRS", "xlr": "XLR", "din": "DIN"}.get(
        connector.kind, str(connector)
    )
