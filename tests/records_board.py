"""The touring board with a history of its own (invented): tests, measured leads, a swap, notes, changes, accepted findings."""

from __future__ import annotations

from written import changed

from rigc.analysis.results import Results

TOURING = "examples/long-haul/board.rig"
HEAD = """  marker 40 characters
  follows B "board-b.rig"
  change 1 design "the pitch unit stands behind the distortion" because "it tracks worse behind the fuzz" touches stepladder, A14, D08
  change 2 facts "heron measured anew: 300 mA, not 250 mA" touches heron
  change 3 stock "right-angle plugs in the back row" touches A21, A22
"""
TESTS = """  test 5 at weir8.b6 expects 18.0 V
  2026-03-03 test 3 at A18 reads 0.12 ohm by "T.O."
  2026-05-12 test 3 at A18 reads 0.41 ohm by "T.O."
  2026-05-12 test 4 at A18 reads 200 Mohm by "R.K."
  2026-03-03 test 5 at weir8.b5 reads 12.05 V by "T.O."
  2026-05-12 test 5 at weir8.b5 reads 12.12 V by "T.O."
  2026-03-03 test 6 at heron.dc reads 11.9 V by "T.O."
  2026-03-03 test 9 at rear-panel.l reads -20.1 dBu by "T.O."
  2026-03-04 test 9 at rear-panel.l reads -0.2 dB by "T.O."
  2026-03-03 test 16 at lever reads 127 by "T.O."
  2026-03-03 test 21 at long-haul reads 7 mA by "T.O."
"""
SPARE = """unit lantxl-2 like lantxl "stereo delay, spare" {
  measured 2026-02-14 by "R.K."
}

unit canaltwo """
BEHIND = """
as-built C {
  A01 780 mm 2026-03-04 by "T.O."
  A18 740 mm plugs barrel-angle to flat-angle 2026-03-04 by "T.O."
  D13 733.1 mm
  swap lantxl for lantxl-2 field-note 3
  done 1, 3
  note "the rear bracket of mill8 is a longer one"
}

field-note 3 2026-05-11 "lantxl died in Lisbon, the spare stands in its place" by "T.O."
field-note 2 2026-02-20 "A07 chafed at the rear slot, taped" by "T.O." folded
field-note 1 2026-02-19 "one strip more below marl" by "T.O."

accept too-heavy on long-haul "two of us carry it" by "R.K." until 2026-12-31
accept brighter-guitar "the player likes it brighter" by "R.K." until 2026-03-01
"""


def board(*more: tuple[str, str]) -> Results:
    """What follows from it."""
    return changed(
        TOURING,
        ("  marker 40 characters\n", HEAD),
        ("  test 5 at weir8.b6 expects 18.0 V\n", TESTS),
        ("unit canaltwo ", SPARE),
        ('  1 of "plain 6 m stage lead" in "trunk"\n}\n', '  1 of "plain 6 m stage lead" in "trunk"\n}\n' + BEHIND),
        *more,
    )
