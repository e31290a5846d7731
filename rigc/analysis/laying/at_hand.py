"""A rig -> to what of it a hand must come at a show: jacks that leads of the stage are plugged into, and receivers."""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.deck.placement import Placement
from rigc.analysis.laying.use import trodden
from rigc.analysis.laying.weights import weights
from rigc.analysis.leads.leads import Leads
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.things import Thing
from rigc.record import Record


class Handled(Record):
    """A jack, or the whole of a thing (`port` None), and what a length from an edge to it costs, in percent: as much less of a lead without
    sound as other leads weigh less, and a third of what is `trodden`, so that nothing is drawn to the rear for it."""

    thing: str
    port: Port | None
    sounds: bool
    trodden: bool
    share: int


def handled(rig: Rig, leads: Leads) -> tuple[Handled, ...]:
    """Each once, the jacks in the order of the leads."""
    ports = {port: lead.signal == "audio" for lead in leads.all if lead.stage for port in (lead.start, lead.end)}
    spots: list[tuple[str, Port | None, bool]] = [(port.thing, port, sounds) for port, sounds in ports.items()]
    spots += [(unit.name, None, True) for unit in rig.units.values() if is_receiver(unit)]
    stamped = {unit.name for unit in rig.units.values() if trodden(unit)}
    weighed, found = weights(rig), []
    for thing, port, sounds in spots:
        share, under_foot = weighed["at hand"], thing in stamped
        share = share if sounds else share * weighed["other leads"] // 100
        found.append(Handled(thing, port, sounds, under_foot, share // 3 if under_foot else share))
    return tuple(found)


def is_receiver(thing: Thing) -> bool:
    """Whether it has an aerial."""
    return any(jack.connector.kind == "wireless" for jack in thing.jacks)


def spots_at_hand(
    placement: Placement, hands: tuple[Handled, ...], thing: str
) -> Iterator[tuple[float, float, Handled]]:
    """Where they are on the deck, in mm, of one thing: a jack, or the middle of its body."""
    for each in hands:
        if each.thing != thing:
            continue
        if each.port is None and (body := placement.outlines.get(thing)) is not None:
            yield body.x_mm + body.width_mm / 2, body.y_mm + body.depth_mm / 2, each
        elif each.port is not None and (point := placement.points.get(each.port)) is not None:
            yield point.x_mm, point.y_mm, each
