"""A statement whose parts all are there, in another order than the language's -> the wording."""

from __future__ import annotations

import re
from collections.abc import Callable

from rigc.syntax.mistake import Mistake, Wording

_NUMBER = r"\d[\d.]*?"
_UNIT = r"[ \t]*[A-Za-zΩΩ]+"
_JACK_PARTS = {
    "kind": r"(?:mini-trs|ts|trs|din|xlr|wireless)\b",
    "impedance": rf"{_NUMBER}[ \t]*[kM]?(?:ohm|[ΩΩ])",
    "side": rf"(?:left|right|front|rear)[ \t]+{_NUMBER}(?:{_UNIT})?(?:[ \t]*\.\.[ \t]*{_NUMBER}{_UNIT})?(?![\w.])",
    "height": rf"up[ \t]+{_NUMBER}{_UNIT}",
    "bushing": r"(?:insulated|bonded)\b",
    "carries": r"(?:stereo|balanced|insert|speaker)\b",
    "source": r"(?:measured|leaflet|assumed)\b.*",
}
_ORDER = tuple(_JACK_PARTS)


def _jack_out_of_order(m: Mistake) -> Wording | None:
    """`input in ts balanced bonded left 20 mm up 20 mm`."""
    head = re.match(r"[ \t]*(?:input|output)[ \t]+([a-z][\w.-]*)", m.code)
    parts = None if head is None else _jack_parts(m.code[head.end() :])
    if head is None or parts is None or "side" not in parts:
        return None
    right = sorted(parts, key=_ORDER.index)
    if right == list(parts):
        return None
    made = " ".join((head.group(), *(parts[each] for each in right)))
    mends = m.instead(m.line_start, m.line_start + len(m.code.rstrip()), made, f"write {made.strip()}")
    label = "first the kind, then impedance, side, height, bushing, and what it carries"
    return Wording(f"the parts of '{head[1]}' are out of order", label, mends=mends)


def _jack_parts(text: str) -> dict[str, str] | None:
    """What is said of a jack, part by part as written; None where a part is none of these or stands twice."""
    found: dict[str, str] = {}
    while text := text.strip():
        each = next(((name, got) for name, shape in _JACK_PARTS.items() if (got := re.match(shape, text))), None)
        if each is None or each[0] in found:
            return None
        found[each[0]] = each[1].group()
        text = text[each[1].end() :]
    return found


def _like_behind_the_title(m: Mistake) -> Wording | None:
    """`unit lant-2 "delay" like lant {`."""
    if m.word != "like" or not re.match(r'[ \t]*[a-z][a-z-]*[ \t]+[a-z][\w-]*[ \t]*"', m.before):
        return None
    mends = m.rewritten(r'("(?:[^"\\]|\\.)*")[ \t]*(like[ \t]+[a-z][\w-]*)', r"\2 \1")
    return Wording(
        "'like' stands behind the title",
        "it goes before the title",
        "" if mends else "write it before the title",
        mends,
    )


ORDER_SLIPS: tuple[Callable[[Mistake], Wording | None], ...] = (_jack_out_of_order, _like_behind_the_title)
