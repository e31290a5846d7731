"""Places where ways meet again, on graphs small enough to see."""

from __future__ import annotations

import random
from itertools import pairwise

import networkx as nx
import pytest

from rigc.analysis.signal.side_by_side import MOST_WAYS, first_way, meetings
from rigc.model.jacks import Port


def port(name: str) -> Port:
    return Port(name, "x")


def graph(*ways: str) -> dict[Port, list[Port]]:
    """Ways such as `a b c`: from a to b to c."""
    onward: dict[Port, list[Port]] = {}
    for way in ways:
        names = way.split()
        for start, end in pairwise(names):
            ends = onward.setdefault(port(start), [])
            if port(end) not in ends:
                ends.append(port(end))
    return onward


def told(onward: dict[Port, list[Port]], *sources: str) -> list[tuple[str, str, set[str]]]:
    found = meetings(onward, [port(name) for name in sources])
    return [(m.split.thing, m.join.thing, {" ".join(p.thing for p in way) for way in m.ways}) for m in found]


def test_a_line_meets_nowhere() -> None:
    assert told(graph("a b c"), "a") == []


def test_two_ways() -> None:
    assert told(graph("a b d e", "a c d"), "a") == [("a", "d", {"a b d", "a c d"})]


def test_one_after_the_other() -> None:
    found = told(graph("a b d e g", "a c d", "d f g"), "a")
    assert found == [("a", "d", {"a b d", "a c d"}), ("d", "g", {"d e g", "d f g"})]


def test_one_inside_the_other() -> None:
    found = told(graph("a b c e f", "b d e", "a f"), "a")
    assert found == [("b", "e", {"b c e", "b d e"}), ("a", "f", {"a b c e f", "a b d e f", "a f"})]


def test_two_instruments_never_parted() -> None:
    assert told(graph("a c", "b c"), "a", "b") == []


def test_what_no_source_reaches_is_no_way() -> None:
    assert told(graph("a b c", "z c"), "a") == []


def test_a_circle_ends() -> None:
    # b is entered from a and from c; nearest common to both is a, and only one way leads from there to b.
    assert told(graph("a b c b", "c d"), "a") == [("a", "b", {"a b"})]


def test_very_many_ways_are_cut_short() -> None:
    # Ten places in a row with two ways each: 1024 ways.
    steps = [f"n{k} u{k} n{k + 1}" for k in range(10)] + [f"n{k} v{k} n{k + 1}" for k in range(10)]
    onward = graph(*steps, "n0 far n10")
    last = list(meetings(onward, [port("n0")]))[-1]
    assert last.join == port("n10") and len(last.ways) == MOST_WAYS


def test_the_shortest_way() -> None:
    onward = graph("a b c d", "a e d")
    assert first_way(onward, port("a"), port("d")) == (port("a"), port("e"), port("d"))
    assert first_way(onward, port("d"), port("a")) is None
    assert first_way(onward, port("a"), port("a")) == (port("a"),)


@pytest.mark.parametrize("seed", range(40))
def test_splits_and_ways_agree_with_networkx(seed: int) -> None:
    # Outside check: networkx 3, immediate_dominators and all_simple_paths, on random graphs without circles.
    dice = random.Random(seed)
    pairs = {(a, b) for a in range(12) for b in range(a + 1, 12) if dice.random() < 0.25}
    onward = graph("n0", *(f"n{a} n{b}" for a, b in sorted(pairs)))
    digraph = nx.DiGraph((start, end) for start, ends in onward.items() for end in ends)
    digraph.add_node(port("n0"))
    reached = digraph.subgraph({port("n0"), *nx.descendants(digraph, port("n0"))})
    nearest = nx.immediate_dominators(reached, port("n0"))
    expected = {
        join: (nearest[join], set(map(tuple, nx.all_simple_paths(reached, nearest[join], join))))
        for join in reached
        if reached.in_degree(join) > 1
    }
    found = {each.join: (each.split, set(each.ways)) for each in meetings(onward, [port("n0")])}
    assert {join: split for join, (split, _) in found.items()} == {join: split for join, (split, _) in expected.items()}
    for join, (_, ways) in found.items():
        assert ways == expected[join][1] or (len(ways) == MOST_WAYS and ways < expected[join][1])
