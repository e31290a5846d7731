"""Two things at two places, or one on its deck -> by how much they are in each other's way, in tenths of a millimetre."""

from __future__ import annotations

from math import ceil, hypot

from rigc.analysis.laying.search.board import Area, Board, Shape, Socket, Spot

_HUGE = 10**9


class Solid:
    """A shape as a search asks for it: its reach with all plugs, so that most pairs are told apart at once."""

    def __init__(self, board: Board, shape: Shape, height: int) -> None:
        self.shape = shape
        self.width, self.depth, self.height = shape.width, shape.depth, height
        self.plugs = [(socket, plug_room(socket)) for socket in shape.sockets if socket.needs]
        self.switches, self.knobs, self.vents = shape.switches, shape.knobs, shape.vents
        self.trodden = bool(shape.switches or shape.knobs)
        rooms = [room for _, room in self.plugs]
        around = max(board.apart, board.air)
        wide = [*rooms, *shape.vents]
        self.left = min([0, *(room[0] for room in wide)]) - around
        self.front = min([0, *(room[1] for room in wide)]) - around
        self.right = max([shape.width, *(room[2] for room in wide)]) + around
        self.rear = max([shape.depth, *(room[3] for room in wide)]) + around
        self.reach = (
            min([0, *(room[0] for room in rooms)]),
            min([0, *(room[1] for room in rooms)]),
            max([shape.width, *(room[2] for room in rooms)]),
            max([shape.depth, *(room[3] for room in rooms)]),
        )


def plug_room(socket: Socket) -> Area:
    """What a plug and the bend of its cable take from above, counted from the corner of its thing."""
    long, half = socket.needs, socket.width // 2
    if socket.dx:
        return (
            socket.x - (long if socket.dx < 0 else 0),
            socket.y - half,
            socket.x + (long if socket.dx > 0 else 0),
            socket.y + half,
        )
    return (
        socket.x - half,
        socket.y - (long if socket.dy < 0 else 0),
        socket.x + half,
        socket.y + (long if socket.dy > 0 else 0),
    )


def in_the_way(board: Board, one: Solid, here: Spot, other: Solid, there: Spot, lift: int = 0) -> int:
    """By how much two things on one side of a deck are in each other's way: bodies, plugs, vents, and switches and knobs under one foot.

    `lift` is how much higher the other one stands.
    """
    dx, dy = there[0] - here[0], there[1] - here[1]
    total = _underfoot(board, one, other, dx, dy) if one.trodden and other.trodden else 0
    if (
        dx + other.left >= one.right
        or dy + other.front >= one.rear
        or dx + other.right <= one.left
        or dy + other.rear <= one.front
    ):
        return total
    near = min(one.width, dx + other.width) - max(0, dx), min(one.depth, dy + other.depth) - max(0, dy)
    total += max(0, min(near) + board.apart)
    if one.vents or other.vents:
        total += _breathless(one, (dx, dy, dx + other.width, dy + other.depth))
        total += _breathless(other, (-dx, -dy, one.width - dx, one.depth - dy))
    plugs = [each for each in one.plugs if _reaches(each[1], other, dx, dy)]
    its_plugs = [each for each in other.plugs if _reaches(each[1], one, -dx, -dy)]
    for plug, room in plugs:
        total += _before(board, plug, room, (dx, dy, dx + other.width, dy + other.depth), lift, lift + other.height)
    for plug, room in its_plugs:
        total += _before(board, plug, room, (-dx, -dy, one.width - dx, one.depth - dy), -lift, one.height - lift)
    for plug, room in plugs:
        for second, its_room in its_plugs:
            if plug.low < second.high + lift and second.low + lift < plug.high:
                total += _meet(board, plug, room, second, its_room, dx, dy)
    return total


def _reaches(room: Area, other: Solid, dx: int, dy: int) -> bool:
    """Whether a plug can be in the way of anything of a thing whose corner is there."""
    return (
        room[0] < dx + other.right
        and room[2] > dx + other.left
        and room[1] < dy + other.rear
        and room[3] > dy + other.front
    )


def window(board: Board, one: Solid, other: Solid) -> Area:
    """From which to which difference of their corners two things can be in each other's way, at least: left, front, right, rear."""
    left, front = one.left - other.right, one.front - other.rear
    right, rear = one.right - other.left, one.rear - other.front
    spots = [(spot, its, board.aside, board.behind) for spot in one.switches for its in other.switches]
    spots += [(spot, its, board.knob, board.knob) for spot in one.knobs for its in other.switches]
    spots += [(spot, its, board.knob, board.knob) for spot in one.switches for its in other.knobs]
    for (x, y), (x2, y2), aside, behind in spots:
        left, right = min(left, x - x2 - aside), max(right, x - x2 + aside)
        front, rear = min(front, y - y2 - behind), max(rear, y - y2 + behind)
    return left, front, right, rear


def off_the_deck(board: Board, solid: Solid, at: Spot, under: bool) -> int:
    """By how much a thing with its plugs leaves the deck, enters what is kept free, lies across the edge of a tier, or has its plugs
    in a tier's front or rear."""
    x, y = at
    left, front, right, rear = solid.reach
    total = max(0, -x - left) + max(0, x + right - board.width) + max(0, -y - front) + max(0, y + rear - board.depth)
    for area in board.kept_free if under else (*board.kept_free, *board.reserved):
        across = min(area[2], x + solid.width) - max(area[0], x)
        along = min(area[3], y + solid.depth) - max(area[1], y)
        total += max(0, min(across, along))
    if under or not board.tiers:
        return total
    lift = raised(board, solid, y)
    for tier in board.tiers:
        for edge in (tier.front, tier.rear):
            total += max(0, min(edge - y, y + solid.depth - edge))
        if not (tier.front <= y and y + solid.depth <= tier.rear):
            wall = (-x, tier.front - y, board.width - x, tier.rear - y)
            total += sum(_before(board, plug, room, wall, -lift, tier.raised - lift) for plug, room in solid.plugs)
    return total


def raised(board: Board, solid: Solid, y: int) -> int:
    """How high the tier is that a thing at that y stands on."""
    for tier in board.tiers:
        if tier.front <= y and y + solid.depth <= tier.rear:
            return tier.raised
    return 0


def far_from(one: Area, other: Area, gap: int) -> int:
    """By how much two outlines are nearer than the gap, by the way that leaves it first; 0: they only may not overlap."""
    across = max(one[0], other[0]) - min(one[2], other[2])
    along = max(one[1], other[1]) - min(one[3], other[3])
    if across < 0 and along < 0:
        return gap + min(-across, -along)
    return max(0, gap - int(hypot(max(0, across), max(0, along))))


def _breathless(one: Solid, body: Area) -> int:
    """How far a body reaches into the air before vents."""
    return sum(
        max(0, min(min(air[2], body[2]) - max(air[0], body[0]), min(air[3], body[3]) - max(air[1], body[1])))
        for air in one.vents
    )


def _underfoot(board: Board, one: Solid, other: Solid, dx: int, dy: int) -> int:
    """How much switches lack to each other, and knobs to switches."""
    total = 0
    for first, second, way in ((one, other, 1), (other, one, -1)):
        for x, y in first.knobs:
            for x2, y2 in second.switches:
                aside, behind = abs(x2 + way * dx - x), abs(y2 + way * dy - y)
                if aside < board.knob and behind < board.knob:
                    total += max(0, ceil(board.knob - hypot(aside, behind)))
    for x, y in one.switches:
        for x2, y2 in other.switches:
            aside = board.aside - abs(x2 + dx - x)
            if aside > 0:
                behind = board.behind - abs(y2 + dy - y)
                if behind > 0:
                    total += min(aside, behind)
    return total


def _before(board: Board, plug: Socket, room: Area, body: Area, low: int, high: int) -> int:
    """How far a plug with the air before it reaches into a body."""
    left, front, right, rear = room
    air = board.air
    across = min(right + (air if plug.dx > 0 else 0), body[2]) - max(left - (air if plug.dx < 0 else 0), body[0])
    if across <= 0 or plug.low >= high or low >= plug.high:
        return 0
    along = min(rear + (air if plug.dy > 0 else 0), body[3]) - max(front - (air if plug.dy < 0 else 0), body[1])
    return max(0, min(across, along))


def _meet(board: Board, plug: Socket, room: Area, second: Socket, its_room: Area, dx: int, dy: int) -> int:
    if plug.dx == -second.dx and plug.dy == -second.dy:
        return _facing(board, plug, second, dx, dy)
    across = min(room[2], its_room[2] + dx) - max(room[0], its_room[0] + dx)
    along = min(room[3], its_room[3] + dy) - max(room[1], its_room[1] + dy)
    return max(0, min(across, along))


def _facing(board: Board, plug: Socket, second: Socket, dx: int, dy: int) -> int:
    """What both need and the air between; or past each other, with as much air aside."""
    x, y = second.x + dx - plug.x, second.y + dy - plug.y
    gap = x * plug.dx + y * plug.dy
    aside = (plug.width + second.width) // 2 + board.air - abs(y if plug.dx else x)
    short = plug.needs + second.needs + board.air - gap
    if gap < 0 or aside <= 0 or short <= 0:
        return 0
    past = gap >= max(plug.needs, second.needs) + board.air
    return min(short, aside if past else _HUGE)
