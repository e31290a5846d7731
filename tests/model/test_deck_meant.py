"""Which deck is meant where a statement names none."""

from __future__ import annotations

from pathlib import Path

from cases import results
from small_rigs import results_of, unit

TEXT = (
    'language 1\nuse "stock/decks.rig"\nrig sample {\n  revision A 2026-03-02\n}\n'
    + unit("lant", "body 70 x 120 x 50 mm")
    + "deck board {\n  size 400 x 300 mm\n  tier riser 150..300 mm raised 40 mm\n}\n"
    + "place {\n  lant at 10, 160 mm on riser\n}\n"
)


def test_a_tier_is_one_of_the_rigs_own_deck_though_the_stock_is_used_first(tmp_path: Path) -> None:
    """The generic stock's decks are declared before the rig's own, and none of them has a tier."""
    (tmp_path / "board.rig").write_text(TEXT, "utf-8")
    rig = results(tmp_path / "board.rig").rig
    assert rig.deck is not None
    assert (rig.deck.name, rig.places["lant"].tier) == ("board", "riser")


def test_a_room_is_reserved_on_the_deck_of_its_block() -> None:
    rig = results_of(
        "deck hub {\n  size 400 x 300 mm\n}\ndeck side-board {\n  size 400 x 300 mm\n}\n"
        "place {\n  reserve 50 x 60 mm at 0, 0 mm\n}\nplace on side-board {\n  reserve 70 x 80 mm at 0, 0 mm\n}\n"
    ).rig
    assert [[room.width_mm for room in rig.reserved_on(deck)] for deck in rig.decks.values()] == [[50], [70]]
