"""Two boards with many things changed at once, there and back: all that differs, why, and what the bench is told to do."""

from __future__ import annotations

import pytest
from cases import ExpectedByName
from comparison_rigs import results_against, text_of, told_and_done
from syrupy.assertion import SnapshotAssertion

ALL = "tests/reach/board.rig"
CHANGES = (
    ("groyne", "hithe"),
    ("mass 360 g", "mass 380 g"),
    ("draws 20 mA", "draws 35 mA"),
    ("limit total 70 %", "limit total 65 %"),
    ("mains 230 V within 5 %", "mains 220 V within 6 %"),
    ("selector tarn 230 V  #", "selector tarn 115 V  #"),
    ("output out ts 62 kohm", "output out ts 47 kohm"),
    ("order box before shingle", "order box before lant"),
    ("wet 40 %", "wet 35 %"),
    ("loops 1 of box  #", "loops 2 of box  #"),
    ("lant channel 2 programs", "lant channel 3 programs"),
    ("program 3 on lant", "program 4 on lant"),
    ("box from mere.o1  #", "box from mere.o2  #"),
    ("lant from mere.o2", "lant from mere.o1"),
    ("drop 70, 154, 290, 390 mm", "drop 70, 160, 290, 390 mm"),
    ("hole 25 mm at 860, 440 mm", "hole 30 mm at 850, 430 mm"),
    ("feet 20 mm in", "feet 25 mm in"),
    ("lid 110 mm", "lid 115 mm"),
    ("marl at 320, 30 mm", "marl at 325, 36 mm"),
    ("shingle at 420, 156 mm turned 0 deg", "shingle at 420, 160 mm turned 90 deg"),
    ("A2 box.s1 -> marl.in through 290, 70 mm", "A2 box.s1 -> marl.in slack 40 mm"),
    ("of stage made 6 m", "of stage made 7 m"),
    ("A5 ferry.di -> front-desk.ch three to three of stage made 8 m\n", ""),
    ("marl with hook  #", "marl with wide  #"),
    ("expects 12.1 V", "expects 12 V"),
    ("2 audio lead 900 mm", "3 audio lead 900 mm"),
    ("A1 heron.out -> box.in angle to angle of thin over", "A1 heron.out -> box.in angle to angle of thin under"),
    ("price 4 EUR", "price 5 EUR"),
)
ORDERED, BUILT = "tests/rigs/back-bedroom-as-ordered.rig", "examples/back-bedroom/board.rig"
PAIRS = {
    "many-changes": (ALL, text_of(ALL), text_of(ALL, *CHANGES)),
    "many-changes-back": (ALL, text_of(ALL, *CHANGES), text_of(ALL)),
    "as-ordered": (BUILT, text_of(ORDERED), text_of(BUILT)),
}


@pytest.mark.parametrize("pair", PAIRS)
def test_what_is_told_and_done(pair: str, snapshot: SnapshotAssertion) -> None:
    path, old, new = PAIRS[pair]
    assert told_and_done(results_against(old, new, path)) == snapshot(extension_class=ExpectedByName)
