"""What becomes of a lead that is pulled: a spare where it would serve on the new board as it is, whatever its cable, else waste."""

from __future__ import annotations

import pytest
from two_boards import results_after

from rigc.analysis.revision.board import BoardLead
from rigc.analysis.revision.plan.leads.fit import Bench
from rigc.analysis.revision.plan.leads.plan import BIN, REMAKE, STORE
from rigc.analysis.revision.plan.successors import NONE
from rigc.analysis.revision.rework import Rework
from rigc.model.fact import Fact
from rigc.model.stock import Cable
from rigc.source import Source, Span

HERE = Span(Source("cables.rig", "cable"), 0, 5)


def cable(name: str, conductors: int | None, area_mm2: float | None = None) -> Cable:
    area = None if area_mm2 is None else Fact(area_mm2, f"{area_mm2:g} mm2", HERE)
    return Cable(name, name, HERE, conductors=conductors, area_mm2=area)


CABLES = {
    each.name: each
    for each in (
        cable("thin", 1),
        cable("thick", 1),
        cable("pair", 2),
        cable("bare", None),
        cable("dc-24", 2, 0.2),
        cable("dc-20", 2, 0.5),
        cable("dc-17", 2, 0.5),
        cable("dc-x", 2),
    )
}


@pytest.mark.parametrize(
    ("signal", "have", "need", "does"),
    [
        ("audio", "thin", "thick", True),
        ("audio", "pair", "thin", True),
        ("audio", "thin", "pair", False),  # one conductor for two
        ("audio", "bare", "thin", False),  # nobody says how many it has
        ("audio", "bare", "bare", True),
        ("dc", "dc-20", "dc-24", True),
        ("dc", "dc-17", "dc-20", True),  # just as thick
        ("dc", "dc-24", "dc-20", False),  # thinner
        ("dc", "dc-x", "dc-24", False),  # of unknown gauge
        ("audio", "none", "thin", False),
    ],
)
def test_another_cable_that_does_as_well(signal: str, have: str, need: str, does: bool) -> None:
    one, other = (BoardLead("A1", signal, None, ("flat", "flat"), name, 3000, ("", "")) for name in (have, need))
    assert Bench({}, NONE, CABLES).carries_as_much(one, other) is does


UNITS = """language 1
use "stock/plugs.rig"
use "stock/cables.rig"
rig sample {
  revision A 2026-03-02
}
unit knot {
  body 70 x 120 x 50 mm
  input in ts right 80 mm up 25 mm
  output out ts left 80 mm up 25 mm
}
unit spit like knot {
  body 70 x 120 x 50 mm
  input in ts right 80 mm up 25 mm
  output out ts left 80 mm up 25 mm
}
deck board {
  size 600 x 300 mm
  thickness 10 mm
  drop 150 mm
}
chain knot -> spit
"""
LEADS = "place {{\n  knot at {} mm\n  spit at 20, 20 mm\n}}\nleads {{\n  audio cable {}\n  audio plug {}\n  A1 knot.out -> spit.in made {} mm\n}}\n"


def became(old: str, new: str) -> dict[str, str]:
    """The verdicts on what was there and on what shall be there."""
    later = new.replace("revision A 2026-03-02", "revision B 2026-06-02")
    return {
        f"{plan.mark} {'goes' if plan.after is None else 'comes'}": plan.verdict
        for plan in results_after(old, later).get(Rework).leads
    }


BEFORE = UNITS + LEADS.format("300, 20", "mini-coax", "flat-angle", 380)


@pytest.mark.parametrize(
    ("now", "old"),
    [
        (("300, 20", "stage-coax", "flat-angle", 380), STORE),  # of another cable: it fits as it is
        (("300, 20", "mic-pair", "flat-angle", 380), BIN),  # one conductor where two are wanted
        (("500, 20", "mini-coax", "flat-angle", 600), BIN),  # too short for the only place on the board
    ],
)
def test_what_is_pulled(now: tuple[object, ...], old: str) -> None:
    assert became(BEFORE, UNITS + LEADS.format(*now)) == {"A1 comes": REMAKE, "A1 goes": old}
