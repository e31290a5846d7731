"""A deck and what stands on it -> the plan at true scale, seen from above."""

from __future__ import annotations

from rigc.analysis.deck.placement import Outline, Placement
from rigc.analysis.leads.plugs.plug_bodies import PlugBodies, PlugBody
from rigc.model.deck import Deck
from rigc.model.rig import Rig
from rigc.reports.content import Drawing
from rigc.reports.deck.chosen_places import chosen, chosen_line
from rigc.reports.drawings.deck.around_deck import CaseRoom, case_outline, case_room, case_words, reached, reaches
from rigc.reports.drawings.deck.bodies import name_choices, outline, outside_choices, panel_jacks, plug, switches
from rigc.reports.drawings.deck.deck_ground import areas, deck_ground, deck_words
from rigc.reports.drawings.deck.lead_shapes import lead_lines, lead_numbers
from rigc.reports.drawings.deck.lead_style import STYLES
from rigc.reports.drawings.deck.lead_tracks import side_by_side
from rigc.reports.drawings.deck.lead_ways import Way
from rigc.reports.drawings.deck.legend import legend, legend_foot
from rigc.reports.drawings.deck.sheet_view import foot_of, ground_of, label_ground
from rigc.reports.drawings.deck.view import View
from rigc.reports.drawings.means.dimension import level_dimension, upright_dimension
from rigc.reports.drawings.means.label_box import Room
from rigc.reports.drawings.means.label_room import LabelRoom
from rigc.reports.drawings.shapes import Label, Shape


def plan(rig: Rig, deck: Deck, view: View, placement: Placement, plugs: PlugBodies, ways: tuple[Way, ...]) -> Drawing:
    """Units with names and switches, plugs, drop lines, keep-outs, the panel, dimensions, and the leads on top."""
    ground = ground_of(view)
    bodies = tuple(body for body in placement.outlines.values() if body.deck == deck.name and not body.under)
    standing = {body.thing for body in bodies}
    on_top = side_by_side(tuple(way for way in ways if not way.under), view.scale)
    plugged = tuple(body for body in plugs.all if body.thing in standing)
    words = _words(rig, deck, bodies, on_top, bool(plugged), _cased(rig, deck, view))
    bottom = max(ground.bottom, legend_foot(words, view.left, ground.right, foot_of(view)) + 4)
    moved = chosen(rig, (body.thing for body in bodies))
    return Drawing(
        name=f"plan-{deck.name}",
        title=f"Plan of deck {deck.name}, seen from above",
        desc=_described(deck, bodies, on_top),
        width_mm=ground.right,
        height_mm=bottom,
        shapes=(
            *_drawn(rig, deck, view, bodies, plugged, on_top),
            *legend(words, view.left, ground.right, foot_of(view)),
            Label(view.left, bottom - 1, "the player stands at this side"),
        ),
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
    bodies: tuple[Outline, ...],
    plugged: tuple[PlugBody, ...],
    on_top: tuple[Way, ...],
) -> list[Shape]:
    """All but the legend, what lies lower first."""
    room, around = LabelRoom(label_ground(view)), _cased(rig, deck, view)
    shapes: list[Shape] = [*deck_ground(deck, view), *deck_words(deck, view, room), *_dimensions(view, around)]
    shapes += [*case_outline(around, view), *areas(rig, deck, view, room)]
    shapes += [part for body in plugged for part in plug(body, view)]
    shapes += [outline(body, view) for body in bodies]
    shapes += lead_lines(on_top, view, room)
    shapes += _dots(rig, bodies, view, room)
    for panel in rig.panels.values():
        if (panel.deck or deck.name) == deck.name:
            shapes += panel_jacks(panel, view, room)
    shapes += _names(bodies, view, room)
    shapes += lead_numbers(on_top, view, room)
    return [*shapes, *reaches(reached(rig, {body.thing for body in bodies}), view, room)]


def _dimensions(view: View, around: CaseRoom | None) -> tuple[Shape, ...]:
    """Width and depth of the deck, beyond the outline of its case."""
    aside, along = (0.0, 0.0) if around is None else (around.aside_mm / view.scale, around.along_mm / view.scale)
    top, left = view.top - max(5.0, along + 1.5), view.left - max(5.0, aside + 1.5)
    return (
        *level_dimension(view.left, view.right, view.top, top, f"{view.width_mm:g}"),
        *upright_dimension(view.top, view.bottom, view.left, left, f"{view.depth_mm:g}"),
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
    rig: Rig, deck: Deck, bodies: tuple[Outline, ...], on_top: tuple[Way, ...], plugged: bool, cased: CaseRoom | None
) -> dict[str, str]:
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
    signs = {told: told.partition(" ")[2] for way in on_top for told in way.make.sign_words}
    words = {word: word for word in (*(word for word, drawn in there.items() if drawn), *leads)} | signs
    around = {} if cased is None else {"inside of the case": case_words(cased)}
    foot = {"reach of a foot": "reach of a foot"} if reached(rig, {body.thing for body in bodies}) else {}
    return words | around | foot


def _described(deck: Deck, bodies: tuple[Outline, ...], on_top: tuple[Way, ...]) -> str:
    rows = ", ".join(f"{body.thing} at {body.x_mm:g}, {body.y_mm:g}" for body in bodies)
    leads = f" Leads on top: {', '.join(way.mark for way in on_top)}." if on_top else ""
    return (
        f"Deck {deck.name} from above, the player at the bottom; front-left corners in mm: {rows or 'nothing'}.{leads}"
    )
