"""A deck -> a plan for the lid, as large as a space on a page allows: what stands where, and at each jack the numbers of its leads."""

from __future__ import annotations

from rigc.analysis.deck.placement import Placement
from rigc.analysis.kept import NOTHING_KEPT, Kept
from rigc.analysis.leads.leads import Leads
from rigc.analysis.leads.plugs.plug_bodies import PlugBodies
from rigc.model.deck import Deck
from rigc.model.rig import Rig
from rigc.reports.content import Drawing
from rigc.reports.drawings.deck.bodies import jack_mark, outline, plug, switches
from rigc.reports.drawings.deck.deck_frame import FRONT
from rigc.reports.drawings.deck.deck_ground import deck_ground
from rigc.reports.drawings.deck.flags import Flag, flags, wish
from rigc.reports.drawings.deck.plan import decks_in_use, jacks_from_above
from rigc.reports.drawings.deck.view import View
from rigc.reports.drawings.means.label_box import Room
from rigc.reports.drawings.means.label_choices import led_from, named_in
from rigc.reports.drawings.means.labelling import Ground, labelled
from rigc.reports.drawings.means.unplaced_names import left_over
from rigc.reports.drawings.shapes import Label, Shape

ASIDE, ABOVE, BELOW = 15.0, 9.5, 10.0
"""Room beside, above and below a deck for names that are led out of it, in mm."""
_FOOT = 7.0  # from a deck down to the name of its front edge, in mm


def card_plans(
    rig: Rig,
    placement: Placement,
    plugs: PlugBodies,
    leads: Leads,
    width: float,
    height: float,
    kept: Kept = NOTHING_KEPT,
) -> tuple[Drawing, ...]:
    """Of each deck in use, one above the other; `width` and `height` in mm are for all of them together.

    Without a scale bar: nobody measures in a picture that is as large as the page happened to let it be.
    """
    decks = decks_in_use(rig, placement)
    return tuple(
        _plan(rig, deck, _view(deck, width, height / len(decks)), placement, plugs, leads, kept) for deck in decks
    )


def _view(deck: Deck, width: float, height: float) -> View:
    assert deck.width_mm is not None and deck.depth_mm is not None
    wide, deep = deck.width_mm.value, deck.depth_mm.value
    scale = max(1.0, wide / (width - 2 * ASIDE), deep / max(height - ABOVE - BELOW, 20.0))
    return View(scale, (width - wide / scale) / 2, ABOVE, wide, deep)


def _plan(
    rig: Rig, deck: Deck, view: View, placement: Placement, plugs: PlugBodies, leads: Leads, kept: Kept
) -> Drawing:
    bodies = tuple(body for body in placement.outlines.values() if body.deck == deck.name and not body.under)
    standing = {body.thing for body in bodies}
    plugged = tuple(body for body in plugs.all if body.thing in standing)
    panels = [panel for panel in rig.panels.values() if (panel.deck or deck.name) == deck.name]
    shapes: list[Shape] = [
        *deck_ground(deck, view, drops=False),
        *(part for body in plugged for part in plug(body, view)),
        *(outline(body, view) for body in bodies),
        *(dot for body in bodies for dot in switches(rig.units.get(body.thing), rig.places[body.thing], view)),
        *(part for panel in panels for jack in panel.jacks for part in jack_mark(jack, view)),
        Label((view.left + view.right) / 2, view.bottom + _FOOT, FRONT, anchor="middle", strong=True),
    ]
    width = view.left + view.right
    ground = Ground(Room(0, 0, width, view.bottom + BELOW), kept)
    ground.drawn(shapes)
    reaches = {body.port: body.stand_out_mm for body in plugged}
    signs = [
        _numbered(flag)
        for flag in flags(rig, placement, view, reaches, jacks_from_above(rig, deck, placement, leads))
        if leads.at(flag.port)
    ]
    named = [(body.thing, named_in(view.room(body.area), body.thing)) for body in bodies]
    named += [(f"{flag.port}: {flag.text}", wish(flag)) for flag in signs]
    named += [
        (panel.name, led_from(view.point(panel.jacks[0].x_mm, panel.jacks[0].y_mm), panel.name, strong=True))
        for panel in panels
        if panel.jacks
    ]
    named += [
        (f"{panel.name}.{jack.name}", led_from(view.point(jack.x_mm, jack.y_mm), jack.name))
        for panel in panels
        for jack in panel.jacks
        if jack.role == "inlet"
    ]
    found, lost = labelled(ground, named)
    more = left_over(lost, view.left, view.bottom + BELOW, width)
    there = ", ".join(f"{flag.text} at {flag.port}" for flag in signs)
    return Drawing(
        name=f"numbers-{deck.name}",
        title=f"Plan of deck {deck.name}, seen from above: at each jack the numbers of its leads",
        desc=f"Deck {deck.name} from above, the player at the bottom. Leads: {there or 'none'}.",
        width_mm=width,
        height_mm=max([view.bottom + BELOW, *(label.y + 2.7 for label in more)]),
        shapes=(*shapes, *found, *more),
    )


def _numbered(flag: Flag) -> Flag:
    """Without the name of the jack, which the unit bears beside it."""
    numbered: Flag = flag.replace(text=flag.text.removesuffix(flag.port.jack).rstrip())
    return numbered
