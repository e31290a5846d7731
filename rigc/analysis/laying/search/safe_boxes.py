"""A board's items -> boxes that may stand wall to wall: bodies, plugs, air, vents, and the room that feet need round switches."""

from __future__ import annotations

from rigc.analysis.laying.search.board import Area, Board, Item
from rigc.analysis.laying.search.conflicts import plug_room


def safe_boxes(board: Board, items: tuple[Item, ...]) -> tuple[Area, ...]:
    """The box of each item in its first shape, counted from its corner. Items whose boxes do not overlap are in nobody's way."""
    ahead = min((y for item in items for _, y in item.shapes[0].switches), default=0)
    knobs = any(item.shapes[0].knobs for item in items)
    return tuple(_box(board, item, ahead, board.knob if knobs else 0) for item in items)


def _box(board: Board, item: Item, ahead: int, knob: int) -> Area:
    shape, half, air = item.shapes[0], -(-board.apart // 2), -(-board.air // 2)
    boxes: list[Area] = [(-half, -half, shape.width + half, shape.depth + half)]
    for socket in shape.sockets:
        if socket.needs:
            left, front, right, rear = plug_room(socket)
            boxes.append((left - air, front - air, right + air, rear + air))
    for x, y in shape.switches:
        aside = -(-board.aside // 2)
        boxes.append((x - aside, y - ahead, x + aside, y + board.behind - ahead))
        boxes.append((x - knob, y - knob, x + knob, y + knob))
    boxes += shape.vents
    return (
        min(box[0] for box in boxes),
        min(box[1] for box in boxes),
        max(box[2] for box in boxes),
        max(box[3] for box in boxes),
    )
