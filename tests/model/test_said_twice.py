"""A unit that two lines feed, and one that is called as a second of its kind: told once, with what puts it right."""

from __future__ import annotations

from pathlib import Path

from cases import compiled, told

HEAD = "language 1\nrig sample {\n  revision A 2026-01-01\n}\n"
POWERED = "  inlet dc barrel 5.5 x 2.1 mm\n  needs 9 V dc\n  accepts 8.7..9.9 V\n  polarity centre-negative\n  draws 20 mA\n  ground negative\n"
RIG = (
    HEAD
    + "".join(f"unit {name} {{\n{POWERED}}}\n" for name in ("hedge", "marl"))
    + "supply mill {\n  connector barrel 5.5 x 2.1 mm\n  polarity centre-negative\n  outlet o1..o2 9 V dc 100 mA isolated\n}\n"
)


def _told(folder: Path, text: str) -> str:
    (folder / "board.rig").write_text(RIG + text, "utf-8")
    made = compiled(folder / "board.rig", root=folder)
    errors = tuple(each for each in made.findings if each.level.name == "ERROR")
    return told(errors)


def test_fed_with_another_and_alone(tmp_path: Path) -> None:
    """Who shares the outlet is known only when one line is gone: nothing is said of `shared`."""
    text = _told(tmp_path, "power {\n  hedge, marl from mill.o1\n  marl from mill.o2\n}\n")
    assert text.count("error:") == 1
    assert "where 'marl' takes its power is given twice" in text
    assert "take 'marl' out of 'hedge, marl from mill.o1'" in text


def test_fed_with_another_shared_and_alone(tmp_path: Path) -> None:
    """`shared` goes with the unit: one alone can't share."""
    text = _told(tmp_path, "power {\n  hedge, marl from mill.o1 shared\n  marl from mill.o2\n}\n")
    assert text.count("error:") == 1
    assert "take 'marl' out of 'hedge, marl from mill.o1 shared'" in text


def test_a_second_of_its_kind(tmp_path: Path) -> None:
    """No jack begins with a digit, and the unit that there is is not its own spare."""
    text = _told(
        tmp_path,
        "power {\n  hedge from mill.o1\n  marl from mill.o2\n}\nspares {\n  marl-2\n}\n",
    )
    assert text.count("error:") == 1
    assert "declare 'marl-2', as a block that is `like marl` if it is the same; or write 'marl'" in text
    assert "jack" not in text
