"""A jack that its block does not declare: the near one in its place where the name stands alone, within a run what there is."""

from __future__ import annotations

import pytest
from cases import READER
from small_rigs import HEAD, block

from rigc.compile import compile_rig
from rigc.source import Source


@pytest.mark.parametrize(
    ("run", "mends", "advice"),
    [
        ("inn", ["write 'in'"], "write 'in'"),
        ("in2..in3", [], "declare the jack 'in2', or name one of in, line"),
        ("zzz", [], "declare the jack 'zzz', or name one of in, line"),
    ],
)
def test_each_has_one_thing_to_do(run: str, mends: list[str], advice: str) -> None:
    desk = block("desk", "front", "input in xlr", "input line xlr", f"phantom {run} none")
    made = compile_rig(lambda name: Source(name, HEAD + desk), "sample.rig", READER)
    first = next(finding for finding in made.findings if "declares no jack" in finding.message)
    assert ([mend.words for mend in first.mends], first.advice) == (mends, advice)
