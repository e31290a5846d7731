"""Label texts from the template."""

from __future__ import annotations

import pytest
from boards_by_hand import HEAD, board, lead

from rigc.analysis.leads.labels import labels
from rigc.analysis.leads.leads import Leads

ONE = lead("A14", "signalbox.s7", "stepladder.in", "flat flat")


@pytest.mark.parametrize(
    ("template", "texts"),
    [
        (None, ("A14 signalbox.s7 / far stepladder.in", "A14 stepladder.in / far signalbox.s7")),
        ("{far} {id}{id}", ("stepladder.in A14A14", "signalbox.s7 A14A14")),
        ("plain", ("plain", "plain")),
    ],
)
def test_texts(template: str | None, texts: tuple[str, str]) -> None:
    rig = board(None, head=HEAD.replace(label=template))
    assert labels(rig, Leads((ONE,))).texts == {"A14": texts}
