"""A board and a layout -> their images in a mirror that stands along the middle of the deck: left is right."""

from __future__ import annotations

from collections.abc import Sequence

from rigc.analysis.laying.search.board import Area, Board, End, Item, Shape, Spot, Wish
from rigc.analysis.laying.search.ground import At

_SIDES = {"left": "right", "right": "left", "left foot": "right foot", "right foot": "left foot"}


def mirrored(board: Board) -> Board:
    """The image of a board; each shape of an item is that of the same number in the image. That sound goes from right to left is no matter
    of geometry: a board whose links weigh it has another cost."""
    image: Board = board.replace(
        items=tuple(_item(board, item) for item in board.items),
        links=tuple(link.replace(start=_end(board, link.start), end=_end(board, link.end)) for link in board.links),
        wishes=tuple(_wish(each) for each in board.wishes),
        kept_free=tuple(_area(board.width, area) for area in board.kept_free),
        reserved=tuple(_area(board.width, area) for area in board.reserved),
    )
    return image


def mirrored_layout(board: Board, at: Sequence[At]) -> list[At]:
    """Where all stands in the image of the board."""
    return [
        (board.width - x - item.shapes[shape].width, y, shape)
        for item, (x, y, shape) in zip(board.items, at, strict=True)
    ]


def _item(board: Board, item: Item) -> Item:
    fixed = item.fixed and (board.width - item.fixed[0] - item.shapes[0].width, item.fixed[1])
    made: Item = item.replace(shapes=tuple(map(_shape, item.shapes)), fixed=fixed)
    return made


def _shape(shape: Shape) -> Shape:
    made: Shape = shape.replace(
        sockets=tuple(each.replace(x=shape.width - each.x, dx=-each.dx) for each in shape.sockets),
        switches=_spots(shape.width, shape.switches),
        knobs=_spots(shape.width, shape.knobs),
        pressed=_spots(shape.width, shape.pressed),
        vents=tuple(_area(shape.width, area) for area in shape.vents),
        at_hand=tuple((shape.width - x, y, share) for x, y, share in shape.at_hand),
    )
    return made


def _spots(width: int, spots: tuple[Spot, ...]) -> tuple[Spot, ...]:
    return tuple((width - x, y) for x, y in spots)


def _area(width: int, area: Area) -> Area:
    left, front, right, rear = area
    return width - right, front, width - left, rear


def _end(board: Board, end: End) -> End:
    made: End = end.replace(x=board.width - end.x) if end.item < 0 else end
    return made


def _wish(wish: Wish) -> Wish:
    """In an order from left to right the last is the first."""
    items = wish.items[::-1] if wish.kind == "stepped" else wish.items
    made: Wish = wish.replace(word=_SIDES.get(wish.word, wish.word), items=items)
    return made
