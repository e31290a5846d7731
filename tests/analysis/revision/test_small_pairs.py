"""A small board changed in one place at a time: all that differs, why, and all that the bench is told to do, asserted whole.

Beside `test_many_changes.py`, where much is changed at once: here a line that is too much, or missing, is seen by whoever reads the pair.
"""

from __future__ import annotations

import pytest
from cases import ExpectedByName
from comparison_rigs import results_against, text_of, told_and_done
from syrupy.assertion import SnapshotAssertion

BASE = "tests/rigs/small-pair.rig"
Changes = tuple[tuple[str, str], ...]
DECK = (text_of(BASE).partition("deck plank {")[2].partition("leads {")[0], "")
NO_DECK = (("deck plank {", ""), DECK)
STAGE = ("  A9 iris.out -> combo.in straight to straight of coax made 6 m\n", "")
DRAWS = ("  polarity centre-negative\n  draws 20 mA\n", "  polarity centre-negative\n")
SERIES = (("  iris from mill.o3", "  iris from mill.o3, mill.o4 series"), ('"delay" {', '"delay" {\n  needs 18 V dc'))
ON_THE_ROAD = """unit cress like rush {
}

field-note 1 2026-05-20 "rush died" by "Z.Z." folded

as-built A {
  swap rush for cress field-note 1
  A9 6.2 m
}

"""
POSITIVE = (
    ('unit rush like sedge "fuzz" {', 'unit rush like sedge "fuzz" {\n  polarity centre-positive'),
    ('"delay" {', '"delay" {\n  polarity centre-positive'),
)
LEADS = "  audio cable coax\n"
PRESETS = """preset 1 "Low" {
  loops 2 of gate
  program 3 on iris
}

preset 2 {
}

song "One" {
  preset 1
}

power {"""
OTHER_PRESETS = """preset 1 "Deep" {
  loops 1 of gate
}

preset 3 {
  program 4 on iris
}

song "Two" {
  preset 3
  tempo 96 bpm
}

power {"""
PAIRS: dict[str, tuple[Changes, Changes]] = {
    "loops-exchanged": ((), (
        ("loop 1 of gate holds sedge", "loop 1 of gate holds rush"), ("loop 2 of gate holds rush", "loop 2 of gate holds sedge"),
    )),
    # the middle of what goes is at 420 + 35, 10 + 60 mm: on the left and the front edge of what comes; and, of the treadle
    # at 100 + 35, 160 + 60 mm, on the right and the rear edge
    "another-in-its-place": ((), (
        ("unit rush like sedge", "unit cress like sedge"), ("  rush at 420, 10 mm", "  cress at 455, 70 mm"),
        ("holds rush", "holds empty"), ("  rush from mill.o2\n", ""), ("holds empty", "holds cress"),
        ("unit sluice ", "unit heel "), ("sluice.out", "heel.out"), ("sluice at 100, 160 mm", "heel at 65, 100 mm"),
    )),
    # no deck: nothing lies anywhere, and leads have no lengths
    "nothing-placed": ((*NO_DECK, STAGE), (
        *NO_DECK, STAGE, ("unit rush like sedge", "unit cress like sedge"), ("holds rush", "holds cress"), ("  rush from", "  cress from"),
        ("guitar -> gate -> iris", "guitar -> iris -> gate"), ("gate.midi -> iris.midi", "gate.midi -> iris.midi crossover"),
    )),
    "last-in-the-chain": ((), (("unit iris ", "unit ibis "), ("iris.", "ibis."), ("-> iris ->", "-> ibis ->"), ("iris channel 2", "ibis channel 3"),
        ("iris from", "ibis from"), ("iris at 280, 160 mm", "ibis at 300, 160 mm"))),
    "swapped-on-the-road": ((("power {", f"{ON_THE_ROAD}power {{"), ("  rush from mill.o2\n  iris from mill.o3\n", "  others from mill\n")), (
        ("  rush from mill.o2\n  iris from mill.o3\n", "  others from mill\n"),
    )),
    "another-supply": ((), (
        ("supply mill ", "supply weir "), ("mill.o", "weir.o"), ("mill under at 300, 40 mm", "weir under at 300, 60 mm"),
    )),
    "fed-otherwise": ((DRAWS, *SERIES), (DRAWS, ("  rush from mill.o2\n", "  rush from mill.o4\n"), ("  sedge from mill.o1\n", "  sedge from mill.o1 reversed\n"))),
    # one adaptor goes to another unit, and a reversing lead takes its place
    "adaptor-for-another": ((*POSITIVE, (LEADS, f"{LEADS}  D14 reversing for rush\n"), ("  iris from mill.o3", "  iris from mill.o3 reversed")), (
        *POSITIVE, (LEADS, f"{LEADS}  D14 reversing for iris\n"), ("  rush from mill.o2", "  rush from mill.o2 reversed"),
    )),
    "other-presets": ((("power {", PRESETS),), (("power {", OTHER_PRESETS),)),
    # two named chains: one goes, one comes
    "other-chains": ((("chain guitar", "chain long: guitar"),), (("chain guitar", "chain short: guitar"),)),
    "leads-of-the-stage": ((), (
        ("coax made 6 m", "coax made 7.5 m"), ("lead 3 m of coax", "lead 4 m of coax"), ("audio plug angle", "audio plug straight"),
    )),
}  # fmt: skip


@pytest.mark.parametrize("pair", PAIRS)
def test_what_is_told_and_done(pair: str, snapshot: SnapshotAssertion) -> None:
    before, after = PAIRS[pair]
    made = results_against(text_of(BASE, *before), text_of(BASE, *after), BASE)
    assert told_and_done(made) == snapshot(extension_class=ExpectedByName)
