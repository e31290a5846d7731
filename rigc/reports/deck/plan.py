"""A deck and what stands on it -> the plan at true scale, seen from above."""

from __future__ import annotations

from rigc.analysis.computations.placement import Outline, Placement
from rigc.analysis.computations.plug_bodies import PlugBodies
from rigc.model.deck import Deck
from rigc.model.rig import Rig
from rigc.reports.content import Drawing
from rigc.reports.deck.bodies import name_choices, outline, outside_choices, panel_jacks, plug, switches
from rigc.reports.deck.deck_ground import areas, deck_ground, deck_words
from rigc.reports.deck.lead_shapes import lead_lines, lead_numbers
from rigc.reports.deck.lead_style import STYLES
from rigc.reports.deck.lead_tracks import side_by_side
from rigc.reports.deck.lead_ways import Way
from rigc.reports.deck.legend import legend
from rigc.reports.deck.sheet_view import BOTTOM, LEGEND, ground_of, label_ground
from rigc.reports.deck.view import View
from rigc.reports.drawing.dimension import level_dimension, upright_dimension
from rigc.reports.drawing.label_box import Room
from rigc.reports.drawing.label_room import LabelRoom
from rigc.reports.shapes import Label, Shape


def plan(rig: Rig, deck: Deck, view: View, placement: Placement, plugs: PlugBodies, ways: tuple[Way, ...]) -> Drawing:
    """Units with names and switches, plugs, drop lines, keep-outs, the panel, dimensions, and the leads on top."""
    ground = ground_of(view)
    room = LabelRoom(label_ground(view))
    bodies = tuple(body for body in placement.outlines.values() if body.deck == deck.name and not body.under)
    standing = {body.thing for body in bodies}
    on_top = side_by_side(tuple(way for way in ways if not way.under), view.scale)
    shapes: list[Shape] = [*deck_ground(deck, view), *deck_words(deck, view, room), *_dimensions(view)]
    shapes += areas(rig, deck, view, room)
    plugged = [body for body in plugs.all if body.thing in standing]
    shapes += [part for body in plugged for part in plug(body, view)]
    shapes += [outline(body, view) for body in bodies]
    shapes += lead_lines(on_top, view, room)
    shapes += _dots(rig, bodies, view, room)
    for panel in rig.panels.values():
        if (panel.deck or deck.name) == deck.name:
            shapes += panel_jacks(panel, view, room)
    shapes += _names(bodies, view, room)
    shapes += lead_numbers(on_top, view, room)
    shapes += legend(_words(rig, deck, bodies, on_top, bool(plugged)), view.left, ground.right, view.bottom + LEGEND)
    return Drawing(
        name=f"plan-{deck.name}",
        title=f"Plan of deck {deck.name}, seen from above",
        desc=_described(deck, bodies, on_top),
        width_mm=ground.right,
        height_mm=ground.bottom,
        shapes=(*shapes, Label(view.left, view.bottom + BOTTOM - 1, "the player stands at this side")),
        scale=view.scale,
    )


def _dimensions(view: View) -> tuple[Shape, ...]:
    return (
        *level_dimension(view.left, view.right, view.top, view.top - 5, f"{view.width_mm:g}"),
        *upright_dimension(view.top, view.bottom, view.left, view.left - 5, f"{view.depth_mm:g}"),
    )


def _dots(rig: Rig, bodies: tuple[Outline, ...], view: View, room: LabelRoom) -> list[Shape]:
    """Switches and knobs; names keep clear of them."""
    shapes: list[Shape] = []
    for body in bodies:
        for dot in switches(rig.units.get(body.thing), rig.places[body.thing], view):
            shapes.append(dot)
            room.keep_clear(Room(dot.x, dot.y, dot.x, dot.y).wider(dot.radius))
    return shapes


def _names(bodies: tuple[Outline, ...], view: View, room: LabelRoom) -> list[Shape]:
    """Each thing's name within its outline, or beside it where it is too small."""
    labels = []
    for body in bodies:
        here = view.room(body.area)
        choices = name_choices(here, body.thing)
        label = room.place(choices, here) or room.place(choices, here.wider(1.5))
        labels.append(label or room.place((*choices, *outside_choices(here, body.thing))))
    return [label for label in labels if label is not None]


def _words(
    rig: Rig, deck: Deck, bodies: tuple[Outline, ...], on_top: tuple[Way, ...], plugged: bool
) -> tuple[str, ...]:
    units = [rig.units[body.thing] for body in bodies if body.thing in rig.units]
    jacks = [jack for panel in rig.panels.values() for jack in panel.jacks]
    there = {
        "foot switch": any(unit.switches for unit in units),
        "knob": any(unit.knobs for unit in units),
        "plug": plugged,
        "drop line": bool(deck.drops_mm),
        "panel jack": any(jack.role != "inlet" for jack in jacks),
        "mains inlet": any(jack.role == "inlet" for jack in jacks),
        "keep out": bool(deck.keep_outs),
        "reserved": bool(rig.reserved_rooms),
    }
    leads = [style.words for signal, style in STYLES.items() if any(way.signal == signal for way in on_top)]
    return (*(word for word, drawn in there.items() if drawn), *leads)


def _described(deck: Deck, bodies: tuple[Outline, ...], on_top: tuple[Way, ...]) -> str:
    rows = ", ".join(f"{body.thing} at {body.x_mm:g}, {body.y_mm:g}" for body in bodies)
    leads = f" Leads on top: {', '.join(way.mark for way in on_top)}." if on_top else ""
    return (
        f"Deck {deck.name} from above, the player at the bottom; front-left corners in mm: {rows or 'nothing'}.{leads}"
    )
