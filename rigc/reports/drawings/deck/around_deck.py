"""What stands around a deck -> the inside of its case as an outline, and the part that a foot is said to reach."""

from __future__ import annotations

from rigc.model.deck import Case, Deck, Hint
from rigc.model.geometry.rectangle import Rectangle
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.reports.drawings.deck.sheet_view import has_room
from rigc.reports.drawings.deck.view import View, boxed
from rigc.reports.drawings.means.label_choices import led_from
from rigc.reports.drawings.means.wish import Wish
from rigc.reports.drawings.shapes import THIN, Polyline, Shape


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
    return tuple(hint for hint in rig.hints if hint.kind == "reach" and not hint.others and hint.things[0] in things)


def reaches(hints: tuple[Hint, ...], view: View) -> tuple[Shape, ...]:
    """Front thirds of the deck's halves: that is what `within reach of` a foot asks for, the source states no radius."""
    middle, third = view.width_mm / 2, view.depth_mm / 3
    return tuple(
        Polyline(
            (view.point(_edge(word, view), third), view.point(middle, third), view.point(middle, 0)),
            "blue",
            "long-short",
            THIN,
        )
        for word in dict.fromkeys(hint.word for hint in hints)
    )


def reach_words(hints: tuple[Hint, ...], view: View) -> list[tuple[str, Wish]]:
    """Which foot, and what it shall reach, each with the places where it may stand."""
    found = []
    for word in dict.fromkeys(hint.word for hint in hints):
        names = ", ".join(hint.things[0] for hint in hints if hint.word == word)
        text = f"reach of the {word if word.endswith('foot') else word + ' foot'}: {names}"
        corner = view.point((_edge(word, view) + view.width_mm / 2) / 2, view.depth_mm / 3)
        found.append((text, led_from(corner, text)))
    return found


def _edge(word: str, view: View) -> float:
    return view.width_mm if word.startswith("right") else 0.0
