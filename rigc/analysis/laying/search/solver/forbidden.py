"""Two shapes of a board -> where the corner of the second may not be, seen from the first's: open rectangles that lie wholly inside that.

What is round or hangs on which side is left first is taken too small, never too large: so what is proved from these holds for the search's
own rules, too.
"""

from __future__ import annotations

from collections.abc import Iterator
from math import sqrt

from rigc.analysis.laying.search.board import Area, Board, Socket
from rigc.analysis.laying.search.conflicts import Solid


def forbidden(board: Board, one: Solid, other: Solid) -> list[Area]:
    """For two things on one side of the deck, at one height; where tiers may lift them, plugs are left out."""
    areas = list(_forbidden(board, one, other))
    return [
        area
        for number, area in enumerate(areas)
        if not any(
            _within(area, its) and (area != its or number > place) for place, its in enumerate(areas) if place != number
        )
    ]


def parted(one: Solid, other: Solid, gap: int) -> list[Area]:
    """For two things that must be so far apart wherever they are."""
    body = (-other.width, -other.depth, one.width, one.depth)
    if not gap:
        return [body]
    return [
        (body[0] - gap, body[1], body[2] + gap, body[3]),
        (body[0], body[1] - gap, body[2], body[3] + gap),
    ]


def _forbidden(board: Board, one: Solid, other: Solid) -> Iterator[Area]:
    apart = board.apart
    yield -other.width - apart, -other.depth - apart, one.width + apart, one.depth + apart
    for first, second, back in ((one, other, False), (other, one, True)):
        body = (0, 0, second.width, second.depth)
        rooms = list(first.vents)
        if not board.tiers:
            rooms += [
                _with_air(board, plug, room) for plug, room in first.plugs if plug.low < second.height and plug.high > 0
            ]
        for room in rooms:
            area = _meeting(room, body)
            yield _turned(area) if back else area
        for x, y in first.knobs:
            for x2, y2 in second.switches:
                far = int(board.knob / sqrt(2))
                area = (x - x2 - far, y - y2 - far, x - x2 + far, y - y2 + far)
                yield _turned(area) if back else area
    for x, y in one.switches:
        for x2, y2 in other.switches:
            yield x - x2 - board.aside, y - y2 - board.behind, x - x2 + board.aside, y - y2 + board.behind
    for plug, room in () if board.tiers else one.plugs:
        for its, its_room in other.plugs:
            if plug.low < its.high and its.low < plug.high:
                yield _plugs(board, plug, room, its, its_room)


def _plugs(board: Board, plug: Socket, room: Area, its: Socket, its_room: Area) -> Area:
    if (plug.dx, plug.dy) != (-its.dx, -its.dy):
        return _meeting(room, its_room)
    far, aside = plug.needs + its.needs + board.air, (plug.width + its.width) // 2 + board.air
    x, y = plug.x - its.x, plug.y - its.y
    if plug.dx:
        return (x, y - aside, x + far, y + aside) if plug.dx > 0 else (x - far, y - aside, x, y + aside)
    return (x - aside, y, x + aside, y + far) if plug.dy > 0 else (x - aside, y - far, x + aside, y)


def _with_air(board: Board, plug: Socket, room: Area) -> Area:
    """The room of a plug with the air before it."""
    left, front, right, rear = room
    air = board.air
    return (
        left - (air if plug.dx < 0 else 0),
        front - (air if plug.dy < 0 else 0),
        right + (air if plug.dx > 0 else 0),
        rear + (air if plug.dy > 0 else 0),
    )


def _meeting(room: Area, its: Area) -> Area:
    """Where the second corner lies when two areas, each seen from its own corner, share something."""
    return room[0] - its[2], room[1] - its[3], room[2] - its[0], room[3] - its[1]


def _turned(area: Area) -> Area:
    """The same seen from the other corner."""
    return -area[2], -area[3], -area[0], -area[1]


def _within(area: Area, other: Area) -> bool:
    return other[0] <= area[0] and other[1] <= area[1] and area[2] <= other[2] and area[3] <= other[3]
