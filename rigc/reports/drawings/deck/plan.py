"""A deck and what stands on it -> the plan at true scale, seen from above: bodies, plugs with their flags, switches, knobs, panel jacks."""

from __future__ import annotations

from rigc.analysis.deck.placement import Outline, Placement
from rigc.analysis.kept import NOTHING_KEPT, Kept
from rigc.analysis.leads.leads import Lead, Leads
from rigc.analysis.leads.plugs.plug_bodies import PlugBodies, PlugBody
from rigc.model.deck import Deck
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.reports.content import Drawing
from rigc.reports.deck.chosen_places import chosen, chosen_line
from rigc.reports.drawings.deck.around_deck import (
    CaseRoom,
    case_outline,
    case_room,
    case_words,
    reach_words,
    reached,
    reaches,
)
from rigc.reports.drawings.deck.bodies import jack_mark, outline, plug, switches
from rigc.reports.drawings.deck.deck_frame import DATUM, Beyond, front_edge, running, zones
from rigc.reports.drawings.deck.deck_ground import area_boxes, area_wishes, deck_ground, deck_words
from rigc.reports.drawings.deck.flags import flags, wish
from rigc.reports.drawings.deck.lead_tracks import side_by_side
from rigc.reports.drawings.deck.lead_ways import Way
from rigc.reports.drawings.deck.legend import legend, legend_foot
from rigc.reports.drawings.deck.open_jacks import OpenJack, open_jacks
from rigc.reports.drawings.deck.sheet_view import LEGEND, PLAIN_LEGEND, foot_of, ground_of, label_ground
from rigc.reports.drawings.deck.view import View
from rigc.reports.drawings.means.label_choices import led_from, named_in
from rigc.reports.drawings.means.labelling import Ground, labelled
from rigc.reports.drawings.means.unplaced_names import left_over
from rigc.reports.drawings.shapes import THICK, Polyline, Shape


def plan(
    rig: Rig,
    deck: Deck,
    view: View,
    placement: Placement,
    plugs: PlugBodies,
    ways: tuple[Way, ...],
    leads: Leads | None = None,
    kept: Kept = NOTHING_KEPT,
) -> Drawing:
    """Units with names and switches, every plug with its flag, keep-outs, panel jacks, dimensions, and the leads on top.

    Without `leads` it is a picture of what stands where: no flags and no dimensions.
    """
    bodies = tuple(body for body in placement.outlines.values() if body.deck == deck.name and not body.under)
    standing = {body.thing for body in bodies}
    on_top = side_by_side(tuple(way for way in ways if not way.under), view.scale)
    plugged = tuple(body for body in plugs.all if body.thing in standing)
    unused = () if leads is None else open_jacks(rig, placement, leads, view, standing)
    words = _words(rig, deck, bodies, ways, plugged, bool(unused), _cased(rig, deck, view), leads is not None)
    words |= {"leads": "lead on the deck"} if on_top else {}
    words |= DATUM if leads is not None else {}
    ground = ground_of(view)
    top = foot_of(view) if leads is not None else view.bottom + view.along + PLAIN_LEGEND
    least = ground.bottom if leads is not None else 0.0
    shapes, lost = _drawn(rig, deck, view, placement, bodies, plugged, on_top, unused, leads, kept)
    foot = legend_foot(words, view.left, ground.right, top)
    more = left_over(lost, view.left, foot + 0.3, ground.right)
    moved = chosen(rig, (body.thing for body in bodies))
    return Drawing(
        name=f"plan-{deck.name}",
        title=f"Plan of deck {deck.name}, seen from above",
        desc=_described(deck, bodies, on_top),
        width_mm=ground.right,
        height_mm=max([least, foot + 1, *(label.y + 2.7 for label in more)]),
        shapes=(*shapes, *legend(words, view.left, ground.right, top), *more),
        scale=view.scale,
        caption=chosen_line(moved) if moved else "",
    )


def _cased(rig: Rig, deck: Deck, view: View) -> CaseRoom | None:
    """The case whose outline is drawn."""
    around = case_room(rig, deck)
    return around if case_outline(around, view) else None


def _drawn(
    rig: Rig,
    deck: Deck,
    view: View,
    placement: Placement,
    bodies: tuple[Outline, ...],
    plugged: tuple[PlugBody, ...],
    on_top: tuple[Way, ...],
    unused: tuple[OpenJack, ...],
    leads: Leads | None,
    kept: Kept,
) -> tuple[list[Shape], list[str]]:
    """All but the legend, what lies lower first; and the names that found no room."""
    ground = Ground(label_ground(view, LEGEND if leads is not None else PLAIN_LEGEND), kept)
    shapes: list[Shape] = [*deck_ground(deck, view, drops=False), *case_outline(_cased(rig, deck, view), view)]
    cased = _cased(rig, deck, view)
    beyond = (0.0, 0.0) if cased is None else (cased.aside_mm / view.scale, cased.along_mm / view.scale)
    if leads is not None:
        shapes += [*zones(view, beyond), *_dimensions(deck, view, bodies, beyond)]
    shapes.append(front_edge(view, beyond))
    shapes += deck_words(deck, view, beyond[0], drops=False)
    shapes += area_boxes(rig, deck, view)
    hints = reached(rig, {body.thing for body in bodies})
    shapes += reaches(hints, view)
    shapes += [part for body in plugged for part in plug(body, view)]
    shapes += [outline(body, view) for body in bodies]
    shapes += _lines(view, on_top)
    shapes += [dot for body in bodies for dot in switches(rig.units.get(body.thing), rig.places[body.thing], view)]
    wanted = {} if leads is None else jacks_from_above(rig, deck, placement, leads)
    panels = [panel for panel in rig.panels.values() if (panel.deck or deck.name) == deck.name]
    shapes += [part for panel in panels for jack in panel.jacks for part in jack_mark(jack, view)]
    ground.drawn(shapes)
    ground.drawn(jack.drawn for jack in unused)
    shapes += [jack.sign for jack in unused]
    signs = flags(rig, placement, view, {body.port: body.stand_out_mm for body in plugged}, wanted)
    named = [(body.thing, named_in(view.room(body.area), body.thing)) for body in bodies]
    named += [(flag.told, wish(flag)) for flag in signs]
    named += [
        (panel.name, led_from(view.point(panel.jacks[0].x_mm, panel.jacks[0].y_mm), panel.name, strong=True))
        for panel in panels
        if panel.jacks
    ]
    named += area_wishes(rig, deck, view)
    named += reach_words(hints, view)
    found, lost = labelled(ground, named)
    return [*shapes, *found], lost


def decks_in_use(rig: Rig, placement: Placement) -> tuple[Deck, ...]:
    """The decks on which something stands, as far as their size is stated."""
    used = {body.deck for body in placement.outlines.values()}
    return tuple(deck for deck in rig.decks.values() if deck.name in used and deck.width_mm and deck.depth_mm)


def jacks_from_above(rig: Rig, deck: Deck, placement: Placement, leads: Leads) -> dict[Port, tuple[Lead, ...]]:
    """The jacks that are to be seen from above, with the leads in each: of panels all."""
    found: dict[Port, tuple[Lead, ...]] = {}
    for panel in rig.panels.values():
        for jack in panel.jacks:
            port = Port(panel.name, jack.name)
            found[port] = leads.at(port)
    for lead in leads.all:
        for port in (lead.start, lead.end):
            found.setdefault(port, leads.at(port))
    return {
        port: plugged
        for port, plugged in found.items()
        if (point := placement.points.get(port)) is not None and point.deck == deck.name and not point.under
    }


def _lines(view: View, on_top: tuple[Way, ...]) -> list[Shape]:
    """The leads that stay on top, from plug to plug."""
    shapes: list[Shape] = []
    for way in on_top:
        points = way.points[1:-1] if len(way.points) > 3 else way.points
        shapes.append(Polyline(tuple(view.point(*point) for point in points), width_mm=THICK))
    return shapes


def _dimensions(deck: Deck, view: View, bodies: tuple[Outline, ...], beyond: Beyond) -> tuple[Shape, ...]:
    """The front left corners of what stands on the deck, and where its tiers begin and end."""
    tiers = [edge for tier in deck.tiers for edge in (tier.front_mm, tier.rear_mm)]
    return running(view, (body.x_mm for body in bodies), (*(body.y_mm for body in bodies), *tiers), beyond)


def _words(
    rig: Rig,
    deck: Deck,
    bodies: tuple[Outline, ...],
    ways: tuple[Way, ...],
    plugged: tuple[PlugBody, ...],
    unused: bool,
    cased: CaseRoom | None,
    flagged: bool,
) -> dict[str, str]:
    units = [rig.units[body.thing] for body in bodies if body.thing in rig.units]
    jacks = [jack for panel in rig.panels.values() for jack in panel.jacks]
    there = {
        "foot switch": any(unit.switches for unit in units),
        "knob": any(unit.knobs for unit in units),
        "plug": bool(plugged),
        "room to bend": any(body.bend_mm for body in plugged),
        "open jack": unused,
        "panel jack": any(jack.role != "inlet" for jack in jacks),
        "mains inlet": any(jack.role == "inlet" for jack in jacks),
        "keep out": bool(deck.keep_outs),
        "reserved": bool(rig.reserved_on(deck)),
    }
    words = {word: word for word, drawn in there.items() if drawn}
    if plugged:
        words["plug"] = "plug; its flag: lead, jack" if flagged else "plug"
    if unused:
        words["open jack"] = "jack without a plug"
    if any(body.bend_mm for body in plugged):
        words["room to bend"] = "room that its cable needs"
    words |= {told: told.partition(" ")[2] for way in ways for told in way.make.sign_words if flagged}
    words |= {} if cased is None else {"inside of the case": case_words(cased)}
    return words | ({"reach of a foot": "reach of a foot"} if reached(rig, {body.thing for body in bodies}) else {})


def _described(deck: Deck, bodies: tuple[Outline, ...], on_top: tuple[Way, ...]) -> str:
    rows = ", ".join(f"{body.thing} at {body.x_mm:g}, {body.y_mm:g}" for body in bodies)
    leads = f" Leads on top: {', '.join(way.mark for way in on_top)}." if on_top else ""
    return (
        f"Deck {deck.name} from above, the player at the bottom; front-left corners in mm: {rows or 'nothing'}.{leads}"
    )
