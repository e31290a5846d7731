"""A deck -> its hole schedule: what the shop drills and cuts, and what for."""

from __future__ import annotations

from rigc.model.deck import Deck
from rigc.model.rig import Rig
from rigc.record import Record
from rigc.reports.content import Cell, Column, Row, Table
from rigc.reports.drawings.deck.lead_ways import Way

COLUMNS = (
    Column("no"),
    Column("x", "mm", number=True),
    Column("y", "mm", number=True),
    Column("diameter or slot", key="size"),
    Column("purpose"),
)
_TO_PART = "to suit the part; measure it"


class DeckHole(Record):
    """A hole or slot, in mm; a slot runs from `x_mm` to `x_to_mm`. `diameter_mm` is None where nobody states it; `size` says it in
    words, and `purpose` what it is for."""

    x_mm: float
    x_to_mm: float
    y_mm: float
    diameter_mm: float | None
    size: str
    purpose: str


def hole_table(rig: Rig, deck: Deck, ways: tuple[Way, ...]) -> Table:
    """Stated holes, passages along the drop lines, panel jacks, feet. Sizes that the source does not state are not guessed."""
    rows = []
    for at, hole in enumerate(deck_holes(rig, deck, ways), 1):
        x = f"{hole.x_mm:g}" if hole.x_mm == hole.x_to_mm else f"{hole.x_mm:g} to {hole.x_to_mm:g}"
        rows.append(Row((Cell(f"H{at}", strong=True), *map(Cell, (x, f"{hole.y_mm:g}", hole.size, hole.purpose)))))
    caption = f"Hole schedule of deck {deck.name}: x from its left edge, y from the player's edge, seen from above"
    return Table(f"holes-{deck.name}", caption, COLUMNS, tuple(rows), empty="no hole is asked for", tick=True)


def deck_holes(rig: Rig, deck: Deck, ways: tuple[Way, ...]) -> tuple[DeckHole, ...]:
    """The holes of a deck in the order of their numbers: H1 is the first."""
    return (*_holes(deck), *_slots(deck, ways), *_panel(rig, deck), *_feet(deck))


def _holes(deck: Deck) -> list[DeckHole]:
    return [
        DeckHole(
            hole.x_mm,
            hole.x_mm,
            hole.y_mm,
            hole.diameter_mm,
            f"diameter {hole.diameter_mm:g} mm",
            hole.purpose or "not said",
        )
        for hole in deck.holes
    ]


def _slots(deck: Deck, ways: tuple[Way, ...]) -> list[DeckHole]:
    """Along each drop line in use, from the first to the last lead that goes through it."""
    found = []
    for line in deck.drops_mm:
        used = sorted((x, way.mark) for way in ways for x, y in way.passages if y == line)
        if not used:
            continue
        between = any(rail.front_mm < line < rail.rear_mm for rail in deck.rails)
        size = "open between the rails" if deck.rails and not between else "slot or holes, to suit the plugs"
        found.append(DeckHole(used[0][0], used[-1][0], line, None, size, _passages(used)))
    return found


def _passages(used: list[tuple[float, str]]) -> str:
    """Where the shop drills: each x with the leads that go through there, a lead twice where it comes up again."""
    at: dict[str, list[str]] = {}
    for x, mark in used:
        at.setdefault(f"{x:g}", []).append(mark)
    if len(at) == 1:
        return f"leads: {', '.join(dict.fromkeys(mark for _, mark in used))}"
    return "leads, at x: " + "; ".join(f"{x} {', '.join(dict.fromkeys(marks))}" for x, marks in at.items())


def _panel(rig: Rig, deck: Deck) -> list[DeckHole]:
    return [
        DeckHole(jack.x_mm, jack.x_mm, jack.y_mm, None, _TO_PART, f"{panel.name}.{jack.name}, {jack.connector}")
        for panel in rig.panels.values()
        if (panel.deck or deck.name) == deck.name
        for jack in panel.jacks
    ]


def _feet(deck: Deck) -> list[DeckHole]:
    if deck.feet_inset_mm is None or deck.width_mm is None or deck.depth_mm is None:
        return []
    inset = deck.feet_inset_mm.value
    return [
        DeckHole(x, x, y, None, _TO_PART, "foot")
        for y in (inset, deck.depth_mm.value - inset)
        for x in (inset, deck.width_mm.value - inset)
    ]
