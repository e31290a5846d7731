"""Trees of questions: the arithmetic worked by hand, and the promise on dealt tasks."""

from __future__ import annotations

from random import Random

import pytest

from rigc.solvers.halving import Asked, Found, Tree, alike, depth, halved, least_depth


def walked(tree: Tree, thing: int, answers: list[int]) -> tuple[int, ...]:
    while isinstance(tree, Asked):
        tree = tree.yes if answers[tree.question] >> thing & 1 else tree.no
    return tree.things


@pytest.mark.parametrize(("count", "least"), [(0, 0), (1, 0), (2, 1), (3, 2), (4, 2), (5, 3), (16, 4), (17, 5)])
def test_the_least_depth_is_the_binary_logarithm_rounded_up(count: int, least: int) -> None:
    assert least_depth(count) == least


def test_a_row_of_seven_is_halved() -> None:
    """Question k is yes for the things before k: 7 -> 3 and 4 -> 1 or 2 and 2 -> 1: three questions, log2 7 rounded up."""
    answers = [(1 << before) - 1 for before in range(1, 7)]
    tree = halved(range(7), answers, [1.0] * 6)
    assert depth(tree) == 3
    assert [walked(tree, thing, answers) for thing in range(7)] == [(thing,) for thing in range(7)]


def test_what_no_question_parts_stays_together() -> None:
    answers = [0b0011]
    assert alike(range(4), answers) == [(0, 1), (2, 3)]
    assert halved(range(4), answers, [1.0]) == Asked(0, Found((0, 1)), Found((2, 3)))


def test_the_cheapest_that_keeps_the_promise() -> None:
    """Four things: both questions halve them; the dear one comes first in the list."""
    tree = halved(range(4), [0b0011, 0b0101, 0b0001], [2.0, 1.0, 0.0])
    assert isinstance(tree, Asked)
    assert tree.question == 1


def test_without_a_question_that_halves_the_tree_is_deeper() -> None:
    """Each question names one thing alone: of four things the last is found after three questions."""
    assert depth(halved(range(4), [0b0001, 0b0010, 0b0100, 0b1000], [1.0] * 4)) == 3


@pytest.mark.parametrize("seed", range(40))
def test_every_thing_is_found(seed: int) -> None:
    dealt = Random(seed)
    count, asked = dealt.randint(1, 30), dealt.randint(0, 40)
    answers = [dealt.getrandbits(count) for _ in range(asked)]
    tree = halved(range(count), answers, [dealt.choice((0.0, 1.0)) for _ in range(asked)])
    for group in alike(range(count), answers):
        assert all(walked(tree, thing, answers) == group for thing in group)
