"""A jack, its neighbours and the stock -> the plug kind at that end of a lead, where the source does not state one."""

from __future__ import annotations

from rigc.model.fact import Quantity
from rigc.model.jacks import Connector, Jack, Port
from rigc.model.rig import Rig
from rigc.model.stock import Plug, Stock
from rigc.model.things import Outlet, Panel, Supply

Wired = dict[str, dict[Port, str | None]]  # by thing: each jack that has a lead, with its stated plug
_SAME_MM = 0.05


def socket(rig: Rig, port: Port) -> Jack | Outlet | None:
    """The jack or outlet at a port; None if the source declares none."""
    thing = rig.things[port.thing]
    jack = thing.jack(port.jack)
    if jack is None and isinstance(thing, Supply):
        return thing.outlet(port.jack)
    return jack


def appliance_inlets(rig: Rig, start: Port, end: Port) -> tuple[str, ...]:
    """The kinds of the appliance inlets that a mains lead between these goes into; none at the end of another lead."""
    jacks = (socket(rig, port) for port in (start, end))
    return tuple(str(jack.connector) for jack in jacks if isinstance(jack, Jack) and jack.takes_mains)


def fitting_plugs(rig: Rig, connector: Connector) -> tuple[Plug, ...]:
    """The kinds of the stock, in its order, that go into a connector. A two-pole plug goes into a three-pole jack, too."""
    known = rig.stock.going_in
    if connector not in known:
        known[connector] = _fitting(rig.stock, connector)
    return known[connector]


def _fitting(stock: Stock, connector: Connector) -> tuple[Plug, ...]:
    loose = tuple(plug for plug in stock.plugs.values() if not plug.soldered)
    whole = tuple(plug for plug in loose if any(_same(connector, fit) for fit in plug.fits))
    if whole or connector.kind != "trs":
        return whole
    return tuple(plug for plug in loose if any(fit.kind == "ts" for fit in plug.fits))


def chosen_plug(
    rig: Rig, port: Port, connector: Connector | None, signal: str, stage: bool, wired: Wired, had: str | None = None
) -> str | None:
    """The rig's plug for that signal if it goes in, else the one that it `had` in the revision before or the first of the stock that also
    clears its neighbours.

    None if no kind of the stock goes in.
    """
    if isinstance(rig.things[port.thing], Panel) and not stage:
        return _soldered(rig, connector)
    plugs = () if connector is None else fitting_plugs(rig, connector)
    wish = dict(rig.lead_wishes.plugs).get(signal)
    if any(plug.name == wish for plug in plugs):
        return wish
    if had is not None:
        plugs = tuple(sorted(plugs, key=lambda plug: plug.name != had))
    clear = (plug for plug in plugs if _clears(rig, port, plug, wired))
    best = next(clear, plugs[0] if plugs else None)
    return None if best is None else best.name


def _soldered(rig: Rig, connector: Connector | None) -> str | None:
    """The first way of the stock to solder a lead to a panel jack."""
    kinds = (plug for plug in rig.stock.plugs.values() if plug.soldered)
    ways = (plug for plug in kinds if connector is None or not plug.fits or any(_same(connector, f) for f in plug.fits))
    return next((plug.name for plug in ways), None)


def _same(one: Connector, other: Connector) -> bool:
    if one.kind != other.kind:
        return False
    return _near(one.outer_mm, other.outer_mm) and _near(one.inner_mm, other.inner_mm)


def _near(one: float | None, other: float | None) -> bool:
    return one is None or other is None or abs(one - other) < _SAME_MM


def _clears(rig: Rig, port: Port, plug: Plug, wired: Wired) -> bool:
    here = socket(rig, port)
    if here is None:
        return True
    for other, stated in wired.get(port.thing, {}).items():
        there = socket(rig, other)
        if other == port or there is None or there.side != here.side:
            continue
        neighbour = _neighbour(rig, here, there, plug, stated)
        if neighbour is not None and _touch(here, there, plug, neighbour):
            return False
    return True


def _neighbour(rig: Rig, here: Jack | Outlet, there: Jack | Outlet, plug: Plug, stated: str | None) -> Plug | None:
    if stated is not None:
        return rig.stock.plugs.get(stated)
    if there.connector is None:
        return None
    if here.connector is not None and _same(here.connector, there.connector):
        return plug
    return next(iter(fitting_plugs(rig, there.connector)), None)


def _touch(here: Jack | Outlet, there: Jack | Outlet, one: Plug, other: Plug) -> bool:
    aside = _within(here.offset_mm, there.offset_mm, one.width_mm, other.width_mm)
    above = _within(here.height_mm, there.height_mm, one.height_mm, other.height_mm)
    return aside is True and above is not False


def _within(here: Quantity | None, there: Quantity | None, one: Quantity | None, other: Quantity | None) -> bool | None:
    """Whether two bodies centred on two points overlap; None where a figure is not known."""
    if here is None or there is None or one is None or other is None:
        return None
    return abs(here.value - there.value) < (one.value + other.value) / 2
