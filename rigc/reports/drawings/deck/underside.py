"""A deck turned over -> the plan from below: what hangs there, and the leads of a class with their numbers."""

from __future__ import annotations

from rigc.analysis.deck.placement import Outline, Placement
from rigc.model.deck import Deck
from rigc.model.rig import Rig
from rigc.reports.content import Drawing
from rigc.reports.drawings.deck.bodies import name_choices, outline, outside_choices, panel_jacks
from rigc.reports.drawings.deck.deck_ground import deck_ground, deck_words
from rigc.reports.drawings.deck.lead_shapes import lead_lines, lead_numbers
from rigc.reports.drawings.deck.lead_style import STYLES
from rigc.reports.drawings.deck.lead_tracks import side_by_side
from rigc.reports.drawings.deck.lead_ways import Way
from rigc.reports.drawings.deck.legend import legend
from rigc.reports.drawings.deck.sheet_view import BOTTOM, LEGEND, ground_of, label_ground
from rigc.reports.drawings.deck.view import View
from rigc.reports.drawings.means.label_room import LabelRoom
from rigc.reports.drawings.means.lettering import text_width
from rigc.reports.drawings.shapes import THICK, Box, Label, Shape

GROUPS = (("audio", ("audio",)), ("power", ("dc", "ac", "mains")), ("control", ("midi", "control", "usb")))
"""Each view from below shows the leads of one group."""

STAMP = "SEEN FROM BELOW, player at the top"


def undersides(rig: Rig, deck: Deck, view: View, placement: Placement, ways: tuple[Way, ...]) -> tuple[Drawing, ...]:
    """One drawing for each group of leads that runs under the deck."""
    below = tuple(way for way in ways if way.under)
    groups = [(name, tuple(way for way in below if way.signal in signals)) for name, signals in GROUPS]
    return tuple(_underside(rig, deck, view, placement, name, group) for name, group in groups if group)


def _underside(rig: Rig, deck: Deck, view: View, placement: Placement, group: str, ways: tuple[Way, ...]) -> Drawing:
    ground = ground_of(view)
    room = LabelRoom(label_ground(view))
    bodies = tuple(body for body in placement.outlines.values() if body.deck == deck.name)
    drawn = side_by_side(ways, view.scale)
    shapes: list[Shape] = [*deck_ground(deck, view), *deck_words(deck, view, room), *_stamp(view, room)]
    shapes += [outline(body, view, fill="", hidden=True) for body in bodies if not body.under]
    shapes += [outline(body, view) for body in bodies if body.under]
    shapes += lead_lines(drawn, view, room)
    for panel in rig.panels.values():
        if (panel.deck or deck.name) == deck.name:
            shapes += panel_jacks(panel, view, room)
    shapes += lead_numbers(drawn, view, room)
    shapes += _names(tuple(body for body in bodies if body.under), view, room, strong=True)
    shapes += _names(tuple(body for body in bodies if not body.under), view, room, strong=False)
    shapes += legend(_words(ways), view.left, ground.right, view.bottom + LEGEND)
    told = "leads in one lane are drawn side by side; thin: on top of the deck"
    return Drawing(
        name=f"below-{deck.name}-{group}",
        title=f"Deck {deck.name} from below: {group} leads",
        desc=_described(deck, bodies, ways),
        width_mm=ground.right,
        height_mm=ground.bottom,
        shapes=(*shapes, Label(view.left, view.bottom + BOTTOM - 1, told)),
        scale=view.scale,
    )


def _stamp(view: View, room: LabelRoom) -> tuple[Shape, ...]:
    label = Label(view.left + 3, view.top - 5.5, STAMP, size_mm=3.5, level="middle", strong=True)
    room.keep(label)
    return (Box(view.left, view.top - 9.5, text_width(STAMP, 3.5, strong=True) + 6, 8, width_mm=THICK), label)


def _names(bodies: tuple[Outline, ...], view: View, room: LabelRoom, strong: bool) -> list[Shape]:
    """Names of what hangs below stand out; those of what stands on top fill what room is left."""
    labels = []
    for body in bodies:
        here = view.room(body.area)
        label = room.place(name_choices(here, body.thing), here)
        if label is None and strong:
            label = room.place((*name_choices(here, body.thing), *outside_choices(here, body.thing)))
        if label is not None:
            labels.append(label if strong else label.replace(colour="grey"))
    return [*labels]


def _words(ways: tuple[Way, ...]) -> dict[str, str]:
    leads = [style.words for signal, style in STYLES.items() if any(way.signal == signal for way in ways)]
    words = {word: word for word in ("below the deck", "on top", "drop line", "through the deck", *leads)}
    return words | {told: told.partition(" ")[2] for way in ways for told in way.make.sign_words}


def _described(deck: Deck, bodies: tuple[Outline, ...], ways: tuple[Way, ...]) -> str:
    hanging = ", ".join(body.thing for body in bodies if body.under) or "nothing"
    return (
        f"Deck {deck.name} turned over, the player at the top, left stays left. Below it hangs: {hanging}. "
        f"Leads: {', '.join(way.mark for way in ways)}."
    )
