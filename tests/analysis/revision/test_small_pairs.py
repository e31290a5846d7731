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
OTHER_AMP = (
    'unit gate "switcher" {',
    'amp stack like combo {\n}\n\nunit gate "switcher" {\n  output thru ts 1 kohm rear 190 mm up 40 mm',
)
REVISION_B = (
    'revision A 2026-05-04 "first build"',
    'revision B 2026-06-04\n  follows A "board.rig"\n  change 1 design "no fuzz" touches rush\n'
    '  change 2 design "nearer" touches sedge\n  change 3 facts "measured" touches gate',
)
LONE_CHANGE = (
    'revision A 2026-05-04 "first build"',
    'revision B 2026-06-04\n  follows A "board.rig"\n  change 7 design "further right"',
)
SPARES = (
    "power {",
    'spares {\n  2 audio lead 900 mm\n  1 audio lead 90 cm in "lid"\n  2 dc lead 500 mm\n  4 plug angle\n}\n\npower {',
)
FEWER_SPARES = ("power {", "spares {\n  1 audio lead 900 mm\n  1 dc lead 500 mm\n  2 plug angle\n}\n\npower {")
PANEL = """panel back on plank {
  jack l ts insulated at 640, 310 mm
  jack r ts insulated at 600, 310 mm
  inlet mains C14 at 500, 310 mm
}

case trunk {
  inside 720 x 340 x 200 mm
}

scenario club {
  country DE
  transformer 100 V to 115 V 50 VA before mill
}

"""
OTHER_PANEL = """panel back on plank {
  jack l ts insulated at 641, 310 mm
  jack x ts insulated at 560, 310 mm
  inlet mains C14 at 500, 311 mm
}

case trunk {
  inside 720 x 350 x 200 mm
}

scenario club {
  country DE
  transformer 110 V to 115 V 50 VA before mill
}

"""
WEIGHED = (
    ("body 200 x 100 x 50 mm", "body 200 x 100 x 50 mm\n  mass 900 g"), ("body 70 x 120 x 55 mm", "body 70 x 120 x 55 mm\n  mass 300 g"),
    ("body 120 x 60 x 40 mm", "body 120 x 60 x 40 mm\n  mass 500 g"), ("size 700 x 320 mm", "size 700 x 320 mm\n  mass 2 kg"),
    ("carries audio\n", "carries audio\n  mass 400 g/m\n"), ("carries dc\n", "carries dc\n  mass 20 g/m\n"),
    ("made 6 m\n", "made 6 m\n  A13 sedge.out -> gate.r1\n  C1 sluice.out -> iris.exp\n"),
    ("plug angle {\n", "plug angle {\n  mass 20 g\n"), ("plug pin {\n", "plug pin {\n  mass 8 g\n"), ("cable thread {\n", "cable thread {\n  mass 150 g/m\n"),
    ("power {", "mounting {\n  gate, sedge, rush, iris, sluice, mill brackets\n}\n\npower {"),
)  # fmt: skip
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
    # each lead of the stage under another number: one goes on to another amp, one comes from another unit
    "stage-leads-renumbered": ((OTHER_AMP, ("-> iris -> combo\n", "-> iris -> combo\nchain gate.thru -> stack\n"),
        ("made 6 m\n", "made 6 m\n  A8 gate.thru -> stack.in straight to straight of coax made 8 m\n")), (
        OTHER_AMP, ("-> iris -> combo\n", "-> iris -> stack\nchain gate.thru -> combo\n"),
        ("A9 iris.out -> combo.in straight to straight of coax made 6 m\n", "A19 iris.out -> stack.in straight to straight of coax made 6 m\n  A18 gate.thru -> combo.in straight to straight of coax made 8 m\n"),
    )),
    "renamed": ((), (("unit rush like sedge \"fuzz\" {", "unit cress like sedge \"fuzz\" {\n  was rush"), ("holds rush", "holds cress"), ("  rush from", "  cress from"),
        ("  rush at 420", "  cress at 430"), ("supply mill \"six outlets\" {", "supply weir \"six outlets\" {\n  was mill"), ("mill.o", "weir.o"), ("  mill under", "  weir under"))),
    # done already: rush has gone; 2 is the work of the others, and 3 touches nothing that differs
    "done-in-part": ((), (REVISION_B, ("power {", "as-built A {\n  done 1\n}\n\npower {"), ("unit rush like sedge \"fuzz\" {\n}\n", ""), ("holds rush", "empty"), ("  rush from mill.o2\n", ""),
        ("  rush at 420, 10 mm\n", ""), ("sedge at 560, 10 mm", "sedge at 540, 10 mm turned 90 deg"))),
    # one change that touches nothing by name is about all of it
    "of-one-change": ((), (LONE_CHANGE, ("iris at 280", "iris at 300"))),
    "spares-carried": ((SPARES,), (FEWER_SPARES, ("gate at 20, 10 mm", "gate at 20, 150 mm"), ("sluice at 100, 160 mm", "sluice at 240, 10 mm"))),
    "panel-and-case": ((("deck plank {", f"{PANEL}deck plank {{"),), (("deck plank {", f"{OTHER_PANEL}deck plank {{"), ("  clearance 60 mm", "  clearance 60 mm\n  hole 25 mm at 650, 300 mm"))),
    "another-deck": ((("deck plank {", f"{PANEL}deck plank {{"),), (("deck plank {", f"{PANEL}deck plank {{"), ("size 700 x 320 mm", "size 740 x 320 mm"))),
    # everything is weighed; A13 was made 120 mm longer than designed, C1 100 mm: 0.12 x 400 + 0.1 x 150 = 63 g more than the design of before
    "weighed": ((*WEIGHED, ("power {", "as-built A {\n  A13 810 mm\n  C1 370 mm\n  A9 6.5 m\n}\n\npower {")), (*WEIGHED, ("sedge at 560", "sedge at 540"))),
}  # fmt: skip


@pytest.mark.parametrize("pair", PAIRS)
def test_what_is_told_and_done(pair: str, snapshot: SnapshotAssertion) -> None:
    before, after = PAIRS[pair]
    made = results_against(text_of(BASE, *before), text_of(BASE, *after), BASE)
    assert told_and_done(made) == snapshot(extension_class=ExpectedByName)
