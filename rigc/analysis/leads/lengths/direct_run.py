"""Two ends of a lead and the bodies around them -> whether it may run directly over the deck."""

from __future__ import annotations

from rigc.analysis.leads.lengths.deck_boxes import Box, DeckBoxes
from rigc.facts.leads import ONE_ROW_MM
from rigc.model.geometry.polygon import crossed

Spot = tuple[int, int]


def runs_direct(start: Box, end: Box, exits: tuple[Spot, Spot], around: DeckBoxes) -> bool:
    """Whether two things in one row see each other over the deck, and a path with one bend is free between their exits.

    What hangs below the deck is in nobody's way. All in tenths of a millimetre.
    """
    if abs(start.front - end.front) > round(10 * ONE_ROW_MM.value) or _between(start, end, around):
        return False
    return bool(free_bends(exits, around))


def free_bends(exits: tuple[Spot, Spot], around: DeckBoxes) -> tuple[Spot, ...]:
    """The bends of the paths with one bend between two exits that cross nothing on top: first y then x, first x then y."""
    (x1, y1), (x2, y2) = exits
    on_top = around.on_top(*exits)
    return tuple(
        bend
        for bend in ((x1, y2), (x2, y1))
        if not any(_crosses((x1, y1), bend, box) or _crosses(bend, (x2, y2), box) for box in on_top)
    )


def clear_above(start: Spot, end: Spot, around: DeckBoxes) -> bool:
    """Whether a straight stretch over the deck crosses nothing that stands on top."""
    (x1, y1), (x2, y2) = start, end
    boxes = around.on_top((min(x1, x2) - 1, y1), (max(x1, x2) + 1, y2))
    return not any(_crosses(start, end, box) for box in boxes)


def _between(start: Box, end: Box, around: DeckBoxes) -> bool:
    """Whether a third thing reaches between the facing edges of two, over the y that both share."""
    left, right = sorted((start, end), key=lambda box: box.left)
    front, rear = max(start.front, end.front), min(start.rear, end.rear)
    if left.right >= right.left or front >= rear:
        return False
    return any(
        box.thing not in (start.thing, end.thing)
        and max(box.left, left.right) < min(box.right, right.left)
        and max(box.front, front) < min(box.rear, rear)
        for box in around.on_top((left.right, front), (right.left, rear))
    )


def _crosses(start: Spot, end: Spot, box: Box) -> bool:
    """Whether a straight stretch along x or y goes through the inside of a box; its edges are free."""
    return crossed(box.askew, start, end) if box.askew else box.crossed_by(start, end)
