"""Things that may be the one looked for, and questions with yes or no -> a tree of questions that halves what is left.

Things that every question answers alike can't be told apart and stay together. Of n such groups some tree needs no more than
the binary logarithm of n, rounded up, in questions (`least_depth`); where a question is left whose answers keep that promise the
cheapest of them is asked, else the one that halves best, so that the tree may be deeper.
"""

from __future__ import annotations

from collections.abc import Sequence

from rigc.record import Record


class Found(Record):
    """The end of a way: the numbers of the things that remain, in their order."""

    things: tuple[int, ...]


class Asked(Record):
    """A question by its number, and where each answer leads."""

    question: int
    yes: Found | Asked
    no: Found | Asked


Tree = Found | Asked


def halved(things: Sequence[int], answers: Sequence[int], costs: Sequence[float]) -> Tree:
    """`answers` holds for each question the set of things (bit by their numbers) for which it is yes."""
    groups = alike(things, answers)
    yes = [sum(1 << at for at, group in enumerate(groups) if answer >> group[0] & 1) for answer in answers]
    cheap = sorted(range(len(yes)), key=lambda question: costs[question])
    return _split((1 << len(groups)) - 1, groups, yes, cheap, costs)


def alike(things: Sequence[int], answers: Sequence[int]) -> list[tuple[int, ...]]:
    """The things in groups that no question parts."""
    groups: dict[tuple[int, ...], list[int]] = {}
    for thing in things:
        groups.setdefault(tuple(answer >> thing & 1 for answer in answers), []).append(thing)
    return [tuple(group) for group in groups.values()]


def least_depth(count: int) -> int:
    """How many questions with yes or no it takes at least to tell so many groups apart."""
    return max(count - 1, 0).bit_length()


def depth(tree: Tree) -> int:
    """The most questions on a way through the tree."""
    return 0 if isinstance(tree, Found) else 1 + max(depth(tree.yes), depth(tree.no))


def _split(left: int, groups: list[tuple[int, ...]], yes: list[int], cheap: list[int], costs: Sequence[float]) -> Tree:
    count = left.bit_count()
    if count == 1:
        return Found(groups[left.bit_length() - 1])
    promised = 1 << (least_depth(count) - 1)
    best, rank = -1, (False, 0.0, 0)
    for question in cheap:
        larger = max((said := (yes[question] & left).bit_count()), count - said)
        kept = larger <= promised
        this = (not kept, costs[question] if kept else 0.0, larger)
        if larger < count and (best < 0 or this < rank):
            best, rank = question, this
    assert best >= 0, "groups are what some question parts"
    return Asked(
        best,
        _split(left & yes[best], groups, yes, cheap, costs),
        _split(left & ~yes[best], groups, yes, cheap, costs),
    )
