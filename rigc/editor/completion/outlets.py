"""Units before `from` -> the outlets that nobody has and that suit all of them."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.feeds.outlet_fit import fits, resized, reversing
from rigc.analysis.feeds.power_tap import tap
from rigc.editor.completion.offer import Offer
from rigc.editor.completion.spot import Spot
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.things import Outlet, Unit


def outlet_offers(spot: Spot, rig: Rig, only: str = "") -> Iterator[Offer]:
    """Outlets of every supply, or of that one, then by their own names alone. One that gives less than a unit draws does not suit; what is
    not known speaks against nothing."""
    heads = spot.words[: spot.words.index("from")] if "from" in spot.words else ()
    units = [rig.units[word] for word in heads if word in rig.units]
    taken = {port for feed in rig.power.feeds for port in feed.outlets if not set(feed.units) & set(heads)}
    for supply in rig.supplies.values():
        if only in ("", supply.name):
            for outlet in supply.outlets:
                port = Port(supply.name, outlet.name)
                setting = _setting(rig, port, outlet, units)
                if port not in taken and setting:
                    label = outlet.name if only else str(port)
                    yield Offer(label, "outlet", f"free, {setting}", rank=0)


def _setting(rig: Rig, port: Port, outlet: Outlet, units: list[Unit]) -> str:
    """How the outlet is set for those units, in words; empty where no setting suits them."""
    turned, sized = reversing(rig), resized(rig)
    drawn = sum(unit.draws_ma.value for unit in units if unit.draws_ma is not None)
    for rating in outlet.ratings:
        one = tap(rig, (port,), "", (rating,))
        if drawn <= rating.milliamps.value and all(
            fits(unit, one, unit.name in turned, unit.name in sized) for unit in units
        ):
            kind = "isolated" if outlet.common is None else f"common {outlet.common}"
            return f"{rating.volts.typed} {rating.current} {rating.milliamps.typed}, {kind}"
    return ""
