"""Two units -> which jack of the one takes the lead that was in a jack of the other."""

from __future__ import annotations

from rigc.model.jacks import Jack
from rigc.model.resolve.ports import unlooped
from rigc.model.things import Unit

_WORDS = {"input": "audio input", "output": "audio output", "inlet": "power inlet", "usb": "USB jack"}
_DIRECT = {"input": "in", "output": "out"}


def counterparts(out: Unit, into: Unit) -> dict[str, str]:
    """For each jack of `out` the jack of `into` in the same role, where there is one.

    Loops go by their numbers. Of the others a jack of the same name comes first; then left goes to left and right to
    right; then they follow in the order of declaration, a mono one first to `in` or `out`, else to a left.
    """
    found: dict[str, str] = {}
    for loop in out.loops:
        other = into.loop(loop.number)
        if other is not None:
            found |= {loop.send: other.send, loop.back: other.back}
    for role in dict.fromkeys(jack.role for jack in out.jacks):
        found |= _in_role(out, into, role)
    return found


def direct(unit: Unit, role: str) -> str | None:
    """The jack by which a mono hop enters (`input`) or leaves (`output`) without naming it; None where that is not clear."""
    names = unlooped(unit, (role,))
    lefts = [left for left, _ in unit.pairs if left in names]
    if len(names) == 1:
        return names[0]
    if _DIRECT[role] in names:
        return _DIRECT[role]
    return lefts[0] if len(lefts) == 1 else None


def jack_words(jack: Jack) -> str:
    """What a jack is, in words: `audio input`, `midi in`."""
    return _WORDS.get(jack.role, jack.role.replace("midi", "MIDI"))


def _in_role(out: Unit, into: Unit, role: str) -> dict[str, str]:
    mine, theirs = unlooped(out, (role,)), unlooped(into, (role,))
    found = {name: name for name in mine if name in theirs}
    for side in (0, 1):
        here = [pair[side] for pair in out.pairs if pair[side] in mine and pair[side] not in found]
        there = [pair[side] for pair in into.pairs if pair[side] in theirs and pair[side] not in found.values()]
        found |= dict(zip(here, there, strict=False))
    lefts = [left for left, _ in into.pairs]
    left_over = [name for name in theirs if name not in found.values()]
    left_over.sort(key=lambda name: 0 if name == _DIRECT.get(role) else 1 if name in lefts else 2)
    return found | dict(zip((name for name in mine if name not in found), left_over, strict=False))
