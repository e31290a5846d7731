"""A ring -> the cheapest place to open it. Never a mains earth: a lifted one can make strings and microphones live."""

from __future__ import annotations

from collections.abc import Iterable

from rigc.analysis.ground.lift_positions import lifts_beside
from rigc.analysis.ground.ring_words import link_words
from rigc.analysis.ground.rings import SHARED, SIGNAL, Ring
from rigc.analysis.leads.leads import Leads
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.model.things import Unit
from rigc.model.ways.conductors import meaning
from rigc.model.ways.ground_link import GROUND, METAL, GroundLink

NOT_THE_EARTH = "never lift a mains earth"


def where_to_break(
    rig: Rig, leads: Leads, ring: Ring, links: Iterable[GroundLink] = (), *, beside_edits: bool = False
) -> str:
    """What to do, in one line; empty for a pair, which is silent. `links` are all that join grounds where the ring is; `beside_edits`: what is done by an edit of the source is told
    already, and what else would do is asked for."""
    if not ring.matters:
        return ""
    if ring.kind == SHARED:
        return f"give {' and '.join(_fed(ring))} an isolated outlet each, or tie the leads of the ring close together"
    shield = next((link_words(link) for link in ring.links if link.kind == "midi"), "")
    if shield and not beside_edits:
        return f"join the shield of {shield} at the sending end only"
    if len(ring.poles) < 3:
        return f"tie {' and '.join(ring.marks)} together along their whole length"
    if ring.kind == SIGNAL:
        return ("" if beside_edits else _lift(rig, leads, ring)) or "lay its leads side by side and tie them together"
    way = (
        ("" if beside_edits else _lift(rig, leads, ring))
        or _floating(ring)
        or _off_the_metal(rig, ring)
        or _bushing(rig, ring)
        or _relay(ring)
        or _isolator(rig, leads, ring, links)
    )
    if not ring.through_earth:
        return way
    strip = one_strip(rig, ring)
    quiet = (
        "for the leads are balanced"
        if all_balanced(rig, leads, ring)
        else f"with its leads tied to the mains leads into '{strip}'"
        if strip
        else ""
    )
    return f"{f'leave it if it is silent, {quiet}; else ' if quiet else ''}{way}; {NOT_THE_EARTH}"


def all_balanced(rig: Rig, leads: Leads, ring: Ring) -> bool:
    """Whether every lead of it is balanced at both ends: the current flows in the shields alone."""
    return bool(ring.marks) and all(_balanced(rig, leads, mark) for mark in ring.marks)


def _balanced(rig: Rig, leads: Leads, mark: str) -> bool:
    lead = leads.of(mark)
    jacks = () if lead is None else (rig.jack(lead.start), rig.jack(lead.end))
    return bool(jacks) and all(jack is not None and meaning(jack) == "balanced" for jack in jacks)


def one_strip(rig: Rig, ring: Ring) -> str:
    """The mains strip into which both things are plugged between which its leads go straight; empty where there is none."""
    earthed = {pole[0] for link in ring.links if link.kind == "earth" for pole in link.ends if pole[0] in ring.things}
    if len(ring.things) != 2:
        return ""
    return next((strip for strip in rig.mains_strips if earthed <= {*rig.behind_strip(strip)}), "")


def fed_units(ring: Ring) -> list[str]:
    """The units that its common feeds."""
    ends = [link.ends for link in ring.links if link.kind == "common"]
    return [thing for thing in ring.things if any((thing, GROUND) in pair for pair in ends)]


def _fed(ring: Ring) -> list[str]:
    return [f"'{thing}'" for thing in fed_units(ring)]


def _lift(rig: Rig, leads: Leads, ring: Ring) -> str:
    port = next((port for link in ring.links for port in (*link.isolators, *link.lifts)), None)
    if port is None:
        return ""
    ports = [str(each) for each in lifts_beside(rig, leads, None, port)]
    return f"open the ground lift{'s' if len(ports) > 1 else ''} at {' and '.join(ports)}"


def _floating(ring: Ring) -> str:
    """Feeds what hangs on a supply with an earthed minus from one that floats, and what shares a return from outlets of its own."""
    if not ring.through_earth or not any(link.kind == "common" for link in ring.links):
        return ""
    if len(fed_units(ring)) > 1:
        return f"give {' and '.join(_fed(ring))} an isolated outlet each"
    return f"feed {' and '.join(_fed(ring))} from a supply whose outlets float"


def _off_the_metal(rig: Rig, ring: Ring) -> str:
    """Lifts the unit that is bolted to a bare metal deck."""
    ends = [pole for link in ring.links if link.kind == "metal" for pole in link.ends]
    unit = next((thing for thing, part in ends if part == GROUND and thing in rig.units), "")
    return f"put an insulating sheet and bushes between '{unit}' and the metal of the deck" if unit else ""


def _bushing(rig: Rig, ring: Ring) -> str:
    panel = next((thing for thing, part in ring.poles if part == METAL and thing in rig.panels), "")
    return f"use jacks with insulated bushings in panel '{panel}'" if panel else ""


def _relay(ring: Ring) -> str:
    mark = next((link_words(link) for link in ring.links if link.kind == "control"), "")
    if mark:
        return f"use a relay or an opto-coupler at one end of {mark}"
    mark = next((link_words(link) for link in ring.links if link.kind == "usb"), "")
    if mark:
        return f"put a USB isolator into {mark}"
    mark = next((link_words(link) for link in ring.links if link.kind == "expression"), "")
    return (
        f"lay {mark} beside the audio leads of the ring and tie it to them" if mark and not ring.through_earth else ""
    )


def _isolator(rig: Rig, leads: Leads, ring: Ring, links: Iterable[GroundLink]) -> str:
    """Through an isolator that the rig has free, one on the ring first; else through one more, in the last audio run, and in each that
    joins the same two grounds beside it: the second side of a stereo way closes the ring as well as the first."""
    link = next(link for link in reversed(ring.links) if link.kind == "audio")
    plugged = {port for lead in leads.all for port in (lead.start, lead.end)}
    on_stage = {lead.mark for lead in leads.all if lead.stage}
    mark = next((mark for mark in link.marks if mark not in on_stage), link.marks[0])
    beside = [
        each.marks[0]
        for each in links
        if each.kind == "audio" and {*each.ends} == {*link.ends} and mark not in each.marks
    ]
    units = sorted(rig.units.values(), key=lambda unit: unit.name not in ring.things)
    free = next((way for unit in units for way in _free_ways(unit, plugged)), None)
    if beside:
        return f"put a transformer isolator, its shield lifted at one end, into each of {' and '.join(dict.fromkeys((mark, *beside)))}"
    if free is not None:
        return f"send {mark} into {free[0]} and go on from {free[1]}: they are isolated from each other, and free"
    return f"put a transformer isolator, its shield lifted at one end, into {mark}"


def _free_ways(unit: Unit, plugged: set[Port]) -> list[tuple[Port, Port]]:
    ways = [
        (Port(unit.name, path.start), Port(unit.name, path.end))
        for path in unit.paths
        if path.how.startswith("transformer")
    ]
    return [way for way in ways if not plugged & set(way)]
