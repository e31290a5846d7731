"""A thing and a dot -> its jacks and outlets, those that suit the place."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from rigc.editor.completion.offer import Offer
from rigc.editor.completion.outlets import outlet_offers
from rigc.editor.completion.spot import Spot
from rigc.editor.draft import Draft

_ROLES = {
    "midi": ("midi in", "midi out", "midi thru"),
    "control": ("expression in", "expression out", "control in", "control out", "midi in", "midi out"),
    "scenario": ("input", "output"),
}


def jacks(spot: Spot, draft: Draft) -> Iterator[Offer]:
    """What can stand behind the dot. Behind `from` in a power block those outlets that are free and suit the units before it."""
    thing: Any = None if draft.rig is None else draft.rig.things.get(spot.thing)
    if draft.rig is None or thing is None:
        return
    if spot.block == "power":
        yield from outlet_offers(spot, draft.rig, only=spot.thing)
        return
    roles = _ROLES.get(spot.block) or (("input", "output", "panel") if _is_chain(spot) else ())
    for jack in thing.jacks:
        if not roles or jack.role in roles:
            yield Offer(jack.name, "jack", described(jack))
    for outlet in () if roles else getattr(thing, "outlets", ()):
        yield Offer(outlet.name, "outlet", rating(outlet))


def _is_chain(spot: Spot) -> bool:
    return spot.words[:1] == ("chain",) or spot.block == "blend" or "holds" in spot.words


def described(jack: Any) -> str:
    """A jack in a line: `input, ts, 1 Mohm, left`."""
    parts = [jack.role, str(jack.connector)]
    if jack.impedance_ohm is not None:
        parts.append(jack.impedance_ohm.typed)
    if jack.side is not None:
        parts.append(jack.side)
    return ", ".join(parts)


def rating(outlet: Any) -> str:
    """An outlet in a line: `9 V dc 200 mA, isolated`."""
    rated = " or ".join(f"{each.volts.typed} {each.current} {each.milliamps.typed}" for each in outlet.ratings)
    return f"{rated}, {'isolated' if outlet.common is None else f'common {outlet.common}'}"
