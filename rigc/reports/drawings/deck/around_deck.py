"""What stands around a deck -> the inside of its case as an outline, and the part that a foot is said to reach."""

from __future__ import annotations

from rigc.model.deck import Case, Deck, Hint
from rigc.model.geometry.rectangle import Rectangle
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.reports.drawings.deck.sheet_view import has_room
from rigc.reports.drawings.deck.view import View, boxed
from rigc.reports.drawings.means.label_room import LabelRoom
from rigc.reports.drawings.shapes import THIN, Label, Polyline, Shape


class CaseRoom(Record):
    """The inside of a case, turned as the deck lies in it, and as much longer than the deck on each side; in mm."""

    name: str
    width_mm: float
    depth_mm: float
    aside_mm: float
    along_mm: float


def case_room(rig: Rig, deck: Deck) -> CaseRoom | None:
    """The tightest case that takes the deck; None where no inside is stated, or none takes it."""
    if deck.width_mm is None or deck.depth_mm is None:
        return None
    size = deck.width_mm.value, deck.depth_mm.value
    rooms = [room for case in rig.cases.values() for room in _ways(case, *size)]
    taking = [room for room in rooms if room.aside_mm >= 0 and room.along_mm >= 0]
    return min(taking, key=lambda room: room.width_mm * room.depth_mm, default=None)


def _ways(case: Case, width_mm: float, depth_mm: float) -> tuple[CaseRoom, ...]:
    """As stated, else turned by a quarter."""
    if case.inside_mm is None:
        return ()
    across, along, _ = case.inside_mm
    ways = ((across, along), (along, across))
    return tuple(CaseRoom(case.name, x, y, (x - width_mm) / 2, (y - depth_mm) / 2) for x, y in ways)


def case_outline(room: CaseRoom | None, view: View) -> tuple[Shape, ...]:
    """Drawn about the deck's middle: where in the case the deck lies, no source says. Nothing where the page has no room."""
    if room is None or not has_room(view, (room.aside_mm, room.along_mm)):
        return ()
    inside = Rectangle(-room.aside_mm, -room.along_mm, room.width_mm, room.depth_mm)
    return (boxed(view.room(inside), pattern="dash-dot"),)


def case_words(room: CaseRoom | None) -> str:
    """What the outline is."""
    return "" if room is None else f"inside of {room.name}, {room.width_mm:g} × {room.depth_mm:g}, drawn centred"


def reached(rig: Rig, things: set[str]) -> tuple[Hint, ...]:
    """The wishes that one of these things lies within reach of a foot."""
    return tuple(hint for hint in rig.hints if hint.kind == "reach" and hint.thing in things)


def reaches(hints: tuple[Hint, ...], view: View, room: LabelRoom) -> tuple[Shape, ...]:
    """Front thirds of the deck's halves: that is what `within reach of` a foot asks for, the source states no radius."""
    shapes: list[Shape] = []
    middle, third = view.width_mm / 2, view.depth_mm / 3
    for word in dict.fromkeys(hint.word for hint in hints):
        right = word.startswith("right")
        edge = view.width_mm if right else 0.0
        corner = [view.point(edge, third), view.point(middle, third), view.point(middle, 0)]
        shapes.append(Polyline(tuple(corner), "blue", "long-short", THIN))
        names = ", ".join(hint.thing for hint in hints if hint.word == word)
        x, y = view.point(edge, 0)
        text = f"reach of the {word if word.endswith('foot') else word + ' foot'}: {names}"
        spots = [
            (x, y + 1.2, "end" if right else "start", "top"),
            (*view.point((edge + middle) / 2, 0), "middle", "top"),
        ]
        label = room.place(
            [Label(at, down, text, anchor=anchor, level=level, halo=True) for at, down, anchor, level in spots]
        )
        shapes += [label] if label is not None else []
    return tuple(shapes)
