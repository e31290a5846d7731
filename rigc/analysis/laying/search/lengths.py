"""A layout -> the length of each link by the route model, with the very rules that route and measure a rig's leads."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cache, lru_cache

from rigc.analysis.laying.search.board import Board, End, Link
from rigc.analysis.laying.search.crossed import NOWHERE, Path, over_the_deck, through_the_deck
from rigc.analysis.leads.lengths.below_deck import Spot, Way, beneath, lane_way, length_of, nearest_lane, way_below
from rigc.analysis.leads.lengths.cable_lengths import finished_length, rule_slack
from rigc.analysis.leads.lengths.deck_boxes import Box, DeckBoxes, HangingAt
from rigc.analysis.leads.lengths.direct_run import free_bends, runs_direct
from rigc.analysis.leads.lengths.drop_choice import Lines, shortest_lines
from rigc.analysis.leads.lengths.lead_ends import tenths
from rigc.facts.leads import LEAST_SLACK_MM, ONE_ROW_MM, PASSAGE_MM, SLACK_SHARE
from rigc.record import Record

_PASSAGE = tenths(PASSAGE_MM.value)
ROW = tenths(ONE_ROW_MM.value)
NO_WAY = 10_000  # added where a link finds no drop line that is free, or no way below the deck: a metre


Stop = tuple[int, int, int, int, int]
"""Where a cable leaves a socket: x, y, height over the deck, the way the face looks along y, how far it is to the nearest drop line that the
thing itself leaves free."""


class Standing(Record):
    """One item at its place, as links and the balance see it: its box, whether it stands on top, its sockets' stops, its corner with the
    number of its shape, what its place costs, its mass in grams times twice its middle in x and in y, and how far what is pressed
    lies beyond the feet (left, front, right, rear; None: inside)."""

    box: Box
    on_top: bool
    stops: tuple[Stop, ...]
    at: tuple[int, int, int]
    cost: int
    moment: tuple[int, int]
    beyond: tuple[int, int, int, int] | None


OVER, FREE, AMONG = range(3)  # a link runs over the deck; below it with nothing near; below it where something hangs
Run = tuple[
    int, int, int, Path
]  # the finished length; how often it breaks a rule (see `run_of`); which of these; its way
_End = tuple[
    int, int, int, bool, Box | None, int
]  # x, y, height over the deck, whether on top, whose box, the way the face looks
_Through = tuple[int, int, Way]  # how far from one drop line to the other, which of these, and by what points
Stood = Sequence[Standing] | Mapping[int, Standing]


def run_of(board: Board, link: Link, standing: Stood, around: DeckBoxes) -> Run:
    """How one link runs among these boxes. It breaks a rule where it has no way, exists and is too short, or is longer for a covered drop line."""
    return _run(board, link, _end(link.start, standing), _end(link.end, standing), around)


def some_runs(board: Board, links: Sequence[Link], standing: Mapping[int, Standing]) -> list[Run]:
    """How these links run where only these items stand."""
    around = DeckBoxes((each.box for each in standing.values()), board.lines)
    return [_run(board, link, _end(link.start, standing), _end(link.end, standing), around) for link in links]


@cache
def finished(signal: str, route: int, more: int = 0) -> int:
    """The finished length of a route."""
    return finished_length(route + rule_slack(route, 10 * LEAST_SLACK_MM[signal].value, SLACK_SHARE.value, more))


def _run(board: Board, link: Link, start: _End, end: _End, around: DeckBoxes) -> Run:
    x1, y1, above1, top1, box1, _ = start
    x2, y2, above2, top2, box2, _ = end
    both = top1 and top2 and box1 is not None and box2 is not None and link.run != "under"
    if both and (link.run == "over" or runs_direct(box1, box2, ((x1, y1), (x2, y2)), around)):  # type: ignore[arg-type]
        route = abs(x1 - x2) + abs(y1 - y2) + abs(above1 - above2)
        path = _over((x1, y1), (x2, y2), around) if board.crossing else NOWHERE
        return finished(link.signal, route, link.more), int(_too_short(link, route)), OVER, path
    route, broken, added = 2 * _PASSAGE, 0, 0
    lines: Lines = None, None
    for number, (top, x, y, other, above) in enumerate(((top1, x1, y1, y2, above1), (top2, x2, y2, y1, above2))):
        if top:
            line = _line(link, number, (x, y), other, around)
            lines = (line, lines[1]) if number == 0 else (lines[0], line)
            route += above + board.thickness
            if line is None:
                added += NO_WAY
                broken += 1
    spots = (x1, y1), (x2, y2)
    through: _Through | None = None
    if link.joint and not link.through and not broken:
        lines, through = _shortest(board, link, spots, lines, around)
    down = [y if line is None else line for (_, y), line in zip(spots, lines, strict=True)]
    far = abs(y1 - down[0]), abs(y2 - down[1])
    passed = any(
        -most <= y - each <= most and each != line  # of two as near the one nearer to the other end counts
        for (_, y), most, line in zip(spots, far, down, strict=True)
        for each in board.lines
    )
    if passed and not broken:
        broken += _longer_for_cover(link, (start, end), down, around)
    below, how, way = through or _below(board, link, (x1, down[0]), (x2, down[1]), around)
    route += sum(far) + below
    path = through_the_deck(((spots[0], down[0]), (spots[1], down[1])), way) if board.crossing else NOWHERE
    return finished(link.signal, route, link.more) + added, broken + int(_too_short(link, route)), how, path


def _over(start: Spot, end: Spot, around: DeckBoxes) -> Path:
    """The way over the deck by the first bend that is free."""
    bend = next(iter(free_bends((start, end), around)), (start[0], end[1]))
    return over_the_deck((start, bend, end))


def _line(link: Link, number: int, at: Spot, other_y: int, around: DeckBoxes) -> int | None:
    """The stated line of an end where it is free there, else the nearest that is; None where there is none."""
    if not link.through:
        return around.drop_line(*at, other_y)
    line = link.through[number % len(link.through)]
    return None if line not in around.lines or around.covers(at[0], line) else line


def _shortest(
    board: Board, link: Link, spots: tuple[Spot, Spot], near: Lines, around: DeckBoxes
) -> tuple[Lines, _Through]:
    """The lines by which a link is shortest, and how it goes from the one to the other."""
    asked: dict[tuple[int, int], _Through] = {}

    def below(here: Spot, there: Spot) -> int:
        found = asked[here[1], there[1]] = _below(board, link, here, there, around)
        return found[0]

    first, last = lines = shortest_lines(spots, near, around, below)
    return lines, asked[spots[0][1] if first is None else first, spots[1][1] if last is None else last]


def _too_short(link: Link, route: int) -> bool:
    """Whether a lead that exists is too short for a route."""
    return (
        link.existing is not None and route + round(10 * LEAST_SLACK_MM[link.signal].value) + link.more > link.existing
    )


def _longer_for_cover(link: Link, stops: tuple[_End, _End], down: list[int], around: DeckBoxes) -> int:
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


def _up_and_down(link: Link, stops: tuple[_End, _End], down: list[int]) -> int:
    """How far a link goes in y with its ends going down there."""
    (x1, y1, *_), (x2, y2, *_) = stops
    lane = nearest_lane((x1, down[0]), (x2, down[1]), link.lanes) if link.lanes else None
    across = abs(down[0] - down[1]) if lane is None else abs(down[0] - lane) + abs(lane - down[1])
    return abs(y1 - down[0]) + across + abs(down[1] - y2)


def _below(board: Board, link: Link, start: Spot, end: Spot, around: DeckBoxes) -> _Through:
    """How far a link goes from one drop line to the other: by way of its lane if it goes across at all, round what hangs there or
    beneath it; and its points."""
    lane = nearest_lane(start, end, link.lanes) if link.lanes else None
    left, right = (start[0], end[0]) if start[0] < end[0] else (end[0], start[0])
    front, rear = (start[1], end[1]) if start[1] < end[1] else (end[1], start[1])
    if lane is not None:
        front, rear = min(front, lane), max(rear, lane)
    for box in around.hanging:
        if box.right > left and box.left < right and box.rear > front and box.front < rear:
            length, way = _round(start, end, lane, (board.width, board.depth), around.hanging_at)
            return length, AMONG, way
    straight = lane_way(start, end, start[1] if lane is None else lane) if board.crossing else ()
    return _along(start, end, lane), FREE, straight


@lru_cache(maxsize=100_000)
def _round(start: Spot, end: Spot, lane: int | None, size: Spot, hanging_at: tuple[HangingAt, ...]) -> tuple[int, Way]:
    """The same where something hangs. Kept, because most things stand still from one step of a search to the next."""
    hanging = [_hanging(each) for each in hanging_at]
    way = way_below(start, end, lane, hanging, size)
    if way is None:
        return length_of((start, end)) + NO_WAY, ()
    length = _along(start, end, None if way.around else lane) + way.more + way.dip
    lanes = (start[1], end[1]) if lane is None else (lane,)
    straight = [lane_way(start, end, each) for each in lanes]
    return length, way.around or next((each for each in straight if not beneath(each, hanging)), straight[0])


@lru_cache(maxsize=10_000)
def _hanging(at: HangingAt) -> Box:
    left, front, right, rear, dip = at
    return Box("", left, front, right, rear, under=True, beneath=dip)


def _along(start: Spot, end: Spot, lane: int | None) -> int:
    across = abs(start[0] - end[0])
    return across + (abs(start[1] - end[1]) if lane is None else abs(start[1] - lane) + abs(lane - end[1]))


def _end(end: End, standing: Stood) -> _End:
    if end.item < 0:
        return end.x, end.y, 0, False, None, 0
    each = standing[end.item]
    x, y, above, looks, _ = each.stops[end.socket]
    return x, y, above, each.on_top, each.box, looks


def link_bound(board: Board, link: Link, standing: Stood) -> int:
    """What a link costs if nothing but its own two things is on the deck: no layout in which these stand so beats it."""
    x1, y1, above1, down1, top1, front1 = _foot(link.start, standing)
    x2, y2, above2, down2, top2, front2 = _foot(link.end, standing)
    across, along = abs(x1 - x2), abs(y1 - y2)
    down = down1 + down2
    route = across + under_route(board, above1, top1) + under_route(board, above2, top2) + max(along, down)
    if top1 and top2 and link.run != "under" and (link.run == "over" or abs(front1 - front2) <= ROW):
        direct = across + along + abs(above1 - above2)
        route = direct if link.run == "over" else min(route, direct)
    return finished(link.signal, route, link.more) * link.share + backwards(link, standing)


def backwards(link: Link, standing: Stood) -> int:
    """What it costs that a lead on which sound goes onward runs from left to right, if it does."""
    if not link.onward or link.start.item < 0 or link.end.item < 0:
        return 0
    far = standing[link.end.item].at[0] - standing[link.start.item].at[0]
    return link.back * far * link.share // 100 if far > 0 else 0


def under_route(board: Board, above: int, on_top: bool) -> int:
    """What an end of a link adds below the deck: its passage, and the way down from the top."""
    return _PASSAGE + (above + board.thickness if on_top else 0)


def _foot(end: End, standing: Stood) -> tuple[int, int, int, int, bool, int]:
    if end.item < 0:
        return end.x, end.y, 0, 0, False, 0
    each = standing[end.item]
    x, y, above, _, down = each.stops[end.socket]
    return x, y, above, down, each.on_top, each.at[1]
