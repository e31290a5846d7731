"""A rig and its leads -> for each jack on the deck whose plug nobody states the kind of the stock that takes the least room there, if that is
another one."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.leads.lead_plugs import fitting_plugs, socket
from rigc.analysis.leads.leads import Lead, Leads
from rigc.model.jacks import Jack, Port
from rigc.model.rig import Rig
from rigc.model.stock import ChosenPlug, Plug
from rigc.model.things import Outlet, Panel

_Socket = Jack | Outlet


def other_plugs(rig: Rig, leads: Leads, stated: bool = False) -> tuple[ChosenPlug, ...]:
    """In the order of the leads, one a jack; with `stated` also where the rig says which plug it shall be, and of leads to the stage.

    A lead that exists keeps its plugs. A kind that would meet a plug beside it on the same face, or be in the deck, is none.
    """
    found: dict[Port, ChosenPlug] = {}
    for lead in leads.all:
        for port, kind in _open_ends(rig, lead, stated):
            if port not in found:
                usual = rig.stock.plugs[kind]
                other = _least(rig, leads, port, usual)
                if other is not None:
                    found[port] = ChosenPlug(port, other.name, kind)
    return tuple(found.values())


def _open_ends(rig: Rig, lead: Lead, stated: bool) -> Iterator[tuple[Port, str]]:
    """The ends of a lead that may have another plug, each with the kind that it has."""
    wish = dict(rig.lead_wishes.plugs).get(lead.signal)
    if lead.existing_mm is not None or ((lead.plugs_stated or lead.stage) and not stated):
        return
    for port, kind in zip((lead.start, lead.end), lead.ends, strict=True):
        if kind is not None and not isinstance(rig.things[port.thing], Panel) and (stated or kind != wish):
            yield port, kind


def _least(rig: Rig, leads: Leads, port: Port, usual: Plug) -> Plug | None:
    jack, needs = socket(rig, port), _needs(usual)
    if jack is None or jack.connector is None or needs is None:
        return None
    others = (
        (room, place, plug)
        for place, plug in enumerate(fitting_plugs(rig, jack.connector))
        if (room := _needs(plug)) is not None and room < needs and not _in_deck(jack, plug)
    )
    kinds = [plug for *_, plug in sorted(others, key=lambda each: each[:2])]
    return next((plug for plug in kinds if not _meets_neighbour(rig, leads, port, jack, plug)), None)


def _needs(plug: Plug) -> float | None:
    """The room that it needs out from the jack's face, with the bend of its cable, in mm."""
    if plug.stand_out_mm is None or plug.width_mm is None:
        return None
    return plug.stand_out_mm.value + (0.0 if plug.bend_mm is None else plug.bend_mm.value)


def _in_deck(jack: _Socket, plug: Plug) -> bool:
    if jack.height_mm is None or plug.height_mm is None:
        return False
    return plug.height_mm.value / 2 > jack.height_mm.value


def _meets_neighbour(rig: Rig, leads: Leads, port: Port, jack: _Socket, plug: Plug) -> bool:
    """Whether it would meet a plug in another jack of the same face, of the kind that is there or of its own."""
    for lead in leads.to(port.thing):
        for other, kind in zip((lead.start, lead.end), lead.ends, strict=True):
            there = socket(rig, other) if other.thing == port.thing and other != port else None
            if there is None or kind is None or there.side != jack.side:
                continue
            if jack.offset_mm is None or there.offset_mm is None or plug.width_mm is None:
                return True
            wide = [each.width_mm.value for each in (rig.stock.plugs[kind], plug) if each.width_mm is not None]
            if abs(jack.offset_mm.value - there.offset_mm.value) < (plug.width_mm.value + max(wide)) / 2:
                return True
    return False
