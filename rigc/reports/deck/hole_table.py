"""A deck -> its hole schedule: what the shop drills and cuts, and what for."""

from __future__ import annotations

from rigc.model.deck import Deck
from rigc.model.rig import Rig
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


def hole_table(rig: Rig, deck: Deck, ways: tuple[Way, ...]) -> Table:
    """Stated holes, passages along the drop lines, panel jacks, feet. Sizes that the source does not state are not guessed."""
    rows = [*_holes(deck), *_slots(deck, ways), *_panel(rig, deck), *_feet(deck)]
    numbered = [Row((Cell(f"H{at}", strong=True), *map(Cell, cells))) for at, cells in enumerate(rows, 1)]
    caption = f"Hole schedule of deck {deck.name}: x from its left edge, y from the player's edge, seen from above"
    return Table(f"holes-{deck.name}", caption, COLUMNS, tuple(numbered), empty="no hole is asked for", tick=True)


def _holes(deck: Deck) -> list[tuple[str, str, str, str]]:
    return [
        (f"{hole.x_mm:g}", f"{hole.y_mm:g}", f"diameter {hole.diameter_mm:g} mm", hole.purpose or "not said")
        for hole in deck.holes
    ]


def _slots(deck: Deck, ways: tuple[Way, ...]) -> list[tuple[str, str, str, str]]:
    """Along each drop line in use, from the first to the last lead that goes through it."""
    rows = []
    for line in deck.drops_mm:
        used = sorted((x, way.mark) for way in ways for x, y in way.passages if y == line)
        if not used:
            continue
        first, last = used[0][0], used[-1][0]
        span = f"{first:g}" if first == last else f"{first:g} to {last:g}"
        between = any(rail.front_mm < line < rail.rear_mm for rail in deck.rails)
        size = "open between the rails" if deck.rails and not between else "slot or holes, to suit the plugs"
        rows.append((span, f"{line:g}", size, _passages(used)))
    return rows


def _passages(used: list[tuple[float, str]]) -> str:
    """Where the shop drills: each x with the leads that go through there, a lead twice where it comes up again."""
    at: dict[str, list[str]] = {}
    for x, mark in used:
        at.setdefault(f"{x:g}", []).append(mark)
    if len(at) == 1:
        return f"leads: {', '.join(dict.fromkeys(mark for _, mark in used))}"
    return "leads, at x: " + "; ".join(f"{x} {', '.join(dict.fromkeys(marks))}" for x, marks in at.items())


def _panel(rig: Rig, deck: Deck) -> list[tuple[str, str, str, str]]:
    return [
        (f"{jack.x_mm:g}", f"{jack.y_mm:g}", _TO_PART, f"{panel.name}.{jack.name}, {jack.connector}")
        for panel in rig.panels.values()
        if (panel.deck or deck.name) == deck.name
        for jack in panel.jacks
    ]


def _feet(deck: Deck) -> list[tuple[str, str, str, str]]:
    if deck.feet_inset_mm is None or deck.width_mm is None or deck.depth_mm is None:
        return []
    inset = deck.feet_inset_mm.value
    return [
        (f"{x:g}", f"{y:g}", _TO_PART, "foot")
        for y in (inset, deck.depth_mm.value - inset)
        for x in (inset, deck.width_mm.value - inset)
    ]
