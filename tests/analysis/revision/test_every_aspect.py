"""All that a comparison can tell of a rig in which nearly everything is stated, asserted whole: in which words, whence, and what a change of it asks for."""

from __future__ import annotations

import pytest
from cases import ROOT, ExpectedByName, results
from syrupy.assertion import SnapshotAssertion

from rigc.analysis.revision.aspects import Aspects


@pytest.mark.parametrize("path", ["reach/board", "rigs/odd-leads"], ids=lambda path: f"aspects-{path.rpartition('/')[2]}")  # fmt: skip
def test_what_can_be_told(path: str, snapshot: SnapshotAssertion) -> None:
    every = results(ROOT / "tests" / f"{path}.rig").get(Aspects).by_key.values()
    lines = [
        f"{each.kind} {each.name} {each.field}: {each.text} ({each.origin}, {' '.join(each.work)}{', detail' if each.detail else ''})\n"
        for each in every
        if not each.detail
        or each.kind not in ("cable", "plug", "strip")  # of the stock that ships with rigc only what is in use
    ]
    assert "".join(lines) == snapshot(extension_class=ExpectedByName)
