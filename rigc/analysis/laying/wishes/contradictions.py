"""Wishes for places -> those that no layout of any deck could meet together."""

from __future__ import annotations

from collections import deque
from collections.abc import Iterator
from itertools import combinations, pairwise

from rigc.facts.laying import AWAY_MM, TOGETHER_MM
from rigc.model.deck import Hint

_RANKS = {"row": ("front", "middle", "rear"), "on_side": ("left", "middle", "right")}
_ONE_ONLY = (*_RANKS, "jacks_look", "stands", "near_edge", "reach")
_FACING = ({"left", "right"}, {"front", "rear"})

Edges = dict[
    str, list[tuple[str, tuple[Hint, ...]]]
]  # by thing: what is further to the right, or to the rear, and who says so


def contradictions(hints: tuple[Hint, ...]) -> tuple[tuple[Hint, ...], ...]:
    """Each the least that contradicts itself: the wish written last first."""
    found: dict[frozenset[Hint], tuple[Hint, ...]] = {}
    for each in (*_two_words(hints), *_near_and_far(hints), *_rings(hints, "x"), *_rings(hints, "y")):
        ordered = tuple(sorted(set(each), key=lambda hint: -hint.span.start))
        found.setdefault(frozenset(ordered), ordered)
    return tuple(found.values())


def _two_words(hints: tuple[Hint, ...]) -> Iterator[tuple[Hint, ...]]:
    """One thing in two rows, at two sides, on and beneath, near two edges that face each other, in the left
    half of the deck and in the right one."""
    for one, other in combinations(hints, 2):
        if one.kind != other.kind or one.kind not in _ONE_ONLY or one.things != other.things or one.key == other.key:
            continue
        if one.kind == "near_edge" and {one.word, other.word} not in _FACING:
            continue
        if one.kind != "reach" or one.others == other.others:
            yield one, other


def _near_and_far(hints: tuple[Hint, ...]) -> Iterator[tuple[Hint, ...]]:
    for one, other in combinations(hints, 2):
        for near, far in ((one, other), (other, one)):
            if near.kind != "together" or far.kind != "away" or len(near.things) != 2:
                continue
            pairs = ({here, there} for here in far.things for there in far.others)
            most = AWAY_MM.value if far.amount_mm is None else far.amount_mm
            if most > TOGETHER_MM.value and set(near.things) in pairs:
                yield near, far


def _rings(hints: tuple[Hint, ...], axis: str) -> Iterator[tuple[Hint, ...]]:
    """What would stand to the left of itself, or before itself."""
    edges: Edges = {}
    for one, other, said in (*_said(hints, axis), *_ranked(hints, "on_side" if axis == "x" else "row")):
        edges.setdefault(one, []).append((other, said))
    for one, other, said in _said(hints, axis):
        back = _way(edges, other, one)
        if back is not None:
            yield (*said, *back)


def _said(hints: tuple[Hint, ...], axis: str) -> Iterator[tuple[str, str, tuple[Hint, ...]]]:
    low, high = ("left", "right") if axis == "x" else ("front", "rear")
    for hint in hints:
        if hint.kind == "beside" and hint.word in (low, high):
            pair = (hint.things[0], hint.others[0])
            yield (*(pair if hint.word == low else pair[::-1]), (hint,))
        elif hint.kind == "stepped" and axis == "x":
            for one, other in pairwise(hint.things):
                yield one, other, (hint,)


def _ranked(hints: tuple[Hint, ...], kind: str) -> Iterator[tuple[str, str, tuple[Hint, ...]]]:
    """What is at the left is to the left of what is in the middle, and that of what is at the right."""
    mine = [hint for hint in hints if hint.kind == kind]
    for one in mine:
        for other in mine:
            if _RANKS[kind].index(one.word) < _RANKS[kind].index(other.word):
                yield one.things[0], other.things[0], (one, other)


def _way(edges: Edges, start: str, end: str) -> tuple[Hint, ...] | None:
    """Who says, step by step, that the end is beyond the start: the shortest way."""
    todo: deque[tuple[str, tuple[Hint, ...]]] = deque([(start, ())])
    seen = {start}
    while todo:
        here, told = todo.popleft()
        if here == end:
            return told
        for there, said in edges.get(here, ()):
            if there not in seen:
                seen.add(there)
                todo.append((there, (*told, *said)))
    return None
