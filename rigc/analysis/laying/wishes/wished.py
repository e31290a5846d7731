"""Wishes and places -> by how much a place misses what the source asks for, in tenths of a millimetre."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from itertools import pairwise
from math import ceil, hypot

from rigc.analysis.laying.search.board import Area, Board, Spot, Wish
from rigc.facts import laying
from rigc.facts.leads import ONE_ROW_MM

At = tuple[int, int, int]  # x, y, number of the shape

ONE_ROW = round(10 * ONE_ROW_MM.value)
_EDGE = round(10 * laying.EDGE_MM.value)
_HAND = round(10 * laying.HAND_MM.value)
_SHOE = round(10 * laying.SHOE_MM.value)
_STRIDE = round(10 * laying.STRIDE_MM.value)
_TOGETHER = round(10 * laying.TOGETHER_MM.value)
_AWAY = round(10 * laying.AWAY_MM.value)
_PLUG = round(10 * laying.PLUG_AWRY_MM.value)
_OTHER_SIDE = round(10 * laying.OTHER_SIDE_MM.value)


class _Stood:
    """All items at their places, as a wish asks for them."""

    def __init__(self, board: Board, at: Sequence[At]) -> None:
        self.board, self.at = board, at

    def box(self, item: int) -> Area:
        x, y, shape = self.at[item]
        size = self.board.items[item].shapes[shape]
        return x, y, x + size.width, y + size.depth

    def spots(self, item: int, what: str) -> list[Spot]:
        """Where its switches, its knobs or the spots that a foot presses are; without such a spot, of what is pressed, its middle."""
        x, y, shape = self.at[item]
        spots: tuple[Spot, ...] = getattr(self.board.items[item].shapes[shape], what)
        if not spots and what == "pressed":
            left, front, right, rear = self.box(item)
            return [((left + right) // 2, (front + rear) // 2)]
        return [(x + across, y + along) for across, along in spots]

    def boxes_beside(self, *items: int) -> Iterator[Area]:
        """The boxes of all others on the side of the deck on which the first of these is."""
        under = self.board.items[items[0]].under
        for other, each in enumerate(self.board.items):
            if other not in items and each.under == under:
                yield self.box(other)


def missed(board: Board, wish: Wish, at: Sequence[At]) -> int:
    """By how much a wish is not met; `at` are the places of all items."""
    return _KINDS[wish.kind](_Stood(board, at), wish)


def _row(stood: _Stood, wish: Wish) -> int:
    return _in_row(stood, wish.word, wish.items[0])


def _in_row(stood: _Stood, word: str, item: int) -> int:
    """The front row begins in the front third of the deck, the rear row ends in the rear third and begins behind the
    front one, the middle of the middle row is in the middle third."""
    depth = stood.board.depth
    third = depth // 3
    _, front, _, rear = stood.box(item)
    if word == "front":
        return max(0, front - third)
    if word == "rear":
        return max(0, depth - third - rear, third - front)
    return max(0, third - (front + rear) // 2, (front + rear) // 2 - (depth - third))


def _on_side(stood: _Stood, wish: Wish) -> int:
    """Its middle is in that third of the deck's width."""
    width = stood.board.width
    left, _, right, _ = stood.box(wish.items[0])
    third, middle = width // 3, (left + right) // 2
    return max(
        0,
        0 if wish.word == "right" else middle - (third if wish.word == "left" else width - third),
        0 if wish.word == "left" else (width - third if wish.word == "right" else third) - middle,
    )


def _near_edge(stood: _Stood, wish: Wish) -> int:
    """No further from that edge (of the front one: from what is kept free for a heel) than a hand reaches from beside the deck, and
    nothing between."""
    board, (left, front, right, rear) = stood.board, stood.box(wish.items[0])
    far, between = {
        "left": (left, (0, front, left, rear)),
        "right": (board.width - right, (right, front, board.width, rear)),
        "front": (front, (left, 0, right, front)),
        "rear": (board.depth - rear, (left, rear, right, board.depth)),
    }[wish.word]
    return max(0, far - _EDGE - (wish.amount or 0)) + sum(
        _shared(between, box) for box in stood.boxes_beside(*wish.items)
    )


def _reach(stood: _Stood, wish: Wish) -> int:
    """Within reach of a foot: the middle in that half of the deck, and in the front row. While the other foot is on something: on the
    foot's side of that, no further aside and behind or before than a stride."""
    right = wish.word.startswith("right")
    if not wish.others:
        left_edge, _, right_edge, _ = stood.box(wish.items[0])
        middle = (left_edge + right_edge) // 2 - stood.board.width // 2
        return max(0, -middle if right else middle) + _in_row(stood, "front", wish.items[0])
    return min(
        max(0, -aside, aside - _STRIDE) + max(0, abs(y - y2) - _STRIDE // 2)
        for x, y in stood.spots(wish.items[0], "pressed")
        for x2, y2 in stood.spots(wish.others[0], "pressed")
        for aside in ((x - x2) if right else (x2 - x),)
    )


def _beside(stood: _Stood, wish: Wish) -> int:
    """Left or right: in one row; in front or behind: over a common x; with the stated gap, and nothing between."""
    item, neighbour = wish.items[0], wish.others[0]
    here, there = stood.box(item), stood.box(neighbour)
    if wish.word in ("left", "right"):
        one, other = (here, there) if wish.word == "left" else (there, here)
        gap, aligned = other[0] - one[2], max(0, abs(one[1] - other[1]) - ONE_ROW)
        between = (one[2], max(one[1], other[1]), other[0], min(one[3], other[3]))
    else:
        one, other = (here, there) if wish.word == "front" else (there, here)
        gap, aligned = other[1] - one[3], max(0, max(one[0], other[0]) + 1 - min(one[2], other[2]))
        between = (max(one[0], other[0]), one[3], min(one[2], other[2]), other[1])
    short = max(0, -gap) if wish.amount is None else abs(gap - wish.amount)
    return aligned + short + sum(_shared(between, box) for box in stood.boxes_beside(item, neighbour))


def _stepped(stood: _Stood, wish: Wish) -> int:
    """What a foot presses of each is further to the right than of the one before."""
    middles = [sum(x for x, _ in spots) / len(spots) for spots in (stood.spots(i, "pressed") for i in wish.items)]
    return sum(max(0, ceil(one - other) + stood.board.step) for one, other in pairwise(middles) if other <= one)


def _clear(stood: _Stood, wish: Wish) -> int:
    """From its switches to the nearest of any other."""
    assert wish.amount is not None
    item = wish.items[0]
    others = (other for other in range(len(stood.at)) if other != item)
    far = [
        hypot(x - x2, y - y2)
        for other in others
        for x2, y2 in stood.spots(other, "switches")
        for x, y in stood.spots(item, "switches")
    ]
    return max(0, ceil(wish.amount - min(far))) if far else 0


def _knobs_free(stood: _Stood, wish: Wish) -> int:
    """Room for a hand round each knob, and for a shoe between it and the nearest switch of another thing."""
    item, short = wish.items[0], 0
    for knob in stood.spots(item, "knobs"):
        bodies = (_from_box(knob, box) for box in stood.boxes_beside(item))
        others = (other for other in range(len(stood.at)) if other != item)
        shoes = (hypot(x - knob[0], y - knob[1]) for other in others for x, y in stood.spots(other, "switches"))
        short = max(short, ceil(_HAND - min(bodies, default=_HAND)), ceil(_SHOE - min(shoes, default=_SHOE)))
    return short


def _jacks_look(stood: _Stood, wish: Wish) -> int:
    """So much for each plug that looks elsewhere."""
    x, y = {"left": (-1, 0), "right": (1, 0), "front": (0, -1), "rear": (0, 1)}[wish.word]
    shape = stood.board.items[wish.items[0]].shapes[stood.at[wish.items[0]][2]]
    return _PLUG * sum((socket.dx, socket.dy) != (x, y) for socket in shape.sockets if socket.needs)


def _stands(stood: _Stood, wish: Wish) -> int:
    """On that side of the deck; on or beneath a tier: between its front and its rear."""
    item = stood.board.items[wish.items[0]]
    wrong = max(_OTHER_SIDE, wish.amount or 0) if item.under != (wish.word == "beneath") else 0
    if wish.rear:
        _, front, _, rear = stood.box(wish.items[0])
        wrong += max(0, wish.front - front) + max(0, rear - wish.rear)
    return wrong


def _together(stood: _Stood, wish: Wish) -> int:
    """Each is near one of those that are near each other already: the gaps of the least tree that joins them, beyond what counts as near."""
    boxes = [stood.box(item) for item in wish.items]
    joined, apart, short = boxes[:1], boxes[1:], 0
    while apart:
        gap, at = min((min(_gap(box, each) for each in joined), at) for at, box in enumerate(apart))
        short += max(0, gap - _TOGETHER)
        joined.append(apart.pop(at))
    return short


def _away(stood: _Stood, wish: Wish) -> int:
    """What is nearer than the distance asked for, over all pairs."""
    most = _AWAY if wish.amount is None else wish.amount
    here, there = [stood.box(item) for item in wish.items], [stood.box(item) for item in wish.others]
    return sum(max(0, most - _gap(one, other)) for one in here for other in there)


def _symmetric(stood: _Stood, wish: Wish) -> int:
    """The first and the last mirror each other in the middle of the deck, so do those after and before them; one in the middle is in
    the middle. The grid's step is not counted."""
    board, items, short = stood.board, wish.items, 0
    for one, other in zip(items[: (len(items) + 1) // 2], reversed(items), strict=False):
        here, there = stood.box(one), stood.box(other)
        off = abs(here[0] + here[2] + there[0] + there[2] - 2 * board.width) // 4
        short += max(0, off - board.step) + abs(here[1] - there[1])
    return short


def _shared(area: Area, box: Area) -> int:
    return max(0, min(min(area[2], box[2]) - max(area[0], box[0]), min(area[3], box[3]) - max(area[1], box[1])))


def _gap(one: Area, other: Area) -> int:
    across = max(0, max(one[0], other[0]) - min(one[2], other[2]))
    along = max(0, max(one[1], other[1]) - min(one[3], other[3]))
    return int(hypot(across, along))


def _from_box(spot: Spot, box: Area) -> float:
    x, y = spot
    return hypot(max(0, box[0] - x, x - box[2]), max(0, box[1] - y, y - box[3]))


_KINDS: dict[str, Callable[[_Stood, Wish], int]] = {
    "row": _row,
    "on_side": _on_side,
    "near_edge": _near_edge,
    "reach": _reach,
    "beside": _beside,
    "stepped": _stepped,
    "clear": _clear,
    "knobs_free": _knobs_free,
    "jacks_look": _jacks_look,
    "stands": _stands,
    "together": _together,
    "away": _away,
    "symmetric": _symmetric,
}
