"""A layout -> the length of each link by the route model, with the very rules that route and measure a rig's leads."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import cache

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


Run = tuple[int, int]  # the finished length; how many ends pass over their nearest drop line because it is covered
Stop = tuple[int, int, int, bool, Box | None]  # x, y, height over the deck, whether on top, whose box


def link_runs(board: Board, standing: list[Standing]) -> list[Run]:
    """How each link runs."""
    around = DeckBoxes((each.box for each in standing), board.lines)
    return [_run(board, link, _stop(link.start, standing), _stop(link.end, standing), around) for link in board.links]


def some_runs(board: Board, links: Sequence[Link], standing: Mapping[int, Standing]) -> list[Run]:
    """How these links run where only these items stand."""
    around = DeckBoxes((each.box for each in standing.values()), board.lines)
    return [_run(board, link, _stop(link.start, standing), _stop(link.end, standing), around) for link in links]


@cache
def finished(signal: str, route: int, more: int = 0) -> int:
    """The finished length of a route."""
    return finished_length(route + rule_slack(signal, route) + more)


def _run(board: Board, link: Link, start: Stop, end: Stop, around: DeckBoxes) -> Run:
    x1, y1, above1, top1, box1 = start
    x2, y2, above2, top2, box2 = end
    both = top1 and top2 and box1 is not None and box2 is not None and link.run != "under"
    if both and (link.run == "over" or runs_direct(box1, box2, ((x1, y1), (x2, y2)), around)):  # type: ignore[arg-type]
        return finished(link.signal, abs(x1 - x2) + abs(y1 - y2) + abs(above1 - above2), link.more), 0
    route, passed, added = abs(x1 - x2) + 2 * _PASSAGE, 0, 0
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
    return finished(link.signal, route + _along(link, x1 != x2, *down), link.more) + added, passed


def _along(link: Link, across: bool, y1: int, y2: int) -> int:
    """How far a link goes in y below the deck, by way of its lane if it goes across at all."""
    if not link.lanes or not across:
        return abs(y1 - y2)
    return min(abs(y1 - lane) + abs(lane - y2) for lane in link.lanes)


def _stop(end: End, standing: Sequence[Standing] | Mapping[int, Standing]) -> Stop:
    if end.item < 0:
        return end.x, end.y, 0, False, None
    each = standing[end.item]
    x, y, above = each.sockets[end.socket]
    return each.x + x, each.y + y, above + each.lift, each.on_top, each.box
