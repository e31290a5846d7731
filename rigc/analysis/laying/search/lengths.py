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
from rigc.facts.leads import LEAST_SLACK_MM, ONE_ROW_MM, PASSAGE_MM, SLACK_SHARE
from rigc.record import Record

_PASSAGE = tenths(PASSAGE_MM.value)
ROW = tenths(ONE_ROW_MM.value)
NO_WAY = 10_000  # added where a link finds no drop line that is free, or no way below the deck: a metre


class Standing(Record):
    """One item at its place, as links see it: its box, whether it stands on top, its sockets' exits and heights from its
    corner with the way their face looks along y, that corner, how high its tier is; and what its place costs."""

    box: Box
    on_top: bool
    sockets: tuple[tuple[int, int, int, int], ...]
    x: int
    y: int
    lift: int
    cost: int


OVER, FREE, AMONG = range(3)  # a link runs over the deck; below it with nothing near; below it where something hangs
Run = tuple[int, int, int]  # the finished length; how often it breaks a rule (see `run_of`); which of these
Stop = tuple[
    int, int, int, bool, Box | None, int
]  # x, y, height over the deck, whether on top, whose box, the way the face looks


def link_runs(board: Board, standing: list[Standing], least: bool = False) -> list[Run]:
    """How each link runs; with `least`, which is quicker, what goes round a hanging body or beneath it counts as going straight."""
    around = DeckBoxes((each.box for each in standing), board.lines)
    return [
        _run(board, link, _stop(link.start, standing), _stop(link.end, standing), around, least) for link in board.links
    ]


def run_of(
    board: Board, link: Link, standing: Sequence[Standing] | Mapping[int, Standing], around: DeckBoxes, least: bool
) -> Run:
    """How one link runs among these boxes. It breaks a rule where it has no way, exists and is too short, or is longer for a covered drop line."""
    return _run(board, link, _stop(link.start, standing), _stop(link.end, standing), around, least)


def some_runs(board: Board, links: Sequence[Link], standing: Mapping[int, Standing]) -> list[Run]:
    """How these links run where only these items stand."""
    around = DeckBoxes((each.box for each in standing.values()), board.lines)
    return [_run(board, link, _stop(link.start, standing), _stop(link.end, standing), around) for link in links]


@cache
def finished(signal: str, route: int, more: int = 0) -> int:
    """The finished length of a route."""
    return finished_length(route + rule_slack(route, 10 * LEAST_SLACK_MM[signal].value, SLACK_SHARE.value, more))


def _run(board: Board, link: Link, start: Stop, end: Stop, around: DeckBoxes, least: bool = False) -> Run:
    x1, y1, above1, top1, box1, _ = start
    x2, y2, above2, top2, box2, _ = end
    both = top1 and top2 and box1 is not None and box2 is not None and link.run != "under"
    if both and (link.run == "over" or runs_direct(box1, box2, ((x1, y1), (x2, y2)), around)):  # type: ignore[arg-type]
        route = abs(x1 - x2) + abs(y1 - y2) + abs(above1 - above2)
        return finished(link.signal, route, link.more), int(_too_short(link, route)), OVER
    route, broken, added = 2 * _PASSAGE, 0, 0
    down, passed = [y1, y2], False
    for number, (top, x, y, other, above) in enumerate(((top1, x1, y1, y2, above1), (top2, x2, y2, y1, above2))):
        if top:
            line = around.drop_line(x, y, other)
            route += above + board.thickness
            if line is None:
                added += NO_WAY
                broken += 1
            else:
                down[number] = line
                far = abs(y - line)
                route += far
                passed = passed or any(-far < y - each < far for each in board.lines)
    if passed and not broken:
        broken += _longer_for_cover(link, (start, end), down, around)
    below, how = _below(board, link, (x1, down[0]), (x2, down[1]), around, least)
    route += below
    return finished(link.signal, route, link.more) + added, broken + int(_too_short(link, route)), how


def _too_short(link: Link, route: int) -> bool:
    """Whether a lead that exists is too short for a route."""
    return (
        link.existing is not None and route + round(10 * LEAST_SLACK_MM[link.signal].value) + link.more > link.existing
    )


def _longer_for_cover(link: Link, stops: tuple[Stop, Stop], down: list[int], around: DeckBoxes) -> int:
    """How many ends make the link longer because the line nearest to them is covered (see the rule covered-drop-line)."""
    count = 0
    for at, (x, y, _, top, box, looks) in enumerate(stops):
        if not top or box is None:
            continue
        other_y = stops[1 - at][1]
        lines = [
            line for line in around.lines if not ((looks > 0 and line <= box.front) or (looks < 0 and line >= box.rear))
        ]
        nearest = min(lines, key=lambda line: (abs(y - line), abs(other_y - line), line), default=down[at])
        if nearest == down[at] or not around.covers(x, nearest):
            continue
        there = list(down)
        there[at] = nearest
        ways = (_up_and_down(link, stops, drops) for drops in (down, there))
        count += next(ways) > next(ways)
    return count


def _up_and_down(link: Link, stops: tuple[Stop, Stop], down: list[int]) -> int:
    """How far a link goes in y with its ends going down there."""
    (x1, y1, *_), (x2, y2, *_) = stops
    lane = nearest_lane((x1, down[0]), (x2, down[1]), link.lanes) if link.lanes else None
    across = abs(down[0] - down[1]) if lane is None else abs(down[0] - lane) + abs(lane - down[1])
    return abs(y1 - down[0]) + across + abs(down[1] - y2)


def _below(board: Board, link: Link, start: Spot, end: Spot, around: DeckBoxes, least: bool) -> tuple[int, int]:
    """How far a link goes from one drop line to the other: by way of its lane if it goes across at all, round what hangs there or
    beneath it."""
    lane = nearest_lane(start, end, link.lanes) if link.lanes else None
    left, right = (start[0], end[0]) if start[0] < end[0] else (end[0], start[0])
    front, rear = (start[1], end[1]) if start[1] < end[1] else (end[1], start[1])
    if lane is not None:
        front, rear = min(front, lane), max(rear, lane)
    if all(box.right <= left or box.left >= right or box.rear <= front or box.front >= rear for box in around.hanging):
        return _along(start, end, lane), FREE
    if least:
        return length_of((start, end)), AMONG
    return _round(start, end, lane, (board.width, board.depth), around.hanging_at), AMONG


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
        return end.x, end.y, 0, False, None, 0
    each = standing[end.item]
    x, y, above, looks = each.sockets[end.socket]
    return each.x + x, each.y + y, above + each.lift, each.on_top, each.box, looks
