"""Stock that fits: cables of a signal, plugs that go into a connector, strips."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.editor.completion.offer import Offer
from rigc.model.jacks import Connector
from rigc.model.rig import Rig


def cables(rig: Rig, signal: str) -> Iterator[Offer]:
    """The cables that carry a signal; control and audio leads are made of the same."""
    for each in rig.stock.cables.values():
        if each.signal == signal or (signal == "control" and each.signal == "audio"):
            outer = "" if each.outer_mm is None else f", {each.outer_mm.typed} thick"
            yield Offer(each.name, "stock", f"{signal} cable {each.title}".rstrip() + outer, rank=0)


def plugs(rig: Rig, connector: Connector | None) -> Iterator[Offer]:
    """The plugs that go into a connector; all where it is not known."""
    for each in rig.stock.plugs.values():
        if connector is None or not each.fits or connector in each.fits:
            said = ", ".join(map(str, each.fits))
            yield Offer(each.name, "stock", f"plug {each.title}".rstrip() + (f", fits {said}" if said else ""), rank=0)


def strips(rig: Rig) -> Iterator[Offer]:
    """All fastening strips."""
    yield from (Offer(each.name, "stock", f"strip {each.title}".rstrip(), rank=0) for each in rig.stock.strips.values())
