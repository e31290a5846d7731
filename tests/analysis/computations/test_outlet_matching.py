"""Matching claims to kinds of places."""

from __future__ import annotations

from itertools import product
from random import Random

from rigc.analysis.power.outlet_matching import match


def test_moves_others_on() -> None:
    """Claim 0 takes a; claim 1 wants only a, so claim 0 moves to b."""
    assert match([["a", "b"], ["a"]], {"a": 1, "b": 1}).placed == 2


def test_names_the_rivals() -> None:
    """Claims 0 and 2 want only a, which has one place; claim 1 is no part of it."""
    found = match([["a"], ["b"], ["a"]], {"a": 1, "b": 1})
    assert (found.placed, found.rivals, found.contested) == (2, (0, 2), ("a",))


def test_five_against_four() -> None:
    """Five units need a 500 mA outlet and four are free for them: all five are named, the small one is not."""
    claims = [["b"]] * 5 + [["a", "b"]]
    found = match(claims, {"a": 6, "b": 4})
    assert found.rivals == (0, 1, 2, 3, 4)


def test_a_claim_for_nothing() -> None:
    """A unit that no outlet suits stands in its own way."""
    found = match([[]], {"a": 1})
    assert (found.rivals, found.contested) == ((0,), ())


def test_against_trying_all() -> None:
    """The most that can be placed, and rivals that really are more than their places (Hall's condition)."""
    for seed in range(200):
        chance = Random(seed)
        room = {kind: chance.randint(0, 2) for kind in range(3)}
        claims = [[kind for kind in room if chance.random() < 0.5] for _ in range(chance.randint(1, 5))]
        found = match(claims, room)
        ways = product(*([None, *claim] for claim in claims))
        most = max(len(way) - way.count(None) for way in ways if all(way.count(kind) <= room[kind] for kind in room))
        assert found.placed == most, seed
        if most < len(claims):
            assert len(found.rivals) > sum(room[kind] for kind in room if kind in found.contested)
            assert all(set(claims[rival]) <= set(found.contested) for rival in found.rivals)
