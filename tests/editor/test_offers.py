"""Completion knows the place: each case is a line with a cursor, what must be offered there, and what must not."""

from __future__ import annotations

from pathlib import Path

import pytest

from editor.desk import LEADS, STARTER, Desk, typed

RIG = STARTER + LEADS
POWER = "power {"
IN_LEADS = "  A1 drive.out -> echo.in flat-angle to flat-angle of mini-coax"


@pytest.mark.parametrize(
    ("line", "behind", "offered", "not_offered"),
    [
        # statements of this block, and of no other
        ("  ‸", 'unit drive "overdrive" {', {"draws", "needs", "input", "mass"}, {"outlet", "chain", "from"}),
        ("  o‸", 'supply mains-box "two outlets" {', {"outlet", "output"}, {"draws", "starts"}),
        ("‸", "# What the sound begins and ends at.", {"unit", "chain", "power", "use"}, {"mass", "draws"}),
        # words behind words
        ("  bypass ‸", "  switch at 35, 20 mm", {"true", "buffered", "always-on"}, {"passes", "drive"}),
        ("  earthed ‸", "  level in max 11 dBu\n  earthed", {"measured", "leaflet", "assumed"}, {"in"}),
        # units as this statement is written elsewhere
        ("  mass 4 ‸", "  delay", {"g"}, {"mA", "mm"}),
        # jacks of this unit, in its block and behind a dot
        ("  level ‸", "  delay", {"in", "out"}, {"o1"}),
        ("chain drive.‸", "# What the sound begins and ends at.", {"in", "out"}, {"dc"}),
        ("  drive from mains-box.‸", POWER, {"o1", "o2"}, {"dc", "in"}),
        # outlets that are free and suit
        ("  drive from ‸", POWER, {"mains-box.o1", "mains-box.o2"}, {"drive", "mains-box"}),
        ("  others from ‸", POWER, {"mains-box"}, {"mains-box.o1", "drive"}),
        # stock that fits
        ("  A2 guitar.out -> drive.in ‸", IN_LEADS, {"flat-angle"}, {"dc-angle", "mini-coax"}),
        ("  A2 guitar.out -> drive.in flat-angle to ‸", IN_LEADS, {"flat-angle"}, {"dc-angle"}),
        ("  audio cable ‸", IN_LEADS, {"mini-coax", "stage-coax"}, {"flat-angle"}),
        ("  all with ‸", "mounting {", {"mushroom"}, {"mini-coax"}),
        ("  lead 3 m of ‸", "  inductance 4.2 H", {"stage-coax"}, {"mushroom"}),
        # names
        ("unit third like ‸", "# What the sound begins and ends at.", {"drive", "echo"}, {"third", "combo", "mains-box"}),
        ("chain guitar -> ‸", "# What the sound begins and ends at.", {"drive", "combo"}, {"mains-box", "plank"}),
        ("  drive under at 3, 3 mm on ‸", "place {", set(), {"drive"}),
        ("  drive beneath ‸", "place {", {"plank"}, {"drive", "echo"}),
        ("  drive within reach of left foot while on ‸", "place {", {"echo"}, {"plank"}),
        ("  drive, ‸", "place {", {"echo", "mains-box"}, {"plank"}),
        ("  drive ‸", "place {", {"at", "left", "row", "side", "clear", "beneath", "jacks"}, {"draws"}),
        ("  weigh ‸", "place {", {"bare", "audio", "front"}, {"drive"}),
        ("accept ‸", "# What the sound begins and ends at.", {"too-heavy", "plugs-collide"}, {"drive"}),
        # countries
        ('scenario uk {\n  country ‸\n}', "# What the sound begins and ends at.", {"GB", "JP"}, {"A1"}),
        ("  origin ‸", "  switch at 35, 20 mm", {"DE"}, {"A1"}),
        # the papers of an instrument, a fuse, and a unit on the shelf
        ("  ‸", "  inductance 4.2 H", {"serial", "owner", "insured", "mass", "battery"}, {"needs"}),
        ("  fuse ‸", 'supply mains-box "two outlets" {', {"T", "F"}, {"drive"}),
        ("unit third like drive {\n}\nspares {\n  ‸\n}", "# What the sound begins and ends at.", {"third"}, {"drive", "echo"}),
        # nothing
        ("unit ‸", "# What the sound begins and ends at.", set(), {"drive", "echo"}),
        ("# unit ‸", "# What the sound begins and ends at.", set(), {"drive", "unit"}),
        ('note "dra‸', "# What the sound begins and ends at.", set(), {"draws", "drive"}),
    ],
)  # fmt: skip
def test_offers(tmp_path: Path, line: str, behind: str, offered: set[str], not_offered: set[str]) -> None:
    found = set(Desk(tmp_path, typed(line, behind, RIG)).offered())
    assert offered <= found
    assert not not_offered & found


def test_an_outlet_that_is_taken_or_too_weak_is_not_offered(tmp_path: Path) -> None:
    text = typed("  echo from mains-box.o1\n  drive from ‸", POWER, RIG.replace("  others from mains-box", "  #"))
    assert set(Desk(tmp_path, text).offered()) & {"mains-box.o1", "mains-box.o2"} == {"mains-box.o2"}
    # each outlet gives 200 mA: at 200 it suits, at 201 it does not
    for drawn, suits in ((200, True), (201, False)):
        text = typed("  drive from ‸", POWER, RIG.replace("draws 8 mA", f"draws {drawn} mA"))
        assert ("mains-box.o1" in Desk(tmp_path, text).offered()) is suits
    text = typed("  drive from ‸", POWER, RIG.replace("needs 9 V dc", "needs 12 V dc"))
    assert "mains-box.o1" not in Desk(tmp_path, text).offered()


def test_units_that_nothing_feeds_come_first(tmp_path: Path) -> None:
    text = typed("  echo from mains-box.o1\n  ‸", POWER, RIG.replace("  others from mains-box", "  #"))
    found = Desk(tmp_path, text).offered()
    assert found["drive"].rank < found["echo"].rank


def test_leads_that_rigc_numbered_are_offered_as_lines(tmp_path: Path) -> None:
    desk = Desk(tmp_path, RIG)
    desk.check()
    desk.put(typed("  ‸", "leads {", RIG))
    lines = [label for label in desk.offered() if " -> " in label]
    assert "A2 guitar.out -> drive.in" in lines or "A2 echo.out -> combo.in" in lines
    assert not any(line.startswith("A1 ") for line in lines)


def test_files_of_the_stock(tmp_path: Path) -> None:
    text = STARTER.replace('use "stock/premade.rig"', 'use "sto‸')
    assert "stock/decks.rig" in Desk(tmp_path, text).offered()
