"""A layout -> the length of each link by the route model, with the very rules that route and measure a rig's leads."""

from __future__ import annotations

from rigc.analysis.cables.deck_boxes import Box, DeckBoxes
from rigc.analysis.cables.direct_run import runs_direct
from rigc.analysis.cables.lead_ends import tenths
from rigc.analysis.computations.cable_lengths import finished_length, rule_slack
from rigc.analysis.placing.board import Board, End, Link
from rigc.facts.leads import PASSAGE_MM
from rigc.record import Record

_PASSAGE = tenths(PASSAGE_MM.value)
NO_WAY = 10_000  # added where a link finds no drop line that is free: a metre


class Standing(Record):
    """One item at its place, as links see it: its box, whether it stands on top, its sockets' exits and heights from its
    corner, that corner, how high its tier is; and what its place costs."""

    box: Box
    on_top: bool
    sockets: tuple[tuple[int, int, int], ...]
    x: int
    y: int
    lift: int
    cost: int


def link_lengths(board: Board, standing: list[Standing]) -> list[tuple[int, bool]]:
    """The finished length of each link, and whether it has a way at all."""
    around = DeckBoxes((each.box for each in standing), board.lines)
    return [_length(board, link, standing, around) for link in board.links]


def finished(signal: str, route: int, more: int = 0) -> int:
    """The finished length of a route."""
    return finished_length(route + rule_slack(signal, route) + more)


def _length(board: Board, link: Link, standing: list[Standing], around: DeckBoxes) -> tuple[int, bool]:
    x1, y1, above1, top1, box1 = _end(link.start, standing)
    x2, y2, above2, top2, box2 = _end(link.end, standing)
    if (
        link.run != "under"
        and box1 is not None
        and box2 is not None
        and top1
        and top2
        and (link.run == "over" or runs_direct(box1, box2, ((x1, y1), (x2, y2)), around))
    ):
        return finished(link.signal, abs(x1 - x2) + abs(y1 - y2) + abs(above1 - above2), link.more), True
    route, found = abs(x1 - x2) + 2 * _PASSAGE, True
    stops = [y1]
    for top, x, y, other, above in ((top1, x1, y1, y2, above1), (top2, x2, y2, y1, above2)):
        if top:
            line = around.drop_line(x, y, other)
            found = found and line is not None
            stops.append(y if line is None else line)
            route += above + board.thickness
    if link.lanes and x1 != x2:
        near, far = (stops[-1] if top2 else y2), (stops[1] if top1 else y1)
        lane = min(link.lanes, key=lambda each: (abs(far - each) + abs(each - near), each))
        stops.insert(2 if top1 else 1, lane)
    stops.append(y2)
    route += sum(abs(stops[at] - stops[at + 1]) for at in range(len(stops) - 1))
    return finished(link.signal, route, link.more) + (0 if found else NO_WAY), found


def _end(end: End, standing: list[Standing]) -> tuple[int, int, int, bool, Box | None]:
    if end.item < 0:
        return end.x, end.y, 0, False, None
    each = standing[end.item]
    x, y, above = each.sockets[end.socket]
    return each.x + x, each.y + y, above + each.lift, each.on_top, each.box
