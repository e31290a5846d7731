"""A wish for a place and by how much it is missed -> words."""

from __future__ import annotations

from rigc.facts.laying import OTHER_SIDE_MM, PLUG_AWRY_MM
from rigc.model.deck import Deck, Hint


def wished(hint: Hint) -> str:
    """`'plumb' is wished in the rear row`."""
    return f"{hint.subjects} {'are' if hint.things[1:] else 'is'} wished {hint.words}"


def by_how_much(hint: Hint, deck: Deck, far: int) -> str:
    """By how much it is missed, in what it is counted in; `far` in tenths of a millimetre."""
    grounds = (deck.name, *(tier.name for tier in deck.tiers))
    if hint.kind == "jacks_look":
        plugs = round(far / 10 / PLUG_AWRY_MM.value)
        return f"{plugs} of its plugs {'looks' if plugs == 1 else 'look'} elsewhere"
    if hint.kind == "stands" and hint.others[0] not in grounds:
        return f"it stands on '{deck.name}'"
    if hint.kind == "stands" and far <= 10 * OTHER_SIDE_MM.value:
        return "it stands on the other side of the deck"
    summed = hint.kind in ("away", "together", "symmetric") and hint.named[2:]
    return f"{'they miss' if hint.things[1:] else 'it misses'} that by {far / 10:g} mm{' in all' if summed else ''}"
