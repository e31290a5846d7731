"""A lead gets another plug or cable: its line is changed where it has one, and written where it has none."""

from __future__ import annotations

import pytest
from cases import READER
from small_rigs import block, results_of, unit

from rigc.analysis.leads.lead_edits import cable_edits, plug_edits
from rigc.analysis.leads.leads import Leads
from rigc.diagnostics.mend import Mend
from rigc.edit.mended import mended
from rigc.model.jacks import Port

STOCK = (
    block("plug", "flat", "fits ts")
    + block("plug", "long", "fits ts")
    + block("cable", "thin", "carries audio")
    + block("cable", "fine", "carries audio")
    + unit("plumb")
    + unit("hedge")
    + "chain plumb -> hedge\n"
)


def edited(lead: str, *, cable: bool) -> str:
    """The lead's line after the edit: `long` at hedge's input, or the cable `fine`."""
    text = STOCK + (block("leads", "", lead).replace("leads  ", "leads ") if lead else "")
    results = results_of(text)
    rig, leads = results.rig, results.get(Leads)
    (only,) = leads.all
    edits = cable_edits(rig, only, "fine") if cable else plug_edits(rig, leads, {Port("hedge", "in"): "long"})
    made = mended(Mend("", edits), (only.span.source,), lambda source: READER.parse(source).file)
    return next(line.strip() for line in made["sample.rig"].splitlines() if line.strip().startswith("A1 "))


@pytest.mark.parametrize(
    ("lead", "plugs"),
    [
        ("", "A1 plumb.out -> hedge.in flat to long"),
        ("A1 plumb.out -> hedge.in", "A1 plumb.out -> hedge.in flat to long"),
        (
            "A1 plumb.out -> hedge.in flat to flat of thin over",
            "A1 plumb.out -> hedge.in flat to long of thin over",
        ),
        ("A1 plumb -> hedge slack 60 mm", "A1 plumb -> hedge flat to long slack 60 mm"),
    ],
)
def test_plugs(lead: str, plugs: str) -> None:
    assert edited(lead, cable=False) == plugs


@pytest.mark.parametrize(
    ("lead", "cable"),
    [
        ("", "A1 plumb.out -> hedge.in of fine"),
        ("A1 plumb.out -> hedge.in", "A1 plumb.out -> hedge.in of fine"),
        ("A1 plumb.out -> hedge.in flat to flat of thin over", "A1 plumb.out -> hedge.in flat to flat of fine over"),
        ("A1 plumb -> hedge flat to long", "A1 plumb -> hedge flat to long of fine"),
    ],
)
def test_cables(lead: str, cable: str) -> None:
    assert edited(lead, cable=True) == cable
