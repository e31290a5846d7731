"""The nearest place for a body that overlaps others where it stands. Boards are invented; corners are worked by hand."""

from __future__ import annotations

import pytest
from small_rigs import block, results_of, unit

from rigc.analysis.deck.placement import Placement
from rigc.analysis.revision.substitute.room import nearest_room, overlaps


def room(deck: tuple[str, ...] = (), **places: str) -> tuple[bool, tuple[float, float] | None]:
    """`it` is 60 x 100 mm, the others 50 x 100 mm, on a deck of 300 x 200 mm."""
    text = block("deck", "plate", "size 300 x 200 mm", *deck)
    for name in places:
        text += unit(name, f"body {60 if name == 'it' else 50} x 100 x 40 mm")
    of = results_of(text + block("place", "", *(f"{name} {place}" for name, place in places.items())))
    placement = of.get(Placement)
    return overlaps(of.rig, placement, "it"), nearest_room(of.rig, placement, "it")


def test_free_as_it_is() -> None:
    """It touches what begins at 160."""
    assert room(it="at 100, 50 mm", right="at 160, 50 mm") == (False, (100, 50))


def test_aside() -> None:
    """Into the one at 150 by 10 mm; at the left there are 100 - 80 = 20 mm."""
    assert room(it="at 100, 50 mm", right="at 150, 50 mm", left="at 30, 50 mm") == (True, (90, 50))


def test_to_the_rear() -> None:
    """Between 80 and 130 there are 50 mm, too little for 60; both end at 10 + 100 = 110, 10 mm behind its front edge."""
    assert room(it="at 80, 100 mm", left="at 30, 10 mm", right="at 130, 10 mm") == (True, None)  # 110 + 100 > 200
    assert room(it="at 80, 95 mm", left="at 30, 0 mm", right="at 130, 0 mm") == (True, (80, 100))


@pytest.mark.parametrize(
    ("deck", "corner"),
    [
        ((), (240, 50)),  # 250 + 60 = 310: 10 mm over the edge
        (('keep-out 20 x 200 mm at 280, 0 mm "handle"',), (220, 50)),
    ],
)
def test_edge_and_keep_out(deck: tuple[str, ...], corner: tuple[float, float]) -> None:
    assert room(deck, it="at 250, 50 mm") == (True, corner)


def test_reserved_room() -> None:
    """It would reach 10 mm into the room that is kept from 150 on."""
    text = block("deck", "plate", "size 300 x 200 mm") + unit("it", "body 60 x 100 x 40 mm")
    of = results_of(text + block("place", "", "it at 100, 50 mm", 'reserve 50 x 200 mm at 150, 0 mm "next year"'))
    assert nearest_room(of.rig, of.get(Placement), "it") == (90, 50)


def test_no_room() -> None:
    """Left and right are full, and the deck is 200 mm deep: front and rear are, too."""
    places = {f"u{x}-{y}": f"at {x}, {y} mm" for x in (0, 50, 150, 200, 250) for y in (0, 100)}
    assert room((), it="at 100, 50 mm", **places) == (True, None)


def test_the_other_side_of_the_deck_is_not_in_the_way() -> None:
    assert room(it="at 100, 50 mm", below="under at 100, 50 mm")[0] is False


def test_without_a_place() -> None:
    of = results_of(unit("it"))
    placement = of.get(Placement)
    assert overlaps(of.rig, placement, "it") is False
    assert nearest_room(of.rig, placement, "it") is None
