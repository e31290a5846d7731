"""A deck turned over -> the plan from below: what hangs there, and the leads of a class as bundles, with their numbers at holes and jacks."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial

from rigc.analysis.deck.placement import Outline, Placement
from rigc.analysis.kept import NOTHING_KEPT, Kept
from rigc.analysis.leads.leads import Leads
from rigc.model.deck import Deck
from rigc.model.jacks import Port
from rigc.model.rig import Rig
from rigc.reports.content import Drawing
from rigc.reports.drawings.deck.bodies import jack_mark, outline
from rigc.reports.drawings.deck.bundles import Bundles, Run, bundles
from rigc.reports.drawings.deck.deck_frame import DATUM, front_edge, running, zones
from rigc.reports.drawings.deck.deck_ground import deck_ground, deck_words
from rigc.reports.drawings.deck.flags import flags, wish
from rigc.reports.drawings.deck.lead_ways import Way
from rigc.reports.drawings.deck.legend import legend, legend_foot
from rigc.reports.drawings.deck.open_jacks import OpenJack, open_jacks
from rigc.reports.drawings.deck.sheet_view import BELOW_LEGEND, ground_of
from rigc.reports.drawings.deck.view import View
from rigc.reports.drawings.means.choosing import Choice
from rigc.reports.drawings.means.label_box import Room
from rigc.reports.drawings.means.label_choices import around, led_from, named_in
from rigc.reports.drawings.means.labelling import Ground, labelled
from rigc.reports.drawings.means.lettering import text_width
from rigc.reports.drawings.means.unplaced_names import left_over
from rigc.reports.drawings.means.wish import Wish
from rigc.reports.drawings.shapes import THICK, THIN, Box, Circle, Label, Line, Point, Shape

GROUPS = (("audio", ("audio",)), ("power", ("dc", "ac", "mains")), ("control", ("midi", "control", "usb")))
"""Each view from below shows the leads of one group."""

STAMP = "SEEN FROM BELOW, player at the top"

_LEAST_RUN = 5.0  # a shorter stretch of a bundle bears no count, in mm on paper


def undersides(
    rig: Rig,
    deck: Deck,
    view: View,
    placement: Placement,
    ways: tuple[Way, ...],
    leads: Leads,
    kept: Kept = NOTHING_KEPT,
) -> tuple[Drawing, ...]:
    """One drawing for each group of leads that runs under the deck."""
    below = tuple(way for way in ways if way.under)
    groups = [(name, tuple(way for way in below if way.signal in signals)) for name, signals in GROUPS]
    return tuple(_underside(rig, deck, view, placement, name, group, leads, kept) for name, group in groups if group)


def _underside(
    rig: Rig,
    deck: Deck,
    view: View,
    placement: Placement,
    group: str,
    ways: tuple[Way, ...],
    leads: Leads,
    kept: Kept,
) -> Drawing:
    paper = ground_of(view)
    bodies = tuple(body for body in placement.outlines.values() if body.deck == deck.name and body.under)
    laid = bundles(ways, view, tuple(view.room(body.area) for body in bodies))
    hanging = {body.thing for body in bodies}
    unused = tuple(each for each in open_jacks(rig, placement, leads, view, hanging) if each.group == group)
    shapes, lost = _drawn(rig, deck, view, placement, bodies, laid, ways, unused, leads, paper, kept)
    words = _words(ways, laid) | ({"open jack": "jack or outlet without a plug"} if unused else {})
    top = view.bottom + BELOW_LEGEND
    foot = legend_foot(words, view.left, paper.right, top)
    more = left_over(lost, view.left, foot + 0.3, paper.right)
    return Drawing(
        name=f"below-{deck.name}-{group}",
        title=f"Deck {deck.name} from below: {group} leads",
        desc=_described(deck, bodies, ways),
        width_mm=paper.right,
        height_mm=round(max([foot + 1, *(label.y + 2.7 for label in more)]), 1),
        shapes=(*shapes, *legend(words, view.left, paper.right, top), *more),
        scale=view.scale,
    )


def _drawn(
    rig: Rig,
    deck: Deck,
    view: View,
    placement: Placement,
    bodies: tuple[Outline, ...],
    laid: Bundles,
    ways: tuple[Way, ...],
    unused: tuple[OpenJack, ...],
    leads: Leads,
    paper: Room,
    kept: Kept,
) -> tuple[list[Shape], list[str]]:
    """All but the legend, and the names that found no room."""
    shapes: list[Shape] = [*deck_ground(deck, view, drops=False), *zones(view), front_edge(view)]
    shapes += [*deck_words(deck, view, drops=False), *stamp(view)]
    shapes += running(view, (body.x_mm for body in bodies), (body.y_mm for body in bodies))
    shapes += [outline(body, view) for body in bodies]
    shapes += [Line(*start, *end, pattern="dashed") for start, end in laid.covered]
    shapes += [Line(*start, *end, width_mm=THICK) for start, end in laid.seen]
    panels = [panel for panel in rig.panels.values() if (panel.deck or deck.name) == deck.name]
    shapes += [part for panel in panels for jack in panel.jacks for part in jack_mark(jack, view)]
    holes = _at_holes(laid)
    shapes += [Circle(x, y, 0.65, fill="white", width_mm=THIN) for x, y in holes]
    ground = Ground(Room(0, 0, paper.right, view.bottom + BELOW_LEGEND - 0.5), kept)
    ground.drawn(shapes)
    ground.drawn(jack.drawn for jack in unused)
    shapes += [jack.sign for jack in unused]
    named = [(body.thing, named_in(view.room(body.area), body.thing)) for body in bodies]
    named += [(", ".join(marks), _at_hole(point, ", ".join(marks))) for point, marks in holes.items()]
    own = {way.mark for way in ways}
    wanted = {
        port: plugged
        for way in ways
        for port in way.ports
        if (point := placement.points.get(port)) is not None and (point.under or point.panel)
        if (plugged := tuple(lead for lead in leads.at(port) if lead.mark in own))
    }
    named += [(flag.told, wish(flag)) for flag in flags(rig, placement, view, {}, wanted)]
    named += [
        (f"{panel.name}.{jack.name}", led_from(view.point(jack.x_mm, jack.y_mm), jack.name))
        for panel in panels
        for jack in panel.jacks
        if Port(panel.name, jack.name) not in wanted
    ]
    found, lost = labelled(ground, named)
    counted = [run for run in laid.runs if _length(run) >= _LEAST_RUN and not _covered(run, bodies, view)]
    for struck in ground.struck(map(_counts, counted)):
        if struck is not None:
            slash, count = struck
            found += [slash, count.label]
    return [*shapes, *found], lost


def _at_holes(laid: Bundles) -> dict[Point, list[str]]:
    """The leads that come to the eye at each hole, from left to right."""
    found: dict[Point, list[str]] = {}
    for end in laid.ends:
        if not end.port:
            found.setdefault((round(end.at[0], 2), round(end.at[1], 2)), []).append(end.mark)
    return {point: list(dict.fromkeys(found[point])) for point in sorted(found)}


def _at_hole(point: Point, text: str) -> Wish:
    return Wish(partial(_beside_hole, point, text))


def _beside_hole(point: Point, text: str) -> Iterator[Choice]:
    x, y = point
    for out, anchor in ((-1, "start"), (1, "end")):
        yield Choice(x, y + 1.3 * out, text, 0, anchor=anchor, rotation=-90)
    for out, anchor in ((1, "start"), (-1, "end")):
        yield Choice(x + 1.3 * out, y, text, 0.5, anchor=anchor)
    yield from around(point, text)


def _length(run: Run) -> float:
    return abs(run.end[0] - run.start[0]) + abs(run.end[1] - run.start[1])


def _middle(run: Run) -> Point:
    return (run.start[0] + run.end[0]) / 2, (run.start[1] + run.end[1]) / 2


def _covered(run: Run, bodies: tuple[Outline, ...], view: View) -> bool:
    x, y = _middle(run)
    return any(Room(x, y, x, y).within(view.room(body.area).wider(2)) for body in bodies)


def _counts(run: Run) -> tuple[tuple[Line, tuple[Choice, ...]], ...]:
    """The strokes that may stand across a bundle, each with the places for the count of its leads."""
    points = [
        tuple(start + (end - start) * part for start, end in zip(run.start, run.end, strict=True))
        for part in (0.5, 0.35, 0.65, 0.2, 0.8)
    ]
    return tuple(
        (Line(x - 0.9, y + 1.5, x + 0.9, y - 1.5, width_mm=THIN), _beside_stroke(x, y, str(run.count)))
        for x, y in points
    )


def _beside_stroke(x: float, y: float, text: str) -> tuple[Choice, ...]:
    return (
        Choice(x + 1.4, y - 0.9, text, 0, level="baseline"),
        Choice(x - 1.4, y + 0.9, text, 1, anchor="end", level="top"),
        Choice(x + 0.9, y - 2.2, text, 2, level="baseline"),
        Choice(x - 0.9, y + 2.2, text, 3, anchor="end", level="top"),
    )


def stamp(view: View) -> tuple[Shape, ...]:
    """Says above the deck that it is seen from below."""
    label = Label(view.left + 3, view.top - 9.5, STAMP, size_mm=3.5, level="middle", strong=True)
    return (Box(view.left, view.top - 12.5, text_width(STAMP, 3.5, strong=True) + 6, 6, width_mm=THICK), label)


def _words(ways: tuple[Way, ...], laid: Bundles) -> dict[str, str]:
    words = {word: word for word in ("below the deck", "through the deck")} | DATUM
    words["leads"] = "leads below the deck"
    if laid.covered:
        words["covered"] = "the same, above what hangs there"
    if laid.runs:
        words["bundle"] = "so many leads"
    return words | {told: told.partition(" ")[2] for way in ways for told in way.make.sign_words}


def _described(deck: Deck, bodies: tuple[Outline, ...], ways: tuple[Way, ...]) -> str:
    hanging = ", ".join(body.thing for body in bodies) or "nothing"
    return (
        f"Deck {deck.name} turned over, the player at the top, left stays left. Below it hangs: {hanging}. "
        f"Leads: {', '.join(way.mark for way in ways)}."
    )
