"""A layout -> the length of each link by the route model, with the very rules that route and measure a rig's leads."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cache, lru_cache

from rigc.analysis.laying.search.board import Board, End, Link
from rigc.analysis.leads.lengths.below_deck import Spot, lane_way, length_of, nearest_lane, way_below
from rigc.analysis.leads.lengths.cable_lengths import finished_length, rule_slack
from rigc.analysis.leads.lengths.deck_boxes import Box, DeckBoxes, HangingAt
from rigc.analysis.leads.lengths.direct_run import runs_direct
from rigc.analysis.leads.lengths.lead_ends import tenths
from rigc.facts.leads import LEAST_SLACK_MM, PASSAGE_MM, SLACK_SHARE
from rigc.record import Record

_PASSAGE = tenths(PASSAGE_MM.value)
NO_WAY = 10_000  # added where a link finds no drop line that is free, or no way below the deck: a metre


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


Run = tuple[int, int]  # the finished length; how many ends pass over their nearest drop line because it is covered
Stop = tuple[int, int, int, bool, Box | None]  # x, y, height over the deck, whether on top, whose box


def link_runs(board: Board, standing: list[Standing], least: bool = False) -> list[Run]:
    """How each link runs; with `least`, which is quicker, what goes round a hanging body or beneath it counts as going straight."""
    around = DeckBoxes((each.box for each in standing), board.lines)
    return [
        _run(board, link, _stop(link.start, standing), _stop(link.end, standing), around, least) for link in board.links
    ]


def some_runs(board: Board, links: Sequence[Link], standing: Mapping[int, Standing]) -> list[Run]:
    """How these links run where only these items stand."""
    around = DeckBoxes((each.box for each in standing.values()), board.lines)
    return [_run(board, link, _stop(link.start, standing), _stop(link.end, standing), around) for link in links]


@cache
def finished(signal: str, route: int, more: int = 0) -> int:
    """The finished length of a route."""
    return finished_length(route + rule_slack(route, 10 * LEAST_SLACK_MM[signal].value, SLACK_SHARE.value, more))


def _run(board: Board, link: Link, start: Stop, end: Stop, around: DeckBoxes, least: bool = False) -> Run:
    x1, y1, above1, top1, box1 = start
    x2, y2, above2, top2, box2 = end
    both = top1 and top2 and box1 is not None and box2 is not None and link.run != "under"
    if both and (link.run == "over" or runs_direct(box1, box2, ((x1, y1), (x2, y2)), around)):  # type: ignore[arg-type]
        return finished(link.signal, abs(x1 - x2) + abs(y1 - y2) + abs(above1 - above2), link.more), 0
    route, passed, added = 2 * _PASSAGE, 0, 0
    down = [y1, y2]
    for number, (top, x, y, other, above) in enumerate(((top1, x1, y1, y2, above1), (top2, x2, y2, y1, above2))):
        if top:
            line = around.drop_line(x, y, other)
            route += above + board.thickness
            if line is None:
                added += NO_WAY
            else:
                down[number] = line
                far = abs(y - line)
                route += far
                for each in board.lines:
                    if -far < y - each < far:
                        passed += 1
                        break
    route += _below(board, link, (x1, down[0]), (x2, down[1]), around, least)
    return finished(link.signal, route, link.more) + added, passed


def _below(board: Board, link: Link, start: Spot, end: Spot, around: DeckBoxes, least: bool) -> int:
    """How far a link goes from one drop line to the other: by way of its lane if it goes across at all, round what hangs there or
    beneath it."""
    lane = nearest_lane(start, end, link.lanes) if link.lanes else None
    left, right = (start[0], end[0]) if start[0] < end[0] else (end[0], start[0])
    front, rear = (start[1], end[1]) if start[1] < end[1] else (end[1], start[1])
    if lane is not None:
        front, rear = min(front, lane), max(rear, lane)
    if all(box.right <= left or box.left >= right or box.rear <= front or box.front >= rear for box in around.hanging):
        return _along(start, end, lane)
    if least:
        return length_of((start, end))
    return _round(start, end, lane, (board.width, board.depth), around.hanging_at)


@lru_cache(maxsize=100_000)
def _round(start: Spot, end: Spot, lane: int | None, size: Spot, hanging_at: tuple[HangingAt, ...]) -> int:
    """The same where something hangs. Kept, because most things stand still from one step of a search to the next."""
    hanging = [
        Box("", left, front, right, rear, under=True, beneath=dip) for left, front, right, rear, dip in hanging_at
    ]
    way = way_below(start, end, lane, hanging, size)
    if way is None:
        return length_of((start, end)) + NO_WAY
    return _along(start, end, None if way.around else lane) + way.more + way.dip


def _along(start: Spot, end: Spot, lane: int | None) -> int:
    return length_of((start, end)) if lane is None else length_of(lane_way(start, end, lane))


def _stop(end: End, standing: Sequence[Standing] | Mapping[int, Standing]) -> Stop:
    if end.item < 0:
        return end.x, end.y, 0, False, None
    each = standing[end.item]
    x, y, above = each.sockets[end.socket]
    return each.x + x, each.y + y, above + each.lift, each.on_top, each.box
