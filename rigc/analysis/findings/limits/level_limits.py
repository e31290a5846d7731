"""Levels on leads -> those that guesses drive near what an input takes, or wants."""

from __future__ import annotations

from rigc.analysis.findings.near_limit import NearLimit, by_amount, carried, guess_of, nearest_of_each, told_off
from rigc.analysis.signal.levels.levels import LevelEdge, Levels
from rigc.facts.guesses import LEVEL_SPREAD_DB
from rigc.facts.levels import LEAST_MARGIN_DB, LOW_BY_DB
from rigc.traced.given import Stated, stated
from rigc.traced.term import Term


def levels_near(levels: Levels) -> list[NearLimit]:
    """What is left to the most that each input takes, and how far it is fed below what drives it fully, in dB."""
    return nearest_of_each(near for edge in levels.edges for near in (*_too_hot(edge), *_too_weak(edge)))


def _too_hot(edge: LevelEdge) -> list[NearLimit]:
    limit, margin = LEAST_MARGIN_DB.value, edge.margin
    if not isinstance(margin, Term):
        return []
    what = f"the margin at '{edge.end}'"
    return [
        NearLimit(guess_of(each), what, float(margin), limit, "dB", told_off(LEVEL_SPREAD_DB))
        for each in carried(margin, limit, _spread)
    ]


def _too_weak(edge: LevelEdge) -> list[NearLimit]:
    limit = LOW_BY_DB.value
    if edge.sensitivity is None or not isinstance(edge.low, Term):
        return []
    below = stated(f"what {edge.end} wants", edge.sensitivity) - edge.low
    what = f"what '{edge.end}' lacks to be driven fully"
    return [
        NearLimit(guess_of(each), what, float(below), limit, "dB", told_off(LEVEL_SPREAD_DB))
        for each in carried(below, limit, _spread)
    ]


def _spread(each: Stated) -> tuple[float, float] | None:
    """The shares of a blend are set at the unit itself, and are no levels."""
    return None if each.label.startswith("share ") else by_amount(LEVEL_SPREAD_DB)(each)
