"""A statement whose parts all are there, in another order than the language's -> the wording."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import NamedTuple

from rigc.syntax.mistake import Mistake, Wording
from rigc.syntax.words import BETWEEN

_NUMBER = r"\d[\d.]*?"
_UNIT = r"[ \t]*[A-Za-zΩΩ]+"
_NAME = r"[a-z][\w.-]*"
_KIND = r"(?:mini-trs|ts|trs|din|xlr|wireless)\b"
_PLUG = rf"(?:barrel[ \t]+{_NUMBER}[ \t]*x[ \t]*{_NUMBER}{_UNIT}|(?:mini-jack|din|snap|usb|C\d+)\b)"
_PLACE = {
    "side": rf"(?:left|right|front|rear)[ \t]+{_NUMBER}(?:{_UNIT})?(?:[ \t]*\.\.[ \t]*{_NUMBER}{_UNIT})?(?![\w.])",
    "height": rf"up[ \t]+{_NUMBER}{_UNIT}",
    "bushing": r"(?:insulated|bonded)\b",
}
_CAPTIVE = rf"captive[ \t]+{_NUMBER}{_UNIT}"
_SOURCE = r"(?:measured|leaflet|assumed)\b.*"
_OHM = rf"{_NUMBER}[ \t]*[kM]?(?:ohm|[ΩΩ])"
_RATING = rf"{_NUMBER}[ \t]*V[ \t]+(?:dc|ac)[ \t]+{_NUMBER}{_UNIT}"


class _Shape(NamedTuple):
    """A statement: how it begins, its parts in the language's order, and that order in words."""

    head: str
    parts: dict[str, str]
    order: str


_SHAPES = (
    _Shape(
        rf"(?:input|output)[ \t]+({_NAME})",
        {
            "kind": _KIND,
            "impedance": _OHM,
            **_PLACE,
            "carries": r"(?:stereo|balanced|insert|speaker)\b",
            "source": _SOURCE,
        },
        "first the kind, then impedance, side, height, bushing, and what it carries",
    ),
    _Shape(
        rf"jack[ \t]+({_NAME})",
        {
            "kind": _KIND,
            "bushing": _PLACE["bushing"],
            "at": rf"at[ \t]+{_NUMBER}(?:{_UNIT})?[ \t]*,[ \t]*{_NUMBER}{_UNIT}",
            "height": _PLACE["height"],
            "carries": r"(?:stereo|balanced|insert|speaker)\b",
        },
        "first the kind, then bushing, place, height, and what it carries",
    ),
    _Shape(
        rf"outlet[ \t]+({_NAME})",
        {
            "rating": rf"{_RATING}(?:[ \t]+or[ \t]+{_RATING})*",
            "connector": rf"connector[ \t]+{_PLUG}",
            "polarity": r"polarity[ \t]+centre-(?:negative|positive)\b",
            "isolation": rf"(?:isolated\b|common[ \t]+{_NAME})",
            "captive": _CAPTIVE,
            **_PLACE,
            "source": _SOURCE,
        },
        "first the rating, then connector, polarity, isolated or common, captive, side and height",
    ),
    _Shape(
        rf"inlet[ \t]+({_NAME})",
        {"kind": _PLUG, "captive": _CAPTIVE, **_PLACE, "source": _SOURCE},
        "first the kind, then captive, side and height",
    ),
    _Shape(
        rf"expression[ \t]+(?:in|out)[ \t]+({_NAME})",
        {
            "kind": _KIND,
            "wiper": r"(?:tip|ring)-wiper\b",
            "track": _OHM,
            "taper": r"(?:linear|log|reverse-log)\b",
            **_PLACE,
            "source": _SOURCE,
        },
        "first the kind, then wiper, track, taper, side and height",
    ),
    _Shape(
        rf"control[ \t]+(?:in|out)[ \t]+({_NAME})",
        {"kind": _KIND, **_PLACE, "contact": r"(?:relay|opto|contact)\b", "source": _SOURCE},
        "first the kind, then side, height, and what switches",
    ),
    _Shape(
        rf"midi[ \t]+(?:in|out|thru)[ \t]+({_NAME})",
        {"kind": _KIND, **_PLACE, "form": r"type[ \t]+(?:a|b|tip)\b", "source": _SOURCE},
        "first the kind, then side, height and type",
    ),
    _Shape(
        rf"([A-Z]+\d+[a-z]?)[ \t]+{_NAME}[ \t]*->[ \t]*{_NAME}",
        {
            "plugs": rf"{_NAME}[ \t]+to[ \t]+{_NAME}",
            "cable": rf"of[ \t]+{_NAME}",
            "run": r"(?:over|under)\b",
            "lines": rf"through[ \t]+{_NUMBER}(?:[ \t]*,[ \t]*{_NUMBER})?{_UNIT}",
            "slack": rf"slack[ \t]+{_NUMBER}{_UNIT}",
            "made": rf"(?:made|premade)[ \t]+{_NUMBER}{_UNIT}(?:[ \t]+in[ \t]+\"[^\"]*\")?",
        },
        "first the plugs, then of which cable, over or under, through, slack, made",
    ),
    _Shape(
        rf"({_NAME})[ \t]+from[ \t]+{_NAME}(?:[ \t]*,[ \t]*{_NAME})*",
        {
            "setting": rf"at[ \t]+{_NUMBER}[ \t]*V\b",
            "how": r"(?:shared|series|parallel)\b",
            "lower": rf"lower[ \t]+{_NAME}",
            "turned": r"reversed\b",
        },
        "first what the outlet is set to, then shared, series or parallel, lower, reversed",
    ),
)


def _out_of_order(m: Mistake) -> Wording | None:
    """`input in ts balanced bonded left 20 mm up 20 mm`."""
    for shape in _SHAPES:
        head = re.match(rf"[ \t]*{shape.head}(?:[ \t]*\.\.[ \t]*{_NAME})?(?=[ \t])", m.code)
        parts = None if head is None else _parts(m.code[head.end() :], shape.parts)
        if head is None or not parts:
            continue
        right = sorted(parts, key=[*shape.parts].index)
        if right == list(parts):
            continue
        made = " ".join((head.group(), *(parts[each] for each in right)))
        mends = m.instead(m.line_start, m.line_start + len(m.code.rstrip()), made, f"write {made.strip()}")
        return Wording(f"the parts of '{head[1]}' are out of order", shape.order, mends=mends)
    return None


def _parts(text: str, shapes: dict[str, str]) -> dict[str, str] | None:
    """What a statement says, part by part as written; None where a part is none of these or stands twice."""
    found: dict[str, str] = {}
    while text := text.strip():
        each = next(((name, got) for name, shape in shapes.items() if (got := re.match(shape, text))), None)
        if each is None or each[0] in found:
            return None
        found[each[0]] = each[1].group()
        text = text[each[1].end() :]
    return found


def _name_before_direction(m: Mistake) -> Wording | None:
    """`expression exp1 in trs ring-wiper 10 kohm`, `expression exp1 trs ring-wiper 10 kohm`, `control at channel ts`."""
    kind = re.fullmatch(r"[ \t]*(expression|control|midi)[ \t]+", m.before)
    typed = re.match(rf"({_NAME})[ \t]+(in|out|thru)(?=[ \t])", m.after)
    if kind is None or not m.awaits("in", "out"):
        return None
    if typed is None and not re.fullmatch(_NAME, m.word):
        return None
    name = re.match(rf"[a-z]+[ \t]+({_NAME})(?=[ \t])", m.after) if m.word in BETWEEN else None
    if typed is None and name is not None:
        end, said = m.at + len(m.word), f"write {kind[1]} {{}} {name[1]}"
        mends = (*m.instead(m.at, end, "in", said.format("in")), *m.instead(m.at, end, "out", said.format("out")))
        return Wording(f"'{m.word}' is no direction", "`in` or `out` goes here", mends=mends)
    if typed is None:
        both = f"{kind[1]} in {m.word}, or {kind[1]} out {m.word}"
        return Wording(f"'in' or 'out' is missing before '{m.word}'", "a word is missing here", f"write {both}")
    made = f"{typed[2]} {typed[1]}"
    mends = m.instead(m.at, m.at + typed.end(), made, f"write {kind[1]} {made}")
    return Wording(f"'{typed[2]}' stands behind the name '{typed[1]}'", "it goes before the name", mends=mends)


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


ORDER_SLIPS: tuple[Callable[[Mistake], Wording | None], ...] = (
    _out_of_order,
    _name_before_direction,
    _like_behind_the_title,
)
