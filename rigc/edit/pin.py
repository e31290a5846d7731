"""A file and its computed rig -> the file with chosen values as ordinary statements; nothing else in it moves."""

from __future__ import annotations

from collections.abc import Collection

from rigc.analysis.deck.unplaced import unplaced
from rigc.analysis.feeds.power_assignment import PowerAssignment
from rigc.analysis.leads.leads import Lead, Leads
from rigc.analysis.results import Results
from rigc.edit.cannot_pin import CannotPin
from rigc.edit.change import Change, changed
from rigc.edit.chosen_values import chosen_drops, chosen_leads, chosen_places, chosen_plugs
from rigc.edit.feed_changes import feed_changes
from rigc.edit.into_block import into_block, places_stated
from rigc.model.rig import Rig
from rigc.syntax import nodes
from rigc.syntax.nodes import File

KINDS = ("places", "outlets", "leads", "plugs")
"""What can be pinned: `plugs` come with the numbers of the leads that bear them."""


def pinned(file: File, results: Results, kinds: Collection[str] = KINDS) -> str:
    """The file's text with the chosen values of these kinds stated, at the ends of its last fitting blocks.

    Raises `CannotPin` where places are chosen and can't be pinned or shall not, or where another file would have to change.
    """
    places, rooms = chosen_places(results.rig), _room_changes(file, results.rig)
    if places or rooms:
        _refuse_open_places(results, kinds)
    changes: list[Change] = rooms
    if places:
        changes.append(places_stated(file, places))
    if "outlets" in kinds:
        changes += feed_changes(file, results)
    changes += _lead_changes(file, results, kinds)
    return changed(file.span.source, changes)


def _refuse_open_places(results: Results, kinds: Collection[str]) -> None:
    if "places" not in kinds:
        raise CannotPin("places are chosen too, and would be chosen anew: pin places with it, or first")
    outside = [f"'{thing.name}'" for thing in unplaced(results.rig) if thing.width_mm and thing.depth_mm]
    if outside:
        raise CannotPin(f"there is no room yet for {', '.join(outside)}: pin when everything has a place")


def _room_changes(file: File, rig: Rig) -> list[Change]:
    """The place of each room for which one was chosen, behind its size."""
    chosen = {(room.span.source.name, room.span.start): room for room in rig.reserved_rooms if room.chosen}
    written = (node for each in file.statements if isinstance(each, nodes.PlaceBlock) for node in each.items)
    rooms = [node for node in written if isinstance(node, nodes.ReserveRoom) and node.at is None]
    found = [
        (node.depth.span.end, room)
        for node in rooms
        if (room := chosen.pop((node.span.source.name, node.span.start), None)) is not None
    ]
    for room in chosen.values():
        raise CannotPin(f"the room for '{room.what}' is reserved in {room.span.source.name}: pin that file")
    return [Change(end, end, f" at {room.x_mm:g}, {room.y_mm:g} mm") for end, room in found]


def _lead_changes(file: File, results: Results, kinds: Collection[str]) -> list[Change]:
    blocks = [each for each in file.statements if isinstance(each, nodes.LeadsBlock)]
    asked = "leads" in kinds or "plugs" in kinds
    leads = [
        line
        for lead, line in chosen_leads(results, "plugs" in kinds)
        if (asked or any(lead.chosen) or chosen_drops(results, lead)) and ("outlets" in kinds or _fixed(results, lead))
    ]
    found = [into_block(file, blocks, "leads", leads)] if leads else []
    marks = {lead.mark: lead for lead in results.get(Leads).all if lead.stated}
    written = (node for block in blocks for node in block.items if isinstance(node, nodes.Lead))
    for node in written:
        lead = marks.get(node.mark.text)
        if lead is None:
            continue
        at = node.end.span.end
        if ("plugs" in kinds or any(lead.chosen)) and node.plugs is None and (plugs := chosen_plugs(results.rig, lead)):
            found.append(Change(at, at, plugs))
        if drops := chosen_drops(results, lead):
            at = next(each.span.end for each in (node.run, node.cable, node.plugs, node.end) if each is not None)
            found.append(Change(at, at, drops))
    return found


def _fixed(results: Results, lead: Lead) -> bool:
    """Whether a lead's outlet, if it comes from one, is stated."""
    if lead.signal not in ("dc", "ac"):
        return True
    feed = results.get(PowerAssignment).of(lead.end.thing) or results.get(PowerAssignment).of(lead.start.thing)
    return feed is None or feed.stated
