"""The revision that a rig follows is read with it; where that can't be, a warning says why and the rest goes on."""

from __future__ import annotations

from pathlib import Path

import pytest
from cases import compiled
from small_rigs import unit

from rigc.analysis.previous import Previous

CHAIN = "instrument guitar {\n}\namp combo {\n  input in ts\n}\n"


def rig(letter: str, follows: str, *names: str, was: str = "") -> str:
    """A rig of some units in a row."""
    units = "".join(unit(name, *([f"was {was}"] if was and name == names[0] else [])) for name in names)
    head = f"language 1\nrig sample {{\n  revision {letter} 2026-03-02\n{follows}}}\n"
    return f"{head}{CHAIN}{units}chain guitar -> {' -> '.join(names)} -> combo\n"


def told(folder: Path, new: str, old: str | None) -> tuple[Previous, list[str]]:
    """What is compared with, and the warnings about it."""
    (folder / "b.rig").write_text(new, "utf-8")
    if old is not None:
        (folder / "a.rig").write_text(old, "utf-8")
    made = compiled(folder / "b.rig", root=folder)
    assert made.results is not None
    return made.results.get(Previous), [each.message for each in made.findings if each.kind.name == "no-comparison"]


def test_the_followed_revision_bears_the_names_of_now(tmp_path: Path) -> None:
    new = rig("B", '  follows A "a.rig"\n', "lant-1", "marl", was="lant")
    previous, findings = told(tmp_path, new, rig("A", "", "lant", "marl"))
    assert findings == []
    assert previous.results is not None
    assert (previous.letter, previous.renamed) == ("A", (("lant-1", "lant"),))
    assert [stop.thing for stop in previous.results.rig.chains[0].stops] == ["guitar", "lant-1", "marl", "combo"]


def test_a_name_that_both_have_is_no_renaming(tmp_path: Path) -> None:
    """`was marl` on a unit is old news where the revision before has both names."""
    new = rig("B", '  follows A "a.rig"\n', "lant", was="marl")
    previous, _ = told(tmp_path, new, rig("A", "", "lant", "marl"))
    assert previous.renamed == ()


@pytest.mark.parametrize(
    ("old", "message"),
    [
        (None, "revision A can't be compared with: cannot read 'a.rig': there is no such file"),
        (rig("C", "", "lant"), "'a.rig' is revision C, not A"),
        (rig("A", "", "lant").replace("-> lant", "-> lent"), "'a.rig' can't be compared with: nothing declares 'lent'"),
        ("language 1\n", "'a.rig' can't be compared with: no rig is declared"),
        ("language 1\nrig {{{\n", "'a.rig' can't be compared with: "),
    ],
)
def test_what_can_t_be_compared_with(tmp_path: Path, old: str | None, message: str) -> None:
    previous, findings = told(tmp_path, rig("B", '  follows A "a.rig"\n', "lant"), old)
    assert previous.results is None
    assert len(findings) == 1
    assert findings[0].startswith(message), findings


def test_revisions_out_of_turn(tmp_path: Path) -> None:
    previous, findings = told(tmp_path, rig("A", '  follows A "a.rig"\n', "lant"), rig("A", "", "lant"))
    assert previous.results is not None
    assert findings == ["this is revision A, too: one that follows another bears another letter"]
    later = rig("A", "", "lant").replace("2026-03-02", "2026-03-03")
    previous, findings = told(tmp_path, rig("B", '  follows A "a.rig"\n', "lant"), later)
    assert previous.results is not None
    assert findings == ["revision A is of 2026-03-03, later than this one of 2026-03-02"]


def test_a_revision_that_follows_itself(tmp_path: Path) -> None:
    previous, findings = told(tmp_path, rig("B", '  follows A "b.rig"\n', "lant"), None)
    assert previous.results is None
    assert findings == ["'b.rig' is this file or follows it: no revision is its own before"]
