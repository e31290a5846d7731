"""The tiers of the decks -> bodies that plugs on the plain deck can meet: a tier's own front is as hard as a unit."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.deck.placement import Outline
from rigc.analysis.leads.plugs.plug_bodies import PlugBody
from rigc.model.rig import Rig

_TIER = "tier "  # no thing's name has a blank


def tier_fronts(rig: Rig) -> Iterator[Outline]:
    """Each tier over the deck's whole width, from the deck up to where things stand on it."""
    for deck in rig.decks.values():
        for tier in deck.tiers if deck.width_mm is not None else ():
            depth = tier.rear_mm - tier.front_mm
            width = 0.0 if deck.width_mm is None else deck.width_mm.value
            yield Outline(_TIER + tier.name, 0.0, tier.front_mm, width, depth, tier.raised_mm, 0.0, False, deck.name)


def on_tier(plug: PlugBody, body: Outline) -> bool:
    """Whether a body is a tier that the plug's jack is over, and not before: a unit that stands there is judged as a body."""
    return is_tier(body.thing) and body.y_mm < plug.point.y_mm < body.y_mm + body.depth_mm


def is_tier(thing: str) -> bool:
    """Whether a name is that of a tier here, and no thing's."""
    return thing.startswith(_TIER)


def tier_name(thing: str) -> str:
    """The name in the source of what is a tier here."""
    return thing.removeprefix(_TIER)
