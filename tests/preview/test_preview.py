"""A rig on the disk as its page sees it: what is drawn after each save, and what moves write."""

from __future__ import annotations

from pathlib import Path

import pytest
from served import PLACED, STARTER, preview_of, rig

from rigc.preview.answers.state import state
from rigc.preview.history import EditedSince

OTHER = STARTER.replace("drive at 200", "drive at 201")


def test_a_broken_file_keeps_the_last_good_drawing(tmp_path: Path) -> None:
    path = rig(tmp_path)
    preview = preview_of(path)
    good = preview.good
    path.write_text(STARTER.replace("drop 160 mm", "drop 160 mm mm"), "utf-8")
    assert preview.refresh()
    assert preview.good is good and preview.broken
    told = state(preview)
    assert (told["broken"], told["title"]) == (True, "Two Step")
    line = 1 + STARTER[: STARTER.index("drop 160")].count("\n")
    assert [(each["level"], each["line"]) for each in told["findings"] if each["level"] == "error"] == [("error", line)]
    path.write_bytes(b"\xff\xfe\x00")
    assert preview.refresh() and not preview.refresh()
    (only,) = state(preview)["findings"]
    assert only["message"] == "'board.rig' is UTF-16 text"
    path.unlink()
    assert preview.refresh() and not preview.refresh()
    path.write_text(OTHER, "utf-8")
    assert preview.refresh()
    assert not preview.broken and preview.good is not good


def test_a_file_broken_from_the_start_has_no_drawing(tmp_path: Path) -> None:
    preview = preview_of(rig(tmp_path, "rig {"))
    told = state(preview)
    assert (told["drawn"], told["broken"], told["names"]) == (0, True, [])
    assert told["findings"]


def test_a_bug_is_told_once_and_survived(tmp_path: Path) -> None:
    path = rig(tmp_path)
    preview = preview_of(path)
    number = preview.number
    preview.failed(KeyError("x"))
    preview.failed(KeyError("x"))
    assert preview.number == number + 1
    assert state(preview)["findings"][0]["message"] == "a bug in rigc, not in the rig: KeyError: 'x'"
    assert preview.refresh() and not preview.broken


def test_what_is_asked_in_vain_is_watched(tmp_path: Path) -> None:
    preview = preview_of(rig(tmp_path, STARTER.replace("stock/premade", "premade")))
    assert tmp_path / "premade.rig" in preview.watched
    (tmp_path / "premade.rig").write_text("language 1\n", "utf-8")
    assert preview.refresh()


def test_mends_come_later_and_were_tried(tmp_path: Path) -> None:
    """At first findings come without what takes long to find; both say the same of what is wrong."""
    preview = preview_of(rig(tmp_path, STARTER.replace("drive at 200", "drive at 120")))
    before = state(preview)
    clash = next(each for each in before["findings"] if each["rule"] == "bodies-overlap")
    preview.advise()
    after = state(preview)
    advised = next(each for each in after["findings"] if each["rule"] == "bodies-overlap")
    assert advised["message"] == clash["message"]
    assert advised["mends"] and not clash["mends"]
    assert after["drawn"] == before["drawn"] and after["number"] > before["number"]


def test_a_chosen_place_is_stated_with_the_others_that_were_chosen(tmp_path: Path) -> None:
    """Else the others would be chosen anew."""
    path = rig(tmp_path, STARTER.replace(PLACED, ""))
    preview = preview_of(path)
    assert preview.good is not None and preview.good.made.results is not None
    chosen = preview.good.made.results.rig.places["echo"]
    found = preview.move("drive", 12, 34.5, preview.good.hash)
    assert found.stated_with == ("echo",)
    at = f"  drive at 12, 34.5 mm\n  echo at {chosen.x_mm:g}, {chosen.y_mm:g} mm\n"
    under = "  mains-box under at 100, 100 mm\n"
    assert path.read_text("utf-8") == STARTER.replace(PLACED, "").replace(under, under + at)


def test_a_place_in_another_file_is_changed_there(tmp_path: Path) -> None:
    """Line ends and all other bytes of it stay."""
    places = f"language 1\r\nplace {{\r\n{PLACED}}}\r\n".replace("mm\n", "mm  # so\r\n")
    (tmp_path / "places.rig").write_bytes(places.encode())
    own = STARTER.replace(PLACED, "").replace('use "stock/plugs.rig"', 'use "stock/plugs.rig"\nuse "places.rig"')
    path = rig(tmp_path, own)
    preview = preview_of(path)
    assert preview.good is not None
    preview.move("echo", 61, 20, preview.good.hash)
    assert path.read_text("utf-8") == own
    assert (tmp_path / "places.rig").read_bytes() == places.replace("echo at 60", "echo at 61").encode()


def test_undo_stops_at_an_edit_and_goes_on_when_that_is_gone(tmp_path: Path) -> None:
    path = rig(tmp_path)
    preview = preview_of(path)
    assert preview.good is not None
    preview.move("drive", 201, 20, preview.good.hash)
    path.write_text(OTHER + "# more\n", "utf-8")
    preview.refresh()
    with pytest.raises(EditedSince):
        preview.undo()
    path.write_text(OTHER, "utf-8")
    preview.undo()
    assert path.read_text("utf-8") == STARTER


def test_what_it_follows_and_what_it_was_can_stand_beside_it(tmp_path: Path) -> None:
    rig(tmp_path)
    next_one = STARTER.replace(
        'revision A 2026-03-02 "first draft"', 'revision B 2026-04-02 "second"\n  follows A "board.rig"'
    )
    (tmp_path / "next.rig").write_text(next_one.replace("drive at 200", "drive at 190"), "utf-8")
    preview = preview_of(tmp_path / "next.rig")
    assert preview.choices() == {
        "opened": "as it was when this page was first served",
        "followed": "revision A, which it follows",
    }
    before, opened = preview.beside("followed"), preview.beside("opened")
    assert before is not None and before.results is not None and before.results.rig.head.letter == "A"
    assert before.results.rig.places["drive"].x_mm == 200
    assert opened is not None and opened.results is not None
    (tmp_path / "next.rig").write_text(next_one.replace("drive at 200", "drive at 180"), "utf-8")
    assert preview.refresh()
    now, again = preview.good, preview.beside("opened")
    assert now is not None and now.made.results is not None and again is opened
    assert [each.rig.places["drive"].x_mm for each in (now.made.results, opened.results)] == [180, 190]
    assert {each.span.source for each in now.made.findings if each.span} <= {*now.made.sources}
    assert {each.span.source for each in opened.findings if each.span} <= {*opened.sources}
    assert preview.beside("/etc/passwd") is None
