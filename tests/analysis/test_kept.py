"""What is kept answers for just what it was made of, by the same code, and costs nothing where there is no store."""

from __future__ import annotations

from functools import partial
from math import cos

import pytest
from shelf import Shelf

from rigc.analysis.kept import NOTHING_KEPT, Kept
from rigc.reports.drawings.shapes import Line


def asked(kept: Kept, what: object, made: str) -> str:
    """The answer, which was made now only if it is `made`."""
    return kept.answer("test", what, lambda: made, str)


def test_the_same_is_made_once() -> None:
    shelf = Shelf()
    assert asked(Kept(shelf), (1, "a"), "first") == "first"
    assert asked(Kept(shelf), (1, "a"), "second") == "first"
    assert asked(NOTHING_KEPT, (1, "a"), "third") == "third"


@pytest.mark.parametrize(
    "other", [(1.0, "a"), (1, "b"), [1, "a"], (1, "a", None), Line(0, 0, 1, 1), partial(cos, 1)], ids=repr
)
def test_of_anything_else_it_is_made(other: object) -> None:
    kept = Kept(Shelf())
    asked(kept, (1, "a"), "first")
    assert asked(kept, other, "second") == "second"


def test_by_other_code_it_is_made() -> None:
    shelf = Shelf()
    asked(Kept(shelf, lambda: "1"), 1, "first")
    assert asked(Kept(shelf, lambda: "2"), 1, "second") == "second"


def test_how_often_a_value_stands_in_it_is_nothing_to_it() -> None:
    """One value twice, and two that are the same: equal, so of one name."""
    one = "".join(("a", "lead"))
    kept = Kept(Shelf())
    assert kept.name((one, one)) == kept.name((one, "a lead".replace(" ", "")))


@pytest.mark.parametrize("spoiled", [b"", b"[", b"7"])
def test_what_is_no_answer_is_made_anew(spoiled: bytes) -> None:
    shelf = Shelf()
    kept = Kept(shelf)
    assert kept.answer("test", 1, lambda: ["first"], list) == ["first"]
    shelf.update(dict.fromkeys(shelf, spoiled))
    assert kept.answer("test", 1, lambda: ["second"], list) == ["second"]
