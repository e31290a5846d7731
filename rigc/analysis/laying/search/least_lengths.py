"""A board -> for each link the least length that its two plugs, their things' bodies and the rows allow: a bound that no layout beats.

Nothing else is thought to be on the deck. Over the deck two things stand side by side, their fronts no further apart than
one row allows, as near as the two plugs and bodies let them. Below it only the way down and up counts, as if the drop
lines were right at the plugs.
"""

from __future__ import annotations

from collections.abc import Iterator

from rigc.analysis.laying.search.board import Board, Link, Shape
from rigc.analysis.laying.search.conflicts import Solid, in_the_way
from rigc.analysis.laying.search.lengths import finished
from rigc.analysis.leads.lengths.lead_ends import tenths
from rigc.facts.leads import ONE_ROW_MM, PASSAGE_MM
from rigc.record import Record

_ROW = tenths(ONE_ROW_MM.value)
_STEP = 10


class Least(Record):
    """The least finished length of a link, in tenths of a millimetre, and how it would run: `direct`, `under`, or `stated`
    where both of its things stand where the source says."""

    length: int
    how: str


def least_lengths(board: Board, lengths: list[int]) -> list[Least]:
    """The bound of every link; `lengths` are those of the layout, which hold where nothing can be moved."""
    bare = board.replace(apart=0, aside=0)
    return [_least(bare, link, length) for link, length in zip(board.links, lengths, strict=True)]


def _least(board: Board, link: Link, length: int) -> Least:
    items = [board.items[end.item] for end in (link.start, link.end) if end.item >= 0]
    if all(item.fixed is not None for item in items):
        return Least(length, "stated")
    ways = []
    if link.run != "over":
        ways.append(Least(finished(link.signal, _down_and_up(board, link), link.more), "under"))
    if link.run != "under" and len(items) == 2 and not any(item.under for item in items):
        ways += [Least(finished(link.signal, route, link.more), "direct") for route in _direct(board, link)]
    return min(ways, key=lambda way: way.length, default=Least(0, "direct"))


def _down_and_up(board: Board, link: Link) -> int:
    route = 0
    for end in (link.start, link.end):
        route += tenths(PASSAGE_MM.value)
        if end.item >= 0 and not board.items[end.item].under:
            item = board.items[end.item]
            route += board.thickness + min(shape.sockets[end.socket].above for shape in item.shapes)
    return route


def _direct(board: Board, link: Link) -> Iterator[int]:
    """The shortest way over the deck in each pair of turns, with each of the two things at the left."""
    ends = (link.start, link.end)
    for left, right in (ends, ends[::-1]):
        for one in board.items[left.item].shapes:
            for other in board.items[right.item].shapes:
                heights = (board.items[left.item].height, board.items[right.item].height)
                yield _side_by_side(board, (one, left.socket), (other, right.socket), heights)


def _side_by_side(board: Board, one: tuple[Shape, int], other: tuple[Shape, int], heights: tuple[int, int]) -> int:
    (left, number), (right, its_number) = one, other
    plug, its_plug = left.sockets[number], right.sockets[its_number]
    solid = Solid(board, left.replace(sockets=(plug,), switches=()), heights[0])
    its_solid = Solid(board, right.replace(sockets=(its_plug,), switches=()), heights[1])
    across = its_plug.x + its_plug.dx * its_plug.exit - plug.x - plug.dx * plug.exit + left.width
    along = its_plug.y + its_plug.dy * its_plug.exit - plug.y - plug.dy * plug.exit
    far = plug.needs + its_plug.needs + board.air + max(0, -across)
    ways = [
        abs(across + gap) + abs(along + aside)
        for aside in range(-_ROW, _ROW + 1, _STEP)
        for gap in range(0, far + _STEP, _STEP)
        if not in_the_way(board, solid, (0, 0), its_solid, (left.width + gap, aside))
    ]
    return min(ways) + abs(plug.above - its_plug.above)
