"""What is advised works: slips dealt into the examples, and the mends of what is found, each applied and compiled."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable

import pytest
from cases import READER, ROOT
from dealt_faults import dealt_fault

from rigc.compile import compile_rig
from rigc.files.disk import Disk
from rigc.proved import Bench

EXAMPLES = ("back-bedroom", "tide-line")
SEEDS = 24
"""A part of those that the benchmark script of mends deals."""


@pytest.mark.slow
@pytest.mark.parametrize("name", EXAMPLES)
def test_what_is_offered_works(name: str, record_property: Callable[[str, object], None]) -> None:
    """Nine in ten of the mends that rules offer do what they say. What does not is never printed, and is listed by the script; a finding
    without a mend that works says in words what is to be done, or why no single change does it."""
    board = ROOT / "examples" / name / "board.rig"
    text = board.read_text("utf-8")
    offered: Counter[bool] = Counter()
    for seed in range(SEEDS):
        load = Disk(board, root=ROOT, given=dealt_fault(text, seed).encode())
        bench = Bench(compile_rig(load, load.name, READER), load, load.name, READER)
        bench.left = 1_000
        for finding in bench.made.findings:
            if finding.accepted is None:
                proved = bench.proved(finding)
                assert proved.advice, finding.message
                offered.update({True: len(proved.mends), False: len(finding.mends) - len(proved.mends)})
    record_property("offered", dict(offered))
    assert offered[True] >= 0.9 * offered.total(), dict(offered)
