"""A board -> the places of its grid where a thing may stand, and bounds of what its links cost there."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from rigc.analysis.laying.search.board import Board, End, Link
from rigc.analysis.laying.search.layout import At, Layout, backwards
from rigc.analysis.laying.search.lengths import NO_WAY, Standing, finished
from rigc.analysis.leads.lengths.lead_ends import tenths
from rigc.facts.leads import ONE_ROW_MM, PASSAGE_MM
from rigc.record import Record

ROW = tenths(ONE_ROW_MM.value)
_PASSAGE = tenths(PASSAGE_MM.value)
_COARSE = 100  # no finer grid than one of 10 mm is tried
_MOST_PLACES = 4_000  # of one thing; where its grid has more, a coarser one is laid

Stop = tuple[int, int, int, int]  # of a socket: x, y, height over the deck, how far it is to the next drop line


class Site(Record):
    """A thing at a place: where its front is, its sockets' stops, and what the place costs by itself."""

    at: At
    front: int
    on_top: bool
    stops: tuple[Stop, ...]
    cost: int


class Sites:
    """All places of a board's things; found when they are first asked for."""

    def __init__(self, layout: Layout) -> None:
        self.board, self._layout = layout.board, layout
        self._sites: dict[int, list[Site]] = {}

    def of(self, item: int) -> list[Site]:
        """The places on the grid, not off the deck, of an item in all its shapes."""
        if item not in self._sites:
            self._sites[item] = [self.site(item, at) for at in self._grid(item) if not self._layout.alone(item, at)]
        return self._sites[item]

    def site(self, item: int, at: At) -> Site:
        """An item at any place."""
        standing = self._layout.stand(item, at)
        stops = tuple(_stop(self.board, standing, socket) for socket in standing.sockets)
        return Site(at, standing.box.front, standing.on_top, stops, standing.cost)

    def pitch(self, item: int) -> int:
        """The pitch of the grid for an item: that of the board, or as much coarser as it must be."""
        board, shapes = self.board, self._layout.solids[item]
        pitch = -(-_COARSE // board.step) * board.step
        while len(shapes) * (board.width // pitch) * (board.depth // pitch) > _MOST_PLACES:
            pitch += board.step
        return pitch

    def _grid(self, item: int) -> list[At]:
        board, shapes, pitch = self.board, self._layout.solids[item], self.pitch(item)
        return [
            (x, y, number)
            for number, solid in enumerate(shapes)
            for x in range(0, board.width - solid.width + 1, pitch)
            for y in range(0, board.depth - solid.depth + 1, pitch)
        ]


def link_bound(board: Board, link: Link, sites: Sequence[Site] | Mapping[int, Site]) -> int:
    """What a link costs if nothing but its own two things is on the deck."""
    x1, y1, above1, down1, top1, front1 = _end(link.start, sites)
    x2, y2, above2, down2, top2, front2 = _end(link.end, sites)
    across, along = abs(x1 - x2), abs(y1 - y2)
    route = across + under_route(board, above1, top1) + under_route(board, above2, top2) + max(along, down1 + down2)
    if top1 and top2 and link.run != "under" and (link.run == "over" or abs(front1 - front2) <= ROW):
        direct = across + along + abs(above1 - above2)
        route = direct if link.run == "over" else min(route, direct)
    return finished(link.signal, route, link.more) * link.share + backwards_of(link, sites)


def backwards_of(link: Link, sites: Sequence[Site] | Mapping[int, Site]) -> int:
    """What it costs that a link runs from left to right, if it does and should not."""
    if not link.onward or link.start.item < 0 or link.end.item < 0:
        return 0
    return backwards(link, sites[link.start.item].at[0], sites[link.end.item].at[0])


def under_route(board: Board, above: int, on_top: bool) -> int:
    """What an end of a link adds below the deck: its passage, and the way down from the top."""
    return _PASSAGE + (above + board.thickness if on_top else 0)


def _end(end: End, sites: Sequence[Site] | Mapping[int, Site]) -> tuple[int, int, int, int, bool, int]:
    if end.item < 0:
        return end.x, end.y, 0, 0, False, 0
    site = sites[end.item]
    return *site.stops[end.socket], site.on_top, site.front


def _stop(board: Board, standing: Standing, socket: tuple[int, int, int, int]) -> Stop:
    x, y, above = standing.x + socket[0], standing.y + socket[1], socket[2] + standing.lift
    if not standing.on_top:
        return x, y, 0, 0
    box = standing.box
    lines = (line for line in board.lines if not (box.left < x < box.right and box.front < line < box.rear))
    return x, y, above, min((abs(y - line) for line in lines), default=NO_WAY)
