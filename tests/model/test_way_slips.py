"""Ways that look like slips and are none: each lies just inside passed-twice, dead-end or open-loop. Rigs are invented."""

from __future__ import annotations

import pytest
from cases import READER
from small_rigs import HEAD, block, unit

from rigc.compile import compile_rig
from rigc.model.slips.way_slips import DEAD_END, OPEN_LOOP, PASSED_TWICE
from rigc.source import Source

GUITAR, COMBO = block("instrument", "guitar"), block("amp", "combo", "input in ts")
GATE = unit("gate", "output s1..s2 ts", "input r1..r2 ts", "loop 1..2 send s1..s2 return r1..r2")
TWO = block(
    "unit",
    "two",
    "input a ts",
    "input b ts",
    "output c ts",
    "output d ts",
    "path a -> c straight",
    "path b -> d straight",
)
FORK = block("unit", "fork", "input in ts", "output a ts", "output b ts")
OWN = block("amp", "own", "input in ts", "output send ts", "input back ts", "loop 1 send send return back series")


@pytest.mark.parametrize(
    "parts",
    [
        # Two channels of one unit, by their jacks.
        (GUITAR, TWO, unit("tern"), COMBO, "chain guitar -> two.a\nchain two.c -> tern -> two.b\nchain two.d -> combo\n"),
        # Round again, on purpose.
        (GUITAR, unit("tern"), unit("fen"), COMBO, "chain guitar -> tern -> fen -> tern -> combo\nfeedback tern\n"),
        # The same unit in two chains that part behind it.
        (GUITAR, FORK, unit("tern"), COMBO, "chain guitar -> fork.a -> tern -> combo\nchain fork.b -> tern\n"),
        # A tuner hangs on a send of its own.
        (GUITAR, GATE, block("unit", "tuna", "input in ts"), COMBO, "chain guitar -> gate -> combo\nchain gate.s1 -> tuna\n"),
        # A send feeds a second amp.
        (GUITAR, GATE, unit("tern"), COMBO, OWN, "chain guitar -> gate -> combo\nchain gate.s1 -> tern -> own\n"),
        # What a loop holds.
        (GUITAR, GATE, unit("tern"), COMBO, "chain guitar -> gate -> combo\nloop 1 of gate holds tern\n"),
        # A chain goes on from an amp's own send.
        (GUITAR, unit("tern"), OWN, "chain guitar -> own\nchain own.send -> tern -> own.back\n"),
        # A unit of which no jack is declared yet is not described, which another rule tells.
        (GUITAR, block("unit", "tern"), COMBO, "chain guitar -> tern -> combo\n"),
    ],
)  # fmt: skip
def test_no_slip(parts: tuple[str, ...]) -> None:
    made = compile_rig(lambda name: Source(name, HEAD + "".join(parts)), "sample.rig", READER)
    slips = {kind.name for kind in (PASSED_TWICE, DEAD_END, OPEN_LOOP)}
    assert [finding.message for finding in made.findings if finding.kind.name in slips] == []
