"""Tiles -> a small map of the deck that shows which tile lies where."""

from __future__ import annotations

from rigc.analysis.deck.placement import Outline
from rigc.model.deck import Deck
from rigc.model.geometry.rectangle import Rectangle
from rigc.reports.content import Drawing
from rigc.reports.drawings.deck.tiles import Tile
from rigc.reports.drawings.deck.view import View, boxed, fitting_scale
from rigc.reports.drawings.means.label_box import label_box
from rigc.reports.drawings.shapes import HAIR, MIDDLE_LETTERS, THICK, Label, Shape

_EDGE, _WIDTH, _HEIGHT = 3.0, 178.0, 100.0


def tile_map(deck: Deck, size: tuple[float, float], bodies: tuple[Outline, ...], laid: tuple[Tile, ...]) -> Drawing:
    """The deck with its units in grey and the tiles over it."""
    right = max(tile.area.right_mm for tile in laid)
    rear = max(tile.area.rear_mm for tile in laid)
    scale = fitting_scale(right, rear, _WIDTH, _HEIGHT)
    view = View(scale, _EDGE, _EDGE + (rear - size[1]) / scale, *size)
    shapes: list[Shape] = [boxed(view.room(body.area), "grey", fill="tint") for body in bodies]
    for tile in laid:
        here = view.room(tile.area)
        shapes.append(boxed(here, pattern="dashed"))
        across, down = (here.left + here.right) / 2, (here.top + here.bottom) / 2
        name = Label(across, down, tile.name, MIDDLE_LETTERS, anchor="middle", level="middle", strong=True)
        shapes += [boxed(label_box(name).wider(1.0), "grey", fill="white", width_mm=HAIR), name]
    return Drawing(
        name=f"tiles-{deck.name}",
        title=f"The tiles of deck {deck.name}",
        desc=f"{len(laid)} tiles; {laid[0].name} lies at the player's left, {laid[-1].name} at the right rear.",
        width_mm=round(right / scale + 2 * _EDGE, 1),
        height_mm=round(rear / scale + 2 * _EDGE, 1),
        shapes=(*shapes, boxed(view.room(Rectangle(0, 0, *size)), width_mm=THICK)),
        scale=scale,
    )
