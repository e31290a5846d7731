"""Leads, plugs, cables, strips, plates and fixings -> all that stores hand out, in the order of the pull list."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.leads.labels import Labels
from rigc.analysis.leads.leads import Leads
from rigc.analysis.leads.lengths.cable_lengths import CableLengths
from rigc.analysis.leads.plug_uses import PlugUses
from rigc.analysis.leads.special_leads import SpecialLeads
from rigc.analysis.mounting.strip_order import StripOrder
from rigc.analysis.stores.heat_shrink import HeatShrink
from rigc.analysis.stores.pulled import Pulled, counted, pulled
from rigc.analysis.stores.pulled_leads import bought, cables, further, plugs, special
from rigc.analysis.stores.reel_uses import ReelUses
from rigc.model.rig import Rig
from rigc.record import Record

FIXINGS = {"brackets": "brackets", "bolted": "bolts", "screwed": "screws"}
"""What a set of fixings is called, by how a thing is held."""


def strips(order: StripOrder) -> Iterator[Pulled]:
    """Strip and tape by the metre: as laid, and what is ordered more."""
    for kind in order.kinds:
        yield pulled(kind.name, "strip", kind.laid_mm / 1000, taken=kind.order, unit="m")


def fixings(rig: Rig) -> Iterator[Pulled]:
    """Bridge plates by their size, and for how many things each other fixing is stated."""
    plates: dict[str, list[str]] = {}
    for thing, text in rig.mounting.bridged:
        plates.setdefault(text or "size not stated", []).append(thing)
    for text, things in plates.items():
        yield pulled(text, "bridge plate", counted(things), at=things)
    kinds: dict[str, list[str]] = {}
    for thing, kind in rig.mounting.fixings:
        kinds.setdefault(kind, []).append(thing)
    for kind, things in kinds.items():
        yield pulled(FIXINGS.get(kind, kind), "fixing", counted(things), unit="sets", at=things)


class PullList(Record):
    """Plugs, cable, leads that come ready, special leads, strips, fixings, and what is left."""

    all: tuple[Pulled, ...]


def pull_list(
    rig: Rig,
    leads: Leads,
    lengths: CableLengths,
    plug_uses: PlugUses,
    reels: ReelUses,
    shrink: HeatShrink,
    order: StripOrder,
    specials: SpecialLeads,
    labels: Labels,
) -> PullList:
    """Counts what each sheet asks for, and what the source says is carried."""
    return PullList(
        (
            *plugs(rig, plug_uses),
            *cables(reels, shrink),
            *bought(rig, leads, lengths),
            *special(rig, leads, lengths, specials),
            *strips(order),
            *fixings(rig),
            *further(rig, labels, specials),
        )
    )


COMPUTE = pull_list
