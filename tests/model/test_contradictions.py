"""Two facts of one thing that can't both be true: told just beyond, silent on the limit."""

from __future__ import annotations

import pytest
from cases import READER

from rigc.compile import compile_rig
from rigc.source import Source

RIG = """language 1
rig sample {{
  revision A 2026-03-02
}}
unit tern {{
  input in ts
  output out ts
  inlet dc barrel 5.5 x 2.1 mm
  {lines}
}}
"""


@pytest.mark.parametrize(
    ("lines", "message"),
    [
        ("needs 12 V dc\n  accepts 8.7..9.9 V", "'tern' needs 12 V and accepts 8.7..9.9 V, which leaves that out"),
        ("needs 9.9 V dc\n  accepts 8.7..9.9 V", None),
        ("needs 8.7 V dc\n  accepts 8.7..9.9 V", None),
        ("needs 8.6 V dc\n  accepts 8.7..9.9 V", "'tern' needs 8.6 V and accepts 8.7..9.9 V, which leaves that out"),
        (
            "draws 22 mA\n  starts 21.9 mA",
            "'tern' starts with 21.9 mA and draws 22 mA: the current at switch-on is no less than that in use",
        ),
        ("draws 22 mA\n  starts 22 mA", None),
        ("level out 4 dBu peak -20 dBu", "a peak of -20 dBu is below the nominal level of 4 dBu"),
        ("level out 4 dBu peak 3.9 dBu", "a peak of 3.9 dBu is below the nominal level of 4 dBu"),
        ("level out 4 dBu peak 4 dBu", None),
    ],
)
def test_what_contradicts_itself_is_told(lines: str, message: str | None) -> None:
    made = compile_rig(lambda name: Source(name, RIG.format(lines=lines)), "sample.rig", READER)
    told = [each.message for each in made.findings if each.kind.name == "wrong-quantity"]
    assert told == ([] if message is None else [message])
